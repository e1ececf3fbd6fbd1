"""A straight piece as it is seen from a side: what of its ends is cut off."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np
import shapely

from ..measure.member import measure_member
from .flat import Flat, likeness, steady

if TYPE_CHECKING:
    from OCP.TopoDS import TopoDS_Solid

SLIVER = 0.5
"""mm; waste that is narrower is none: the round of a corner."""


def member_flat(mark: str, solid: TopoDS_Solid, turned: bool) -> Flat:
    """A member as it is seen from the side (mm): v along it, u down across it; turned: a quarter turn on.

    Its outline is the hull of its corners: end cuts show, notches in its legs do not.
    """
    points = measure_member(solid).ways[0].points[:, [2 if turned else 0, 1]]
    points = points - points.min(axis=0)
    size = points.max(axis=0)
    ways = (np.abs(points - size * far) for far in ((0, 0), (1, 0), (0, 1), (1, 1)))
    hulls = [steady(shapely.MultiPoint(way).convex_hull.simplify(0.02)) for way in ways]
    outline = min(hulls, key=likeness)
    blank = shapely.box(*outline.bounds)
    parts = shapely.get_parts(blank.difference(outline))
    cut = [part for part in parts if not part.buffer(-SLIVER / 2).is_empty]
    busy = tuple((float(part.bounds[1]), float(part.bounds[3])) for part in cut)
    return Flat(mark, outline, blank, (), busy, None if cut else (0.0, 0.0))
