"""Whether skin, openings and posts fit the steel: checks that need the steel's own numbers."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise
from math import inf

from ..description.building import Building
from ..description.opening import Opening
from ..description.opening_checks import APART
from ..description.said_limits import at_least, at_most, exactly, over, under
from .at_another import under_inside_corners
from .bracing_checks import bracing_misfits
from .end_lap_checks import length_misfits
from .face import Face
from .half_checks import half_misfits
from .headwall import headwall_of, rafter_band, rafter_spans
from .headwall_checks import lean_to_misfits
from .hung_checks import hung_misfits
from .light_sheets import light_misfits
from .opening_lines import OpeningLines
from .openings_apart import crowded
from .ridge_vents import vent_misfits
from .run_on import run_on_misfits
from .shell_checks import roof_misfits, shell_misfits
from .skin_lines import (
    DRIP_PAST,
    PAST_BEND,
    SCREW_EDGE,
    corner_trim,
    eave_trim,
    head_angle,
    lap_room,
    over_shelf,
)
from .sliding_checks import sliding_misfits
from .steel_checks import Objection, steel_misfits
from .stock_checks import beyond_stock, short_of_girts
from .tier_checks import tier_misfits

HANDS = ("left", "right")
INTO = (25.4, 50.8)
"""mm; how far into a gutter a roof ends, past its back (1 to 2 in). Common practice, no source."""

Way = tuple[float, float, float, str]
"""(low, high, room, what): something that stands along a wall, and the room that an opening keeps to it
for its jambs."""


def misfits(building: Building, even_bays: bool) -> Iterator[Objection]:
    """Every place where the description and its steel do not go together, with what would do.

    even_bays: whether the bays came of a spacing.
    """
    roof = list(roof_misfits(building))
    yield from roof
    if roof:
        return
    lines = OpeningLines(building)
    shell = list(shell_misfits(lines))
    yield from shell
    if shell:
        return
    lean_tos = [OpeningLines(one) for one in building.lean_tos]
    sliding = [one for part in (lines, *lean_tos) for one in sliding_misfits(part)]
    yield from sliding
    if sliding:
        return
    yield from _skin(building)
    steel = list(steel_misfits(lines, even_bays))
    yield from steel
    if any(path in (("eave_height",), ("width",)) for path, _ in steel):
        return
    yield from length_misfits(lines)
    yield from light_misfits(lines)
    yield from vent_misfits(lines)
    yield from _posts(lines)
    yield from _end_jambs(lines)
    yield from _openings(lines)
    yield from run_on_misfits(lines)
    yield from half_misfits(lines)
    yield from hung_misfits(lines)
    yield from tier_misfits(lines)
    yield from beyond_stock(lines)
    beside = list(lean_to_misfits(lines, even_bays))
    yield from beside
    braced = [lines, *(lean_tos if not beside else [])]
    for one in braced[1:]:
        yield from _openings(one)
        yield from light_misfits(one)
    yield from dict.fromkeys(objection for one in braced for objection in bracing_misfits(one))
    yield from _header(building)
    for one in braced:
        yield from crowded(one)
    yield from dict.fromkeys(objection for one in braced for objection in short_of_girts(one))


def _openings(lines: OpeningLines) -> Iterator[Objection]:
    """What stands in the way of those in a building's own walls."""
    for number, opening in enumerate(lines.building.openings):
        if opening.wall in lines.named:
            yield from _beside_uprights(lines, number, opening)
            yield from _under_lines(lines, number, opening)


def _skin(building: Building) -> Iterator[Objection]:
    """Sheets reach past the trims that lie under them, and stand clear of those beside them."""
    sheets, slab, units = building.sheets, building.slab, building.units
    if under(sheets.overhang, least := eave_trim(building)):
        yield ("sheets", "overhang"), f"at least {at_least(least, units)}, to reach past the eave trim"
    low, high = (least + into for into in INTO)
    if building.trim.gutters and (under(sheets.overhang, low) or over(sheets.overhang, high)):
        remedy = (
            f"from {at_least(low, units)} to {at_most(high, units)}: the roof ends 1 to 2 in into the gutter"
        )
        yield ("sheets", "overhang"), remedy
    least = corner_trim(building) + lap_room(building)
    if slab.ledge_depth and under(slab.ledge_width, least):
        yield ("slab", "ledge_width"), f"at least {at_least(least, units)}: corner trim stands on the ledge"


