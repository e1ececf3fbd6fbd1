"""The point that a close-up looks at."""

from __future__ import annotations

from ..errors import RibwrightError
from ..pieces import Model, Piece
from ..place import Point3
from ..units import LENGTH_HINT, Unreadable, parse_length
from .lines import placed_triangles


def point_of(model: Model, text: str) -> Point3:
    """The point a close-up looks at, mm: the middle of the first piece so named, or "x, y, z" as lengths.

    Raises RibwrightError for text that is neither.
    """
    word = text.strip().lower()
    for piece in model.pieces:
        if word in (piece.name.lower(), piece.mark.lower()):
            return _middle(piece)
    parts = text.split(",")
    try:
        x, y, z = (0.0 if part.strip() == "0" else parse_length(part) for part in parts)
    except (Unreadable, ValueError):
        raise RibwrightError(
            f'close-up: read {text!r}; would do: a piece\'s name, a mark, or a point as "across, along, up", '
            f"each {LENGTH_HINT}"
        ) from None
    return x, y, z


def _middle(piece: Piece) -> Point3:
    points, _ = placed_triangles(piece)
    x, y, z = 0.5 * (points.min(axis=0) + points.max(axis=0))
    return float(x), float(y), float(z)
