"""Whether tiers fit their walls: over the steel, under the eave, clear of openings."""

from __future__ import annotations

from collections.abc import Iterator

from ..description.said_limits import at_least, at_most, exactly, over, under
from .opening_lines import OpeningLines
from .steel_checks import Objection
from .tiers import off_flange, tiered

CLEAR = 152.4
"""mm; from a seam to an opening's sill or head (6 in). Common practice, no source."""

LEAST_KNEE = 152.4
"""mm; as the key itself may be."""

BESIDE = 50.8
"""mm; what a knee may take of a seam's girts beside a column (2 in). Ours."""

UPPER = 609.6
"""mm; wall left between a seam and the eave (2 ft), or the upper sheets are strips. Ours."""


def tier_misfits(lines: OpeningLines) -> Iterator[Objection]:
    """Every place where a seam does not go with what is about it."""
    building, seam = lines.building, lines.seam
    if seam is None:
        return
    units = building.units
    most = min(eave.height for eave in lines.eaves.values()) - UPPER
    if over(seam.shelf, most):
        yield ("wainscot", "height"), f"at most {at_most(most, units)}, to leave 2 ft of wall under the eave"
    if over(off_flange(building), 0.0):
        yield (
            ("framing", "girt"),
            "a section with a wider flange: the two rows of screws at a seam stand in it, or in two",
        )
    yield from _knees(lines)
    for number, opening in enumerate(building.openings):
        if not tiered(building, opening.wall):
            continue
        for key, edge in (("sill", opening.sill), ("height", opening.sill + opening.height)):
            if under(abs(edge - seam.shelf), CLEAR) and edge > 0:
                low, high = (seam.shelf + step - (edge - getattr(opening, key)) for step in (-CLEAR, CLEAR))
                where = f"6 in clear of the seam at {exactly(seam.shelf, units)}"
                remedy = f"at most {at_most(low, units)} or at least {at_least(high, units)}, {where}"
                yield ("opening", number, key), remedy


def _knees(lines: OpeningLines) -> Iterator[Objection]:
    """The end frames' knees, where gables' girts stand in their plane, end over those at a seam."""
    building, girt = lines.building, lines.building.framing.girt
    knee, column = building.frame.knee, lines.setback + building.frame.column.depth
    top = max(lines.seam_girts) + girt.width / 2
    taken = [
        lines.knee_reach(wall, hand, top, girt.depth)
        for wall in lines.walls
        for hand in ("left", "right")
        if tiered(building, wall.name)
    ]
    if knee and over(max(taken, default=0.0) - column, BESIDE):
        foot = min(lines.rafter_foot(eave) for eave in lines.eaves.values())
        most = foot - 2 * knee.depth - top
        if most < LEAST_KNEE:
            yield ("frame", "knee"), '"none" over a seam so high'
        else:
            where = "to end over the girts at the seam"
            yield ("frame", "knee_reach"), f"at most {at_most(most, building.units)}, {where}"
