"""Where the roof's steel planes end over a wall: a line of two corners or more, in the wall's (u, v)."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property, lru_cache
from itertools import pairwise
from math import hypot

from ..catalog.fold import shifted
from ..place import Point2


@dataclass(frozen=True)
class TopLine:
    """Corners (u, v) from a wall's left end to its right one; beyond them the ends run on straight."""

    points: tuple[Point2, ...]

    def lowered(self, below: float) -> TopLine:
        """The line of the planes that lie `below` (square) under these."""
        return _lowered(self, below)

    def height(self, u: float) -> float:
        """v over u."""
        (u0, v0), (u1, v1) = self.stretch(u)
        return v0 + (u - u0) * (v1 - v0) / (u1 - u0)

    def stretch(self, u: float) -> tuple[Point2, Point2]:
        """The straight stretch over u: at a corner the one on its left."""
        inner = self.points[1:-1]
        number = sum(1 for corner, _ in inner if u > corner)
        return self.points[number], self.points[number + 1]

    def reach(self, v: float, hand: str) -> float:
        """The u, first met from the left or the right, where the line rises through a height."""
        stretches = list(pairwise(self.points))
        for one, other in stretches if hand == "left" else stretches[::-1]:
            foot, head = (one, other) if hand == "left" else (other, one)
            if v <= head[1]:
                return foot[0] + (v - foot[1]) * (head[0] - foot[0]) / (head[1] - foot[1])
        raise ValueError(f"no part of the line is {v:.3f} mm high")

    def slope(self, u: float) -> float:
        """Rise over run of the stretch over u, upward to the right."""
        (u0, v0), (u1, v1) = self.stretch(u)
        return (v1 - v0) / (u1 - u0)

    @cached_property
    def peak(self) -> Point2:
        """The highest corner; of two the left one."""
        return max(self.points, key=lambda point: (round(point[1], 6), -point[0]))

    @cached_property
    def falls(self) -> tuple[float, float]:
        """How much the line falls in one of run from its peak to the left, and to the right; 0 at an end."""
        number = self.points.index(self.peak)
        slopes = [(b[1] - a[1]) / (b[0] - a[0]) for a, b in pairwise(self.points)]
        return slopes[number - 1] if number else 0.0, -slopes[number] if number < len(slopes) else 0.0

    def normal(self, u: float) -> Point2:
        """Unit normal of the stretch over u, upward."""
        slope = self.slope(u)
        size = hypot(1.0, slope)
        return (-slope / size, 1 / size)


@lru_cache(maxsize=1000)
def _lowered(line: TopLine, below: float) -> TopLine:
    return TopLine(shifted(line.points, below))


Line = tuple[Point2, Point2]


def crossed(one: Line, other: Line) -> Point2:
    """Where two straight lines cross."""
    (ax, ay), (bx, by) = one
    (cx, cy), (dx, dy) = other
    across = (bx - ax) * (dy - cy) - (by - ay) * (dx - cx)
    share = ((cx - ax) * (dy - cy) - (cy - ay) * (dx - cx)) / across
    return (ax + share * (bx - ax), ay + share * (by - ay))
