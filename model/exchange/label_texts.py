"""What geometry cannot hold, as the user-defined attributes that carry it through a file.

A piece has its role, its mark, and its labels, each an attribute of that name; one more attribute
lists the names of the labels, which tells them from what other programs add, and keeps their order.
"""

from __future__ import annotations

from collections.abc import Callable

from ..pieces import Piece

Property = tuple[str, str]

ROLE, MARK, UNITS = "role", "mark", "units"
ROW = "row"  # how many bodies a row has, on the assembly that is one
NAMES = "labels"  # the names of a piece's labels, a line each
TERMS = "asked "  # before the name of a term, on the root
ORDER = "order"  # a piece's number, where the tree of groups does not keep the order of the pieces
RESERVED = {ROLE, MARK, UNITS, NAMES, ORDER, ROW}


def properties_of(piece: Piece) -> list[Property]:
    """Role, mark and labels of a piece. Raises ValueError for a label name that is used up."""
    names = [name for name, _ in piece.labels]
    if RESERVED.intersection(names) or len(set(names)) < len(names):
        raise ValueError(f"{piece.name}: a label's name is used twice, or is one of {sorted(RESERVED)}")
    row = [(ROW, str(len(piece.row)))] if piece.row else []
    return [(ROLE, piece.role), (MARK, piece.mark), *row, *piece.labels, (NAMES, "\n".join(names))]


def labels_from(look_up: Callable[[str], str | None]) -> tuple[Property, ...]:
    """The labels of a piece, in order, from a function that looks up an attribute."""
    names = look_up(NAMES)
    return tuple((name, look_up(name) or "") for name in names.split("\n")) if names else ()


def order_in_tree(pieces: tuple[Piece, ...]) -> list[int]:
    """The numbers of the pieces in the order in which a walk through their groups meets them."""
    below: dict[tuple[str, ...], list[int | tuple[str, ...]]] = {(): []}
    for number, piece in enumerate(pieces):
        for depth in range(1, len(piece.group) + 1):
            path = piece.group[:depth]
            if path not in below:
                below[path] = []
                below[path[:-1]].append(path)
        below[piece.group].append(number)

    def walk(path: tuple[str, ...]) -> list[int]:
        return [n for item in below[path] for n in ([item] if isinstance(item, int) else walk(item))]

    return walk(())
