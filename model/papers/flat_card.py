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
from .cards import Card
from .flat import Flat
from .flat_shapes import EDGE, ROW_GAP, below, flat_shapes, rows_down, told_once
from .frame import lines_down, room_of, wrapped
from .job import Job

NOTES = 100.0
"""mm on paper for the lines beside a drawing."""
TOP, LINE = 9.0, 4.9
"""mm on paper from a card's top to its notes, and from one line of them to the next."""


@dataclass(frozen=True, slots=True)
class Aside:
    """What is drawn beside a flat: how large it is on paper (mm), and how it is put from its upper left."""

    width: float
    height: float
    put: Callable[[Point2], tuple[Sequence[View], Sequence[Shape]]]


ALONE = Aside(0.0, 0.0, lambda _: ((), ()))


def flat_card(
    one: Job, flat: Flat, notes: Iterable[str], scales: Sequence[Scale], aside: Aside = ALONE
) -> Card:
    """The card of a flat. scales: that it may be drawn to, the one that is tried first last. aside: what is
    drawn between its notes and the flat itself."""
    side = aside.width + _side(one, flat)
    room = room_of(one).width - NOTES - side - 10.0
    scale, where = _scale(flat, scales, room)
    *said, last = notes
    texts = (*said, f"{last}; scale {scale.name}{'' if where.whole else ', broken'}")
    lines = [line for text in texts for line in wrapped(one, text, NOTES)]
    high = float(flat.blank.bounds[2] - flat.blank.bounds[0]) / scale.ratio
    past = below(one, flat, scale.ratio)
    under = max(EDGE + 1.5, past) if flat.fall else _reach(one, flat) + past
    above = max(EDGE + 4.5 if flat.fall else 3.0, _over(one, flat, scale.ratio))
    height = max(above + high + under, TOP + LINE * len(lines), aside.height)

    def put(at: Point2) -> tuple[Sequence[View], Sequence[Shape]]:
        origin = (at[0] + NOTES + side, at[1] - above - high)
        view = View(flat.mark, scale, origin, ())
        drawn, loose = flat_shapes(one, flat, view, where)
        views, words = aside.put((at[0] + NOTES, at[1]))
        drawn_notes: list[Shape] = [
            Text((at[0], at[1] - 6.5), flat.mark, Size.LARGE),
            *lines_down(lines, (at[0], at[1] - TOP - 3.0), row=LINE),
        ]
        return [*views, replace(view, shapes=tuple(drawn))], [*drawn_notes, *words, *loose]

    return Card(flat.mark, height, put)


def _scale(flat: Flat, scales: Sequence[Scale], room: float) -> tuple[Scale, Broken]:
    """The usual scale, with a break if need be; a smaller one where no break helps."""
    for scale in reversed(scales):
        where = broken(flat.length, flat.busy, room, scale.ratio)
        if where is not None:
            return scale, where
    return scales[0], Broken()


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
