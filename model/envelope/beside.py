"""Where a building that is joined to another stands: outside a wall of that one, turned at a gable."""

from __future__ import annotations

from ..description.building import Building
from ..place import Place


def beside(main: Building, other: Building) -> Place:
    """Where the origin of a building that is joined to another stands in it, and which way its axes run."""
    match other.joined:
        case "back":
            return Place((main.width, -other.width, 0.0), (0.0, 1.0, 0.0), (-1.0, 0.0, 0.0))
        case "front":
            return Place((0.0, main.length + other.width, 0.0), (0.0, -1.0, 0.0), (1.0, 0.0, 0.0))
        case "right":
            return Place((-other.width, 0.0, 0.0))
    return Place((main.width, 0.0, 0.0))
