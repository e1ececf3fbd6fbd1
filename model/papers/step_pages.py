"""The steps of the raising on paper: a picture of what stands and what is put up, its lists beside it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import chain, repeat
from math import ceil

from ..drawing.pens import Size
from ..drawing.values import Image, Shape, Text
from ..printable import printable
from ..steps import Step
from ..steps.step_text import said
from .frame import Content, Room, cut, flowed, room_of
from .job import Job

WIDE, HIGH = 64.0, 48.0
"""mm: of a picture."""
WORD = 18.0
"""mm: of the words that stand before what is said."""
APART = 4.0
"""mm between a picture and its text, and between steps."""
HEAD = 1.5
"""Rows that the name of a step takes."""
FEWEST = 5
"""Rows of a step that stand together at the foot of a page, unless it has less."""
UNDER = 3
"""Rows that go on under a picture at least: one alone there would be taken for the picture's own words, or
not be read. Where a step has less left, all that is said of it stands beside its picture."""


@dataclass(frozen=True, slots=True)
class _Told:
    """A step and all that is said of it. rows: a word before and a line each. beside: how many of them stand
    beside its picture; the others go on under it. row: mm from one to the next."""

    number: int
    name: str
    rows: tuple[tuple[str, str], ...]
    picture: bytes
    beside: int
    row: float


@dataclass(frozen=True, slots=True)
class _Part:
    """As much of a step as goes on one page. rows: from and up to which of its own."""

    step: _Told
    start: int
    end: int

    @property
    def picture(self) -> bytes:
        """With the first of them."""
        return b"" if self.start else self.step.picture

    @property
    def height(self) -> float:
        """mm that it takes."""
        rows = self.end - self.start
        return max(HIGH if self.picture else 0.0, self.step.row * (rows + HEAD)) + APART


def step_pages(one: Job) -> Iterator[Content]:
    """Every step in its order, as much on a page as goes on it."""
    room = room_of(one)
    raising = one.raising
    pictures = (one.pictured(one.model, raising) if one.pictured else ()) or [b""] * len(raising)
    page: list[_Part] = []
    for number, (step, picture) in enumerate(zip(raising, pictures, strict=True), 1):
        told, start = _told(one, room, number, step, picture), 0
        while not start or start < len(told.rows):
            left = room.height + APART - sum(part.height for part in page)
            part = _Part(told, start, start + _fitting(told, start, left))
            least = _Part(told, start, start + min(FEWEST, len(told.rows) - start)).height
            if page and left < max(least, part.height):
                yield _content(one, room, page)
                page = []
                continue
            page.append(part)
            start = max(part.end, 1)
    if page:
        yield _content(one, room, page)


def _told(one: Job, room: Room, number: int, step: Step, picture: bytes) -> _Told:
    high = HIGH + 1.0 + one.style.heights[Size.SMALL]
    beside = ceil(high / one.style.row - HEAD - 1) if picture else 0
    rows = _rows(one, room, step, beside)
    if picture and beside < len(rows) < beside + UNDER:
        rows = _rows(one, room, step)
        beside = len(rows)
    return _Told(number, printable(step.name), tuple(rows), picture, beside, one.style.row)


def _rows(one: Job, room: Room, step: Step, beside: int | None = None) -> list[tuple[str, str]]:
    """All that is said of a step, in lines: the first so many of them as wide as the room beside a picture,
    or all."""
    wide = room.width - WORD
    narrow = wide - WIDE - APART
    rows: list[tuple[str, str]] = []
    for what, text in said(step, one.units):
        widths = repeat(narrow) if beside is None else chain([narrow] * (beside - len(rows)), repeat(wide))
        lines = flowed(one, printable(text), widths)
        rows += [("" if number else what, line) for number, line in enumerate(lines)]
    return rows


def _fitting(told: _Told, start: int, left: float) -> int:
    """How many of a step's rows go into what is left of a page (mm), whole sentences where any does; under a
    picture more than one or two, or none."""
    most = max(0, min(len(told.rows) - start, int((left - APART) / told.row - HEAD)))
    few = range(told.beside + 1, told.beside + UNDER) if told.picture and not start else range(0)
    goes = [n for n in range(1, most + 1) if n not in few]
    ends = [n for n in goes if start + n == len(told.rows) or told.rows[start + n][0]]
    return max(ends or goes, default=most)


def _content(one: Job, room: Room, parts: Sequence[_Part]) -> Content:
    first, last = parts[0].step.number, parts[-1].step.number
    title = f"step {first}" if first == last else f"steps {first} to {last}"
    shapes: list[Shape] = []
    top = room.high
    for part in parts:
        shapes += _drawn(one, room, part, top)
        top -= part.height
    return Content(f"{title}, more" if parts[0].start else title, (), tuple(shapes))


def _drawn(one: Job, room: Room, part: _Part, top: float) -> Iterator[Shape]:
    """A part of a step, from a height down: its picture on the left, its name and lists beside it and under
    it."""
    past, row = WIDE + APART if part.picture else 0.0, one.style.row
    if part.picture:
        yield Image((room.left, top - HIGH), WIDE, HIGH, part.picture)
    title = f"{part.step.number}. {part.step.name}" + (", more" if part.start else "")
    left = room.left + past
    yield Text((left, top - row), cut(one, title, room.right - left, Size.PLAIN), Size.PLAIN)
    for number, (what, line) in enumerate(part.step.rows[part.start : part.end]):
        left, base = room.left + (past if number < part.step.beside else 0.0), top - row * (number + HEAD + 1)
        if what:
            yield Text((left, base), what)
        yield Text((left + WORD, base), line)
