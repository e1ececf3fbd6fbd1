"""The colour each piece is drawn in: its own where it is painted, its role's where it is not."""

from __future__ import annotations

from ..catalog.colours import is_colour, rgb
from ..pieces import Piece

Colour = tuple[int, int, int]

UNPAINTED: Colour = (168, 172, 176)


def drawn_colour(piece: Piece) -> Colour:
    """Red, green and blue, 0 to 255, in sRGB."""
    colour = piece.label("colour")
    return rgb(colour) if is_colour(colour) else UNPAINTED
