"""The frame of every page: title block, the room inside it, scale bars, and texts laid out in lines."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import repeat

from ..drawing.font import width
from ..drawing.pens import Pen, Size
from ..drawing.values import Line, Page, Polyline, Shape, Text, View
from ..heading import job, short, units_said
from ..place import Point2
from .job import Job
from .scales import bar_length

BLOCK = 20.0
"""mm: height of the title block."""
UNDER_HEAD = 0.8
"""mm: how much farther the first row of a table stands under its head, for the line between them."""
PAD = 3.0
"""mm between a line of the frame and text."""


@dataclass(frozen=True, slots=True)
class Room:
    """The part of a page inside frame and title block (mm)."""

    left: float
    low: float
    right: float
    high: float

    @property
    def width(self) -> float:
        """Across."""
        return self.right - self.left

    @property
    def height(self) -> float:
        """Up."""
        return self.high - self.low


@dataclass(frozen=True, slots=True)
class Content:
    """What goes on a page besides its frame. low: the lowest place that it takes (mm). listed: how many texts
    had no room on its drawing."""

    title: str
    views: tuple[View, ...] = ()
    shapes: tuple[Shape, ...] = ()
    low: float = 0.0
    listed: int = 0


def room_of(one: Job) -> Room:
    """What a page has inside its frame, a little away from it."""
    paper = one.paper
    edge = paper.margin + PAD
    return Room(edge, paper.margin + BLOCK + PAD, paper.width - edge, paper.height - edge)


def framed(one: Job, contents: Sequence[Content]) -> tuple[Page, ...]:
    """Pages with frames, title blocks and numbers."""
    return tuple(
        Page(
            content.title,
            one.paper,
            one.units,
            content.views,
            (*content.shapes, *_frame(one), *_block(one, content, f"page {number} of {len(contents)}")),
        )
        for number, content in enumerate(contents, 1)
    )


def _frame(one: Job) -> Iterator[Shape]:
    paper = one.paper
    left, low = paper.margin, paper.margin
    right, high = paper.width - paper.margin, paper.height - paper.margin
    yield Polyline(((left, low), (right, low), (right, high), (left, high)), Pen.FRAME)
    yield Line((left, low + BLOCK), (right, low + BLOCK), Pen.FRAME)


def _block(one: Job, content: Content, number: str) -> Iterator[Shape]:
    """Three rows: the job and the page; the units; what this is not."""
    paper = one.paper
    left, right, low = paper.margin + PAD, paper.width - paper.margin - PAD, paper.margin
    name, title = job(one.listed.name, one.listed.terms), content.title
    room = right - left - width(number, one.style.heights[Size.SMALL]) - 6 * PAD
    yield Text((right, low + 2 * 6.0 + 2.4), number, anchor="right")
    yield Text((left, low + 2 * 6.0 + 2.4), cut(one, title, room * 0.55))
    yield Text((left + room * 0.58, low + 2 * 6.0 + 2.4), cut(one, name, room * 0.42))
    yield Text((left, low + 6.0 + 2.4), units_said(one.units))
    yield Text((left, low + 2.4), short(braced=one.listed.braced))
    yield Text((right, low + 2.4), "by ribwright", anchor="right")


def cut(one: Job, text: str, room: float, size: Size = Size.SMALL) -> str:
    """A text as far as it goes into a room, with three dots where it does not."""
    height = one.style.heights[size]
    if width(text, height) <= room:
        return text
    while text and width(text + "...", height) > room:
        text = text[:-1]
    return text + "..."


def wrapped(one: Job, text: str, room: float, size: Size = Size.SMALL) -> list[str]:
    """A text in lines of a room's width, broken between words; a word that is longer is cut."""
    return flowed(one, text, repeat(room), size)


def flowed(one: Job, text: str, rooms: Iterable[float], size: Size = Size.SMALL) -> list[str]:
    """A text in lines, each as wide as its own room (mm)."""
    height = one.style.heights[size]
    ahead = iter(rooms)
    lines: list[str] = []
    room = 0.0
    for word in text.split():
        if lines and width(f"{lines[-1]} {word}", height) <= room:
            lines[-1] += f" {word}"
        else:
            room = next(ahead)
            lines.append(cut(one, word, room, size))
    return lines


def lines_down(one: Job, lines: Sequence[str], at: Point2) -> list[Text]:
    """Lines of text from a point down; at: the first one's baseline."""
    return [Text((at[0], at[1] - one.style.row * i), line) for i, line in enumerate(lines)]


def table(
    one: Job, head: Sequence[str], rows: Sequence[Sequence[str]], at: Point2, room: float
) -> tuple[list[Shape], float]:
    """A table with a line under its head, from a point down; and the height it takes.

    Columns are as wide as their longest cell; the last is cut where the room ends.
    """
    if not rows:
        return [], 0.0
    height = one.style.heights[Size.SMALL]
    wide = [max(width(row[i], height) for row in (head, *rows)) + 4.0 for i in range(len(head))]
    starts = [at[0] + sum(wide[:i]) for i in range(len(head))]
    last = at[0] + room - starts[-1]
    shapes: list[Shape] = []
    for number, row in enumerate((head, *rows)):
        y = at[1] - height - one.style.row * number - (UNDER_HEAD if number else 0.0)
        cells = [*row[:-1], cut(one, row[-1], last)]
        shapes += [Text((x, y), cell) for x, cell in zip(starts, cells, strict=True) if cell]
    y = at[1] - height - 1.4
    shapes.append(Line((at[0], y), (min(at[0] + room, starts[-1] + wide[-1]), y), Pen.DIMENSION))
    return shapes, one.style.row * (len(rows) + 1) + UNDER_HEAD


def grid(one: Job, cells: Sequence[str], at: Point2, room: float) -> tuple[list[Shape], float]:
    """Cells in rows, from left to right, in columns as wide as the longest; and the height they take."""
    if not cells:
        return [], 0.0
    wide = max(width(cell, one.style.heights[Size.SMALL]) for cell in cells) + 4.0
    across = max(1, int((room + 4.0) / wide))
    shapes: list[Shape] = [
        Text((at[0] + wide * (number % across), at[1] - one.style.row * (number // across + 1)), cell)
        for number, cell in enumerate(cells)
    ]
    return shapes, one.style.row * -(-len(cells) // across)


def titled(one: Job, view: View, at: Point2, size: Size = Size.LARGE, *, under: bool = False) -> list[Shape]:
    """The title of a view with its scale and a bar to it, from a point to the right, or under the title."""
    heights = one.style.heights
    x = at[0] + (0.0 if under else width(view.name, heights[size]) + 6.0)
    scale = Text((x, at[1] - one.style.row * under), f"scale {view.scale.name}")
    length = bar_length(view.scale, one.units, 30.0 if size is Size.LARGE else 12.0)
    x += width(scale.text, heights[Size.SMALL]) + 6.0
    end, y = x + length / view.scale.ratio, scale.at[1] + 0.5
    bar: list[Shape] = [
        Line((x, y), (end, y), Pen.OUTLINE),
        *(Line((a, y - 0.8), (a, y + 0.8), Pen.OUTLINE) for a in (x, (x + end) / 2, end)),
        Text((end + 2.0, scale.at[1]), one.length(length) + ("" if one.units == "ft-in" else " mm")),
    ]
    return [Text(at, view.name, size), scale, *bar]


def moved(view: View, at: Point2) -> View:
    """A view with its origin elsewhere on the page."""
    return replace(view, at=at)
