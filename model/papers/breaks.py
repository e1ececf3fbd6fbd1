"""Long pieces drawn shorter: a stretch along which nothing is cut is left out between two break lines."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from ..drawing.pens import Pen
from ..drawing.values import Polyline, Shape
from ..place import Point2

GAP = 3.0
"""mm on paper between the two break lines."""
MARGIN = 12.0
"""mm on paper that is drawn beside a break before anything is cut."""


@dataclass(frozen=True, slots=True)
class Broken:
    """Where a place along a piece (mm) is drawn: from `start` to `end` it is left out, but for `gap` mm.

    start equal to end: drawn whole.
    """

    start: float = 0.0
    end: float = 0.0
    gap: float = 0.0

    @property
    def whole(self) -> bool:
        """Whether nothing is left out."""
        return self.end <= self.start

    def __call__(self, along: float) -> float:
        """Where a place is drawn."""
        if self.whole or along <= self.start:
            return along
        if along >= self.end:
            return along - self.end + self.start + self.gap
        return self.start + (along - self.start) / (self.end - self.start) * self.gap


def broken(length: float, busy: Iterable[tuple[float, float]], room: float, ratio: float) -> Broken | None:
    """How a piece fits a room on paper (mm): whole, or broken in its longest stretch without a cut.

    busy: stretches along it where something is cut, ends included. None where no break makes it fit.
    """
    if length <= room * ratio:
        return Broken()
    margin = MARGIN * ratio
    start, end = max(_free(length, busy), key=lambda gap: gap[1] - gap[0], default=(0.0, 0.0))
    excess = length - (room - GAP) * ratio
    if end - start - 2 * margin < excess:
        return None
    middle = (start + end) / 2
    return Broken(middle - excess / 2, middle + excess / 2, GAP * ratio)


def _free(length: float, busy: Iterable[tuple[float, float]]) -> Sequence[tuple[float, float]]:
    """The stretches between those that are busy."""
    found, at = [], 0.0
    for low, high in sorted((*busy, (length, length))):
        if low > at:
            found.append((at, low))
        at = max(at, high)
    return found


def break_lines(where: Broken, low: float, high: float, ratio: float) -> Iterable[Shape]:
    """White over what is left out, and a zigzag line on either side, from low to high across the piece."""
    if where.whole:
        return
    left, right = where.start, where.start + where.gap
    over = 1.5 * ratio
    first, last = (
        _zigzag(left, low - over, high + over, ratio),
        _zigzag(right, low - over, high + over, ratio),
    )
    yield Polyline((*first, *reversed(last)), None, True, "#ffffff")
    yield Polyline(first, Pen.DIMENSION, False)
    yield Polyline(last, Pen.DIMENSION, False)


def _zigzag(x: float, low: float, high: float, ratio: float) -> tuple[Point2, ...]:
    """A straight line with one kink in its middle."""
    middle, kink = (low + high) / 2, 1.5 * ratio
    return (
        (x, low),
        (x, middle - kink),
        (x - kink / 2, middle - kink / 2),
        (x + kink / 2, middle + kink / 2),
        (x, middle + kink),
        (x, high),
    )
