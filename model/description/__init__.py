"""A building as a person states it: text in, a validated Building out. No kernel on this floor."""

from __future__ import annotations

from .building import Building
from .estimate import MOST, refuse_too_many
from .from_text import parse, read
from .keys.schema import schema
from .starter import sample, sample_text, starter_text, starters

__all__ = [
    "read",
    "parse",
    "sample",
    "sample_text",
    "starters",
    "starter_text",
    "schema",
    "Building",
    "MOST",
    "refuse_too_many",
]
