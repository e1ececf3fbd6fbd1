"""Whether a lean-to fits its main wall: under the eave, clear of openings, and steel for its ends."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from math import inf

from ..catalog.trims import trim_profiles
from ..description.building import Building
from ..description.opening import Opening
from ..description.opening_checks import APART
from ..description.said_limits import at_least, at_most, exactly, over, under
from ..description.walls_around import around
from ..units import parse_length
from .end_lap_checks import length_misfits
from .headwall import (
    OFF_WALL,
    Headwall,
    girts_apart,
    girts_shared,
    headwall_girts,
    headwalls,
    past_ends,
    rafter_spans,
)
from .lean_to_bays import bay_count, in_a_row
from .opening_lines import OpeningLines
from .roof_lines import Eave
from .shell_checks import shell_misfits
from .skin_lines import HEAD_CLEARANCE, SCREW_EDGE, corner_trim, head_angle, lap_room
from .steel_checks import Objection, least_bay, steel_misfits
from .stock_checks import beyond_stock
from .tier_checks import UPPER

STRIP = parse_length("8 in")
"""mm of wall from the flashing's bend to the main eave trim: less is no strip to lay. Common practice."""
LOWEST = parse_length("4 ft")
"""mm; of a lean-to's eave, as its key has it."""
HANDS = ("left", "right")
BAYS = (("frame", "spacing"), ("frame", "bays"))
OWN = ("width", "eave_height", "pitch")
"""Keys at the top that a lean-to has of its own."""


def lean_to_misfits(lines: OpeningLines, even_bays: bool) -> Iterator[Objection]:
    """Every place where a lean-to does not go with the building that it stands at."""
    found = list(headwalls(lines.building))
    apart = [one for headwall in found for one in _not_yet(lines, headwall)]
    yield from dict.fromkeys(apart)
    if not found or apart:
        return
    yield from _at_one_height(lines, found)
    for headwall in found:
        yield from _as_a_building(lines.building, headwall, even_bays)
        yield from _under_eave(lines, headwall)
        yield from _over_seam(lines, headwall)
        yield from _across_openings(lines, headwall)
    yield from _end_jambs(lines, found)
    yield from _ledger(lines.building)


def _not_yet(lines: OpeningLines, headwall: Headwall) -> Iterator[Objection]:
    """What a lean-to cannot stand with."""
    building = lines.building
    nearest = "not yet possible with a lean-to; what comes nearest: "
    for key in ("ledge_depth", "hang"):
        if getattr(building.slab, key):
            yield ("slab", key), nearest + "0, sheets that stand on the slab"
    yield from _in_bays(lines, headwall)
    yield from _not_enclosed(building, headwall)
    if building.bracing and headwall.at_gable:
        remedy = "not yet possible with a lean-to at a gable; what comes nearest: no bracing"
        yield ("bracing", "brace"), remedy
    bays = any(wall == headwall.wall for wall, _, _ in building.open_bays)
    if headwall.wall in building.open_walls or bays:
        whole = 'open all along by [[lean_to]] between = "open"'
        yield ("walls", headwall.wall), f"clad, with a framed opening for each way through, or {whole}"


def _in_bays(lines: OpeningLines, headwall: Headwall) -> Iterator[Objection]:
    """A lean-to stands along bays side by side; where it ends short of a corner, so far, beside a clad wall
    and with an open end. An opening of its outer wall stands within it."""
    building = lines.building
    lean_to, path = building.lean_tos[headwall.number], ("lean_to", headwall.number)
    if not headwall.inset:
        if not in_a_row(lean_to):
            yield (*path, "bays"), f"bays side by side, from 1 to {bay_count(lean_to)}"
        return
    nearest = "not yet possible along some of the bays; what comes nearest: "
    if lean_to.between == "open":
        yield (*path, "between"), nearest + '"clad", with a framed opening for each way through'
    if building.wainscot is not None:
        yield ("wainscot", "height"), nearest + "no wainscot"
    wall = lines.named[headwall.wall]
    if lines.laps_of(wall):
        least = at_least(wall.upper.head - wall.upper.foot, building.units)
        yield ("sheets", "longest"), f"at least {least}: past the lean-to's end they go up in one length"
    for number, opening in enumerate(lean_to.openings):
        most = lean_to.length - APART - opening.width
        if opening.wall == headwall.wall and over(opening.from_left, most):
            yield ("opening", number, "from_left"), f"at most {at_most(most, building.units)}, in that wall"


def _not_enclosed(building: Building, headwall: Headwall) -> Iterator[Objection]:
    """What a lean-to cannot stand with whose ends are clad."""
    lean_to = building.lean_tos[headwall.number]
    ends = [wall for wall in around(lean_to.joined)[::2] if wall not in lean_to.open_walls]
    nearest = "not yet possible with a lean-to whose ends are clad; what comes nearest: "
    if not ends:
        return
    if building.wainscot is not None:
        yield ("wainscot", "height"), f'{nearest}[[lean_to]] walls = "outer", or no wainscot'
    for wall in ends:
        if wall in building.open_walls:
            yield ("walls", wall), f'{nearest}clad, or [[lean_to]] walls without "{wall}"'


