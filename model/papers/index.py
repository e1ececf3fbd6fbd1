"""The first page: the job, what this is not, and the index of pages."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from ..drawing.font import width
from ..drawing.pens import Size
from ..drawing.values import Shape, Text
from ..heading import job, note, units_said
from .frame import ROW, Content, cut, lines_down, room_of, table, wrapped
from .job import Job

COLUMNS = 3
HEAD = ("sheet", "shows")
APART = 4.0
"""mm on paper beside a column's titles, and beside its numbers."""
Rows = Sequence[tuple[str, str]]


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
    rows = [row for number, title in enumerate(titles, before + 1) for row in _rows(one, str(number), title)]
    top, title = y - ROW * (len(lines) + 1) - 6.0, "index"
    while title == "index" or rows:
        shown = COLUMNS * _most(one, top)
        yield Content(title, (), (*shapes, *_columns(one, rows[:shown], top)))
        rows, shapes, top, title = rows[shown:], [], room.high, "index, more"


def _rows(one: Job, number: str, title: str) -> Iterator[tuple[str, str]]:
    """A title in rows as wide as a column, its number before the first."""
    wide = room_of(one).width / COLUMNS - width(HEAD[0], one.style.heights[Size.SMALL]) - 2 * APART
    for line in wrapped(one, title, wide):
        yield number, line
        number = ""


def _most(one: Job, top: float) -> int:
    """How many rows a column has from a height down."""
    return int((top - room_of(one).low) / ROW) - 2


def _columns(one: Job, rows: Rows, top: float) -> Iterator[Shape]:
    """A table in columns beside each other, from a height down to the end of the page."""
    room, most = room_of(one), _most(one, top)
    for column in range(COLUMNS):
        part = rows[column * most : (column + 1) * most]
        at = (room.left + column * room.width / COLUMNS, top)
        yield from table(one, HEAD, part, at, room.width / COLUMNS - APART)[0]
