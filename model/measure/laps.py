"""Sheets in the planes they are laid in, and how they lap: what lies over what, how far and how close.

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
from .walls_in_line import walls_in_line

COPLANAR = 1e-6
"""How far the cosine between two planes' normals may be off 1."""
DEEP = 3.0
"""mm; sheets nearer than this to a plane, square to it, are laid in it."""
THIN = 0.05
"""mm; an overlap that vanishes when its rim is drawn in by this is none."""
IN_LINE = 1.0
"""mm by which an edge of two sheets up one column may be off; those beside each other are a cover apart."""
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

    @cached_property
    def _meeting(self) -> tuple[tuple[LaidSheet, LaidSheet, shapely.Geometry], ...]:
        """Every two sheets that lie over each other, from left to right, and where."""
        return tuple(_meeting(self.sheets))

    @cached_property
    def end_laps(self) -> tuple[EndLap, ...]:
        """Where sheets of one column lie over each other, from left to right."""
        return tuple(_end_lap(*pair) for pair in self._meeting if _in_line(*pair[:2]))

    @cached_property
    def side_laps(self) -> tuple[SideLap, ...]:
        """Every two neighbours that lie over each other, from left to right. Where four sheets meet, those
        across from each other are none."""
        beside = (pair for pair in self._meeting if not _in_line(*pair[:2]))
        return tuple(_side_lap(*pair) for pair in beside if not self._across(*pair))

    def _across(self, one: LaidSheet, other: LaidSheet, region: shapely.Geometry) -> bool:
        """Whether two sheets meet no farther up than an end lap of one of them."""
        _, low, _, high = region.bounds
        ends = (lap.region.bounds for lap in self.end_laps if {lap.upper, lap.under} & {one, other})
        return any(foot - THIN < low and high < head + THIN for _, foot, _, head in ends)

    @property
    def laps(self) -> tuple[SideLap | EndLap, ...]:
        """All of its laps."""
        return (*self.side_laps, *self.end_laps)

    @property
    def heads(self) -> tuple[LaidSheet, ...]:
        """The sheets whose heads no other covers."""
        covered = {lap.under if lap.sheds else lap.upper for lap in self.end_laps}
        return tuple(sheet for sheet in self.sheets if sheet not in covered)

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


@dataclass(frozen=True, eq=False)
class EndLap:
    """A sheet over the head of another in line with it (mm).

    region: where both are (u, v). length: up the slope. air: as of a side lap. sheds: whether the one on top
    is the higher one, so that water runs off it onto the other.
    """

    upper: LaidSheet
    under: LaidSheet
    region: shapely.Geometry
    length: float
    air: tuple[float, float]
    sheds: bool

    @property
    def developed(self) -> float:
        """Along the section of the sheets, over ribs and pans (mm): what a row of tape between them takes."""
        left, _, right, _ = self.region.bounds
        inside = self.upper.lower[:, 0]
        at = np.unique(np.concatenate([(left, right), inside[(inside > left) & (inside < right)]]))
        steps = np.diff(np.column_stack([at, _height(self.upper.lower, at)]), axis=0)
        return float(np.hypot(*steps.T).sum())


def clad_planes(model: Model) -> tuple[CladPlane, ...]:
    """The sheets of a model by the planes they lie in, in the model's order; those of walls in line apart."""
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
    whole = (_plane(frame, sheets) for frame, _, sheets in found)
    return tuple(
        replace(one, sheets=one.sheets[part])
        for one in whole
        for part in walls_in_line([sheet.outline for sheet in one.sheets])
    )


def _along(frame: Place, bench: Place) -> bool:
    """Whether a sheet's ribs run as those of a plane."""
    return abs(dot(frame.y, bench.y)) > 1 - COPLANAR


def _frame(bench: Place) -> Place:
    up = bench.y if bench.y[2] > 0 or (abs(bench.y[2]) < COPLANAR and sum(bench.y) > 0) else _back(bench.y)
    return Place((0.0, 0.0, 0.0), unit(cross(up, bench.z)), up)


def _back(way: Point3) -> Point3:
    return (-way[0], -way[1], -way[2])


