"""The groups that a page turns on and off, in the order they are built."""

from __future__ import annotations

from ...pieces import Piece
from ...roles import ROOF_SHEETS, list_of
from .paints import FRAME

GROUPS = (
    "Slab",
    "Frame",
    "Girts, purlins, framing",
    "Wall sheets",
    "Roof sheets",
    "Insulation",
    "Trims",
    "Closures",
    "Screws",
    "Doors, windows, vents",
    "Other",
)
_BY_LIST = {
    "slab": "Slab",
    "members": "Girts, purlins, framing",
    "sheets": "Wall sheets",
    "insulation": "Insulation",
    "trims": "Trims",
    "closures": "Closures",
    "screws": "Screws",
    "openings": "Doors, windows, vents",
}
SKIN = ("Wall sheets", "Roof sheets", "Insulation", "Trims", "Closures")
"""What is made clear to look through."""


def group_of(piece: Piece) -> int:
    """The number of a piece's group."""
    if piece.role in FRAME:
        name = "Frame"
    elif piece.role in ROOF_SHEETS:
        name = "Roof sheets"
    else:
        name = _BY_LIST.get(list_of(piece.role) or "", "Other")
    return GROUPS.index(name)
