"""How far out the skin stands, as numbers that follow from the description. Checks and layout share them."""

from __future__ import annotations

from math import hypot

from ..catalog.trims import trim_profiles
from ..description.building import Building
from ..description.opening import Opening
from ..description.skin import Sheets, Skin
from .beside import at_gable

LEAST_LAP_ROOM = 2.1
"""Thicknesses of trim that lapped pieces of a run take up: two, and a little for their lean."""

MITRE = 50.8
"""mm; what a mitre takes off a run's last piece but one, at most (2 in)."""

STUB = 609.6
"""mm; no piece of trim is shorter than this (24 in) where its run is longer. Common practice, no source."""

FOAM = 1.0
"""mm; the least a foam closure is squeezed to, over the crown of an overlap rib. Ours."""

DEEP = 25.4
"""mm; a closure strip along the ribs (1 in). Common practice, no source."""

WASHER = 0.59 * 25.4
"""mm; across the washer of a sheet's screw. Ours."""

PAST_WASHER = WASHER / 2 + 3.175
"""mm; from a screw's middle to the edge of a trim in front of its head: 1/8 in past the washer. Common
practice, no source."""

SCREW_EDGE = 1.5 * 0.216 * 25.4 + 0.05
"""mm; from the middle of a sheet's screw to an edge: 1.5 diameters (AISI S100) and a hair."""

PAST_BEND = 0.216 / 2 * 25.4 + 1.0
"""mm; from where a bend begins to the middle of a screw beside it: its shank stays in the flat. Ours."""

HELD = SCREW_EDGE + 1.5
"""mm; a screw holds a piece of trim so far from its ends: pieces lean by a thickness, and their ends with
them."""

SHELF_FALL = 3.175
"""mm; how far the shelf of a drip falls outward (1/8 in). Common practice, no source."""

OVER_SHELF = 6.35
"""mm; sheets' feet hang so far (1/4 in) over a shelf at the steel, where it stands highest: common practice,
no source."""

DRIP_PAST = 25.4
"""mm; the drip over an opening runs so far (1 in) past each of its sides: common practice, no source."""

HEAD_CLEARANCE = 3.175
"""Wall sheets stop this far (1/8 in) short of what lies over their heads: common practice, no source."""


def inside_wall(building: Building, rise: float) -> float:
    """How far down a slope from a high eave a screw stands at least (mm), so that it does not come out of the
    wall there, towards which it leans. rise: of the slope, in one of run."""
    return building.screws.length * abs(rise) + PAST_BEND * hypot(1.0, rise)


def foot(building: Building) -> float:
    """Height of the feet of wall sheets: off the slab, or the bottom of its ledge, by the stated gap.

    The lying leg of the base trim is under them, doubled where two pieces of it lap.
    """
    return building.sheets.foot_gap - building.slab.below + lap_room(building)


def plane(sheets: Sheets, skin: Skin) -> float:
    """Steel line to the undersides of the pans: the flange, and a blanket pressed on it."""
    return sheets.flange + skin.off


def outermost(sheets: Sheets, skin: Skin) -> float:
    """Steel line to the crown of an overlap rib: the flange, the rib, two sheets where ribs lap, and how far
    sheets stand out that lie over the heads of others."""
    return plane(sheets, skin) + skin.profile.height + 2 * skin.thickness + over_others(skin)


def heads_fall(building: Building, skin: Skin, rise: float) -> float:
    """How much lower a roof's steel plane, that falls outward, is over the outer edge of the closures at a
    side wall's heads than over its sheets. rise: of its eave."""
    return (corner_trim(building) - outermost(building.sheets, skin)) * max(0.0, rise)


def over_others(skin: Skin) -> float:
    """How far out sheets of a wall may stand, course by course over each other."""
    return skin.courses * skin.thickness * skin.profile.flank


def wall_skins(building: Building, gables: bool) -> tuple[Skin, ...]:
    """All that covers the gables, or the side walls."""
    own = building.sheets.gables if gables else building.sheets.sides
    wainscot, named = building.wainscot, ("front", "back") if gables else ("left", "right")
    return (own, wainscot.skin) if wainscot and set(named) & set(wainscot.walls) else (own,)


def corner_trim(building: Building) -> float:
    """Steel line of a side wall to the corner trim's inner face: clear of the gable sheets' overrun."""
    crown = max(outermost(building.sheets, skin) for skin in wall_skins(building, gables=False))
    return max(crown + FOAM, *(skin.profile.leg for skin in wall_skins(building, gables=True)))


def seam_trim(building: Building) -> float:
    """Steel line to the inner face of a tier trim's front leg: over the corner trim and the sheets of all
    walls, so that two meet at a corner."""
    crown = max(outermost(building.sheets, skin) for skin in wall_skins(building, gables=True))
    return max(corner_trim(building), crown) + lap_room(building)


def in_line(building: Building) -> float:
    """From another building's steel line to the sheets and the steel of a wall in line with its gable: clear
    of that gable's overrun, of the side wall's sheets and of the mitre of the base trims under both."""
    crown = max(outermost(building.sheets, skin) for skin in wall_skins(building, gables=True))
    return max(corner_trim(building), crown + lap_room(building)) + HEAD_CLEARANCE


def inside_bend(building: Building) -> float:
    """From another building's steel line to the inner face of a trim over the sheets there, which are those
    of the building's own sides."""
    return outermost(building.sheets, building.sheets.sides)


def inside_corner(building: Building) -> float:
    """From another building's steel line to the sheets and the steel of a wall that stands out from it: clear
    of the trim there, whose pieces lap."""
    return inside_bend(building) + lap_room(building) + HEAD_CLEARANCE


def over_in_line(building: Building) -> float:
    """Steel line of a wall in line with another building's to the inner face of the trim over the ends of
    both: as far out as that one's corner trim there, on a gable over its sheets, on a side wall over the
    overrun of its gable's too."""
    sheets = building.sheets
    crown = outermost(sheets, sheets.gables)
    return max(crown + FOAM, sheets.sides.profile.leg) if at_gable(building) else crown


def lap_room(building: Building) -> float:
    """What lapped pieces of trim take up. A piece's end lies flat; the next one's start lies a thickness
    higher, and by its lean over the lap, which is steepest where a short stick was cut shorter."""
    lap = building.trim.lap
    lean = lap / (building.trim.shortest - max(STUB, MITRE + 2 * lap))
    return max(LEAST_LAP_ROOM, 2.02 + lean) * building.sheets.flange


def eave_trim(building: Building) -> float:
    """Steel line of a side wall to the eave trim's outer face."""
    over = lap_room(building) if building.hung_walls else 0.0  # a trim over hung sheets' ends is under it
    return corner_trim(building) + lap_room(building) + over + building.sheets.flange


def over_shelf(building: Building) -> float:
    """From the bend of a shelf, where its pieces lap, to the feet of the sheets over it."""
    return lap_room(building) + OVER_SHELF


def head_angle(building: Building, opening: Opening) -> float:
    """How far over an opening's head its drip bends: clear of the flange of an overhead door's head angle."""
    if not opening.overhead:
        return 0.0
    return trim_profiles()["head angle"].in_plane + lap_room(building)
