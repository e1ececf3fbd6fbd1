"""Where a lean-to's roof ends at the main wall: heights on that wall, and what its rafters take of it.

From below: the sheets under it stop under the ledger that carries its roof sheets' heads, and its rafters
come through them to the main columns; a flashing covers those heads, and its upper leg lies behind the
sheets above, whose feet hang over its bend. Common practice throughout, no source.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from itertools import pairwise
from math import copysign, hypot, radians, tan

from ..catalog.trims import trim_profiles
from ..description.building import Building
from ..description.opening import Wall
from ..description.walls_around import around, is_gable, opposite
from ..place import Place, Point2
from .beside import beside
from .face import Cut
from .lengths import stepped_down, stepped_up
from .skin_lines import HEAD_CLEARANCE, foot, lap_room, outermost
from .sliding import rails
from .tiers import SEAM_ROW, flat_of, girts_behind, seam_girts, seam_of, tiered

OFF_WALL = 12.7
"""mm; a lean-to's sheets end this far (1/2 in) off the main steel line, or up to a step more."""

HANG = 12.7
"""mm; the feet over it hang so far (1/2 in) over the flashing's bend."""

HANG_MOST = 25.4
"""mm; and no farther (1 in), so that the flashing's leg reaches up far enough behind them. Common practice,
no source."""

NOTCH = 3.175
"""mm; round a rafter that comes through the sheets (1/8 in)."""

PAST_TRIM = 19.05
"""mm; a flashing runs so far (3/4 in) past a trim that it passes."""

BESIDE = 0.8
"""mm; between a flashing and the sheets cut around it (1/32 in). Ours."""

OFF_MIDDLE = 6.35
"""mm; a row may stand so far (1/4 in) off the middle of its girt's flat. Ours."""

UNDER = "lower"
"""What the sheets under a lean-to's roof are called."""


@dataclass(frozen=True, slots=True)
class Headwall:
    """Heights on a main wall (mm). number: of the lean-to, from 0. wall: which it stands at, and whether
    that is a gable. roof: of its steel plane at that wall's steel line, rise: what it falls in one of run
    outward. bend: of the flashing, inside. top: of its upper leg. head: where the sheets under it end; foot:
    where those over it begin. ledge: of the ledger's underside. inset: the lean-to's
    end walls that stand short of the wall's corners."""

    number: int
    wall: str
    at_gable: bool
    roof: float
    rise: float
    bend: float
    top: float
    head: float
    foot: float
    ledge: float
    inset: frozenset[str] = frozenset()

    @property
    def rows(self) -> Point2:
        """The screws of the lower sheets' heads, and of the upper ones' feet."""
        return self.head - SEAM_ROW, self.foot + SEAM_ROW

    def under(self, out: float, below: float) -> float:
        """Height, so far out from the main steel line, of the plane `below` (square) under the roof's."""
        return self.roof - out * self.rise - below * hypot(1.0, self.rise)


def headwalls(building: Building) -> Iterator[Headwall]:
    """Those of a building's lean-tos."""
    for number, lean_to in enumerate(building.lean_tos):
        yield _headwall(building, number, lean_to)


def headwall_of(building: Building, wall: str) -> Headwall | None:
    """The headwall on a wall; None where no lean-to stands at it."""
    return next((one for one in headwalls(building) if one.wall == wall), None)


def in_line_at(building: Building, walls: Iterable[str]) -> Headwall | None:
    """The headwall at the corner of two walls where a lean-to's clad end stands in line with one of them."""
    ends = {wall for wall in walls if headwall_of(building, wall) is None}
    headwall = next((one for wall in walls if (one := headwall_of(building, wall))), None)
    if headwall is None or ends & headwall.inset:
        return None
    return None if ends & building.lean_tos[headwall.number].open_walls else headwall


