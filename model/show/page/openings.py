"""Doors, windows and vents at a glance: where each is, how large as framed, its colour, how it opens."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

import numpy as np

from ...measure.standing import standing_box
from ...order.lists.schedule import Schedule
from ...pieces import Piece
from ...roles import Role
from ...steps import Step
from .marked_up import capital, coloured, length, shown

WIDE, HIGH = "rough width", "rough height"
"""How what a tape must read of an opening begins."""
FILLED = (Role.LEAF, Role.SASH, Role.LOUVRE)
RIGHT = {"front": (0, 1.0), "back": (0, -1.0), "left": (1, -1.0), "right": (1, 1.0)}
"""For each wall the axis, and which way along it, that is to the right as seen from outside."""


def openings(pieces: Sequence[Piece], raising: Iterable[Step], listed: Schedule) -> str:
    """A table of the openings with their rough sizes as measured; below it, what stands on the ridge."""
    sizes: dict[str, dict[str, float]] = {}
    for read in (one for step in raising for one in step.dimensions):
        for begun in (WIDE, HIGH):
            if read.what.startswith(begun):
                sizes.setdefault(read.at, {})[begun] = read.size
    rows = "".join(_row(name, size, pieces, listed) for name, size in sizes.items() if len(size) == 2)
    table = (
        "<table><caption>Openings, rough sizes between their framing</caption><thead><tr>"
        '<th scope="col">Opening</th><th scope="col">Wide</th><th scope="col">High</th>'
        f'<th scope="col">What fills it</th></tr></thead><tbody>{rows}</tbody></table>'
    )
    return f"{table if rows else ''}{''.join(_vents(listed))}"


def _row(name: str, size: dict[str, float], pieces: Sequence[Piece], listed: Schedule) -> str:
    wide, high = (length(size[one], listed) for one in (WIDE, HIGH))
    own = [piece for piece in pieces if piece.group[-1:] == (name,)]
    filled = [piece for piece in own if piece.role in FILLED]
    colours = ", ".join(dict.fromkeys(coloured(piece.label("colour")) for piece in filled))
    way = ", ".join(dict.fromkeys(filter(None, _ways(own, filled))))
    said = f"{colours}{f' <small>{shown(way)}</small>' if way else ''}" if filled else "nothing"
    return (
        f'<tr><th scope="row">{shown(capital(name))}</th><td class="figure">{wide}</td>'
        f'<td class="figure">{high}</td><td>{said}</td></tr>'
    )


def _ways(own: Sequence[Piece], filled: Sequence[Piece]) -> Iterator[str]:
    """How it opens: hinged as labelled; sliding, the way that its rail reaches past its framing."""
    yield from (piece.label("swing") for piece in filled)
    rails, jambs = ([piece for piece in own if piece.role == role] for role in (Role.RAIL, Role.JAMB))
    if not rails or not jambs:
        return
    if len(filled) > 1:
        yield "slide apart"
        return
    axis, sign = RIGHT.get(rails[0].label("face").split()[-1], (0, 0.0))
    rail, framing = (_middle(some, axis) for some in (rails, jambs))
    if sign:
        yield f"slides {'right' if sign * (rail - framing) > 0 else 'left'}, seen from outside"


def _middle(pieces: Sequence[Piece], axis: int) -> float:
    return float(np.mean([standing_box(piece)[:, axis] for piece in pieces]))


def _vents(listed: Schedule) -> Iterator[str]:
    """What is no opening of a wall."""
    for item in listed.listed("openings"):
        if item.role == Role.RIDGE_VENT:
            many = f"{item.count} {item.role}{'s' if item.count > 1 else ''}"
            each = " each" if item.count > 1 else ""
            yield f"<p>{shown(many)}, {length(item.length, listed)} long{each}, {coloured(item.colour)}.</p>"
