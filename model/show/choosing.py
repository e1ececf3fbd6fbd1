"""What of a model is looked at: pieces by group, role, name or mark, and the point of a close-up."""

from __future__ import annotations

from collections.abc import Sequence

from ..errors import RibwrightError
from ..pieces import Model, Piece
from ..place import Point3
from ..units import LENGTH_HINT, Unreadable, parse_length
from .lines import placed_triangles


def chosen(model: Model, only: Sequence[str]) -> tuple[Piece, ...]:
    """The pieces that any of the words name; all pieces when there are no words.

    A word is a role ("wall sheet"), a group or the path to one ("roof", "walls/front"), a piece's
    name or a mark; case does not matter. Raises RibwrightError for a word that names nothing.
    """
    if not only:
        return model.pieces
    words = [word.strip().lower() for word in only]
    for word in words:
        if not any(_is_named(piece, word) for piece in model.pieces):
            raise RibwrightError(f"nothing is called {word!r} here; there are: {', '.join(_names(model))}")
    return tuple(piece for piece in model.pieces if any(_is_named(piece, word) for word in words))


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


def _is_named(piece: Piece, word: str) -> bool:
    group = [name.lower() for name in piece.group]
    path = "/".join(group)
    return word in (
        piece.role.lower(),
        piece.name.lower(),
        piece.mark.lower(),
        *group,
    ) or f"{path}/".startswith(f"{word}/")


def _names(model: Model) -> list[str]:
    """Roles and groups, each once, in the model's order."""
    every = [name for piece in model.pieces for name in ("/".join(piece.group), piece.role)]
    return list(dict.fromkeys(every))


def _middle(piece: Piece) -> Point3:
    points, _ = placed_triangles(piece)
    x, y, z = 0.5 * (points.min(axis=0) + points.max(axis=0))
    return float(x), float(y), float(z)
