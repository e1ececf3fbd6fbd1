"""The first page: the job, what this is not, the index of pages, who lifts what, and cautions."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from ..drawing.pens import Size
from ..drawing.values import Shape, Text
from ..heading import NOTE, job, units_said
from ..order.lists.handling import CAUTION, STEEP, STEEP_FROM, Carried, lifts
from ..units import format_weight, weight_unit
from .frame import ROW, Content, cut, lines_down, room_of, table, wrapped
from .job import Job

COLUMNS = 2


def index(one: Job, titles: Sequence[str], before: int = 1) -> Iterator[Content]:
    """The first page or two. titles: of the pages after; before: how many pages stand before them."""
    room = room_of(one)
    half = room.width / COLUMNS - 4.0
    y = room.high - 6.0
    shapes: list[Shape] = [
        Text(
            (room.left, y),
            cut(one, job(one.listed.name, one.listed.terms), room.width, Size.LARGE),
            Size.LARGE,
        )
    ]
    lines = [*wrapped(one, f"{NOTE} {units_said(one.units)}", room.width)]
    shapes += lines_down(lines, (room.left, y - ROW - 2.0))
    top = y - ROW * (len(lines) + 1) - 6.0
    most = int((top - room.low) / ROW) - 2
    rows = [(str(number), title) for number, title in enumerate(titles, before + 1)]
    first, rest = rows[: COLUMNS * most], rows[COLUMNS * most :]
    for column in range(COLUMNS):
        cells = first[column * most : (column + 1) * most]
        found, _ = table(one, ("sheet", "shows"), cells, (room.left + column * (half + 8.0), top), half)
        shapes += found
    yield Content("index", (), tuple(shapes))
    if rest:
        found, _ = table(one, ("sheet", "shows"), rest, (room.left, room.high), room.width)
        yield Content("index, more", (), tuple(found))


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
    shown = COLUMNS * (int((top - room.low) / ROW) - 1)
    for start in range(0, max(len(cells), 1), shown):
        shapes: list[Shape] = [Text((room.left, room.high - 6.0), "Lifting", Size.LARGE)]
        shapes += lines_down(lines, (room.left, room.high - 6.0 - ROW - 2.0))
        for column in range(COLUMNS):
            most = shown // COLUMNS
            part = cells[start + column * most : start + (column + 1) * most]
            at = (room.left + column * room.width / COLUMNS, top)
            shapes += table(one, head, part, at, room.width / COLUMNS - 4.0)[0]
        yield Content("lifting", (), tuple(shapes))
