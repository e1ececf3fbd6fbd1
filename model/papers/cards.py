"""Cards: a piece of work each, down the pages, two beside each other where both are narrow."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from ..drawing.dimensions import drawn
from ..drawing.pens import Pen, Size, Style
from ..drawing.values import Dimension, Line, Polyline, RunningDimension, Shape, Text, View
from ..place import Point2
from .frame import Content, lines_down, room_of, wrapped
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
class Deck:
    """Cards of one kind. what: they are. notes: what holds for all of them, said where they begin and over
    each page."""

    what: str
    notes: str
    cards: Iterable[Card]


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


def card_pages(one: Job, decks: Iterable[Deck]) -> Iterator[Content]:
    """Pages of cards from the top down, a line between them; one deck goes on under another."""
    page = _Page(one)
    for deck in decks:
        said = wrapped(one, deck.notes, room_of(one).width)
        for row in _rows(deck.cards):
            if page.decks and page.height_with(deck, said, row) > page.left:
                yield page.content()
                page = _Page(one)
            page.put(deck, said, row)
    if page.decks:
        yield page.content()


class _Page:
    """A page that is being filled. left: mm on paper under what it has. decks: of which it has cards, with
    the names of the first and the last."""

    def __init__(self, one: Job) -> None:
        self.one, self.room = one, room_of(one)
        self.y = self.room.high
        self.decks: dict[str, tuple[str, str]] = {}
        self.views: list[View] = []
        self.shapes: list[Shape] = []

    @property
    def left(self) -> float:
        return self.y - self.room.low

    def height_with(self, deck: Deck, said: Sequence[str], row: _Row) -> float:
        """mm on paper that one more row takes, with the notes of its deck where they are not said yet."""
        notes = 0.0 if deck.what in self.decks else self.one.style.row * len(said)
        return (BETWEEN if self.decks else 0.0) + notes + row.height

    def put(self, deck: Deck, said: Sequence[str], row: _Row) -> None:
        """One more row, under a line."""
        left, right, middle = self.room.left, self.room.right, (self.room.left + self.room.right) / 2
        if self.decks:
            y = self.y - BETWEEN / 2
            self.shapes.append(Line((left, y), (right, y), Pen.DIMENSION))
            self.y -= BETWEEN
        if deck.what not in self.decks:
            self.shapes += lines_down(self.one, said, (left, self.y - FIRST))
            self.y -= self.one.style.row * len(said)
        if len(row.cards) > 1:
            self.shapes.append(Line((middle, self.y), (middle, self.y - row.height), Pen.DIMENSION))
        for card, at in zip(row.cards, (left, middle + BETWEEN), strict=False):
            views, shapes = card.put((at, self.y))
            self.views += views
            self.shapes += shapes
        self.y -= row.height
        first, _ = self.decks.get(deck.what, (row.cards[0].name, ""))
        self.decks[deck.what] = first, row.cards[-1].name

    def content(self) -> Content:
        """All of it: `cut sheets: W9 to R2; trims: TB1 to TB4`."""
        named = (f"{what}: {' to '.join(dict.fromkeys(names))}" for what, names in self.decks.items())
        return Content("; ".join(named), tuple(self.views), tuple(self.shapes))


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
