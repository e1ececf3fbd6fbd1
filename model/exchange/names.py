"""Names and labels made fit for files and for the screens of those who open them."""

from __future__ import annotations

from dataclasses import replace
from itertools import chain

from ..catalog.colours import is_colour
from ..pieces import Model, Piece
from ..printable import printable

PLAIN = "silver"


def with_printable_names(model: Model) -> Model:
    """The model with every text in it printable; what an unkind file held is seen for what it is."""
    return replace(
        model,
        name=printable(model.name),
        units=printable(model.units),
        pieces=tuple(_named(piece) for piece in model.pieces),
    )


def title(piece: Piece) -> str:
    """What a body shared by pieces is called: "C1 column". A bare mark would be taken for another where a
    program numbers names that come twice."""
    return " ".join(filter(None, (piece.mark, piece.role))) or piece.name


def shown_colour(colour: str) -> str:
    """The colour that a file shows for a label: its own, or a plain one where it names none."""
    return colour if is_colour(colour) else PLAIN


def _named(piece: Piece) -> Piece:
    texts = (piece.name, piece.role, piece.mark, *piece.group, *chain(*piece.labels))
    if all(map(str.isprintable, texts)):
        return piece
    return replace(
        piece,
        name=printable(piece.name),
        role=printable(piece.role),
        mark=printable(piece.mark),
        group=tuple(map(printable, piece.group)),
        labels=tuple((printable(key), printable(value)) for key, value in piece.labels),
    )
