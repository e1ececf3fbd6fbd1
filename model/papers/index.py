"""The first page: the job, what this is not, and the index of pages."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import partial

from ..drawing.font import width
from ..drawing.pens import Size
from ..drawing.values import Shape, Text
from ..heading import job, note, units_said
from .frame import ROW, Content, cut, lines_down, room_of, table, wrapped
from .job import Job

HEAD = ("sheet", "shows")
MOST = 3
"""Columns on a page, where no title is cut by that."""
APART = 4.0
"""mm on paper between two columns, at least."""
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
    rows = [(str(number), title) for number, title in enumerate(titles, before + 1)]
    top, title = y - ROW * (len(lines) + 1) - 6.0, "index"
    while title == "index" or rows:
        across = _across(one, rows, int((top - room.low) / ROW) - 2)
        yield Content(title, (), (*shapes, *_columns(one, across, top)))
        rows, shapes, top, title = rows[sum(map(len, across)) :], [], room.high, "index, more"


def _across(one: Job, rows: Rows, most: int) -> list[Rows]:
    """What stands in each column of a page, so many rows at most: three columns, or as many fewer as no
    title is cut."""
    for count in range(MOST, 0, -1):
        found = [rows[start : start + most] for start in range(0, min(len(rows), count * most), most)]
        if sum(map(partial(_wide, one), found)) + APART * len(found) <= room_of(one).width:
            break
    return found


def _wide(one: Job, column: Rows) -> float:
    """mm on paper that a column takes."""
    height = one.style.heights[Size.SMALL]
    return sum(max(width(row[cell], height) for row in (HEAD, *column)) + APART for cell in (0, 1))


def _columns(one: Job, across: Sequence[Rows], top: float) -> Iterator[Shape]:
    """A table in columns beside each other, from a height down, the room between them shared out."""
    room = room_of(one)
    wide = [_wide(one, column) for column in across]
    gap = (room.width - sum(wide)) / max(len(wide), 1)
    left = room.left
    for column, size in zip(across, wide, strict=True):
        yield from table(one, HEAD, column, (left, top), size)[0]
        left += size + gap
