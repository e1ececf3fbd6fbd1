"""Bodies cut by a plane: the areas that the cut lays bare, from the triangles of their closed surfaces."""

from __future__ import annotations

import numpy as np
import shapely
from shapely.geometry import Polygon

from ..measure.faces import Vectors
from ..measure.outline import stands_out
from ..pieces import Piece
from ..place import Place, Point2
from ..solids.placed import placed_triangles
from .seen import box_in, on_grid, tidy

THIN = 1.0
"""mm on paper; what is thinner is drawn solid."""
EVEN = 2
STRAIGHT = 0.005
"""mm; a corner that stands out less from a cut's rim is none."""


def cut_area(frame: Place, piece: Piece, window: Polygon) -> shapely.Geometry:
    """What the plane w = 0 of a frame lays bare of a piece, inside a window of (u, v)."""
    least, most = box_in(frame, piece)
    left, low, right, high = window.bounds
    if least[2] > 0 or most[2] < 0 or least[0] > right or most[0] < left or least[1] > high or most[1] < low:
        return Polygon()
    axes = np.array([frame.x, frame.y, frame.z])
    ((points, faces),) = placed_triangles([piece])
    segments = _crossed(((points - np.array(frame.origin)) @ axes.T)[faces])
    parts = shapely.get_parts(shapely.polygonize([shapely.unary_union(shapely.linestrings(segments))]))
    inside = [part for part in parts if _covered(part.representative_point().coords[0], segments)]
    if not inside:
        return Polygon()
    # Sides of triangles leave corners on straight lines, other ones in every mesh of a body.
    found = tidy(shapely.union_all(inside).intersection(window))
    parts = (p for p in shapely.get_parts(found) if p.geom_type == "Polygon" and p.area > STRAIGHT)
    return tidy(shapely.union_all([_straightened(part) for part in parts]))


def _straightened(area: Polygon) -> Polygon:
    """An area without the corners that lie on the line between their neighbours."""
    outer, *holes = [_ring(ring) for ring in (area.exterior, *area.interiors)]
    return Polygon(outer, [hole for hole in holes if len(hole) > EVEN])


def _ring(ring: shapely.LinearRing) -> list[Point2]:
    points = [(float(x), float(y)) for x, y in ring.coords][:-1]
    out = [stands_out(p, points[i - 1], points[i + 1 - len(points)]) for i, p in enumerate(points)]
    start = out.index(max(out))
    kept: list[Point2] = []
    for point in [*points[start:], *points[: start + 1]]:
        while len(kept) > 1 and stands_out(kept[-1], kept[-2], point) < STRAIGHT:
            kept.pop()
        kept.append(point)
    return kept[:-1]


def _crossed(corners: Vectors) -> Vectors:
    """(n, 2, 2) where triangles (m, 3, 3) pass through w = 0."""
    w = corners[:, :, 2]
    over = w > 0
    met = corners[over.any(axis=1) & ~over.all(axis=1)]
    found = np.empty((len(met), 2, 2))
    filled = np.zeros(len(met), dtype=int)
    rows = np.arange(len(met))
    for i, j in ((0, 1), (1, 2), (2, 0)):
        a, b = met[:, i], met[:, j]
        crossing = (a[:, 2] > 0) != (b[:, 2] > 0)
        share = a[crossing, 2] / (a[crossing, 2] - b[crossing, 2])
        spots = a[crossing, :2] + share[:, None] * (b[crossing, :2] - a[crossing, :2])
        found[rows[crossing], filled[crossing]] = spots
        filled += crossing
    grid = on_grid(found)
    kept: Vectors = grid[(grid[:, 0] != grid[:, 1]).any(axis=1)]
    return kept


def _covered(spot: tuple[float, ...], segments: Vectors) -> bool:
    """Whether a place is inside closed lines: a ray from it meets them an odd number of times."""
    x, y = spot[:2]
    a, b = segments[:, 0], segments[:, 1]
    over = (a[:, 1] > y) != (b[:, 1] > y)
    a, b = a[over], b[over]
    at = a[:, 0] + (y - a[:, 1]) / (b[:, 1] - a[:, 1]) * (b[:, 0] - a[:, 0])
    return int((at > x).sum()) % EVEN == 1


def is_thin(area: shapely.Geometry, ratio: float) -> bool:
    """Whether nothing of an area is a millimetre thick on paper."""
    return bool(area.buffer(-THIN * ratio / 2).is_empty)
