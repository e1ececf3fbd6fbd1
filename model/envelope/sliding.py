"""Doors that slide before their wall: the rail over the head, the seam there, what leaves take of the wall.

From below: the leaf, that hangs before the sheets; the rail on their ribs, in front of the girts; over it a
cover's shelf that falls outward, whose back leg lies up behind the sheets above. So far as the cover reaches
the sheets end in two, as at the seam of two tiers. Common practice, no source, unless one is named.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from ..description.building import Building
from ..description.opening import SLIDING, WALLS, Opening
from ..place import Point2
from .face import Face
from .lengths import stepped_down, stepped_up
from .skin_lines import FOAM, HEAD_CLEARANCE, SHELF_FALL, foot, lap_room, outermost, over_shelf, seam_trim
from .tiers import Seam, girts_behind, tiered

OVERLAP = 50.8
"""mm; a leaf reaches so far (2 in) past each side of its opening, and past its head; of two that part each
past its own side."""
RAIL_HIGH, RAIL_DEEP = 76.2, 63.5
"""mm; of a rail as drawn (3 in, 2 1/2 in): a stand-in for the one that is bought."""
COVER_PAST = 25.4
"""mm; a rail's cover runs so far (1 in) past each of its ends."""
HUNG = 0.5
"""mm; between a leaf and the rail or the guide that holds it. Ours."""


@dataclass(frozen=True, slots=True)
class Rail:
    """Over one sliding door. number: of the opening in its wall, from 1. span: u of its ends, as long as its
    leaves twice. leaves: from u to u of each, shut. seam: of the sheets at its cover."""

    number: int
    opening: Opening
    span: Point2
    leaves: tuple[Point2, ...]
    seam: Seam

    @property
    def cover(self) -> Point2:
        """u of the ends of its cover."""
        return self.span[0] - COVER_PAST, self.span[1] + COVER_PAST

    @property
    def top(self) -> float:
        """v of its upper edge."""
        return self.seam.head - HEAD_CLEARANCE

    @property
    def foot(self) -> float:
        """v of its lower edge, from which the leaves hang."""
        return self.top - RAIL_HIGH


def rails_of(building: Building, wall: str) -> tuple[Rail, ...]:
    """Those of a wall's sliding doors."""
    own = (opening for opening in building.openings if opening.wall == wall)
    return tuple(
        Rail(number, opening, rail_span(opening), leaves_of(opening), rail_seam(building, opening))
        for number, opening in enumerate(own, 1)
        if opening.kind == SLIDING
    )


def drip_out(building: Building) -> float:
    """How far before the ribs of its wall the lip of the drip over an opening ends (mm)."""
    return 4 * building.sheets.flange + 2 * lap_room(building)


def rail_back(building: Building, wall: Face) -> float:
    """w of the back of a wall's rails: on its ribs, over a foam; packed out where the trim at its wainscot's
    seam, which meets the next walls' over their ribs, would else stand further out than the drip."""
    crown = max(outermost(building.sheets, skin) for skin in wall.skins)
    trim = seam_trim(building) + lap_room(building) + building.sheets.flange
    packed = trim - drip_out(building) if tiered(building, wall.name) else crown
    return max(crown, packed) + FOAM


def rails(building: Building) -> Iterator[Rail]:
    """Those of all walls of a building's own."""
    for wall in WALLS:
        yield from rails_of(building, wall)


def leaves_of(opening: Opening) -> tuple[Point2, ...]:
    """From u to u of each leaf of a door that is shut."""
    left, right = opening.from_left - OVERLAP, opening.from_left + opening.width + OVERLAP
    if opening.slides != "apart":
        return ((left, right),)
    middle = opening.from_left + opening.width / 2
    return (left, middle - HUNG), (middle + HUNG, right)


def rail_span(opening: Opening) -> Point2:
    """u of the ends of a rail: over the leaf, and as far again where it goes."""
    wide = opening.width + 2 * OVERLAP
    left, right = opening.from_left - OVERLAP, opening.from_left + opening.width + OVERLAP
    match opening.slides:
        case "left":
            return left - wide, right
        case "apart":
            return left - wide / 2, right + wide / 2
    return left, right + wide


def rail_seam(building: Building, opening: Opening) -> Seam:
    """Where sheets end over each other at a rail: over the leaf and the rail, with the girts there clear of
    the header, and the sheets over and under it whole steps long."""
    step, low, over = building.sheets.step, foot(building), over_shelf(building)
    under, head = SHELF_FALL + HEAD_CLEARANCE, opening.sill + opening.height

    def from_shelf(least: float) -> Seam:
        shelf = low + stepped_up(least + over - low, step) - over
        return Seam(shelf, low + stepped_down(shelf - under - low, step), shelf + over)

    girt, header = building.framing.girt, building.framing.header
    found = from_shelf(head + OVERLAP + HUNG + RAIL_HIGH + HEAD_CLEARANCE + under + step)
    short = head + header.width + girt.width / 2 + HEAD_CLEARANCE - girts_behind(girt, found)[0]
    return from_shelf(found.shelf + short) if short > 0 else found
