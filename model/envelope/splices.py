"""Where lines of steel are spliced: on frames and posts, so that no piece is longer than it can be bought."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from ..description.said_limits import over
from ..place import Point2

SPLICE = 3.175
"""mm; between members that butt on a clip (1/8 in). Common practice, no source."""

NEAREST = 25.4
"""mm; no splice stands nearer to an end of a line (1 in)."""


def in_stock(span: Point2, backs: Sequence[float], longest: float, arm: float = 0.0) -> list[Point2]:
    """A span in the fewest pieces that stock gives, as even as they can be, divided only where there is steel
    behind; in one where none of that helps.

    backs: where steel stands behind it, from the least on. arm: how far pieces run on past where the span is
    divided, to lap.
    """
    points = splice_points(span, backs, arm)
    best: list[tuple[int, float, list[float]] | None] = [(0, 0.0, [])]
    for end in points[1:]:
        ways = [
            (done[0] + 1, max(done[1], length), [*done[2], start])
            for start, done in zip(points, best, strict=False)
            if done is not None and not over(length := length_of((start, end), span, arm), longest)
        ]
        best.append(min(ways, default=None))
    if (found := best[-1]) is None:
        return [span]
    return [_lapped(piece, span, arm) for piece in pairwise([*found[2], span[1]])]


def splice_points(span: Point2, backs: Sequence[float], arm: float = 0.0) -> list[float]:
    """Both ends of a span and where between them it may be divided."""
    near = max(NEAREST, arm)
    return [span[0], *(u for u in backs if span[0] + near < u < span[1] - near), span[1]]


def _lapped(piece: Point2, span: Point2, arm: float) -> Point2:
    """A piece with what it runs on past where the span is divided."""
    return piece[0] - arm * (piece[0] > span[0]), piece[1] + arm * (piece[1] < span[1])


def length_of(piece: Point2, span: Point2, arm: float) -> float:
    """How long a piece of a span is, with what it runs on past where the span is divided."""
    start, end = _lapped(piece, span, arm)
    return end - start
