"""Sheets in the planes they are laid in, and their side laps: what lies over what, how far and how close.

Measured off the solids of a model once; tape is counted and the audit judges from the same values.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from functools import cached_property

import numpy as np
import shapely
from shapely.geometry import Polygon

from ..pieces import Model, Piece
from ..place import Place, Point3, add, cross, dot, unit
from ..roles import list_of
from .faces import Vectors
from .section import Graph
from .sheet import MeasuredSheet, measure_sheet
from .snap import snapped

COPLANAR = 1e-6
"""How far the cosine between two planes' normals may be off 1."""
DEEP = 3.0
"""mm; sheets nearer than this to a plane, square to it, are laid in it."""
THIN = 0.05
"""mm; an overlap that vanishes when its rim is drawn in by this is none."""
STEPS = 7
"""Places across a lap at which the air in it is measured, besides every bend."""


@dataclass(frozen=True, eq=False)
class LaidSheet:
    """A sheet in its plane. outline: (u, v); lower, upper: its section, (u, w), from left to right, w from
    the underside of its pan; off: how far that stands out of the plane. All mm."""

    piece: Piece
    measured: MeasuredSheet
    outline: Polygon
    lower: Vectors
    upper: Vectors
    off: float
    crowns: tuple[float, ...]

    @cached_property
    def middle(self) -> float:
        """u halfway across it."""
        left, _, right, _ = self.outline.bounds
        return float(left + right) / 2


@dataclass(frozen=True, eq=False)
class CladPlane:
    """Sheets laid in one plane.

    frame: v along their ribs, upward; u to the right of someone outside; w outward, 0 at the underside of
    the pans. Its origin is the building's origin dropped onto the plane, so that u and v are the same
    for planes that share their axes. sheets: from left to right, lowest first.
    """

    frame: Place
    sheets: tuple[LaidSheet, ...]

    @property
    def name(self) -> str:
        """For people: the face most of its sheets say they are on, else a direction."""
        said = [sheet.piece.label("face") for sheet in self.sheets]
        return max(said, key=said.count) or " ".join(f"{value:.2f}" for value in self.frame.z)

    @property
    def sloped(self) -> bool:
        """Whether rain falls on it."""
        return self.frame.z[2] > 0.01

    @cached_property
    def outline(self) -> shapely.Geometry:
        """What its sheets cover together (u, v)."""
        return shapely.union_all([sheet.outline for sheet in self.sheets])

    def point(self, u: float, v: float) -> Point3:
        """A point of the plane in the building."""
        return self.frame.point((u, v, 0.0))


@dataclass(frozen=True, eq=False)
class SideLap:
    """Two neighbours, one over the other along their ribs (mm).

    region: where both are (u, v). width: across. air: least and greatest gap between the upper one's
    underside and the lower one's top, negative where they are inside each other. ribs: how far apart
    their lap ribs' middles stand, None where either shows none there. flank: whether a rib's side lies
    in the lap at all. leftward: whether the upper sheet is the left one of the two, seen from outside.
    """

    upper: LaidSheet
    under: LaidSheet
    region: shapely.Geometry
    width: float
    length: float
    air: tuple[float, float]
    ribs: float | None
    flank: bool
    leftward: bool


def clad_planes(model: Model) -> tuple[CladPlane, ...]:
    """The sheets of a model by the planes they lie in, in the model's order."""
    found: list[tuple[Place, float, list[tuple[Piece, Place, MeasuredSheet]]]] = []
    for piece in model.pieces:
        if list_of(piece.role) != "sheets":
            continue
        measured = measure_sheet(piece.solid)
        bench = piece.place @ measured.bench
        height = dot(bench.z, bench.origin)
        for frame, offset, sheets in found:
            if dot(frame.z, bench.z) > 1 - COPLANAR and abs(offset - height) < DEEP and _along(frame, bench):
                sheets.append((piece, bench, measured))
                break
        else:
            found.append((_frame(bench), height, [(piece, bench, measured)]))
    return tuple(_plane(frame, sheets) for frame, _, sheets in found)


def _along(frame: Place, bench: Place) -> bool:
    """Whether a sheet's ribs run as those of a plane."""
    return abs(dot(frame.y, bench.y)) > 1 - COPLANAR


