"""The punch list on paper: a line a step, what it put up, what is looked for, room for what is left to do."""

from __future__ import annotations

from collections.abc import Iterator

from ..printable import printable
from ..steps.punch import LAST, LOOKED_FOR, Punch, punch
from .checklists import TICK, Section, checklist
from .frame import Content
from .job import Job

LEFT = "left to do, by whom"


def punch_list(one: Job) -> Iterator[Content]:
    """The pages of the punch list."""
    lines = list(punch(one.raising))
    put_up = [name for name in LOOKED_FOR if any(name in line.counts for line in lines)]
    looked_for = tuple(f"{name.capitalize()}: {LOOKED_FOR[name]}." for name in put_up)
    head = ("", "step", "put up", LEFT)
    last = tuple((TICK, text, "") for text in LAST)
    yield from checklist(
        one,
        "punch list",
        [
            Section("Punch list", head, (0.03, 0.32, 0.3, 0.35), tuple(map(_row, lines)), looked_for),
            Section("At the end", ("", "everywhere", LEFT), (0.03, 0.62, 0.35), last),
        ],
    )


def _row(line: Punch) -> tuple[str, ...]:
    counts = ", ".join(f"{count} {_one(name) if count == 1 else name}" for name, count in line.counts.items())
    return TICK, f"{line.number}. {printable(line.step)}", counts, ""


def _one(name: str) -> str:
    return name.removesuffix("s")
