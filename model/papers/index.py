"""The first page: the job, what this is not, the index of pages, who lifts what, and cautions."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from ..drawing.pens import Size
from ..drawing.values import Shape, Text
from ..heading import job, note, units_said
from ..order.lists.handling import CAUTION, STEEP, STEEP_FROM, Carried, lifts
from ..units import format_weight, weight_unit
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


def people(one: Job) -> Iterator[Content]:
    """What takes more than one person, and what to mind."""
    room = room_of(one)
    units = one.units
    cells = [
        (
            lift.mark,
            lift.what,
            str(lift.count),
            format_weight(lift.weight, units),
            str(lift.people or "machine"),
        )
        for lift in lifts(one.listed, Carried())
    ]
    head = ("mark", "what", "count", weight_unit(units), "people")
    cautions = [CAUTION, *([STEEP] if one.listed.pitch > STEEP_FROM else [])]
    lines = [line for caution in cautions for line in wrapped(one, caution, room.width)]
    top = room.high - 10.0 - ROW * (len(lines) + 1)
    shown = COLUMNS * (int((top - room.low) / ROW) - 2)
    for start in range(0, max(len(cells), 1), shown):
        yield Content(
            "lifting",
            (),
            (
                Text((room.left, room.high - 6.0), "Lifting", Size.LARGE),
                *lines_down(lines, (room.left, room.high - 6.0 - ROW - 2.0)),
                *_columns(one, head, cells[start : start + shown], top),
            ),
        )
