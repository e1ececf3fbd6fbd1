"""The faces of a shell: each a plane with its own frame, its edges, and the outline to be clad.

Whatever is laid on a face is written in that frame: u to the right and v up as seen from outside,
w outward, w = 0 on the steel line.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise
from math import cos, hypot, radians, sin

from ..description.opening import Opening
from ..description.skin import Skin
from ..place import Place, Point2, Point3, way
from .edges import Edge, is_wall
from .top_line import TopLine

WAINSCOT = "wainscot"
"""What a lower tier of other sheets is called."""

HAIR = 1e-6
"""mm; what two ways of working out one place may differ by."""


@dataclass(frozen=True, slots=True)
class Side:
    """One edge of a face, in its (u, v), the face on the left of the way from start to end.

    other: the name of the face beyond; empty at the shell's rim. rise: how much the roof at a level edge
    rises away from it in one of run, inward or down the other way (below nought at a high eave or a
    ridge). angle: between the two faces, degrees, inside. covers: at a corner, whether this wall's sheets
    run past the ends of the other's, as a gable's do. open: whether the face beyond stands open there.
    """

    kind: Edge
    start: Point2
    end: Point2
    other: str
    rise: float = 0.0
    angle: float = 90.0
    covers: bool = False
    open: bool = False

    @property
    def level(self) -> float:
        """Of a roof's edge: the cosine of its pitch, plan over slope."""
        return 1 / hypot(1.0, self.rise)

    @property
    def mitre(self) -> Point2:
        """Of a corner: the normal, (along the wall away from it, outward), of the plane that halves it."""
        half = radians(self.angle / 2)
        return (sin(half), cos(half))

    @property
    def length(self) -> float:
        """From end to end."""
        return hypot(self.end[0] - self.start[0], self.end[1] - self.start[1])

    def moved(self, outward: float) -> tuple[Point2, Point2]:
        """Both ends moved off the face, square to the edge."""
        along = way(self.start, self.end)
        off = (outward * along[1], -outward * along[0])
        return (
            (self.start[0] + off[0], self.start[1] + off[1]),
            (self.end[0] + off[0], self.end[1] + off[1]),
        )


@dataclass(frozen=True)
class Region:
    """A part of a face under sheets of one kind.

    tier: what it is called where a face has others; "" where it is all of it. skin: which sheets. clad: what
    they cover, openings and all, (n, 2) counter-clockwise in the face's (u, v).
    """

    tier: str
    skin: Skin
    clad: tuple[Point2, ...]

    @cached_property
    def span(self) -> Point2:
        """Least and greatest u."""
        along = [u for u, _ in self.clad]
        return min(along), max(along)

    @cached_property
    def foot(self) -> float:
        """Least v."""
        return min(v for _, v in self.clad)

    @cached_property
    def head(self) -> float:
        """Greatest v."""
        return max(v for _, v in self.clad)


@dataclass(frozen=True, slots=True)
class Hung:
    """Where sheets hang on a wall that is open below: heights (mm). shelf: of the drip's bend on the
    steel line; foot: where the sheets begin; row: of the screws at their feet; girt: of the centre of the
    girt behind them. flashed: whether it is the flashing of a lean-to's roof, in place of a drip."""

    shelf: float
    foot: float
    row: float
    girt: float
    flashed: bool = False


@dataclass(frozen=True, slots=True)
class Half:
    """Where sheets end on a wall that is open above: heights (mm). shelf: of their cap on the steel line;
    head: where they end; row: of the screws at their heads; girt: of the centre of the girt behind them."""

    shelf: float
    head: float
    row: float
    girt: float


Cut = tuple[float, float, float, float]
"""(left, low, right, high), u and v: a box."""


