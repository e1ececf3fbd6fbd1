"""Layout: from the building as described to parts as pure numbers. No kernel on this floor."""

from __future__ import annotations

from .whole_building import Laid, lay_out

__all__ = ["Laid", "lay_out"]
