"""A folded trim opened out: its legs side by side, each as it is seen square to it, off its solid's faces."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from itertools import pairwise
from typing import TYPE_CHECKING

import numpy as np
import shapely

from ..measure.bends import Bends
from ..measure.faces import Vectors, flats
from .flat import Flat, likeness, steady

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


def trim_flat(mark: str, solid: TopoDS_Solid, bends: Bends) -> tuple[Flat, Bends]:
    """A trim opened out (mm): u from the free edge of its first leg, v along it; bends are its folds. And
    its bends, read from the same leg: the longest at an end, else by what is cut, so that a solid is drawn
    one way whatever file it is from."""
    legs = list(_legs(solid, bends))
    outline = shapely.union_all([leg.buffer(0.01, join_style="mitre") for _, leg in legs])
    outline = outline.buffer(-0.01, join_style="mitre").simplify(KINK)
    left, low, right, high = outline.bounds
    folds = tuple(at - left for at, _ in legs[1:])
    here = (steady(shapely.transform(outline, lambda points: points - (left, low))), bends, folds)
    ends = (right, high)
    there = (
        steady(shapely.transform(outline, lambda points: ends - points)),
        _turned(bends),
        tuple(right - left - at for at in reversed(folds)),
    )
    area, read, across = min(here, there, key=_order)
    blank = shapely.box(0.0, 0.0, right - left, high - low)
    bent = tuple((at, 0.0) for at in across)
    if blank.difference(area).buffer(-SLIVER / 2).is_empty:
        return Flat(mark, blank, blank, bent, (), (0.0, 0.0)), read
    return Flat(mark, area, blank, bent, tuple(_busy(area, blank))), read


def _order(way: tuple[shapely.Geometry, Bends, tuple[float, ...]]) -> tuple[object, ...]:
    return [-round(leg, 2) for leg in way[1].legs], likeness(way[0])


def _turned(bends: Bends) -> Bends:
    """The same bends read from the other edge, end for end."""
    line = tuple((-x, z) for x, z in reversed(bends.line))
    return replace(bends, legs=bends.legs[::-1], turns=bends.turns[::-1], line=line)


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
    waste = blank.difference(outline).buffer(-SLIVER / 2)
    for part in shapely.get_parts(waste):
        if not part.is_empty:
            yield float(part.bounds[1]) - SLIVER, float(part.bounds[3]) + SLIVER
