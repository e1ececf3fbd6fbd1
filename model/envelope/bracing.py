"""Where braces stand: in X between two frames, one in each side wall of a braced bay and one or more up each
slope of its roof; inside the girts and under the purlins, within the depth of columns and rafters.

Placeholders for an engineer's. Clips, nuts and turnbuckles are not drawn: a brace is cut square, and its ends
stand against the steel of its frames. Common practice throughout, no source.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import ceil, cos, pi, radians, sin, sqrt, tan

from ..catalog.sections import SectionShape
from ..place import Point2
from .edges import Edge
from .face import Face
from .roof_lines import Eave
from .shell import along_foot
from .steel_lines import SteelLines

CLEAR = 6.35
"""mm; between girts or purlins and a strut or the first brace of an X, and between its two (1/4 in). Ours."""
FOOT = 152.4
"""mm; from the slab to the lowest of an X in a wall (6 in): over base plates and rails. Ours."""
BESIDE = 25.4
"""mm; from an X to the corner of a frame, its ridge, or the next X up the slope (1 in). Ours."""
OFF_WALL = 152.4
"""mm; from the heads of a lean-to's braces to the wall that it stands at (6 in). Ours."""
STEEPEST = sqrt(3)
"""Rise over run of the steepest X in a roof, 60 degrees: a slope has as few X as keep under that. Ours."""


@dataclass(frozen=True, slots=True)
class Cross:
    """One X on a face. bay: its number from the front. low, high: opposite corners (u, v) of the box that its
    braces are set in, corner to corner. depths: of the axes of its two braces below the face (mm)."""

    face: Face
    bay: int
    low: Point2
    high: Point2
    depths: Point2

    @property
    def size(self) -> Point2:
        """Across and up (mm)."""
        return self.high[0] - self.low[0], self.high[1] - self.low[1]


@dataclass(frozen=True)
class BraceLines:
    """Where the braces of a building stand. brace: their section. bays: numbers of those that have them.
    strut: of lines of struts from the first of them to the last; None where there are none."""

    steel: SteelLines
    brace: SectionShape
    bays: tuple[int, ...]
    strut: SectionShape | None = None

    @property
    def needed(self) -> float:
        """The depth that the two braces of an X take up."""
        return 2 * (CLEAR + self.brace.width)

    def crosses(self) -> Iterator[Cross]:
        """Every X, bay by bay, those of the walls first."""
        for bay in self.bays:
            for eave in self.steel.eaves.values():
                if eave.wall != self.steel.building.joined:
                    yield self._in_wall(bay, eave)
            for slope in self.steel.slopes:
                yield from self._in_slope(bay, slope)

    def wall_room(self) -> Point2:
        """How deep below a wall's steel line they may lie, least and most (mm): inside the girts, between the
        lips of columns that have any."""
        lines, framing = self.steel, self.steel.building.framing
        column, lip = lines.building.frame.column, _lip(lines.building.frame.column)
        first = max(lines.setback + lip, 0.0 if lines.setback else framing.girt.depth)
        return first, lines.setback + column.depth - lip

    def roof_room(self) -> Point2:
        """The same of a slope: under the purlins, beside the rafters."""
        lip = _lip(self.steel.building.frame.rafter)
        return self.steel.rafter_top + lip, self.steel.rafter_under - lip

    def _in_wall(self, bay: int, eave: Eave) -> Cross:
        lines, wall, (first, _) = self.steel, self.steel.named[eave.wall], self.wall_room()
        head = lines.rafter_foot(eave)
        if lines.strut_stop > first:  # the strut reaches in behind the girts
            head = min(head, lines.strut_foot(eave))
        left, right = self._between(wall, bay, lines.building.frame.column, _step(wall))
        return Cross(wall, bay, (left, FOOT), (right, head - BESIDE), self._depths(first))

    def _in_slope(self, bay: int, slope: Face) -> Iterator[Cross]:
        left, right = self.along_slope(slope, bay)
        beside = BESIDE + (self.strut.width / 2 if self.strut else 0.0)
        depths = self._depths(self.roof_room()[0])
        for low, high in pairwise(self.divided(slope)):
            yield Cross(slope, bay, (left, low + beside), (right, high - beside), depths)

    def along_slope(self, slope: Face, bay: int) -> Point2:
        """u from the left between the rafters of a bay."""
        return self._between(slope, bay, self.steel.building.frame.rafter, -_step(slope))

    def divided(self, slope: Face) -> tuple[float, ...]:
        """v of the lines that a slope's X stand between, where its struts are: as few as leave none too
        steep, those between eave and head at purlins."""
        first, last = self.roof_room()
        foot, head = self._foot(slope, first), self._head(slope, last)
        narrowest = min(right - left for left, right in (self.along_slope(slope, bay) for bay in self.bays))
        count = max(1, ceil((head - foot) / (STEEPEST * max(narrowest, BESIDE)) - 1e-9))
        even = (foot + (head - foot) * k / count for k in range(1, count))
        purlins = self.steel.purlins(slope)
        inner = dict.fromkeys(_nearest(purlins, v) for v in even if purlins)
        past = -self.strut.width / 2 if self.strut else BESIDE
        return (foot - past, *inner, head + past)

    def tied(self) -> range:
        """The bays that lines of struts run through."""
        return range(self.bays[0], self.bays[-1] + 1) if self.strut else range(0)

    def _depths(self, first: float) -> Point2:
        axis = first + CLEAR + self.brace.width / 2
        return axis, axis + self.brace.width + CLEAR

    def _between(self, face: Face, bay: int, shape: SectionShape, web: float) -> Point2:
        """u from the left between the members of a bay's two frames. web: which way along y that of an open
        member stands; from its other side a brace goes in up to the web."""
        half = shape.width / 2
        ends = []
        for number, way in ((bay - 1, 1.0), (bay, -1.0)):
            inside = shape.shape == "cee" and web != way
            ends.append(self._centre(number, shape) + way * (shape.thickness - half if inside else half))
        left, right = sorted(along_foot(face.frame, y) for y in ends)
        return left, right

    def _centre(self, frame: int, shape: SectionShape) -> float:
        """y of a member's middle: in an end frame one wider than its column is flush with that outside."""
        past = max(0.0, (shape.width - self.steel.building.frame.column.width) / 2)
        inward = {0: 1.0, len(self.steel.frames) - 1: -1.0}.get(frame, 0.0)
        return self.steel.frames[frame] + inward * past

    def _inner(self) -> float:
        """From a side wall's steel line to the inside of what stands there: columns, or a deeper strut."""
        lines = self.steel
        return max(lines.setback + lines.building.frame.column.depth, lines.strut_stop)

    def _foot(self, slope: Face, first: float) -> float:
        """v from which on there is room over an eave."""
        eave = slope.sides[0]
        return self._inner() / eave.level - first * eave.rise + BESIDE

    def _head(self, slope: Face, last: float) -> float:
        """v up to which there is room under a ridge, a high eave or a headwall."""
        foot, head = slope.sides[0], slope.sides[2]
        if head.kind is Edge.RIDGE:
            taken = last / tan(radians(head.angle / 2))
        else:
            inner = OFF_WALL if head.kind is Edge.HEADWALL else self._inner()
            taken = inner / foot.level + last * foot.rise
        return self.steel.slope_length(slope) - taken - BESIDE


