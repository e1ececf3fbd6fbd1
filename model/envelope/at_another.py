"""Where a wall ends at another building's: in line with its gable, or square to one of its walls, before the
sheets there."""

from __future__ import annotations

from collections.abc import Iterator

from ..catalog.trims import trim_profiles
from ..description.building import Building
from ..place import Point2
from .edges import Edge
from .face import Face, Side
from .headwall import ends_of, headwall_of
from .skin_lines import in_line, inside_bend, inside_corner, outermost


def short_of(building: Building, side: Side) -> float:
    """How far from a wall's corner its sheets and its steel end (mm): clear of what stands out from the other
    building's wall there; nought at a corner of its own."""
    match side.kind:
        case Edge.IN_LINE:
            return in_line(building)
        case Edge.INSIDE_CORNER:
            return inside_corner(building)
    return 0.0


def under_inside_corners(building: Building, wall: Face) -> Iterator[Point2]:
    """From u to u of what inside corner trims take of a wall: at its own ends, and beside the ends of a
    lean-to that stand out from it."""
    legs = trim_profiles()["inside corner"]
    reach = inside_bend(building) + legs.in_plane
    for hand, low in (("left", 0.0), ("right", wall.width - reach)):
        if wall.beside(hand).kind is Edge.INSIDE_CORNER:
            yield low, low + reach
    headwall = headwall_of(building, wall.name)
    if headwall is None:
        return
    lean_to = building.lean_tos[headwall.number]
    out = outermost(lean_to.sheets, lean_to.sheets.gables) + legs.out_of_plane
    for end, u, away in ends_of(building, headwall, wall.frame):
        if end in headwall.inset - lean_to.open_walls:
            low, high = sorted((u, u + away * out))
            yield low, high
