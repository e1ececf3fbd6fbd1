"""Lists, to read or to tick and write on: sections of rows that flow down the pages, with room for a pen."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

from ..drawing.pens import Pen, Size
from ..drawing.values import Line, Polyline, Shape, Text
from .frame import Content, Room, room_of, wrapped
from .job import Job

TICK = "tick"
"""A cell that is a box to tick."""
BOX = 3.6
"""mm on paper: of a side of such a box."""
NAME = 11.0
"""mm on paper that the name of a section takes."""
BETWEEN = 3.0
"""mm on paper between two cells, and between two sections."""
PADDING, TO_READ = 1.0, 0.6
"""mm on paper under the text of a row: of one to tick, and of one that is only read."""


@dataclass(frozen=True, slots=True)
class Section:
    """A heading, what is to be minded under it, and a table. shares: of the room's width, a share a column;
    an empty cell is room to write in."""

    name: str
    head: tuple[str, ...]
    shares: tuple[float, ...]
    rows: tuple[tuple[str, ...], ...]
    notes: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class _Band:
    """What is not parted between two pages. height: mm on paper. cells: a column's lines each, where each
    begins; ruled: whether a line stands under it. heads: what stands over it again on a new page."""

    height: float
    cells: tuple[tuple[float, tuple[str, ...]], ...]
    size: Size = Size.SMALL
    ruled: bool = False
    heads: tuple[_Band, ...] = field(default=())


def checklist(one: Job, title: str, sections: Sequence[Section]) -> Iterator[Content]:
    """The pages of a list. A row stays whole; its section's name and head stand over it on every page."""
    room = room_of(one)
    pages: list[list[_Band]] = [[]]
    left = room.height
    for section in sections:
        for band in _bands(one, room, section):
            least = band.height if band.heads else band.height + 4 * one.style.row
            if pages[-1] and least > left:
                pages.append(list(band.heads))
                left = room.height - sum(head.height for head in band.heads)
            pages[-1].append(band)
            left -= band.height
    for number, bands in enumerate(pages, 1):
        part = "" if len(pages) == 1 else f", part {number} of {len(pages)}"
        yield Content(title + part, (), tuple(_drawn(one, room, bands)))


def _bands(one: Job, room: Room, section: Section) -> Iterator[_Band]:
    """The name with the head under it, then the rows."""
    name = _Band(NAME, ((room.left, (section.name,)),), Size.LARGE)
    notes = [line for note in section.notes for line in wrapped(one, note, room.width)]
    starts = [room.left + room.width * sum(section.shares[:i]) for i in range(len(section.shares))]
    heads = _Band(
        one.style.row + TO_READ,
        tuple((x, (cell,)) for x, cell in zip(starts, section.head, strict=True)),
        ruled=True,
    )
    said = _Band(one.style.row * len(notes) + PADDING, ((room.left, tuple(notes)),))
    yield name
    yield from [_following(said, name)] if notes else []
    yield from [_following(heads, name)] if section.rows else []
    for row in section.rows:
        cells = []
        for x, share, cell in zip(starts, section.shares, row, strict=True):
            lines = (TICK,) if cell == TICK else wrapped(one, cell, room.width * share - BETWEEN)
            cells.append((x, tuple(lines)))
        padding = PADDING if TICK in row else TO_READ
        high = one.style.row * max(len(lines) for _, lines in cells) + padding
        yield _Band(high, tuple(cells), ruled=True, heads=(name, heads))


def _following(band: _Band, name: _Band) -> _Band:
    return _Band(band.height, band.cells, band.size, band.ruled, (name,))


def _drawn(one: Job, room: Room, bands: Sequence[_Band]) -> Iterator[Shape]:
    y, row = room.high, one.style.row
    for band in bands:
        first = NAME - 2.6 if band.size is Size.LARGE else row
        for x, lines in band.cells:
            for number, line in enumerate(lines):
                base = y - first - row * number + 0.7
                yield _box(x, base) if line == TICK else Text((x, base), line, band.size)
        y -= band.height
        if band.ruled:
            yield Line((room.left, y), (room.right, y), Pen.DIMENSION)


def _box(x: float, base: float) -> Shape:
    low, high = base - 0.4, base - 0.4 + BOX
    return Polyline(((x, low), (x + BOX, low), (x + BOX, high), (x, high)), Pen.DIMENSION)
