"""The six faces of a gabled building: each a plane with its own frame and the outline to be clad.

Whatever is laid on a face is written in that frame: u to the right and v up as seen from outside,
w outward, w = 0 on the steel line. A new roof shape is a new list of faces and nothing else.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import cos, radians, sin, tan

from ..description.building import Building, FaceName, Opening
from ..description.skin_lines import lap_room
from ..place import Place, Point2
from .skin.ribs import stack

HEAD_CLEARANCE = 3.175
"""Wall sheets stop this far (1/8 in) short of what lies over their heads: common practice, no source."""


@dataclass(frozen=True, slots=True)
class Face:
    """One plane that gets sheeted.

    frame: origin at v = 0, the left end of the steel line. width: of the steel line along u.
    outline: what the sheets cover, (n, 2) counter-clockwise in (u, v).
    """

    name: FaceName
    frame: Place
    width: float
    outline: tuple[Point2, ...]
    openings: tuple[Opening, ...] = ()

    @property
    def sloped(self) -> bool:
        """Whether this is a roof slope."""
        return self.name in ("left slope", "right slope")


def faces(building: Building) -> tuple[Face, ...]:
    """All faces: side walls, back gable, front gable, roof slopes. The model lists its parts by kind and
    face, which is not the order they go up."""
    width, length, eave = building.width, building.length, building.eave_height
    pitch = radians(building.pitch)
    up, slope = (0.0, 0.0, 1.0), (cos(pitch), sin(pitch))
    side, gable, roof = _side_outline(building), _gable_outline(building), _roof_outline(building)

    def on(wall: FaceName) -> tuple[Opening, ...]:
        return tuple(opening for opening in building.openings if opening.wall == wall)

    back_to_front, front_to_back = (0.0, -1.0, 0.0), (0.0, 1.0, 0.0)
    return (
        Face("left", Place((0.0, length, 0.0), back_to_front, up), length, side, on("left")),
        Face("right", Place((width, 0.0, 0.0), front_to_back, up), length, side, on("right")),
        Face("back", Place((width, length, 0.0), (-1.0, 0.0, 0.0), up), width, gable, on("back")),
        Face("front", Place((0.0, 0.0, 0.0), (1.0, 0.0, 0.0), up), width, gable, on("front")),
        Face(
            "left slope",
            Place((0.0, length, eave), back_to_front, (slope[0], 0.0, slope[1])),
            length,
            roof,
        ),
        Face(
            "right slope",
            Place((width, 0.0, eave), front_to_back, (-slope[0], 0.0, slope[1])),
            length,
            roof,
        ),
    )


def foot(building: Building) -> float:
    """Height of the feet of wall sheets: off the slab, or the bottom of its ledge, by the stated gap.

    The lying leg of the base trim is under them, doubled where two pieces of it lap.
    """
    return building.sheets.foot_gap - building.slab.ledge_depth + lap_room(building)


def _side_outline(building: Building) -> tuple[Point2, ...]:
    """Corner to corner of the steel line; the head clear under the roof plane where that is lowest.

    The roof's steel plane falls outward, and over the outermost point of the sheets (the crown of an
    overlap rib) it lies that point's distance times the pitch lower than at the steel line.
    """
    sheets = building.sheets
    outermost = sheets.flange + stack(sheets.profile, sheets.thickness)
    head = building.eave_height - outermost * tan(radians(building.pitch)) - HEAD_CLEARANCE
    low, length = foot(building), building.length
    return ((0.0, low), (length, low), (length, head), (0.0, head))


def _gable_outline(building: Building) -> tuple[Point2, ...]:
    """Past both corners by the lap leg, to cover the ends of the side walls' sheets; the rakes on top."""
    leg, width, rise = building.sheets.profile.leg, building.width, tan(radians(building.pitch))
    low, eave = foot(building), building.eave_height - HEAD_CLEARANCE
    return (
        (-leg, low),
        (width + leg, low),
        (width + leg, eave - leg * rise),
        (width / 2, eave + width / 2 * rise),
        (-leg, eave - leg * rise),
    )


def _roof_outline(building: Building) -> tuple[Point2, ...]:
    """From the overhang (stated in plan) up to the ridge gap (stated along the slope)."""
    along = 1 / cos(radians(building.pitch))
    low = -building.sheets.overhang * along
    high = building.width / 2 * along - building.sheets.ridge_gap
    return ((0.0, low), (building.length, low), (building.length, high), (0.0, high))
