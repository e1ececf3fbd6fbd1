"""The card of a flat: its notes, and beside them the flat to scale with its distances."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, replace

from ..drawing.dimensions import JOG
from ..drawing.font import width
from ..drawing.pens import Size
from ..drawing.values import Scale, Shape, Text, View
from ..place import Point2
from .breaks import Broken, broken
from .cards import Card, half
from .flat import Flat
from .flat_shapes import EDGE, ROW_GAP, below, flat_shapes, rows_down, told_once
from .frame import lines_down, room_of, wrapped
from .job import Job

NOTES, LEAST = 100.0, 42.0
"""mm on paper for the lines beside a drawing: on a card as wide as the page, and on a narrow one at least."""
DRAWN = (42.0, 50.0, 58.0, 66.0)
"""mm on paper that a flat takes on a narrow card: the least in which it can be drawn."""
APART = 2.0
"""mm on paper between the lines of a narrow card and the numbers beside them."""
OUTSIDE = 9.0
"""mm on paper of the arrows of a length, or from the end of what it is of to words past it."""
PAST = 5.0
"""mm on paper past the end of a flat for the distances along it, where they crowd."""
TOP = 9.0
"""mm on paper from a card's top to its notes."""


@dataclass(frozen=True, slots=True)
class Aside:
    """What is drawn beside a flat: how large it is on paper (mm), and how it is put from its upper left."""

    width: float
    height: float
    put: Callable[[Point2], tuple[Sequence[View], Sequence[Shape]]]


ALONE = Aside(0.0, 0.0, lambda _: ((), ()))


@dataclass(frozen=True, slots=True)
class _Layout:
    """How a card stands. notes: the width of its lines. flat: from its left to the flat."""

    narrow: bool
    notes: float
    flat: float
    scale: Scale
    where: Broken


def flat_card(
    one: Job, flat: Flat, notes: Iterable[str], scales: Sequence[Scale], aside: Aside = ALONE
) -> Card:
    """The card of a flat. scales: that it may be drawn to, the one that is tried first last. aside: what is
    drawn between its notes and the flat itself, or on a narrow card under the shorter of the two."""
    laid = _layout(one, flat, scales, aside)
    scale, where = laid.scale, laid.where
    lines = _lines(one, notes, laid)
    high = float(flat.blank.bounds[2] - flat.blank.bounds[0]) / scale.ratio
    past = below(one, flat, scale.ratio)
    under = max(EDGE + 1.5, past) if flat.fall else _reach(one, flat) + past
    above = max(EDGE + 4.5 if flat.fall else 3.0, _over(one, flat, scale.ratio))
    told, drawn_down = TOP + one.style.row * len(lines), above + high + under
    beside, down = laid.notes, 0.0
    if laid.narrow:
        beside, down = (0.0, told) if told <= drawn_down else (half(one) - aside.width, drawn_down)
    height = max(drawn_down, told, down + aside.height)

    def put(at: Point2) -> tuple[Sequence[View], Sequence[Shape]]:
        origin = (at[0] + laid.flat, at[1] - above - high)
        view = View(flat.mark, scale, origin, ())
        drawn, loose = flat_shapes(one, flat, view, where)
        views, words = aside.put((at[0] + beside, at[1] - down))
        drawn_notes: list[Shape] = [
            Text((at[0], at[1] - 6.5), flat.mark, Size.LARGE),
            *lines_down(one, lines, (at[0], at[1] - TOP - 3.0)),
        ]
        return [*views, replace(view, shapes=tuple(drawn))], [*drawn_notes, *words, *loose]

    return Card(flat.mark, laid.narrow, height, put)


def _lines(one: Job, notes: Iterable[str], laid: _Layout) -> list[str]:
    """What is said, a line each, the scale last; on a narrow card all after the first run on."""
    *said, last = notes
    texts = [*said, f"{last}; scale {laid.scale.name}{'' if laid.where.whole else ', broken'}"]
    if laid.narrow:
        texts = [texts[0], "; ".join(texts[1:])]
    return [line for text in texts for line in wrapped(one, text, laid.notes)]


def _layout(one: Job, flat: Flat, scales: Sequence[Scale], aside: Aside) -> _Layout:
    """Half as wide as the page where the flat goes there to the scale that it would have on all of it."""
    side = _side(one, flat)
    beside = NOTES + aside.width + side
    scale, where = _scale(flat, scales, room_of(one).width - beside - PAST)
    for room in DRAWN:
        lines = half(one) - side - max(room, _with_words(one, flat, scale.ratio)) - PAST
        closer = broken(flat.length, flat.busy, room, scale.ratio)
        if closer is not None and lines >= LEAST and _edges_fit(one, flat, closer, scale.ratio):
            return _Layout(True, lines - APART, lines + side, scale, closer)
    return _Layout(False, NOTES, beside, scale, where)


def _scale(flat: Flat, scales: Sequence[Scale], room: float) -> tuple[Scale, Broken]:
    """The usual scale, with a break if need be; a smaller one where no break helps."""
    for scale in reversed(scales):
        where = broken(flat.length, flat.busy, room, scale.ratio)
        if where is not None:
            return scale, where
    return scales[0], Broken()


def _with_words(one: Job, flat: Flat, ratio: float) -> float:
    """mm on paper that a flat takes along with an edge's length that stands past its end; 0 where each has
    room between its ends."""
    far = 0.0
    for fall in flat.fall or ():
        edge, words = (flat.length - fall) / ratio, _words_of(one, flat.length - fall)
        if edge < words + 2 * one.style.arrow:
            far = max(far, edge + OUTSIDE + words)
    return far


def _words_of(one: Job, edge: float) -> float:
    """mm on paper that the words of an edge's length take."""
    return width(one.length(edge), one.style.heights[Size.SMALL])


def _edges_fit(one: Job, flat: Flat, where: Broken, ratio: float) -> bool:
    """Whether the lengths of a flat's edges fit between their ends as it is drawn broken."""
    edges = [] if where.whole else [flat.length - fall for fall in flat.fall or ()]
    arrows = 2 * one.style.arrow
    return all(where(edge) / ratio >= _words_of(one, edge) + arrows for edge in edges)


def _side(one: Job, flat: Flat) -> float:
    """mm on paper that the distances across take."""
    height = one.style.heights[Size.SMALL]
    return max(width(one.length(u), height) for u in told_once(one, flat.across)) + JOG + ROW_GAP + 2.0


def _reach(one: Job, flat: Flat) -> float:
    """mm on paper that the distances along take."""
    height = one.style.heights[Size.SMALL]
    return max(width(one.length(v), height) for v in told_once(one, flat.along)) + JOG + ROW_GAP + 2.0


def _over(one: Job, flat: Flat, ratio: float) -> float:
    """mm on paper that the distances across reach above the top of the blank where they crowd."""
    first = rows_down(one, flat, ratio)[0]
    return 1.0 - first - max(-float(flat.blank.bounds[0]), 0.0) / ratio
