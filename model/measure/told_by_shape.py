"""What a piece is by its shape alone: for files from a program that keeps solids and no word of ours."""

from __future__ import annotations

from dataclasses import replace

from OCP.TopoDS import TopoDS_Solid

from ..pieces import Model
from ..roles import Role
from .faces import body
from .member import measure_member
from .screw import screw_size
from .section_shape import measure_section
from .sheet import measure_sheet
from .sheet_axes import NotASheet

THICKEST_SHEET = 2.0
"""mm; ribbed sheet is thinner. Common practice, no source."""
WIDE = 4.0
"""A sheet is at least so many times as wide as its ribs are high: a folded J is not. Ours."""
THINNEST_WALL = 0.7
"""mm; framing has thicker walls, trim thinner ones. Common practice, no source."""
SLENDER = 3.0
"""A member is at least so many times as long as its section is deep. Ours."""


def told_by_shape(model: Model) -> Model:
    """The model with a role for every piece that has none: "sheet", "member", "screw" or "unknown".

    A role is given where the shape is sure, and never guessed: a solid bar, round or not, may be steel,
    timber or glass, a folded strip of thin sheet any trim.
    """
    roles: dict[TopoDS_Solid, str] = {}
    for piece in model.pieces:
        if not piece.role and piece.solid not in roles:
            roles[piece.solid] = told(piece.solid)
    return replace(
        model, pieces=tuple(p if p.role else replace(p, role=roles[p.solid]) for p in model.pieces)
    )


def told(solid: TopoDS_Solid) -> str:
    """What a body is."""
    if screw_size(solid):
        return Role.SCREW.value
    if _is_member(solid):
        return Role.MEMBER.value
    return Role.SHEET.value if _is_sheet(solid) else Role.UNKNOWN.value


def _is_member(solid: TopoDS_Solid) -> bool:
    """A known section of framing, as long as a member is."""
    found = measure_section(solid)
    if found is None or found.shape.shape in ("plate", "rod") or found.shape.thickness < THINNEST_WALL:
        return False
    return measure_member(solid).length > SLENDER * found.shape.depth


def _is_sheet(solid: TopoDS_Solid) -> bool:
    """Thin, with major ribs."""
    if body(solid).curved:
        return False
    try:
        sheet = measure_sheet(solid)
    except NotASheet:
        return False
    ribbed = bool(sheet.majors) and sheet.width > WIDE * max(rib.height for rib in sheet.majors)
    return ribbed and sheet.thickness < THICKEST_SHEET