def _headwall(building: Building, number: int, lean_to: Building) -> Headwall:
    assert lean_to.joined is not None
    rise, wall = tan(radians(lean_to.pitch)), opposite(lean_to.joined)
    seam = seam_of(building) if tiered(building, wall) else None
    low = seam.foot if seam else foot(building)
    step, roof = building.sheets.step, lean_to.eave_height + lean_to.width * rise
    bend = roof + over_roof(lean_to) * hypot(1.0, rise)
    ledge, feet = roof - lean_to.framing.roof_depth, bend + lap_room(building) + HANG
    whole = low + stepped_up(feet - low, step)
    return Headwall(
        number=number,
        wall=wall,
        at_gable=is_gable(wall),
        roof=roof,
        rise=rise,
        bend=bend,
        top=bend + trim_profiles()["headwall"].out_of_plane,
        head=low + stepped_down(ledge - HEAD_CLEARANCE - low, step),
        foot=whole if lean_to.inset and step <= HANG and whole <= bend + HANG_MOST else feet,
        ledge=ledge,
        inset=lean_to.inset,
    )


def ends_of(building: Building, headwall: Headwall, frame: Place) -> Iterator[tuple[Wall, float, float]]:
    """A lean-to's own end walls, each with where it stands (u) in its wall's frame, and which way (1, -1) is
    away from the lean-to."""
    lean_to = building.lean_tos[headwall.number]
    place, walls = beside(building, lean_to), around(lean_to.joined)
    one, other = (frame.seen(place.point((0.0, y, 0.0)))[0] for y in (0.0, lean_to.length))
    yield walls[0], one, copysign(1.0, one - other)
    yield walls[2], other, copysign(1.0, other - one)


def span_of(building: Building, headwall: Headwall, frame: Place) -> Point2:
    """From which u to which, in its wall's frame, a lean-to stands there."""
    one, other = (u for _, u, _ in ends_of(building, headwall, frame))
    return min(one, other), max(one, other)


def past_end(lean_to: Building, end: str) -> float:
    """How far the flashing of a lean-to runs past an end of it that stands short of a corner: over its rake
    trim, outside its sheets if it is clad, and as far as past a corner trim."""
    sheets = lean_to.sheets
    crown = 0.0 if end in lean_to.open_walls else outermost(sheets, sheets.gables)
    return crown + lap_room(lean_to) + sheets.flange + PAST_TRIM


def past_ends(building: Building, headwall: Headwall, frame: Place) -> Point2:
    """From which u to which, in its wall's frame, a lean-to's flashing takes of a wall."""
    lean_to = building.lean_tos[headwall.number]
    ends = [u + away * past_end(lean_to, end) for end, u, away in ends_of(building, headwall, frame)]
    return min(ends), max(ends)


def headwall_slots(building: Building, wall: str, frame: Place) -> Iterator[Cut]:
    """What a roof takes of the sheets that run past its ends: from the heads under it to the feet over it,
    and past its ends as far as its flashing lies before them."""
    headwall = headwall_of(building, wall)
    if headwall is None or not headwall.inset:
        return
    left, right = span_of(building, headwall, frame)
    crown = max(outermost(building.sheets, skin) for skin in (building.sheets.sides, building.sheets.gables))
    under = headwall.bend - (crown + lap_room(building)) * headwall.rise - NOTCH
    low, high = past_ends(building, headwall, frame)
    yield left - NOTCH, headwall.head, right + NOTCH, headwall.foot
    yield low - BESIDE, under, high + BESIDE, headwall.foot


def over_roof(building: Building) -> float:
    """From a roof's steel plane to the inner face of what lies over its rake trims."""
    return outermost(building.sheets, building.sheets.roof) + lap_room(building)


def headwall_girts(building: Building, headwall: Headwall) -> tuple[float, ...]:
    """Heights of the girts behind the lower sheets' heads, if any, and the upper ones' feet."""
    middle, rows = flat_of(building.framing.girt)[1], headwall.rows
    return tuple(row + middle for row in (rows[1:] if headwall.wall in building.open_between else rows))


