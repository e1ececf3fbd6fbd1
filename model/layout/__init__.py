"""Layout: from the building as described to parts as pure numbers. No kernel on this floor."""

from __future__ import annotations

from .laid import Laid
from .whole_building import lay_out

__all__ = ["Laid", "lay_out"]