def _end_jambs(lines: OpeningLines) -> Iterator[Objection]:
    """Where a wall ends at an open one, an upright stands before the corner's column."""
    jamb, units = lines.building.framing.jamb, lines.building.units
    ends = any(lines.end_jamb(wall, hand) for wall in lines.walls for hand in HANDS)
    ends = ends or any(wall.gaps and lines.setback for wall in lines.walls)
    if ends and over(jamb.width, lines.setback):
        before = f"at most {at_most(lines.setback, units)} wide: it stands before a column at an open wall"
        yield ("framing", "jamb"), f"a section {before}"


def _posts(lines: OpeningLines) -> Iterator[Objection]:
    """Posts stand between the knees of the end frames, clear of each other."""
    frame, units = lines.building.frame, lines.building.units
    half = frame.post.width / 2 + frame.plate_reach
    least = lines.post_room
    for wall in lines.walls:
        key, posts, most = f"{wall.name}_posts", lines.wanted_posts(wall), wall.width - least
        if any(under(u, least) or over(u, most) for u in posts):
            room = f"posts between {at_least(least, units)} and {at_most(most, units)}"
            where = room if most >= least else '"none" on a gable this narrow'
            yield ("frame", key), f"{where}, clear of columns and knees"
        if any(under(b - a, 2 * half) for a, b in pairwise(posts)):
            yield ("frame", key), f"posts at least {at_least(2 * half, units)} apart"


def _ways(lines: OpeningLines, opening: Opening) -> Iterator[Way]:
    """All that stands along a wall, as deep in it as an opening's own steel and leaf."""
    framing, frame, wall = lines.building.framing, lines.building.frame, lines.named[opening.wall]
    gable = wall.name not in lines.eaves
    deep, leaf = lines.reaches_frames(framing.jamb.depth), lines.reaches_frames(lines.leaf_back(opening.kind))
    jamb = framing.jamb.width
    room = jamb if deep else 0.0
    foot, top = lines.jamb_reach(opening)
    on_plates = (deep or leaf) and lines.setback > 0 and under(foot, frame.plate_thickness)
    for low, high, before, after in lines.footprints(wall):
        yield low - before * on_plates, high + after * on_plates, room, "column"
    yield from ((low, high, jamb, "open bay") for low, high in lines.gap_spans(wall))
    band = rafter_band(lines.building, wall.name)
    if band and foot < band[1] and (top is None or top > band[0]):
        spans = rafter_spans(lines.building, wall.name, wall.frame)
        yield from ((left, right, jamb, "lean-to's rafter") for left, right in spans)
    if (headwall := headwall_of(lines.building, wall.name)) is None or foot < headwall.roof:
        past = DRIP_PAST + lap_room(lines.building)
        taken = under_inside_corners(lines.building, wall)
        yield from ((low, high, past, "inside corner trim") for low, high in taken)
    if gable:
        head = opening.sill + opening.height
        yield from _knees(lines, wall, (top or inf, lines.opening_depth(opening)), room)
        yield from _knees(lines, wall, (head, lines.leaf_back(opening.kind)), 0.0)
        if not lines.setback and opening.sill == 0:
            plate = frame.column.depth + 2 * frame.plate_reach
            yield from _at_ends(wall, (plate, plate), jamb, "base plate")
    elif deep or leaf:
        yield from ((low, high, room, "rafter") for low, high in lines.rafters(wall))
    if not gable and frame.knee and lines.leaf_back(opening.kind) > lines.setback + frame.column.depth:
        half = frame.knee.width
        yield from ((y - half, y + half, 0.0, "knee") for y, _ in lines.uprights(wall))
    corners = []
    for hand in HANDS:
        eave = lines.eave_beside(wall, hand)
        beside_strut = eave is not None and (top is None or top > lines.strut_foot(eave))
        end = framing.jamb.depth if lines.end_jamb(wall, hand) else 0.0
        end += min(lines.steel_end(wall, hand), wall.width - lines.steel_end(wall, hand))
        corners.append(max(lines.setback, lines.strut_stop * beside_strut, end))
    yield from _at_ends(wall, (corners[0], corners[1]), jamb, "other wall's steel")


