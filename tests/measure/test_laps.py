"""Where two sheets lap, and where they merely touch."""

from __future__ import annotations

import numpy as np
import shapely
from ribwright.measure.laid_sheets import LaidSheet
from ribwright.measure.laps import meeting


def laid(outline: shapely.Polygon) -> LaidSheet:
    """A sheet of which nothing but its outline is asked."""
    return LaidSheet(None, None, outline, np.zeros((0, 2)), np.zeros((0, 2)), 0.0, ())  # type: ignore[arg-type]


def test_a_line_in_which_two_sheets_touch_is_no_lap() -> None:
    """One has a corner cut off it along the other's edge: they meet in a strip, and beyond it in a line."""
    one = shapely.Polygon([(0, 0), (100, 0), (100, 300), (50, 300), (50, 200), (0, 200)])
    other = shapely.box(20, -10, 50, 400).union(shapely.box(50, 350, 200, 400))
    assert one.intersection(other).geom_type == "GeometryCollection"
    ((_, _, region),) = meeting([laid(one), laid(other)])
    assert region.equals(shapely.box(20, 0, 50, 200))
