"""The planes that sheets are laid in, and which sheets lap in each.

Measured off the solids of a model once; tape is counted and the audit judges from the same values.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from functools import cached_property
from math import inf

import shapely

from ..pieces import Model, Piece
from ..place import Place, Point3, add, cross, dot, unit
from ..roles import list_of
from .laid_sheets import LaidSheet, laid
from .laps import THIN, EndLap, SideLap, end_lap, in_line, meeting, side_lap
from .sheet import MeasuredSheet, measure_sheet
from .snap import snapped
from .walls_in_line import walls_in_line

COPLANAR = 1e-6
"""How far the cosine between two planes' normals may be off 1."""
DEEP = 3.0
"""mm; sheets nearer than this to a plane, square to it, are laid in it."""
Lying = tuple[Piece, Place, MeasuredSheet]
"""A sheet, and where the frame lies that it is measured in."""


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
        return tuple(meeting(self.sheets))

    @cached_property
    def end_laps(self) -> tuple[EndLap, ...]:
        """Where sheets of one column lie over each other, from left to right."""
        return tuple(end_lap(*pair) for pair in self._meeting if in_line(*pair[:2]))

    @cached_property
    def side_laps(self) -> tuple[SideLap, ...]:
        """Every two neighbours that lie over each other, from left to right. Where four sheets meet, those
        across from each other are none."""
        beside = (pair for pair in self._meeting if not in_line(*pair[:2]))
        return tuple(side_lap(*pair) for pair in beside if not self._across(*pair))

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


def clad_planes(model: Model) -> tuple[CladPlane, ...]:
    """The sheets of a model by the planes they lie in, in the model's order; those of walls in line apart."""
    found: list[tuple[Place, float, list[Lying]]] = []
    for one in sorted(_lying(model), key=lambda one: not one[2].pan):  # strips without a pan join the others
        _, bench, measured = one
        height = dot(bench.z, bench.origin)
        near = [
            (abs(offset - height), number)
            for number, (frame, offset, _) in enumerate(found)
            if dot(frame.z, bench.z) > 1 - COPLANAR and _along(frame, bench)
        ]
        off, nearest = min(near, default=(inf, 0))
        if off < _deep(measured):
            found[nearest][2].append(one)
        else:
            found.append((_frame(bench), height, [one]))
    whole = (_plane(frame, sheets) for frame, _, sheets in found)
    return tuple(
        replace(one, sheets=one.sheets[part])
        for one in whole
        for part in walls_in_line([sheet.outline for sheet in one.sheets])
    )


def _lying(model: Model) -> Iterator[Lying]:
    """Every sheet with the frame in the building that it is measured in."""
    for piece in model.pieces:
        if list_of(piece.role) == "sheets":
            measured = measure_sheet(piece.solid)
            yield piece, piece.place @ measured.bench, measured


def _deep(measured: MeasuredSheet) -> float:
    """mm; a sheet nearer than this to a plane is laid in it. Of one that shows no pan, cut in the flanks of a
    rib, the lowest place is anywhere in the rib."""
    lower = [w for _, w in measured.ways[0].lower]
    return DEEP if measured.pan else DEEP + max(lower) - min(lower)


def _along(frame: Place, bench: Place) -> bool:
    """Whether a sheet's ribs run as those of a plane."""
    return abs(dot(frame.y, bench.y)) > 1 - COPLANAR


def _frame(bench: Place) -> Place:
    up = bench.y if bench.y[2] > 0 or (abs(bench.y[2]) < COPLANAR and sum(bench.y) > 0) else _back(bench.y)
    return Place((0.0, 0.0, 0.0), unit(cross(up, bench.z)), up)


def _back(way: Point3) -> Point3:
    return (-way[0], -way[1], -way[2])


def _plane(frame: Place, sheets: Sequence[Lying]) -> CladPlane:
    """The plane that most of the sheets lie in that lie on no others, and each as it lies there."""
    pans = [one for one in sheets if one[2].pan] or sheets
    whole = _plane_at(frame, _usual([dot(frame.z, bench.origin) for _, bench, _ in pans]), sheets)
    raised = {lap.upper for lap in whole.end_laps}
    if not raised:
        return whole
    height = dot(frame.z, whole.frame.origin)
    on_steel = [height + one.off for one in whole.sheets if one.measured.pan and one not in raised]
    return _plane_at(frame, _usual(on_steel), sheets) if on_steel else whole


def _usual(heights: Sequence[float]) -> float:
    """The one of them that comes most often."""
    found = [snapped(height, 1e-3) for height in heights]
    return max(found, key=found.count)


def _plane_at(frame: Place, height: float, sheets: Sequence[Lying]) -> CladPlane:
    at = replace(frame, origin=add((0.0, 0.0, 0.0), frame.z, height))
    found = [laid(at, piece, bench, measured) for piece, bench, measured in sheets]
    found.sort(key=lambda one: (round(one.outline.bounds[0], 3), round(one.outline.bounds[1], 3)))
    return CladPlane(at, tuple(found))
