"""A sheet while its screws are set, and what its face is screwed with."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from math import inf

import numpy as np
import shapely
from shapely.geometry import Polygon

from ...catalog.profiles import RibProfile
from ...description.building import Screws
from ...envelope.end_laps import EndLap
from ...envelope.face import Face, Region
from ...place import Point2
from ...recipe import Part, Sheet
from ..skin.cladding import Tile
from .room import Room, pans
from .screw_kinds import EDGE, PAST_EDGE, RIM
from .screw_lines import ScrewLine
from .uprights import Upright


@dataclass(frozen=True, slots=True)
class Fastening:
    """What a face's sheets are screwed with: its lines, the uprights along which they end, and where there
    is room.

    spans: from u to u of what sheets end level over and under: openings, the covers over rails. skin: what
    the face's sheets cover, in from their edges.
    """

    screws: Screws
    face: Face
    lines: Sequence[ScrewLine]
    uprights: Sequence[Upright]
    spans: Sequence[Point2]
    room: Room
    skin: shapely.Geometry

    def cut_out(self, at: Point2) -> bool:
        """Whether sheets are cut round what comes through them at a place."""
        return any(low <= at[0] <= high and foot <= at[1] <= head for low, foot, high, head in self.face.cuts)


@dataclass(frozen=True, slots=True)
class Missed:
    """A screw that the pattern asks for and that would find no steel: on a sheet, at (u, v) of a face."""

    sheet: str
    face: str
    at: Point2


@dataclass(slots=True)
class ScrewedSheet:
    """A sheet while its screws are set: the region it is of, the lap of its foot on another sheet, from which
    height on another lies over it, its pans, where heads have room on its face, its outline there, and
    the screws so far."""

    part: Part
    region: Region
    lap: EndLap | None
    covered: float
    sign: float
    origin: Point2
    pans: shapely.Geometry
    heads: shapely.Geometry
    inside: shapely.Geometry
    spots: list[Point2] = field(default_factory=list)

    def has_room(self, at: Point2) -> bool:
        """Whether a screw may stand at a place (u, v)."""
        return bool(shapely.intersects_xy(self.pans, *at) and shapely.intersects_xy(self.heads, *at))

    def flats(self, where: shapely.Geometry) -> shapely.Geometry:
        """Where in a region screws may stand."""
        return self.pans.intersection(where).intersection(self.heads)

    @property
    def profile(self) -> RibProfile:
        """Of its ribs."""
        return self.region.skin.profile

    def u(self, bench: float) -> float:
        """u on the face of a u on the bench."""
        return self.origin[0] + self.sign * bench


def unscrewed(plan: Fastening, tile: Tile, part: Part) -> ScrewedSheet:
    """A sheet as it lies on its face, without screws."""
    assert isinstance(part.recipe, Sheet)
    u, v, _ = plan.face.frame.seen(part.place.origin)
    sign = 1.0 if sum(a * b for a, b in zip(part.place.x, plan.face.frame.x, strict=True)) > 0 else -1.0
    outline = Polygon(part.recipe.outline, part.recipe.holes).buffer(-EDGE, join_style="mitre")
    inside = shapely.transform(outline, lambda points: np.array([u, v]) + sign * points)
    flats, covered = pans(plan.face, part, RIM), inf
    if tile.course.above:
        covered = tile.course.above.foot
        flats = flats.intersection(shapely.box(-1e6, -1e6, 1e6, covered - RIM))
    if tile.course.below:
        head = tile.course.below.head  # of the sheet under it
        flats = flats.difference(shapely.box(-1e6, head - EDGE, 1e6, head + PAST_EDGE))
    shapely.prepare(flats)
    lap = tile.course.below
    return ScrewedSheet(part, tile.region, lap, covered, sign, (u, v), flats, plan.room.heads, inside)


def put(plan: Fastening, sheet: ScrewedSheet, spot: Point2 | None) -> bool:
    """Sets a screw; False where there is no place for one."""
    if spot is None:
        return False
    sheet.spots.append(spot)
    plan.room.taken.add(spot)
    return True
