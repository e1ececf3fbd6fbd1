"""The order in which a building goes up, as the page shows it: a step at a time, with what to mind."""

from __future__ import annotations

from collections.abc import Sequence

from ...order.lists.schedule import Schedule
from ...pieces import Piece
from ...steps import Dimension, Step
from ...steps.words import FOLD, bent
from ...units import format_length
from .marked_up import capital, shown


def step_numbers(pieces: Sequence[Piece], steps: Sequence[Step]) -> list[int]:
    """For each piece the step in which it comes; the first for what is in none."""
    numbers = {piece: number for number, step in enumerate(steps) for piece in step.pieces}
    return [numbers.get(piece, 0) for piece in pieces]


def steps_text(steps: Sequence[Step], listed: Schedule) -> str:
    """A list: what goes up in each step, what is folded over, what a tape must read, what to mind."""
    return f"<ol>{''.join(_step(step, listed) for step in steps)}</ol>"


def _step(step: Step, listed: Schedule) -> str:
    count = sum(piece.count for piece in step.pieces)
    bodies = f" <small>{count:,} {'piece' if count == 1 else 'pieces'}</small>" if count else ""
    read = "".join(f"<li>{_reading(one, listed)}</li>" for one in step.dimensions)
    ends = ", ".join(f"{count} {what} {mark}".strip() for count, mark, what in bent(step))
    fold = f"<p>{shown(capital(FOLD))}: {shown(ends)}</p>" if ends else ""
    mind = "".join(f"<li>{shown(one.text)} <small>{shown(one.source)}</small></li>" for one in step.cautions)
    return (
        f"<li><b>{shown(capital(step.name))}</b>{bodies}"
        f"{fold}{f'<p>The tape must read</p><ul>{read}</ul>' if read else ''}"
        f"{f'<p>Mind</p><ul>{mind}</ul>' if mind else ''}</li>"
    )


def _reading(one: Dimension, listed: Schedule) -> str:
    size = format_length(one.size, listed.units) + (" mm" if listed.units == "mm" else "")
    return shown(f"{one.what}, {one.at}: {size}" if one.at else f"{one.what}: {size}")
