"""What the sheets of a face cover: its regions, each outline's edges moved by what meets there.

Common practice throughout, no source, unless one is named.
"""

from __future__ import annotations

from itertools import pairwise
from math import cos, radians, sin

from ..description.building import Building
from ..description.skin import Skin
from ..place import Point2
from .at_another import short_of
from .edges import Edge
from .face import HAIR, WAINSCOT, Region, Side
from .half import half_of
from .headwall import OFF_WALL, UNDER, headwall_of
from .hung import hung_of
from .lengths import fitted_slope, fitted_wall
from .pitch_break import break_at
from .skin_lines import HEAD_CLEARANCE, foot, lap_room, outermost
from .tiers import seam_of, tiered
from .top_line import crossed

OFF_WEB = 0.5
"""mm; under purlins that run on, heads stand at least so far off the J there, whose pieces lap. Ours."""


def regions_of(
    building: Building, name: str, sides: tuple[Side, ...], skin: Skin, wall: bool, gaps: tuple[Point2, ...]
) -> tuple[Region, ...]:
    """The regions of a face, from its foot up. gaps: open stretches; they stop short of one at an end."""
    outline, seam, step = _outline(building, sides, skin, wall, gaps), seam_of(building), building.sheets.step
    if not wall:
        return (Region("", skin, fitted_slope(outline, step, sides[2])),)
    hung = hung_of(building, name)
    if hung is not None and hung.foot < max(v for _, v in outline):  # else it is objected to
        return (Region("", skin, fitted_wall(_above(outline, hung.foot), step)),)
    half = half_of(building, name)
    if half is not None and half.head < max(v for _, v in outline):  # else it is objected to
        return (Region("", skin, _below(outline, half.head)),)
    found: list[Region] = []
    tops = max(v for _, v in outline)  # a seam over it is objected to
    if seam is not None and seam.foot < tops and building.wainscot is not None and tiered(building, name):
        lower = building.wainscot.skin
        found.append(Region(WAINSCOT, lower, _below(_outline(building, sides, lower, wall, gaps), seam.head)))
        outline = _above(outline, seam.foot)
    headwall = headwall_of(building, name)
    if headwall is not None and not headwall.inset and headwall.foot < max(v for _, v in outline):
        found.append(Region(UNDER, skin, fitted_wall(_below(outline, headwall.head), step)))
        outline = _above(outline, headwall.foot)
    return (*found, Region("", skin, fitted_wall(outline, step)))


def _below(outline: tuple[Point2, ...], v: float) -> tuple[Point2, ...]:
    """What of an outline lies under a height."""
    kept: list[Point2] = []
    for start, end in pairwise((*outline, outline[0])):
        if start[1] <= v:
            kept.append(start)
        if (start[1] - v) * (end[1] - v) < 0:
            kept.append(crossed((start, end), ((0.0, v), (1.0, v))))
    return tuple(kept)


def _above(outline: tuple[Point2, ...], v: float) -> tuple[Point2, ...]:
    """What of an outline lies over a height."""
    turned = _below(tuple((-u, -height) for u, height in outline), -v)
    last, *others = ((-u, -height) for u, height in (turned[-1], *turned[:-1]))
    return (last, *others)  # its foot first, from left to right


def _outline(
    building: Building, sides: tuple[Side, ...], skin: Skin, wall: bool, gaps: tuple[Point2, ...]
) -> tuple[Point2, ...]:
    """(n, 2), counter-clockwise."""
    if wall:
        lines = [side.moved(_past_wall(building, skin, side, gaps)) for side in sides]
    else:
        lines = [side.moved(_past_slope(building, side)) for side in sides]
    return tuple(crossed(lines[number - 1], line) for number, line in enumerate(lines))


def _past_wall(building: Building, skin: Skin, side: Side, gaps: tuple[Point2, ...]) -> float:
    """How far a wall's sheets run past an edge; below nought, stop short of it."""
    level = abs(side.end[0] - side.start[0]) / side.length
    match side.kind:
        case Edge.BASE:
            return -foot(building)
        case Edge.CORNER:
            for low, high in gaps:
                if low - HAIR < side.start[0] < high + HAIR:
                    return low - high
            return _overrun(building, skin, side) if side.covers and not side.open else 0.0
        case Edge.IN_LINE | Edge.INSIDE_CORNER:
            return -short_of(building, side)
        case Edge.EAVE:
            # The roof's steel plane falls outward: over the outermost point of the sheets (the crown of an
            # overlap rib) it lies that point's distance times the pitch lower than at the steel line.
            return -(outermost(building.sheets, skin) * side.rise + HEAD_CLEARANCE) * level
    short = HEAD_CLEARANCE * level
    if side.kind is Edge.RAKE and building.roof.gable_overhang:
        short = building.framing.roof_depth + max(short, lap_room(building) + OFF_WEB)
    return -short


def _past_slope(building: Building, side: Side) -> float:
    """The same of a slope's sheets. The overhang is stated in plan."""
    match side.kind:
        case Edge.EAVE | Edge.HIGH_EAVE:
            return building.sheets.overhang / side.level
        case Edge.RIDGE:
            return -building.sheets.ridge_gap
        case Edge.HEADWALL:
            return -OFF_WALL / side.level
        case Edge.BREAK | Edge.HOLLOW:
            there = break_at(building, side)
            return there.head(building.sheets.ridge_gap) if side.rise < 0.0 else -there.foot
    return 0.0


def _overrun(building: Building, skin: Skin, side: Side) -> float:
    """Past a corner a leg, measured square from the other wall to the sheets' farthest point: in an obtuse
    corner that is a crown's, else the pan's."""
    angle = radians(side.angle)
    lean = outermost(building.sheets, skin) * max(0.0, -round(cos(angle), 12))
    return (skin.profile.leg - lean) / sin(angle)