@dataclass(frozen=True, slots=True)
class EndGirts:
    """Girts behind ends of sheets between foot and eave: between which heights they stand in for others."""

    low: float
    high: float
    girts: tuple[float, ...]


def end_girts(building: Building) -> Iterator[EndGirts]:
    """Those of a building, from the lowest up: behind a seam, over sliding doors, and at its lean-tos' roofs,
    of those that end at one height once."""
    yield from sorted(_end_girts(building), key=lambda group: group.girts)


def _end_girts(building: Building) -> Iterator[EndGirts]:
    if (seam := seam_of(building)) is not None:
        yield EndGirts(seam.level, seam.level, seam_girts(building))
    for seam in {rail.seam for rail in rails(building)}:
        yield EndGirts(seam.level, seam.level, girts_behind(building.framing.girt, seam))
    found = [headwall_girts(building, one) for one in headwalls(building)]
    apart = girts_apart(building, *found)
    for girts in sorted(found if apart else [max(found, key=len)]):
        yield EndGirts(girts[0], girts[-1], girts)


def girts_apart(building: Building, *found: tuple[float, ...]) -> bool:
    """Whether the girts of lean-tos clear each other."""
    wide = building.framing.girt.width
    return all(other[0] - one[-1] > wide for one, other in pairwise(sorted(found)))


def girts_shared(*found: tuple[float, ...]) -> bool:
    """Whether the girts of one headwall hold the rows of another."""
    fewer, more = sorted(found, key=len)
    return all(min(abs(one - other) for other in more) <= OFF_MIDDLE for one in fewer)


def frame_planes(building: Building) -> tuple[float, ...]:
    """y of all frames' centre planes, front to back."""
    framing, frame = building.framing, building.frame
    inset = (framing.girt.depth if framing.girts == "by-pass" else 0.0) + frame.column.width / 2
    return (inset, *frame.stations, building.length - inset)


def rafter_spans(building: Building, wall: str, frame: Place) -> Iterator[Point2]:
    """u, in a wall's frame, from side to side of every rafter of the lean-to that stands there."""
    if (headwall := headwall_of(building, wall)) is None:
        return
    lean_to = building.lean_tos[headwall.number]
    place = beside(building, lean_to)
    for span in _rafter_spans(lean_to):
        one, other = sorted(frame.seen(place.point((0.0, y, 0.0)))[0] for y in span)
        yield one, other


def _rafter_spans(building: Building) -> Iterator[Point2]:
    """y from side to side of every frame's rafter: in an end frame flush with its column's outer face."""
    frame = building.frame
    planes, half = frame_planes(building), frame.rafter.width / 2
    past = max(0.0, half - frame.column.width / 2)
    for number, y in enumerate(planes):
        at = y + past * ((number == 0) - (number == len(planes) - 1))
        yield at - half, at + half


def rafter_band(building: Building, wall: str) -> Point2 | None:
    """Heights between which a lean-to's rafters pass from a wall's steel line to the main columns."""
    headwall = headwall_of(building, wall)
    if headwall is None or building.framing.girts != "by-pass":
        return None
    deep = building.framing.girt.depth
    top = building.framing.roof_depth
    return headwall.under(0.0, top + building.frame.rafter.depth), headwall.under(-deep, top)


def rafter_cuts(building: Building, wall: str, frame: Place) -> Iterator[Cut]:
    """What the rafters of a lean-to take of the sheets under it, from their undersides up past the heads."""
    headwall = headwall_of(building, wall)
    if headwall is None:
        return
    skins = (building.sheets.sides, building.sheets.gables)
    crown = max(outermost(building.sheets, skin) for skin in skins)
    low = headwall.under(crown, building.framing.roof_depth + building.frame.rafter.depth) - NOTCH
    for left, right in rafter_spans(building, wall, frame):
        yield left - NOTCH, low, right + NOTCH, headwall.head + 1.0