def brace_lines(steel: SteelLines) -> BraceLines | None:
    """Where a building's braces stand; None where it has none."""
    bracing = steel.building.bracing
    if bracing is None:
        return None
    strut = bracing.strut if len(bracing.bays) > 1 else None
    return BraceLines(steel, bracing.brace, bracing.bays, strut)


def _lip(shape: SectionShape) -> float:
    """What the lips of an open member leave no room beside."""
    return max(shape.lip, shape.thickness + shape.radius) if shape.shape == "cee" else 0.0


def _step(face: Face) -> float:
    """1 on the left of the building, where members' sections are drawn from its front; -1 on the right."""
    return 1.0 if face.frame.z[0] < 0 else -1.0


def _nearest(places: Sequence[float], v: float) -> float:
    return min(places, key=lambda place: abs(place - v))


def ends(cross: Cross, breadth: float, *, rising: bool) -> tuple[Point2, Point2]:
    """The ends (u, v) of a brace's axis, from the left: of the one of an X that rises to the right, or of the
    other. breadth: of the brace, along the face (mm)."""
    (left, low), (right, high) = cross.low, cross.high
    turn = leaning(cross.size, breadth)
    u, v = breadth / 2 * sin(turn), breadth / 2 * cos(turn)
    if rising:
        return (left + u, low + v), (right - u, high - v)
    return (left + u, high - v), (right - u, low + v)


def leaning(box: Point2, breadth: float) -> float:
    """The angle (radians) off level at which a bar, cut square, lies in a box from corner to corner, touching
    all its sides. box: across and up, each more than the bar's breadth (mm)."""
    across, up = box
    low, high = 0.0, pi / 2
    for _ in range(60):  # halved until it is as near as numbers can be
        turn = (low + high) / 2
        past = across * sin(turn) - up * cos(turn) + breadth * cos(2 * turn)
        low, high = (turn, high) if past < 0 else (low, turn)
    return low