def _as_a_building(main: Building, headwall: Headwall, even_bays: bool) -> Iterator[Objection]:
    """What keeps it from standing at all; what is wrong with the steel of both is said of the main one."""
    lines = OpeningLines(main.lean_tos[headwall.number])
    said = set(steel_misfits(OpeningLines(replace(main, lean_tos=())), even_bays))
    steel = (*shell_misfits(lines), *steel_misfits(lines, even_bays), *beyond_stock(lines))
    for path, remedy in (*steel, *length_misfits(lines)):
        if path[0] in OWN:
            yield ("lean_to", headwall.number, *path), remedy
        elif path in BAYS and headwall.at_gable:
            apart = f"posts, and corners, at least {at_least(least_bay(lines), main.units)} apart"
            yield ("frame", f"{headwall.wall}_posts"), f"{apart}: the lean-to's rafters stand on them"
        elif (path, remedy) not in said:
            yield path, f"{remedy}; for the lean-to"


def _room(lines: OpeningLines, headwall: Headwall) -> float:
    """How far the flashing's bend lies under the highest place that it may have."""
    building = lines.building
    girt = headwall_girts(building, headwall)[-1] + building.framing.girt.width / 2
    own = lines.eaves.get(headwall.wall)
    beside = [own] if own else [lines.over_corner(lines.named[headwall.wall], hand) for hand in HANDS]
    trim = min(_foot_of_trim(building, eave, over_gable=own is None) for eave in beside)
    return min(trim - STRIP - headwall.bend, *(lines.corner_top(eave) - girt for eave in beside))


def _foot_of_trim(building: Building, eave: Eave, over_gable: bool) -> float:
    """Height of the lower edge of an eave's trim, or of the rake trim that starts there over a gable."""
    if over_gable:
        return eave.plane(0.0, HEAD_CLEARANCE + trim_profiles()["rake"].out_of_plane)
    out = corner_trim(building) + lap_room(building)
    return eave.height - out * eave.rise - trim_profiles()["eave"].out_of_plane


def _at_one_height(lines: OpeningLines, found: Sequence[Headwall]) -> Iterator[Objection]:
    """Girts run around the building: those of two lean-tos are the same ones, or clear each other."""
    building = lines.building
    girts = [headwall_girts(building, one) for one in found]
    if len(girts) < 2 or girts_shared(*girts) or girts_apart(building, *girts):
        return
    (first, second), units, girt = found, building.units, building.framing.girt.width
    eave, step, (others, own) = _eave(building, second), building.sheets.step, girts
    above, below = eave + others[-1] - own[0] + girt + step, eave - (own[-1] - others[0]) - girt - step
    ways = [exactly(eave + first.roof - second.roof, units)] if first.rise == second.rise else []
    ways += [f"at least {at_least(above, units)}"] if above - eave <= _room(lines, second) else []
    ways += [f"at most {at_most(below, units)}"] if below >= LOWEST else []
    where = f"its roof ends at the {second.wall} wall near the height of the other one's, and not at it"
    yield ("lean_to", 1, "eave_height"), f"{' or '.join(ways) or 'as the other one'}: {where}"


def _eave(building: Building, headwall: Headwall) -> float:
    """The height of a lean-to's own eave."""
    return building.lean_tos[headwall.number].eave_height


def _under_eave(lines: OpeningLines, headwall: Headwall) -> Iterator[Objection]:
    """Over the flashing a strip of wall is left under the main eave trim, with a girt at its foot."""
    building, room = lines.building, _room(lines, headwall)
    if not under(room, 0.0):
        return
    lean_to, units = building.lean_tos[headwall.number], building.units
    trim = "rake trims" if headwall.at_gable else "eave trim"
    where = f"its flashing stays 8 in under the {headwall.wall} wall's {trim}"
    if (most := lean_to.eave_height + room) >= LOWEST:
        yield ("lean_to", headwall.number, "eave_height"), f"at most {at_most(most, units)}: {where}"
    else:
        most = lean_to.width + room / headwall.rise
        yield ("lean_to", headwall.number, "width"), f"at most {at_most(most, units)} at this pitch: {where}"


def _over_seam(lines: OpeningLines, headwall: Headwall) -> Iterator[Objection]:
    """Between a seam and the lower sheets' heads are sheets as long as above a seam at least."""
    building = lines.building
    if lines.seam is None:
        return
    room = headwall.head - lines.seam.shelf - UPPER
    if under(room, 0.0):
        least = _eave(building, headwall) - room + building.sheets.step
        yield (
            ("lean_to", headwall.number, "eave_height"),
            f"at least {at_least(least, building.units)}, to leave 2 ft of wall over the wainscot",
        )


