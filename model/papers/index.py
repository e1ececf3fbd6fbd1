"""The first page: the job, what this is not, and the index of pages."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from ..drawing.pens import Size
from ..drawing.values import Shape, Text
from ..heading import job, note, units_said
from .frame import ROW, Content, cut, lines_down, room_of, table, wrapped
from .job import Job

COLUMNS = 2


def index(one: Job, titles: Sequence[str], before: int = 1) -> Iterator[Content]:
    """The first page, and more where the pages after are many. titles: of those; before: how many pages
    stand before them."""
    room = room_of(one)
    name = cut(one, job(one.listed.name, one.listed.terms), room.width, Size.LARGE)
    y = room.high - 6.0
    lines = wrapped(one, f"{note(braced=one.listed.braced)} {units_said(one.units)}", room.width)
    shapes: list[Shape] = [
        Text((room.left, y), name, Size.LARGE),
        *lines_down(lines, (room.left, y - ROW - 2.0)),
    ]
    rows = [(str(number), title) for number, title in enumerate(titles, before + 1)]
    top, title = y - ROW * (len(lines) + 1) - 6.0, "index"
    while title == "index" or rows:
        shown = COLUMNS * (int((top - room.low) / ROW) - 2)
        yield Content(title, (), (*shapes, *_columns(one, ("sheet", "shows"), rows[:shown], top)))
        rows, shapes, top, title = rows[shown:], [], room.high, "index, more"


def _columns(one: Job, head: Sequence[str], rows: Sequence[Sequence[str]], top: float) -> Iterator[Shape]:
    """A table in columns beside each other, from a height down to the end of the page."""
    room = room_of(one)
    most = int((top - room.low) / ROW) - 2
    for column in range(COLUMNS):
        part = rows[column * most : (column + 1) * most]
        at = (room.left + column * room.width / COLUMNS, top)
        yield from table(one, head, part, at, room.width / COLUMNS - 4.0)[0]
