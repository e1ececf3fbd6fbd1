"""The slab: out past a ledge, or under the sheets' feet; to the steel line where they hang past its top."""

from __future__ import annotations

from collections.abc import Sequence

import shapely

from ...description.building import Building
from ...envelope.face import Face, in_turn
from ...envelope.skin_lines import lap_room, outermost
from ...envelope.stretches import remaining
from ...envelope.top_line import crossed
from ...place import Place, Point2
from ...recipe import Cut, Part, Prism, Recipe, Section, grid
from ...roles import Role
from ..role_colours import SLAB
from .blocks import block

BELOW = Place((0.0, 0.0, -1.0))
"""What is taken from under a slab begins this far under it."""
BEYOND = 25.4
"""mm; concrete past the outermost point of the sheets (1 in). Ours."""


def slab(building: Building, walls: Sequence[Face], beside: Sequence[Sequence[Face]] = ()) -> Part:
    """One body, with what is under the walls of buildings beside it. The ledge's inner face is the steel
    line; it stops at doors, clear of their trims, and is formed along clad walls only. A thicker edge goes
    all round."""
    lean, depth, thick = lap_room(building), building.slab.ledge_depth, building.slab.edge_depth
    crown = max(outermost(building.sheets, skin) for wall in walls for skin in wall.skins)
    out = building.slab.ledge_width if depth else 0.0 if building.slab.hang else crown + BEYOND
    rim = _rim(walls, out)
    if beside:
        whole = shapely.union_all(
            [shapely.Polygon(rim), *(shapely.Polygon(_rim(one, out)) for one in beside)]
        )
        rim = _ring(whole.simplify(0.001))
    corner = Place((min(x for x, _ in rim), min(y for _, y in rim), -thick))
    body = _prism(rim, corner, thick)
    deep = thick - building.slab.thickness + 1
    tools: list[tuple[Recipe, Place]] = [
        (_prism(ring, corner, deep), BELOW) for ring in _within(rim, building)
    ]
    for wall in (wall for wall in walls if depth and not (wall.open or wall.hung)):
        doors = [(o.from_left + lean, o.from_left + o.width - lean) for o in wall.openings if o.sill == 0]
        doors += [
            (low + lean if low > 0 else -out - 1, high - lean if high < wall.width else wall.width + out + 1)
            for low, high in wall.gaps
        ]
        for a, b in remaining((-out - 1, wall.width + out + 1), doors):
            tools.append(
                (block(b - a, depth + 1, out + 1), corner.within(wall.frame @ Place((a, -depth, 0.0))))
            )
    recipe: Recipe = Cut(body, tuple(tools)) if tools else body
    return Part("slab", Role.SLAB, ("slab",), recipe, corner, SLAB)


def _prism(rim: Sequence[Point2], corner: Place, height: float) -> Prism:
    """What stands on an outline, in the frame of a corner."""
    x, y, _ = corner.origin
    outline = Section(tuple((grid(a - x), grid(b - y), 0.0) for a, b in rim))
    return Prism(outline, (0.0, 0.0, 0.0), (0.0, 0.0, grid(height)))


def _within(rim: Sequence[Point2], building: Building) -> list[list[Point2]]:
    """Outlines of the ground that a slab of one thickness lies on within its thicker edge."""
    if building.slab.edge_depth == building.slab.thickness:
        return []
    inner = shapely.Polygon(rim).buffer(-building.slab.edge_width, join_style="mitre", mitre_limit=10)
    parts = [part for part in shapely.get_parts(inner) if not part.is_empty]
    return [_ring(part) for part in parts]


def _ring(area: shapely.Polygon) -> list[Point2]:
    """The outline of an area, counter-clockwise from above."""
    return [(x, y) for x, y in shapely.orient_polygons(area).exterior.coords[:-1]]


def _rim(walls: Sequence[Face], out: float) -> list[Point2]:
    """The slab's edge, counter-clockwise from above: the walls' feet moved outward."""
    ring = in_turn(walls)
    lines = []
    for wall in ring:
        ends = (wall.frame.point((u, 0.0, out)) for u in (0.0, wall.width))
        (ax, ay, _), (bx, by, _) = ends
        lines.append(((ax, ay), (bx, by)))
    return [crossed(lines[number - 1], line) for number, line in enumerate(lines)]