def _knees(lines: OpeningLines, wall: Face, reach: tuple[float, float], room: float) -> Iterator[Way]:
    """What the end frame's knees take of a gable below a height, for a member of a depth."""
    left, right = (lines.knee_reach(wall, hand, *reach) for hand in HANDS)
    yield from _at_ends(wall, (left, right), room, "knee")


def _at_ends(wall: Face, reach: tuple[float, float], room: float, what: str) -> Iterator[Way]:
    left, right = reach
    if left:
        yield 0.0, left, room, what
    if right:
        yield wall.width - right, wall.width, room, what


def _beside_uprights(lines: OpeningLines, number: int, opening: Opening) -> Iterator[Objection]:
    """No column stands in an opening, nor its jambs in a corner."""
    units = lines.building.units
    wall = lines.named[opening.wall].width
    ways = list(_ways(lines, opening))
    for way in ways:
        if not _barred(way, opening.from_left, opening.width):
            continue
        starts = sorted({APART, *(high + room for _, high, room, _ in ways)})
        ends = [wall - APART, *(low - room for low, _, room, _ in ways)]
        spots = [
            u for u in (*starts, *(e - opening.width for e in ends)) if _free(u, opening.width, wall, ways)
        ]
        before = max((u for u in spots if u < opening.from_left), default=None)
        after = min((u for u in spots if u > opening.from_left), default=None)
        places = [] if before is None else [f"at most {at_most(before, units)}"]
        places += [] if after is None else [f"at least {at_least(after, units)}"]
        clear = f"clear of the {way[3]} from {exactly(way[0], units)} to {exactly(way[1], units)}"
        if places:
            yield ("opening", number, "from_left"), f"an opening {clear}: {' or '.join(places)}"
        else:
            gaps = [
                min((e for e in ends if e > u), default=u) - u for u in starts if _free(u, 0.0, wall, ways)
            ]
            widest = max(gaps, default=0.0)
            yield ("opening", number, "width"), f"at most {at_most(widest, units)}, {clear}"
        return


def _barred(way: Way, start: float, width: float) -> bool:
    low, high, room, _ = way
    return under(start - room, high) and over(start + width + room, low)


def _free(start: float, width: float, wall: float, ways: list[Way]) -> bool:
    inside = not under(start, APART) and not over(start + width, wall - APART)
    return inside and not any(_barred(way, start, width) for way in ways)


def _under_lines(lines: OpeningLines, number: int, opening: Opening) -> Iterator[Objection]:
    """Header and sill fit under strut or rake and over the base rail."""
    framing, units, wall = lines.building.framing, lines.building.units, lines.named[opening.wall]
    part = "header"
    if eave := lines.eaves.get(wall.name):
        roof = lines.strut_foot(eave)
        what = "eave strut"
    else:
        limit = wall.top.lowered(lines.rake_limit(lines.opening_depth(opening)))
        roof = min(limit.height(u) for u in lines.jamb_span(opening))
        what = "rake angle"
        rafter = wall.top.lowered(lines.rafter_under)
        under_rafter = min(rafter.height(u) for u in lines.jamb_span(opening))
        if lines.reaches_frames(lines.leaf_back(opening.kind)) and under_rafter + framing.header.width < roof:
            roof, part, what = under_rafter + framing.header.width, "leaf", "rafter"
    most = roof - framing.header.width - opening.sill
    if over(opening.height, most):
        remedy = f"at most {at_most(most, units)}: its {part} must pass under the {what}"
        yield ("opening", number, "height"), remedy
    least = framing.base_rail.depth + framing.sill.width
    if opening.sill > 0 and under(opening.sill, least):
        yield (
            ("opening", number, "sill"),
            f"0, or at least {at_least(least, units)}: its sill stands on the base rail",
        )


def _header(building: Building) -> Iterator[Objection]:
    """Over an opening's drip, and an overhead door's head angle, a header has room for the screws of the
    sheets above."""
    over_door = max((head_angle(building, opening) for opening in building.openings), default=0.0)
    bend = max(radius for _, _, radius in building.framing.header.section().outer)
    least = over_door + over_shelf(building) + SCREW_EDGE + max(SCREW_EDGE, bend + PAST_BEND)
    if building.openings and under(building.framing.header.width, least):
        wide = f"a section at least {at_least(least, building.units)} wide"
        yield (
            ("framing", "header"),
            f"{wide}: the sheets over an opening are screwed to it above its trim",
        )
