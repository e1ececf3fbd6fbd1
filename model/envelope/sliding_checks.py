"""Whether sliding doors go with what is about them: free wall where the leaf goes, room over the rail."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations

from ..description.opening import SLIDING, Opening
from ..description.opening_checks import CORNER
from ..description.said_limits import at_least, at_most, exactly, over, under
from ..place import Point2
from .face import Face
from .headwall import headwall_girts, headwall_of, headwalls
from .opening_lines import OpeningLines
from .sliding import COVER_PAST, OVERLAP, Rail, rails_of
from .steel_checks import Objection
from .tiers import rows_off

OVER_COVER = 152.4
"""mm; from the feet over a rail to the sill of an opening above it (6 in), and to the eave. Ours."""


def sliding_misfits(lines: OpeningLines) -> Iterator[Objection]:
    """Every place where a sliding door does not go with its wall."""
    building = lines.building
    for wall in lines.walls:
        for rail in rails_of(building, wall.name) if wall.name in lines.named else ():
            number = building.openings.index(rail.opening)
            yield from _free(lines, wall, rail, number)
            yield from _under_eave(lines, rail, number)
            yield from _over_others(lines, wall, rail, number)
            if over(rows_off(building.framing.girt, rail.seam), 0.0):
                wide = "the two rows of screws over a sliding door stand in it, or in two"
                yield ("framing", "girt"), f"a section with a wider flange: {wide}"
    yield from _apart(lines)


def _free(lines: OpeningLines, wall: Face, rail: Rail, number: int) -> Iterator[Objection]:
    """Between corners, open bays and other openings there is wall for the rail, as long as the leaf twice."""
    units, (left, right), door = lines.building.units, rail.cover, rail.opening
    taken = _taken(lines, wall, rail)
    low = max((end for _, end in taken if end <= door.from_left), default=0.0)
    high = min((start for start, _ in taken if start >= door.from_left + door.width), default=wall.width)
    if not under(left, low) and not over(right, high):
        return
    said = "the leaf of a sliding door goes before free wall as wide as itself: its rail's cover takes from "
    said += f"{exactly(left, units)} to {exactly(right, units)}, and the wall is free from "
    said += f"{exactly(low, units)} to {exactly(high, units)}"
    room = high - low - (right - left)
    if not under(room, 0.0):
        least, most = door.from_left + low - left, door.from_left + high - right
        place = (
            f"at least {at_least(least, units)}" if under(left, low) else f"at most {at_most(most, units)}"
        )
        yield ("opening", number, "from_left"), f"{place}: {said}"
        return
    widest = (high - low - 2 * COVER_PAST) / 2 - 2 * OVERLAP
    narrower = f"at most {at_most(widest, units)}" if widest > 0 else "no sliding door"
    yield ("opening", number, "width"), f"{narrower}: {said}"


def _taken(lines: OpeningLines, wall: Face, rail: Rail) -> list[Point2]:
    """What a leaf cannot go before, from and to u: both corners, open bays, openings it would cross."""
    ends = [(-CORNER, CORNER), (wall.width - CORNER, wall.width + CORNER)]
    others = [one for one in wall.openings if one is not rail.opening]
    crossed = (lines.jamb_span(one) for one in others if one.sill < rail.seam.foot + OVER_COVER)
    return [*ends, *wall.gaps, *crossed]


def _under_eave(lines: OpeningLines, rail: Rail, number: int) -> Iterator[Objection]:
    """The girts over a rail are under the lowest eave strut, where they run on around the building."""
    building, units = lines.building, lines.building.units
    top = max(group.girts[-1] for group in lines.girts_of_ends if group.low == rail.seam.level)
    strut = lines.strut_foot(lines.low_eave)
    short = max(
        top + building.framing.girt.width / 2 - strut, rail.seam.foot + OVER_COVER - lines.low_eave.height
    )
    if not over(short, 0.0):
        return
    most = rail.opening.height - short - building.sheets.step
    lower = f"at most {at_most(most, units)}" if most > 0 else "no sliding door under this eave"
    rails = (
        f"over its head, at {exactly(rail.opening.height, units)}, are leaf, rail and the girts at its cover"
    )
    under_it = f"up to {exactly(top + building.framing.girt.width / 2, units)}"
    yield (
        ("opening", number, "height"),
        f"{lower}: {rails} {under_it}, and the eave strut's underside is at {exactly(strut, units)}",
    )


def _over_others(lines: OpeningLines, wall: Face, rail: Rail, number: int) -> Iterator[Objection]:
    """A rail's girts are apart from those of other ends of sheets, and no lean-to's roof ends on its wall."""
    building, units = lines.building, lines.building.units
    if headwall_of(building, wall.name):
        nearest = "not yet possible at a lean-to; what comes nearest: an overhead door"
        yield ("opening", number, "kind"), nearest
        return
    wide = building.framing.girt.width
    own = next(group.girts for group in lines.girts_of_ends if group.low == rail.seam.level)
    for headwall in headwalls(building):
        girts = headwall_girts(building, headwall)
        down, up = own[-1] + wide - girts[0], girts[-1] + wide - own[0]
        if over(down, 0.0) and over(up, 0.0):
            lower, higher = rail.opening.height - down - building.sheets.step, rail.opening.height + up
            most = f"at most {at_most(lower, units)} or " if lower > 0 else ""
            yield (
                ("opening", number, "height"),
                f"{most}at least {at_least(higher + building.sheets.step, units)}: the girts over its rail "
                "run around the building, and are at those of the lean-to's roof",
            )
    seam = lines.seam_girts
    if seam and under(own[0] - seam[-1], wide):
        least = rail.opening.height + wide - (own[0] - seam[-1]) + building.sheets.step
        yield (
            ("opening", number, "height"),
            f"at least {at_least(least, units)}: the girts over its rail are over those of the wainscot",
        )


def _apart(lines: OpeningLines) -> Iterator[Objection]:
    """The rails of a building hang at one height, for the girts behind them run around it."""
    openings = [(n, one) for n, one in enumerate(lines.building.openings) if _slides(lines, one)]
    for (_, one), (number, other) in combinations(openings, 2):
        if one.height != other.height:
            yield (
                ("opening", number, "height"),
                f"{exactly(one.height, lines.building.units)}, as of the other sliding door: girts run "
                "around the building at their rails",
            )
            return


def _slides(lines: OpeningLines, opening: Opening) -> bool:
    return opening.kind == SLIDING and opening.wall in lines.named
