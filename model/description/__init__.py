"""What a person states: text in, a typed Building out. Knows keys, not geometry; no kernel on this floor."""

from __future__ import annotations

from .building import Building
from .keys.schema import schema

__all__ = ["Building", "schema"]
