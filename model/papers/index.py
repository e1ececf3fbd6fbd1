"""The first page: the job, what this is not, and the index of pages."""

from __future__ import annotations

from collections import deque
from collections.abc import Iterator, Sequence

from ..drawing.font import width
from ..drawing.pens import Size
from ..drawing.values import Shape, Text
from ..heading import job, note, units_said
from .frame import Content, cut, lines_down, room_of, table, wrapped
from .job import Job

COLUMNS = 3
HEAD = ("sheet", "shows")
APART = 4.0
"""mm on paper beside a column's titles, and beside its numbers."""
Row = tuple[str, str]


def index(one: Job, titles: Sequence[str], before: int = 1) -> Iterator[Content]:
    """The first page, and more where the pages after are many. titles: of those; before: how many pages
    stand before them."""
    room = room_of(one)
    name = cut(one, job(one.listed.name, one.listed.terms), room.width, Size.LARGE)
    y = room.high - 6.0
    lines = wrapped(one, f"{note(braced=one.listed.braced)} {units_said(one.units)}", room.width)
    shapes: list[Shape] = [
        Text((room.left, y), name, Size.LARGE),
        *lines_down(one, lines, (room.left, y - one.style.row - 2.0)),
    ]
    entries = deque(list(_rows(one, str(number), title)) for number, title in enumerate(titles, before + 1))
    top, title = y - one.style.row * (len(lines) + 1) - 6.0, "index"
    while title == "index" or entries:
        most = _most(one, top)
        columns = [_taken(entries, most) for _ in range(COLUMNS)]
        yield Content(title, (), (*shapes, *_drawn(one, columns, top)))
        shapes, top, title = [], room.high, "index, more"


def _taken(entries: deque[list[Row]], most: int) -> list[Row]:
    """The rows of a column: of as many titles as go whole into it."""
    rows: list[Row] = []
    while entries and (not rows or len(rows) + len(entries[0]) <= most):
        rows += entries.popleft()
    return rows


def _rows(one: Job, number: str, title: str) -> Iterator[Row]:
    """A title in rows as wide as a column, its number before the first."""
    wide = room_of(one).width / COLUMNS - width(HEAD[0], one.style.heights[Size.SMALL]) - 2 * APART
    for line in wrapped(one, title, wide):
        yield number, line
        number = ""


def _most(one: Job, top: float) -> int:
    """How many rows a column has from a height down."""
    return int((top - room_of(one).low) / one.style.row) - 2


def _drawn(one: Job, columns: Sequence[Sequence[Row]], top: float) -> Iterator[Shape]:
    """Tables beside each other, from a height down."""
    room = room_of(one)
    for number, rows in enumerate(columns):
        at = (room.left + number * room.width / COLUMNS, top)
        yield from table(one, HEAD, rows, at, room.width / COLUMNS - APART)[0]