def _across_openings(lines: OpeningLines, headwall: Headwall) -> Iterator[Objection]:
    """Openings of the main wall are wholly under the girt at the lower sheets' heads, or over the other; over
    it where the wall is open under the roof."""
    is_open = headwall.wall in lines.building.open_between
    for number, opening in enumerate(lines.building.openings):
        if opening.wall != headwall.wall or _beside_roof(lines, headwall, opening):
            continue
        up, down = _past(lines, headwall, opening)
        if not under(0.0, down) or not (is_open or under(0.0, up)):
            continue
        yield from _clad_there(lines, number) if is_open else _moved(lines, headwall, number, (up, down))


def _beside_roof(lines: OpeningLines, headwall: Headwall, opening: Opening) -> bool:
    """Whether an opening stands wholly beside the roof, clear of its flashing by a strip of sheet."""
    left, right = past_ends(lines.building, headwall, lines.named[headwall.wall].frame)
    return opening.from_left >= right + STRIP or opening.from_left + opening.width <= left - STRIP


def _clad_there(lines: OpeningLines, number: int) -> Iterator[Objection]:
    """Where an opening may be that stands where its wall is open."""
    wall = lines.building.openings[number].wall
    clad = [one.name for one in lines.walls if not one.open and one.hung is None]
    where = f"one that is clad to the slab ({', '.join(clad)})" if clad else "none"
    yield ("opening", number, "wall"), f"{where}; the {wall} wall is open under the roof of the lean-to there"


def _past(lines: OpeningLines, headwall: Headwall, opening: Opening) -> tuple[float, float]:
    """How far the roof would have to be higher to pass over an opening, and lower to pass under it, with the
    trim around it."""
    framing, trims = lines.building.framing, trim_profiles()
    girts = headwall_girts(lines.building, headwall)
    low, high = girts[0], girts[-1]
    over_head = head_angle(lines.building, opening) + trims["drip"].in_plane
    under_sill = trims["j"].in_plane + lap_room(lines.building)
    half, top = framing.girt.width / 2, opening.sill + opening.height + max(framing.header.width, over_head)
    foot = opening.sill - max(framing.sill.width, under_sill)
    return top - (low - half), max(high + half, headwall.top) - foot


def _moved(
    lines: OpeningLines, headwall: Headwall, number: int, past: tuple[float, float]
) -> Iterator[Objection]:
    building, (up, down) = lines.building, past
    units, eave = building.units, _eave(building, headwall)
    opening, step = building.openings[number], building.sheets.step
    ways = [f"at least {at_least(eave + up + step, units)}"] if up + step <= _room(lines, headwall) else []
    ways += [f"at most {at_most(eave - down, units)}"] if eave - down >= LOWEST else []
    across = f"its roof ends at the wall across the {opening.kind} there, opening[{number + 1}]"
    if ways:
        yield ("lean_to", headwall.number, "eave_height"), f"{' or '.join(ways)}: {across}"
        return
    most = opening.height - up
    lower = f"at most {at_most(most, units)}" if most > 0 else "none in this wall"
    yield ("opening", number, "height"), f"{lower}, to stay under the roof of the lean-to at this wall"


def _end_jambs(lines: OpeningLines, found: Sequence[Headwall]) -> Iterator[Objection]:
    """Where a wall ends at an open one, its upright stands beside the rafter that comes in to the column."""
    room = min((room for headwall in found for room in _beside_rafters(lines, headwall)), default=inf)
    if over(lines.building.framing.jamb.depth, room):
        beside = "it stands beside a lean-to's rafter at an open wall"
        yield ("framing", "jamb"), f"a section at most {at_most(room, lines.building.units)} deep: {beside}"


def _beside_rafters(lines: OpeningLines, headwall: Headwall) -> Iterator[float]:
    """From each end of a wall where an upright stands to the rafter next to it."""
    wall = lines.named[headwall.wall]
    spans = list(rafter_spans(lines.building, wall.name, wall.frame))
    if lines.end_jamb(wall, "left"):
        yield min(low for low, _ in spans)
    if lines.end_jamb(wall, "right"):
        yield wall.width - max(high for _, high in spans)


def _ledger(building: Building) -> Iterator[Objection]:
    """The ledger's flange, which is the eave strut's, takes a row of screws before the sheets' heads."""
    least = OFF_WALL + building.sheets.step + 2 * SCREW_EDGE + 1.0
    if over(least, building.framing.eave_strut.width):
        wide = f"a section at least {at_least(least, building.units)} wide"
        yield ("framing", "eave_strut"), f"{wide}: the lean-to's ledger has its flange"
