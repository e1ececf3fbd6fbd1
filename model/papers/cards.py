"""Cards: a piece of work each, down the pages, two beside each other where both are narrow."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import groupby, pairwise

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


AHEAD = 2
"""Rows of which the first that has room fills a page: marks stay in order but for a row."""


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
    """Cards beside each other: two narrow ones at most. number: of the first of them in its deck."""

    number: int
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
    """Pages of cards from the top down, a line between them; one deck goes on under another. A row for which
    a page has no room lets the next before it."""
    page = _Page(one)
    for deck in decks:
        said = wrapped(one, deck.notes, room_of(one).width)
        rows = list(_rows(deck.cards))
        while rows:
            fits = (number for number, row in enumerate(rows[:AHEAD]) if page.takes(deck, said, row))
            if (number := next(fits, None)) is None:
                yield page.content()
                page = _Page(one)
            else:
                page.put(deck, said, rows.pop(number))
    if page.decks:
        yield page.content()


class _Page:
    """A page that is being filled. left: mm on paper under what it has. decks: of which it has cards, with
    the number and the name of each."""

    def __init__(self, one: Job) -> None:
        self.one, self.room = one, room_of(one)
        self.y = self.room.high
        self.decks: dict[str, list[tuple[int, str]]] = {}
        self.views: list[View] = []
        self.shapes: list[Shape] = []

    @property
    def left(self) -> float:
        return self.y - self.room.low

    def takes(self, deck: Deck, said: Sequence[str], row: _Row) -> bool:
        """Whether one more row goes on it; an empty one takes any."""
        return not self.decks or self.height_with(deck, said, row) <= self.left

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
        names = ((number, card.name) for number, card in enumerate(row.cards, row.number))
        self.decks.setdefault(deck.what, []).extend(names)

    def content(self) -> Content:
        """All of it: `cut sheets: W9 to R2; trims: TB1 to TB4`."""
        named = (f"{what}: {', '.join(_runs(cards))}" for what, cards in self.decks.items())
        return Content("; ".join(named), tuple(self.views), tuple(self.shapes))


def _runs(cards: Iterable[tuple[int, str]]) -> Iterator[str]:
    """`W4 to W7`: the first and the last name of numbers that follow each other."""
    for _, run in groupby(enumerate(sorted(cards)), lambda one: one[1][0] - one[0]):
        names = [name for _, (_, name) in run]
        yield " to ".join(dict.fromkeys((names[0], names[-1])))


def _rows(cards: Iterable[Card]) -> Iterator[_Row]:
    row = _Row(0, ())
    for number, (card, after) in enumerate(pairwise((*cards, None))):
        if card is None:
            continue
        if row.takes(card, after):
            row = replace(row, cards=(*row.cards, card))
            continue
        if row.cards:
            yield row
        row = _Row(number, (card,))
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
