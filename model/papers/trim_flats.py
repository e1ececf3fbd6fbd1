"""A folded trim opened out: its legs side by side, each as it is seen square to it, off its solid's faces."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from itertools import pairwise
from typing import TYPE_CHECKING

import numpy as np
import shapely

from ..measure.bends import Bends
from ..measure.end_folds import EndFold
from ..measure.faces import Vectors, flats
from ..place import Point2
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
    tabs = [_tab(fold, legs[fold.leg][0], bends.thickness) for fold in bends.folds]
    parts = [*(leg for _, leg in legs), *(area for area, _ in tabs)]
    outline = shapely.union_all([part.buffer(0.01, join_style="mitre") for part in parts])
    outline = outline.buffer(-0.01, join_style="mitre").simplify(KINK)
    left, low, right, high = outline.bounds
    folds = tuple(at - left for at, _ in legs[1:])
    creases = shapely.MultiLineString([crease for _, crease in tabs])

    here, there = (
        [steady(shapely.transform(one, how)) for one in (outline, creases)]
        for how in (lambda points: points - (left, low), lambda points: (right, high) - points)
    )
    back = tuple(right - left - at for at in reversed(folds))
    ways = (_Way(here[0], here[1], bends, folds), _Way(there[0], there[1], _turned(bends), back))
    way = min(ways, key=_order)
    blank = shapely.box(0.0, 0.0, right - left, high - low)
    across = tuple((at, 0.0) for at in way.folds)
    if blank.difference(way.outline).buffer(-SLIVER / 2).is_empty:
        return Flat(mark, blank, blank, across, (), (0.0, 0.0)), way.bends
    busy, tabs_at = tuple(_busy(way.outline, blank)), tuple(map(_ends, shapely.get_parts(way.creases)))
    return Flat(mark, way.outline, blank, across, busy, creases=tabs_at), way.bends


@dataclass(frozen=True, slots=True)
class _Way:
    """A trim opened out one way round. creases: of tabs at its ends. folds: where its legs begin across."""

    outline: shapely.Geometry
    creases: shapely.Geometry
    bends: Bends
    folds: tuple[float, ...]


def _order(way: _Way) -> tuple[object, ...]:
    return [-round(leg, 2) for leg in way.bends.legs], likeness(way.outline)


def _ends(line: shapely.LineString) -> tuple[Point2, Point2]:
    (ax, ay), (bx, by) = line.coords
    return (ax, ay), (bx, by)


def _tab(fold: EndFold, at: float, thickness: float) -> tuple[shapely.Geometry, list[Point2]]:
    """A folded end flat again, past the leg it hangs on, which begins at `at` across; and its crease."""
    left, _, right, _ = fold.shape.bounds
    foot = sorted((fold.at, fold.at - fold.end * 2 * thickness))
    root = shapely.box(at + left, foot[0], at + right, foot[1])
    flat = shapely.transform(fold.shape, lambda points: points * (1, fold.end) + (at, fold.at))
    return flat.union(root), [(at + left, fold.at), (at + right, fold.at)]


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
