"""The slab: to the steel line where it has a ledge, out under the sheets' feet where it has none."""

from __future__ import annotations

from ...description.building import Building, FaceName
from ...description.skin_lines import lap_room
from ...place import Place
from ...recipe import Cut, Part, Recipe
from ...roles import Role
from ..faces import Face
from ..role_colours import SLAB
from ..skin.ribs import stack
from .blocks import block
from .framing import remaining

BEYOND = 25.4
"""mm; concrete past the outermost point of the sheets (1 in). Ours."""


def slab(building: Building, faces: dict[FaceName, Face]) -> Part:
    """One body. The ledge's inner face is the steel line; it stops at doors, clear of their trims."""
    lean = lap_room(building)
    sheets, depth = building.sheets, building.slab.ledge_depth
    out = sheets.flange + stack(sheets.profile, sheets.thickness) + BEYOND
    if depth:
        out = building.slab.ledge_width
    thick = building.slab.thickness
    body = block(building.width + 2 * out, building.length + 2 * out, thick)
    corner = (-out, -out, -thick)
    tools: list[tuple[Recipe, Place]] = []
    if depth:
        for wall in ("left", "right", "back", "front"):
            face = faces[wall]
            doors = [(o.from_left + lean, o.from_left + o.width - lean) for o in face.openings if o.sill == 0]
            ends = (-out - 1, face.width + out + 1)
            for a, b in remaining(ends, doors):
                place = face.frame @ Place((a, -depth, 0.0))
                shift = Place(
                    (place.origin[0] + out, place.origin[1] + out, place.origin[2] + thick), place.x, place.y
                )
                tools.append((block(b - a, depth + 1, out + 1), shift))
    recipe: Recipe = Cut(body, tuple(tools)) if tools else body
    return Part("slab", Role.SLAB, ("slab",), recipe, Place(corner), SLAB)