@dataclass(frozen=True)
class Face:
    """One plane that gets sheeted, or stands open.

    frame: origin at the left end of its foot. sides: its edges on the steel line, counter-clockwise, the
    foot first. skin: which sheets reach its head. regions: what covers it, from the foot up; empty where it
    is open. gaps: stretches along its foot where it is open between columns. cuts: what members that come
    through it take of its sheets. verge: whether it is the open end of a roof out over a gable.
    hung: where its sheets begin if it is open below them. half: where they end if it is open above.
    """

    name: str
    frame: Place
    skin: Skin
    sides: tuple[Side, ...]
    regions: tuple[Region, ...]
    openings: tuple[Opening, ...] = ()
    open: bool = False
    gaps: tuple[Point2, ...] = ()
    cuts: tuple[Cut, ...] = ()
    verge: bool = False
    hung: Hung | None = None
    half: Half | None = None

    @property
    def open_above(self) -> bool:
        """Whether nothing is clad under its eave or rakes."""
        return self.open or self.half is not None

    def open_at(self, hand: str) -> bool:
        """Whether nothing is clad at its left or right end, at the foot."""
        end = 0.0 if hand == "left" else self.width
        in_gap = any(low - HAIR < end < high + HAIR for low, high in self.gaps)
        return self.open or self.hung is not None or in_gap

    def bare_at(self, hand: str) -> bool:
        """Whether nothing is clad at an end, from its foot to its head."""
        return self.hung is None and self.open_at(hand)

    def gap_ends(self) -> Iterator[tuple[float, float]]:
        """u of each end of a gap between its own ends, with the way (1, -1) into what is clad beside it."""
        for low, high in self.gaps:
            if low > HAIR:
                yield low, -1.0
            if high < self.width - HAIR:
                yield high, 1.0

    @property
    def skins(self) -> tuple[Skin, ...]:
        """All its kinds of sheets, or what would cover it were it not open."""
        return (self.skin, *(region.skin for region in self.regions))

    @property
    def tiered(self) -> bool:
        """Whether its foot has sheets of their own, a wainscot."""
        return bool(self.regions) and self.regions[0].tier == WAINSCOT

    @property
    def upper(self) -> Region:
        """The uppermost of its regions, which ends at its eave, its rakes or its ridge."""
        return self.regions[-1]

    def region_at(self, v: float) -> Region:
        """The region that covers a height, or the nearest above it."""
        return next((region for region in self.regions if v < region.head), self.upper)

    @property
    def outline(self) -> tuple[Point2, ...]:
        """Its corners on the steel line."""
        return tuple(side.start for side in self.sides)

    @cached_property
    def sloped(self) -> bool:
        """Whether this is a roof slope."""
        return not is_wall(self.frame.z)

    @property
    def width(self) -> float:
        """Of the steel line along the foot."""
        return self.sides[0].length

    @cached_property
    def top(self) -> TopLine:
        """A wall's upper edges, from left to right."""
        over = [s for s in self.sides if s.kind in (Edge.EAVE, Edge.HIGH_EAVE, Edge.HEADWALL, Edge.RAKE)]
        return TopLine((*(side.end for side in reversed(over)), over[0].start))

    @property
    def raking(self) -> tuple[tuple[Point2, Point2], ...]:
        """The rakes of a wall, from its left to its right, each from its left end."""
        return tuple((side.end, side.start) for side in reversed(self.named(Edge.RAKE)))

    @property
    def raked(self) -> bool:
        """Whether a wall's upper edge is a rake anywhere: a gable."""
        return any(side.kind is Edge.RAKE for side in self.sides) and not self.sloped

    def beside(self, hand: str) -> Side:
        """The side at a face's left or right end."""
        return self.sides[-1] if hand == "left" else self.sides[1]

    def reach(self) -> Point2:
        """The least and the greatest u of its steel line."""
        return min(u for u, _ in self.outline), max(u for u, _ in self.outline)

    def end(self, hand: str, v: float, inset: float) -> tuple[Point3, Point3]:
        """A point, and the normal towards the right, of the plane on a slope's left or right edge, moved
        into the face, over a height v."""
        inward = 1.0 if hand == "left" else -1.0
        (u0, v0), (u1, v1) = self.beside(hand).moved(-inset)
        across, up = way((u0, v0), (u1, v1))
        normal = (-inward * up, inward * across, 0.0)
        return (u0 + (v - v0) * (u1 - u0) / (v1 - v0), v, 0.0), normal

    def named(self, *kinds: Edge) -> tuple[Side, ...]:
        """Its sides of some kinds."""
        return tuple(side for side in self.sides if side.kind in kinds)


def in_turn(walls: Sequence[Face]) -> list[Face]:
    """Walls counter-clockwise around a building as seen from above, from the last one listed on."""
    named = {wall.name: wall for wall in walls}
    ring = [walls[-1]]
    while len(ring) < len(walls):
        ring.append(named[ring[-1].beside("right").other])
    return ring


@dataclass(frozen=True, slots=True)
class Rake:
    """One rake of a gable: its foot (u, v), its length, and how it climbs; side is 1 to the right, -1 to the
    left. head: normal (u, v) of the plane that halves it from the next one; None where it runs out over a
    high eave. name: which it is of the gable's, "left" for one that falls to the left. slope: the name of the
    roof's face along it."""

    name: str
    slope: str
    foot: Point2
    length: float
    cos: float
    sin: float
    side: float
    head: Point2 | None


def rakes(gable: Face) -> tuple[Rake, ...]:
    """The rakes of a gable, those that climb to the right first, each from its wall's end on."""
    raking = gable.raking
    points = (raking[0][0], *(end for _, end in raking)) if raking else ()
    slopes = [side.other for side in reversed(gable.named(Edge.RAKE))]
    found: list[Rake] = []
    for hand, side, line, along in (
        ("left", 1.0, points, slopes),
        ("right", -1.0, points[::-1], slopes[::-1]),
    ):
        for number, (foot, head) in enumerate(pairwise(line)):
            if head[1] <= foot[1]:
                break
            up = way(foot, head)
            after = line[number + 2] if number + 2 < len(line) else None
            normal = None if after is None else _halving(up, way(head, after))
            name = hand if number == 0 else f"{hand} upper"
            length = hypot(head[0] - foot[0], head[1] - foot[1])
            found.append(Rake(name, along[number], foot, length, side * up[0], up[1], side, normal))
    return tuple(found)


def _halving(one: Point2, other: Point2) -> Point2:
    """Normal of the line that halves the bend between two ways, along them."""
    return way((-one[0], -one[1]), other)
