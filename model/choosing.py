"""Which pieces of a model are meant: by words for groups, roles, names and marks."""

from __future__ import annotations

from collections.abc import Sequence

from .errors import RibwrightError
from .pieces import Model, Piece


def chosen(model: Model, only: Sequence[str], without: Sequence[str] = ()) -> tuple[Piece, ...]:
    """The pieces that any word of `only` names, all when it is empty, less those that one of `without` does.

    A word is a role ("wall sheet"), a group or the path to one ("roof", "walls/front"), a piece's
    name or a mark; case does not matter. Raises RibwrightError for a word that names nothing, and where
    nothing is left.
    """
    wanted, unwanted = _words(model, only), _words(model, without)
    left = tuple(
        piece
        for piece in model.pieces
        if (not wanted or _named_by(piece, wanted)) and not _named_by(piece, unwanted)
    )
    if (only or without) and not left:
        raise RibwrightError("nothing is left of the building: every piece was left out")
    return left


def _words(model: Model, texts: Sequence[str]) -> list[str]:
    words = [text.strip().lower() for text in texts]
    for word in words:
        if not any(_is_named(piece, word) for piece in model.pieces):
            raise RibwrightError(f"nothing is called {word!r} here; there are: {', '.join(_names(model))}")
    return words


def _named_by(piece: Piece, words: Sequence[str]) -> bool:
    return any(_is_named(piece, word) for word in words)


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
