"""A folded trim opened out: its legs side by side, each as it is seen square to it, off its solid's faces."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise
from typing import TYPE_CHECKING

import numpy as np
import shapely

from ..measure.bends import Bends
from ..measure.faces import Vectors, flats
from .flat import Flat

if TYPE_CHECKING:
    from OCP.TopoDS import TopoDS_Solid

FACING = 1 - 1e-4
"""Cosine from which a face is one of a leg."""
IN_PLANE = 0.05
"""mm; a leg's face lies so near to the leg's line."""
SLIVER = 0.5
"""mm; waste along a leg that is narrower is none: a mitre's edge on a thin sheet."""

KINK = 0.1
"""mm; a corner that stands out less is none: legs of a lapped stick lean by a sheet's thickness."""


def trim_flat(mark: str, solid: TopoDS_Solid, bends: Bends) -> Flat:
    """A trim opened out (mm): u from the free edge of its first leg, v along it; bends are its folds."""
    legs = list(_legs(solid, bends))
    outline = shapely.union_all([leg.buffer(0.01, join_style="mitre") for _, leg in legs])
    outline = outline.buffer(-0.01, join_style="mitre")
    left, low, right, high = outline.bounds
    outline = shapely.transform(outline, lambda points: points - (left, low))
    blank = shapely.box(0.0, 0.0, right - left, high - low)
    folds = tuple((at - left, 0.0) for at, _ in legs[1:])
    square = blank.difference(outline).buffer(-SLIVER / 2).is_empty
    if square:
        return Flat(mark, blank, blank, folds, (), (0.0, 0.0))
    return Flat(mark, outline.simplify(KINK), blank, folds, tuple(_busy(outline, blank)))


def _legs(solid: TopoDS_Solid, bends: Bends) -> Iterator[tuple[float, shapely.Geometry]]:
    """Each leg: where it begins across, and its area (u, v)."""
    normals, _, rings = flats(solid)
    axes = np.array([bends.bench.x, bends.bench.y, bends.bench.z])
    origin = np.array(bends.bench.origin)
    at = 0.0
    for start, end in pairwise(np.array(bends.line)):
        size = float(np.hypot(*(end - start)))
        way = (end - start) / size
        out = np.array([way[1], -way[0]])  # the steel is on the line's left
        parts = []
        for normal, ring in zip(normals @ axes.T, rings, strict=True):
            if not ring or normal[[0, 2]] @ out < FACING:
                continue
            points = [(corners - origin) @ axes.T for corners in ring]
            if abs(float((points[0][:, [0, 2]] - start).mean(axis=0) @ out)) < IN_PLANE:
                parts.append(_area(points, start, way, at))
        yield at, shapely.union_all(parts)
        at += size


def _area(rings: list[Vectors], start: Vectors, way: Vectors, at: float) -> shapely.Geometry:
    flat = [np.column_stack([at + (ring[:, [0, 2]] - start) @ way, ring[:, 1]]) for ring in rings]
    return shapely.Polygon(flat[0], flat[1:]).buffer(0)


def _busy(outline: shapely.Geometry, blank: shapely.Geometry) -> Iterator[tuple[float, float]]:
    """Stretches along it where something is cut."""
    for part in shapely.get_parts(blank.difference(outline)):
        if not part.buffer(-SLIVER / 2).is_empty:
            yield float(part.bounds[1]), float(part.bounds[3])
