"""Room for sheets that lap up a wall: each course stands off the one below it, and all that is over the
wall's sheets stands clear of the uppermost."""

from __future__ import annotations

from dataclasses import replace
from math import ceil

from ..description.building import Building
from ..description.skin import Skin
from ..description.walls_around import opposite, sheets_beside
from .footprint import roof_line


def with_room_for_laps(building: Building) -> Building:
    """A building whose walls' sheets, lean-tos too, know how far out courses may stand."""
    line = roof_line(building)
    eaves, highest = max(line[0][1], line[-1][1]), max(z for _, z in line)
    sides = _with_room(building, building.sheets.sides, eaves)
    gables = _with_room(building, building.sheets.gables, highest)
    sheets = replace(building.sheets, sides=sides, gables=gables)
    lean_tos = tuple(
        replace(one, sheets=sheets_beside(sheets, opposite(one.joined)))
        for one in building.lean_tos
        if one.joined
    )
    return replace(building, sheets=sheets, lean_tos=lean_tos)


def _with_room(building: Building, skin: Skin, height: float) -> Skin:
    """For one lap more than sheets of full length would make, since they lap on girts alone."""
    laps = ceil((height + building.slab.below) / building.sheets.longest - 1e-9) - 1
    return replace(skin, courses=laps + 1) if laps > 0 else skin