def _frame(bench: Place) -> Place:
    up = bench.y if bench.y[2] > 0 or (abs(bench.y[2]) < COPLANAR and sum(bench.y) > 0) else _back(bench.y)
    return Place((0.0, 0.0, 0.0), unit(cross(up, bench.z)), up)


def _back(way: Point3) -> Point3:
    return (-way[0], -way[1], -way[2])


def _plane(frame: Place, sheets: Sequence[tuple[Piece, Place, MeasuredSheet]]) -> CladPlane:
    """The plane that most of the sheets lie in, and each as it lies there."""
    heights = [snapped(dot(frame.z, bench.origin), 1e-3) for _, bench, _ in sheets]
    height = max(heights, key=heights.count)
    at = replace(frame, origin=add((0.0, 0.0, 0.0), frame.z, height))
    laid = [_laid(at, piece, bench, measured) for piece, bench, measured in sheets]
    laid.sort(key=lambda one: (round(one.outline.bounds[0], 3), round(one.outline.bounds[1], 3)))
    return CladPlane(at, tuple(laid))


def _laid(frame: Place, piece: Piece, bench: Place, measured: MeasuredSheet) -> LaidSheet:
    way = 1.0 if dot(frame.x, bench.x) > 0 else -1.0
    start = add(bench.origin, frame.origin, -1.0)
    u, v, w = dot(frame.x, start), dot(frame.y, start), dot(frame.z, start)
    first = measured.ways[0]
    return LaidSheet(
        piece,
        measured,
        shapely.transform(first.outline, lambda points: points * way + (u, v)),
        _turned(first.lower, way, u, w),
        _turned(first.upper, way, u, w),
        w,
        tuple(sorted(u + way * rib.centre for rib in measured.majors)),
    )


def _turned(line: Graph, way: float, u: float, w: float) -> Vectors:
    points = np.array(line) * (way, 1.0) + (u, w)
    return points if way > 0 else points[::-1]


def side_laps(plane: CladPlane) -> Iterator[SideLap]:
    """Every pair of sheets of a plane that lie over each other, from left to right."""
    outlines = [sheet.outline for sheet in plane.sheets]
    tree = shapely.STRtree(outlines)
    first, second = tree.query(outlines, predicate="intersects")
    pairs = sorted({(int(i), int(j)) for i, j in zip(first, second, strict=True) if i < j})
    for i, j in pairs:
        region = outlines[i].intersection(outlines[j])
        if not shapely.buffer(region, -THIN, join_style="mitre").is_empty:
            yield _lap(plane.sheets[i], plane.sheets[j], region)


def _lap(one: LaidSheet, other: LaidSheet, region: shapely.Geometry) -> SideLap:
    left, low, right, high = region.bounds
    places = _places(one, other, left, right)
    over = {
        True: _height(one.lower, places) - _height(other.upper, places),
        False: _height(other.lower, places) - _height(one.upper, places),
    }
    first_over = bool(over[True].min() > over[False].min())
    upper, under = (one, other) if first_over else (other, one)
    tops = [[crown for crown in sheet.crowns if left - 1 < crown < right + 1] for sheet in (upper, under)]
    apart = tops[0][0] - tops[1][0] if tops[0] and tops[1] else None
    surface = _height(upper.lower, places)
    air = over[first_over]
    return SideLap(
        upper,
        under,
        region,
        right - left,
        high - low,
        (float(air.min()), float(air.max())),
        apart,
        bool(np.ptp(surface) > THIN),
        upper.middle < under.middle,
    )


def _places(one: LaidSheet, other: LaidSheet, left: float, right: float) -> Vectors:
    """u of every bend within a lap, its ends and some places between."""
    bends = np.concatenate([line[:, 0] for sheet in (one, other) for line in (sheet.lower, sheet.upper)])
    inside = bends[(bends > left) & (bends < right)]
    return np.unique(np.concatenate([inside, np.linspace(left, right, STEPS)]))


def _height(line: Vectors, at: Vectors) -> Vectors:
    """w of a section over u; its ends run on level."""
    return np.interp(at, line[:, 0], line[:, 1])
