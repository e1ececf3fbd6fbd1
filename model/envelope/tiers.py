"""Where a wall's tiers meet: the seam's own heights, and the girts behind it.

From the foot up: the lower sheets' heads, under a trim's shelf that falls outward; over it the upper
sheets' feet. Common practice throughout, no source, unless one is named.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

from ..catalog.sections import SectionShape
from ..description.building import Building
from ..place import Point2
from .lengths import stepped_down
from .skin_lines import HEAD_CLEARANCE, PAST_BEND, SCREW_EDGE, SHELF_FALL, foot, over_shelf

SEAM_ROW = 19.05
"""mm; from a sheet's end at a seam to the middle of its row of screws (3/4 in)."""


@dataclass(frozen=True, slots=True)
class Seam:
    """Heights on a wall (mm). shelf: of the trim's bend on the steel line. head: where the lower sheets end;
    foot: where the upper ones begin."""

    shelf: float
    head: float
    foot: float

    @property
    def rows(self) -> Point2:
        """The screws of the lower sheets' heads, and of the upper ones' feet."""
        return self.head - SEAM_ROW, self.foot + SEAM_ROW

    @property
    def level(self) -> float:
        """Halfway between the rows: what girts count as the height of the seam."""
        return sum(self.rows) / 2


def seam_of(building: Building) -> Seam | None:
    """The seam of a building's wainscot; None where it has none."""
    if building.wainscot is None:
        return None
    shelf = building.wainscot.height
    low = foot(building)
    head = low + stepped_down(shelf - SHELF_FALL - HEAD_CLEARANCE - low, building.sheets.step)
    return Seam(shelf, head, shelf + over_shelf(building))


def tiered(building: Building, wall: str) -> bool:
    """Whether a wall has a wainscot."""
    scot = building.wainscot
    return scot is not None and wall in set(scot.walls) - building.open_walls - building.hung_walls


def seam_girts(building: Building) -> tuple[float, ...]:
    """Heights of the girts behind a seam: one where its flange takes both rows, else two close together."""
    seam = seam_of(building)
    return girts_behind(building.framing.girt, seam) if seam else ()


def girts_behind(girt: SectionShape, seam: Seam) -> tuple[float, ...]:
    """Heights of the girts behind any seam, likewise."""
    flat, middle = flat_of(girt)
    centre = seam.level + middle
    if flat >= seam.rows[1] - seam.rows[0]:
        return (centre,)
    apart = _apart(girt, seam) / 2
    return (centre - apart, centre + apart)


def off_flange(building: Building) -> float:
    """How far a wainscot's rows lie off the flats of its girts; nothing where both find room."""
    seam = seam_of(building)
    return rows_off(building.framing.girt, seam) if seam else 0.0


def rows_off(girt: SectionShape, seam: Seam) -> float:
    """The same of any seam."""
    if len(girts_behind(girt, seam)) == 1:
        return 0.0
    return (_apart(girt, seam) - (seam.rows[1] - seam.rows[0]) - flat_of(girt)[0]) / 2


def _apart(girt: SectionShape, seam: Seam) -> float:
    """From one of two girts to the other: a row behind each, and no nearer than they fit."""
    # One zee's flange reaches in over the other's, as they nest.
    flange = (girt.width + girt.wider) / 2
    wide = flange + girt.thickness if girt.shape == "zee" else girt.width
    return max(wide, seam.rows[1] - seam.rows[0])


def flat_of(girt: SectionShape, turned: bool = False) -> Point2:
    """How high the stretch of a girt's flange is in which screws may stand, and how far over its middle the
    girt's own centre lies. On a wall a section's x points down. turned: of its other flange, turned
    over about its length."""
    sign = -1.0 if turned else 1.0
    outer = [(sign * x, sign * y, radius) for x, y, radius in girt.section().outer]
    face = max(y for _, y, _ in outer)
    ends = []
    for one, other in pairwise((*outer, outer[0])):
        if one[1] == face == other[1]:
            ends += [(x, max(SCREW_EDGE, r + PAST_BEND if r else 0.0)) for x, _, r in (one, other)]
    (low, first), (high, last) = min(ends), max(ends)
    return high - low - first - last, (low + first + high - last) / 2
