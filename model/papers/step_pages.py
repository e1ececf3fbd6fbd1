"""The steps of the raising on paper: a picture of what stands and what is put up, its lists beside it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from ..drawing.pens import Size
from ..drawing.values import Image, Shape, Text
from ..printable import printable
from ..steps import Step, steps
from ..steps.step_text import said
from .frame import ROW, Content, Room, cut, room_of, wrapped
from .job import Job

WIDE, HIGH = 88.0, 66.0
"""mm: of a picture."""
WORD = 18.0
"""mm: of the words that stand before what is said."""
APART = 4.0
"""mm between a picture and its text, and between steps."""


@dataclass(frozen=True, slots=True)
class _Part:
    """As much of a step as goes on one page. rows: a word before and a line each, from the top.
    later: how many parts of the step came before."""

    number: int
    later: int
    title: str
    rows: tuple[tuple[str, str], ...]
    picture: bytes

    @property
    def height(self) -> float:
        """mm that it takes."""
        return max(HIGH if self.picture else 0.0, ROW * (len(self.rows) + 1.5)) + APART


def step_pages(one: Job) -> Iterator[Content]:
    """Every step in its order, as many on a page as go on it."""
    room = room_of(one)
    raising = steps(one.model)
    pictures = (one.pictured(one.model, raising) if one.pictured else ()) or [b""] * len(raising)
    page: list[_Part] = []
    for number, (step, picture) in enumerate(zip(raising, pictures, strict=True), 1):
        for part in _parts(one, room, number, step, picture):
            if page and sum(on.height for on in page) + part.height > room.height:
                yield _content(one, room, page)
                page = []
            page.append(part)
    if page:
        yield _content(one, room, page)


def _parts(one: Job, room: Room, number: int, step: Step, picture: bytes) -> Iterator[_Part]:
    """A step, in parts where it is too long for a page."""
    wide = room.width - WIDE - APART - WORD
    rows = [
        (what if first else "", line)
        for what, text in said(step, one.units)
        for first, line in _told_first(wrapped(one, printable(text), wide))
    ]
    most = int((room.height - APART) / ROW - 1.5)
    name = f"{number}. {printable(step.name)}"
    for start in range(0, max(len(rows), 1), most):
        title, shown = (f"{name}, more", b"") if start else (name, picture)
        yield _Part(number, start // most, title, tuple(rows[start : start + most]), shown)


def _told_first(lines: Sequence[str]) -> Iterator[tuple[bool, str]]:
    return ((not number, line) for number, line in enumerate(lines))


def _content(one: Job, room: Room, parts: Sequence[_Part]) -> Content:
    first, last = parts[0].number, parts[-1].number
    title = f"step {first}" if first == last else f"steps {first} to {last}"
    shapes: list[Shape] = []
    top = room.high
    for part in parts:
        shapes += _drawn(one, room, part, top)
        top -= part.height
    return Content(f"{title}, more" if parts[0].later else title, (), tuple(shapes))


def _drawn(one: Job, room: Room, part: _Part, top: float) -> Iterator[Shape]:
    """A part of a step, from a height down: its picture on the left, its name and lists on the right."""
    if part.picture:
        yield Image((room.left, top - HIGH), WIDE, HIGH, part.picture)
    left = room.left + WIDE + APART
    yield Text((left, top - ROW), cut(one, part.title, room.right - left, Size.PLAIN), Size.PLAIN)
    for number, (what, line) in enumerate(part.rows):
        base = top - ROW * (number + 2.5)
        if what:
            yield Text((left, base), what)
        yield Text((left + WORD, base), line)
