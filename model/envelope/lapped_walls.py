"""Room for sheets that lap up a wall, or a lean-to's roof: each course stands off the one below it, and all
that is over the sheets, or ends over the roof, stands clear of the uppermost."""

from __future__ import annotations

from dataclasses import replace
from math import ceil, cos, radians

from ..description.building import Building
from ..description.opening import Wall
from ..description.skin import Sheets, Skin
from ..description.walls_around import opposite, sheets_beside
from .footprint import roof_line


def with_room_for_laps(building: Building) -> Building:
    """A building whose wall sheets, and those of lean-tos and their roofs, know how far courses stand out."""
    line = roof_line(building)
    eaves, highest = max(line[0][1], line[-1][1]), max(z for _, z in line)
    sides = _with_room(building.sheets, building.sheets.sides, _clad(building, ("left", "right"), eaves))
    gables = _with_room(building.sheets, building.sheets.gables, _clad(building, ("front", "back"), highest))
    sheets = replace(building.sheets, sides=sides, gables=gables)
    lean_tos = tuple(_beside(sheets, one, one.joined) for one in building.lean_tos if one.joined)
    return replace(building, sheets=sheets, lean_tos=lean_tos)


def _clad(building: Building, walls: tuple[Wall, Wall], top: float) -> float:
    """How high sheets reach up two walls at most, from their feet (mm): no higher than a half wall, where all
    that is clad of them is one and no lean-to has such sheets. top: of the higher one."""
    half = building.half_wall
    low = building.half_walls >= set(walls) - building.open_walls and not building.lean_tos
    return (half.height if half and low else top) + building.slab.below


def _beside(sheets: Sheets, lean_to: Building, joined: Wall) -> Building:
    """A lean-to with a building's sheets, room for laps of its own on its roof."""
    along = lean_to.width / cos(radians(lean_to.pitch)) + sheets.overhang
    roof = _with_room(sheets, sheets.roof, along)
    return replace(lean_to, sheets=replace(sheets_beside(sheets, opposite(joined)), roof=roof))


def _with_room(sheets: Sheets, skin: Skin, length: float) -> Skin:
    """For one lap more than sheets of full length would make, since they lap on lines of steel alone."""
    laps = ceil(length / sheets.longest - 1e-9) - 1
    return replace(skin, courses=laps + 1) if laps > 0 else skin
