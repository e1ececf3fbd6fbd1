"""Room for sheets that lap up a wall: each course stands off the one below it, and all that is over the
wall's sheets stands clear of the uppermost."""

from __future__ import annotations

from dataclasses import replace
from math import ceil, radians, tan

from .building import Building, Skin


def with_room_for_laps(building: Building) -> Building:
    """A building whose walls' sheets know how far out courses of them may stand."""
    sheets, highest = building.sheets, _peak(building)
    eaves = [building.eave_height, building.roof.right_eave_height or 0.0]
    sides = highest if building.roof.shape == "single slope" else max(eaves)
    return replace(
        building,
        sheets=replace(
            sheets,
            sides=_with_room(building, sheets.sides, sides),
            gables=_with_room(building, sheets.gables, highest),
        ),
    )


def _with_room(building: Building, skin: Skin, height: float) -> Skin:
    """For one lap more than sheets of full length would make, since they lap on girts alone."""
    laps = ceil((height + building.slab.below) / building.sheets.longest - 1e-9) - 1
    return replace(skin, courses=laps + 1) if laps > 0 else skin


def _peak(building: Building) -> float:
    """Height of the highest point of the roof's steel."""
    rise, roof, eave = tan(radians(building.pitch)), building.roof, building.eave_height
    if roof.shape == "single slope":
        return eave + building.width * rise
    right = eave if roof.right_eave_height is None else roof.right_eave_height
    ridge = roof.ridge if roof.ridge is not None else (building.width + (right - eave) / rise) / 2
    return eave + ridge * rise
