"""Sheets hung on the upper part of a wall that is open below: a skirt, the infill of a gable, or what stands
over the roof of a lean-to that is open to its building.

From the foot up: the shelf of a drip that falls outward, the sheets' feet over it, their row of screws in a
girt that runs along the foot. Common practice throughout, no source, unless one is named.
"""

from __future__ import annotations

from itertools import pairwise
from math import hypot

from ..catalog.trims import trim_profiles
from ..description.building import Building
from .face import Hung
from .footprint import roof_line
from .headwall import end_girts, headwall_girts, headwall_of
from .skin_lines import HEAD_CLEARANCE, SHELF_FALL, over_shelf
from .tiers import SEAM_ROW, flat_of


def hung_of(building: Building, wall: str) -> Hung | None:
    """How the sheets of a wall hang; None where it is clad down to the slab, or not at all."""
    if wall not in building.hung_walls:
        return None
    if wall in building.open_between and (headwall := headwall_of(building, wall)) is not None:
        own = headwall_girts(building, headwall)[-1]
        girts = (v for group in end_girts(building) for v in group.girts)
        girt = min(girts, key=lambda v: abs(v - own))  # that of another lean-to, where it serves both
        return Hung(headwall.bend, headwall.foot, headwall.rows[-1], girt, flashed=True)
    if wall in building.infill:
        return _from_girt(building, _under_eaves(building) - building.framing.girt.width / 2)
    assert building.skirt is not None
    foot = building.skirt.foot + over_shelf(building)
    return _from_girt(building, foot + _up_to_girt(building))


def _from_girt(building: Building, girt: float) -> Hung:
    foot = girt - _up_to_girt(building)
    return Hung(foot - over_shelf(building), foot, girt - flat_of(building.framing.girt)[1], girt)


def _up_to_girt(building: Building) -> float:
    """From the sheets' feet to the girt's centre: its row a little over them, its lower edge behind the
    drip's lip."""
    girt = building.framing.girt
    lip = over_shelf(building) + SHELF_FALL + trim_profiles()["drip"].out_of_plane
    return max(SEAM_ROW + flat_of(girt)[1], girt.width / 2 - lip + HEAD_CLEARANCE)


def _under_eaves(building: Building) -> float:
    """What the girt at an infill's foot stays under: the eave struts that it runs between, and what backs the
    heads of its sheets along the rakes, under purlins that run on over the gable."""
    framing, roof = building.framing, building.roof
    low = min(building.eave_height, roof.right_eave_height or building.eave_height)
    back = framing.rake_leg
    if roof.gable_overhang and framing.girts == "by-pass":
        back += framing.roof_depth
    deep = max(framing.eave_strut.depth, back * hypot(1.0, _rise(building)))
    return low - deep - HEAD_CLEARANCE


def _rise(building: Building) -> float:
    """Of the steepest slope."""
    return max(abs(b[1] - a[1]) / (b[0] - a[0]) for a, b in pairwise(roof_line(building)))
