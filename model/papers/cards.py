"""Cards: a piece of work each, stacked down the pages, several a page."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass

from ..drawing.dimensions import drawn
from ..drawing.pens import Pen, Size, Style
from ..drawing.values import Dimension, Line, Polyline, RunningDimension, Shape, Text, View
from ..place import Point2
from .frame import ROW, Content, lines_down, room_of, wrapped
from .job import Job

FIRST = 3.0
"""mm on paper from the top to the first line of text."""
BETWEEN = 3.0
"""mm on paper between a card and the line under it."""


@dataclass(frozen=True, slots=True)
class Card:
    """What is drawn of one mark. height: on paper (mm). put: from the left end of its top to what is drawn:
    views, and what lies on the paper itself."""

    name: str
    height: float
    put: Callable[[Point2], tuple[Sequence[View], Sequence[Shape]]]


def card_pages(one: Job, what: str, notes: str, cards: Iterable[Card]) -> Iterator[Content]:
    """Pages of cards from the top down, a line between them; notes: what holds for all, over each page."""
    room = room_of(one)
    said = wrapped(one, notes, room.width)
    top = room.high - ROW * len(said)
    page: list[Card] = []
    left = top - room.low
    for card in cards:
        if page and card.height > left:
            yield _page(one, what, said, top, page)
            page, left = [], top - room.low
        page.append(card)
        left -= card.height + BETWEEN
    if page:
        yield _page(one, what, said, top, page)


def _page(one: Job, what: str, said: Sequence[str], top: float, cards: Sequence[Card]) -> Content:
    room = room_of(one)
    views: list[View] = []
    shapes: list[Shape] = [*lines_down(said, (room.left, room.high - FIRST))]
    y = top
    for card in cards:
        if card is not cards[0]:
            shapes.append(Line((room.left, y + BETWEEN / 2), (room.right, y + BETWEEN / 2), Pen.DIMENSION))
        seen, more = card.put((room.left, y))
        views += seen
        shapes += more
        y -= card.height + BETWEEN
    names = [cards[0].name] if len(cards) == 1 else [cards[0].name, cards[-1].name]
    return Content(f"{what}: {' to '.join(names)}", tuple(views), tuple(shapes))


def plain(shape: Dimension | RunningDimension, view: View, style: Style) -> Iterator[Shape]:
    """A dimension as lines, arrows and words on the paper itself.

    For what is drawn broken: there the points of a dimension stand nearer than it says, so that it may not
    be one to a program that measures.
    """
    found = drawn(shape, view, style)
    yield from (Polyline(line, Pen.DIMENSION, False) for line in found.lines)
    yield from (Polyline(arrow, None, True, "#000000") for arrow in found.arrows)
    for word in found.words:
        yield Text(word.at, word.text, Size.SMALL, word.anchor, word.turn, word.patch)