def _plane(frame: Place, sheets: Sequence[tuple[Piece, Place, MeasuredSheet]]) -> CladPlane:
    """The plane that most of the sheets lie in that lie on no others, and each as it lies there."""
    whole = _plane_at(frame, _usual([dot(frame.z, bench.origin) for _, bench, _ in sheets]), sheets)
    raised = {lap.upper for lap in whole.end_laps}
    if not raised:
        return whole
    height = dot(frame.z, whole.frame.origin)
    on_steel = [height + one.off for one in whole.sheets if one not in raised]
    return _plane_at(frame, _usual(on_steel), sheets) if on_steel else whole


def _usual(heights: Sequence[float]) -> float:
    """The one of them that comes most often."""
    found = [snapped(height, 1e-3) for height in heights]
    return max(found, key=found.count)


def _plane_at(frame: Place, height: float, sheets: Sequence[tuple[Piece, Place, MeasuredSheet]]) -> CladPlane:
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


def _meeting(sheets: Sequence[LaidSheet]) -> Iterator[tuple[LaidSheet, LaidSheet, shapely.Geometry]]:
    """Every two sheets that lie over each other, from left to right, and where."""
    outlines = [sheet.outline for sheet in sheets]
    tree = shapely.STRtree(outlines)
    first, second = tree.query(outlines, predicate="intersects")
    pairs = sorted({(int(i), int(j)) for i, j in zip(first, second, strict=True) if i < j})
    for i, j in pairs:
        region = outlines[i].intersection(outlines[j])
        if not shapely.buffer(region, -THIN, join_style="mitre").is_empty:
            yield sheets[i], sheets[j], region


def _in_line(one: LaidSheet, other: LaidSheet) -> bool:
    """Whether two sheets are of one column, the one higher up it than the other."""
    (left, low, right, high), (a, foot, b, head) = one.outline.bounds, other.outline.bounds
    higher = min(foot - low, head - high) > IN_LINE or min(low - foot, high - head) > IN_LINE
    return bool(higher and min(abs(left - a), abs(right - b)) < IN_LINE)


def _end_lap(one: LaidSheet, other: LaidSheet, region: shapely.Geometry) -> EndLap:
    left, low, right, high = region.bounds
    upper, under, air = _over(one, other, _places(one, other, left, right))
    sheds = upper.outline.bounds[3] > under.outline.bounds[3]
    return EndLap(upper, under, region, high - low, air, bool(sheds))


def _over(
    one: LaidSheet, other: LaidSheet, places: Vectors
) -> tuple[LaidSheet, LaidSheet, tuple[float, float]]:
    """Which of two sheets is on top, which under it, and the least and greatest air between them."""
    first = _height(one.lower, places) - _height(other.upper, places)
    second = _height(other.lower, places) - _height(one.upper, places)
    if first.min() > second.min():
        return one, other, (float(first.min()), float(first.max()))
    return other, one, (float(second.min()), float(second.max()))


def _side_lap(one: LaidSheet, other: LaidSheet, region: shapely.Geometry) -> SideLap:
    left, low, right, high = region.bounds
    places = _places(one, other, left, right)
    upper, under, air = _over(one, other, places)
    tops = [[crown for crown in sheet.crowns if left - 1 < crown < right + 1] for sheet in (upper, under)]
    apart = tops[0][0] - tops[1][0] if tops[0] and tops[1] else None
    flank = bool(np.ptp(_height(upper.lower, places)) > THIN)
    leftward = upper.middle < under.middle
    return SideLap(upper, under, region, right - left, high - low, air, apart, flank, leftward)


def _places(one: LaidSheet, other: LaidSheet, left: float, right: float) -> Vectors:
    """u of every bend within a lap, its ends and some places between."""
    bends = np.concatenate([line[:, 0] for sheet in (one, other) for line in (sheet.lower, sheet.upper)])
    inside = bends[(bends > left) & (bends < right)]
    return np.unique(np.concatenate([inside, np.linspace(left, right, STEPS)]))


def _height(line: Vectors, at: Vectors) -> Vectors:
    """w of a section over u; its ends run on level."""
    return np.interp(at, line[:, 0], line[:, 1])
