"""The colour each piece is drawn in: what is painted as chosen, frame and slab as steel and concrete look."""

from __future__ import annotations

from ..catalog.colours import rgb
from ..pieces import Piece
from .page.paints import shown

Colour = tuple[int, int, int]


def drawn_colour(piece: Piece) -> Colour:
    """Red, green and blue, 0 to 255, in sRGB; the same as on the customer's page."""
    return rgb(shown(piece))


def inked(colour: Colour, strength: float) -> Colour:
    """The colour of a line on a surface: darker, lighter on what is dark already. strength: 0 to 1."""
    red, green, blue = colour
    dark = 0.3 * red + 0.6 * green + 0.1 * blue < 46
    ink = [part + 56 if dark else 0.42 * part for part in colour]
    red, green, blue = (
        round(part + strength * (line - part)) for part, line in zip(colour, ink, strict=True)
    )
    return red, green, blue
