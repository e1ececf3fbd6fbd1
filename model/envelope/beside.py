"""Where a building that is joined to another stands: outside a wall of that one, turned at a gable."""

from __future__ import annotations

from ..description.building import Building
from ..description.walls_around import is_gable
from ..place import Place
from .face import HAIR


def at_gable(building: Building) -> bool:
    """Whether a building is joined to another one's gable."""
    return building.joined is not None and is_gable(building.joined)


def open_round_corner(main: Building, other: Building, end: str) -> bool:
    """Whether a side wall stands open at the corner of a gable, beside the end of that name of what is joined
    to the gable."""
    corner = main.length if other.joined == "front" else 0.0
    bays = (y for wall, *ends in main.open_bays if wall == end for y in ends)
    return end in main.open_walls or any(abs(y - corner) < HAIR for y in bays)


def beside(main: Building, other: Building) -> Place:
    """Where the origin of a building that is joined to another stands in it, and which way its axes run."""
    match other.joined:
        case "back":
            return Place((main.width - other.along, -other.width, 0.0), (0.0, 1.0, 0.0), (-1.0, 0.0, 0.0))
        case "front":
            return Place((other.along, main.length + other.width, 0.0), (0.0, -1.0, 0.0), (1.0, 0.0, 0.0))
        case "right":
            return Place((-other.width, other.along, 0.0))
    return Place((main.width, other.along, 0.0))
