"""Layout: from the building as described to parts as pure numbers. No kernel on this floor."""

from __future__ import annotations

import numpy  # noqa: F401  # before shapely, which loads it from C and prints what stops it there

from .laid import Laid
from .whole_building import lay_out

__all__ = ["Laid", "lay_out"]
