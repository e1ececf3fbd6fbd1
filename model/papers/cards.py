"""Cards: a piece of work each, down the pages, two beside each other where both are narrow."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from ..drawing.dimensions import drawn
from ..drawing.pens import Pen, Size, Style
from ..drawing.values import Dimension, Line, Polyline, RunningDimension, Shape, Text, View
from ..place import Point2
from .frame import ROW, Content, lines_down, room_of, wrapped
from .job import Job

FIRST = 3.0
"""mm on paper from the top to the first line of text."""
BETWEEN = 3.0
"""mm on paper between a card and the line under it, and on either side of one between two."""


@dataclass(frozen=True, slots=True)
class Card:
    """What is drawn of one mark. narrow: whether it takes half of a page's width. height: on paper (mm).
    put: from the left end of its top to what is drawn: views, and what lies on the paper itself. more:
    whether it shows more of what the card before it does, so that the two stand beside each other."""

    name: str
    narrow: bool
    height: float
    put: Callable[[Point2], tuple[Sequence[View], Sequence[Shape]]]
    more: bool = False


@dataclass(frozen=True, slots=True)
class _Row:
    """Cards beside each other: two narrow ones at most."""

    cards: tuple[Card, ...]

    @property
    def height(self) -> float:
        return max(card.height for card in self.cards)

    def takes(self, card: Card, after: Card | None) -> bool:
        """Whether one more goes beside what stands there, and does not itself want the one after it there."""
        two = len(self.cards) == 1 and self.cards[0].narrow and card.narrow
        return two and (card.more or after is None or not after.more)


def half(one: Job) -> float:
    """mm on paper: the width of a narrow card."""
    return room_of(one).width / 2 - BETWEEN


def card_pages(one: Job, what: str, notes: str, cards: Iterable[Card]) -> Iterator[Content]:
    """Pages of cards from the top down, a line between them; notes: what holds for all, over each page."""
    room = room_of(one)
    said = wrapped(one, notes, room.width)
    top = room.high - ROW * len(said)
    page: list[_Row] = []
    left = top - room.low
    for row in _rows(cards):
        if page and row.height > left:
            yield _page(one, what, said, top, page)
            page, left = [], top - room.low
        page.append(row)
        left -= row.height + BETWEEN
    if page:
        yield _page(one, what, said, top, page)


def _rows(cards: Iterable[Card]) -> Iterator[_Row]:
    row = _Row(())
    for card, after in pairwise((*cards, None)):
        if card is None:
            continue
        if row.takes(card, after):
            row = _Row((*row.cards, card))
            continue
        if row.cards:
            yield row
        row = _Row((card,))
    if row.cards:
        yield row


def _page(one: Job, what: str, said: Sequence[str], top: float, rows: Sequence[_Row]) -> Content:
    room = room_of(one)
    middle = (room.left + room.right) / 2
    views: list[View] = []
    shapes: list[Shape] = [*lines_down(said, (room.left, room.high - FIRST))]
    y = top
    for row in rows:
        if row is not rows[0]:
            shapes.append(Line((room.left, y + BETWEEN / 2), (room.right, y + BETWEEN / 2), Pen.DIMENSION))
        if len(row.cards) > 1:
            shapes.append(Line((middle, y), (middle, y - row.height), Pen.DIMENSION))
        for card, left in zip(row.cards, (room.left, middle + BETWEEN), strict=False):
            seen, more = card.put((left, y))
            views += seen
            shapes += more
        y -= row.height + BETWEEN
    names = [rows[0].cards[0].name, rows[-1].cards[-1].name]
    return Content(f"{what}: {' to '.join(dict.fromkeys(names))}", tuple(views), tuple(shapes))


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
