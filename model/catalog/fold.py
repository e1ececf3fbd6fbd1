"""Folded sheet as a cross-section: a line bent from flat steel, given its thickness."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise
from math import atan2, cos, hypot, pi, tan

from ..place import Point2
from ..recipe import Section, grid

SHARPEST = pi * 35 / 36
"""Radians: the most one bend may turn (175 degrees); a closed hem is two bends with a flat between."""


def folded(points: Sequence[Point2], thickness: float, radius: float) -> Section:
    """The section of a sheet bent along an open line.

    points: (n, 2) sharp corners of ONE FACE of the sheet, from edge to edge, n >= 2: the face on the
    left of someone walking the line. The thickness lies to the RIGHT. So an outer face is walked
    clockwise around what it encloses, an inner face counter-clockwise.
    thickness: mm. radius: inside every bend, mm, whichever way it turns; the outside of a bend is
    rounded to radius + thickness.

    The two edges are square to the line. Raises ValueError where a line does not bend, turns back
    on itself, or a leg is shorter than its bends take (see `flats`). Whether the sheet meets itself
    elsewhere is for the caller to know.
    """
    left = flats(points, thickness, radius)
    for number, flat in enumerate(left):
        if flat <= 0:
            raise ValueError(f"leg {number} is {-flat:.3f} mm shorter than its bends take")
    turns = list(_turns(points))
    outside = radius + thickness
    near = [0.0, *(radius if turn > 0 else outside for turn in turns), 0.0]
    far = [0.0, *(outside if turn > 0 else radius for turn in turns), 0.0]
    back = list(zip(points, near, strict=True))[::-1]
    forth = list(zip(shifted(points, thickness), far, strict=True))
    return Section(tuple((grid(x), grid(y), grid(r)) for (x, y), r in back + forth))


def flats(points: Sequence[Point2], thickness: float, radius: float) -> tuple[float, ...]:
    """(n - 1,) the straight length in mm that the bends leave of each leg; negative: it does not fit.

    Arguments and errors as for `folded`. The flats and the bends' arcs make up the blank's width.
    """
    taken = [0.0]
    for turn in _turns(points):
        bend = radius if turn > 0 else radius + thickness
        taken.append(bend * tan(abs(turn) / 2))
    taken.append(0.0)
    legs = (hypot(bx - ax, by - ay) for (ax, ay), (bx, by) in pairwise(points))
    return tuple(leg - a - b for leg, (a, b) in zip(legs, pairwise(taken), strict=True))


def shifted(points: Sequence[Point2], distance: float) -> tuple[Point2, ...]:
    """(n, 2) the open line moved to the right of its way (left when negative), its corners mitred."""
    rights = [(dy, -dx) for dx, dy in _ways(points)]
    moved = []
    for (x, y), before, after in zip(points, [rights[0], *rights], [*rights, rights[-1]], strict=True):
        reach = distance / (1 + before[0] * after[0] + before[1] * after[1])
        moved.append((x + reach * (before[0] + after[0]), y + reach * (before[1] + after[1])))
    return tuple(moved)


def _ways(points: Sequence[Point2]) -> list[Point2]:
    """(n - 1, 2) unit vectors along the legs."""
    ways = []
    for (ax, ay), (bx, by) in pairwise(points):
        leg = hypot(bx - ax, by - ay)
        if not leg:
            raise ValueError(f"two corners of the line in one place: ({ax:g}, {ay:g})")
        ways.append(((bx - ax) / leg, (by - ay) / leg))
    return ways


def _turns(points: Sequence[Point2]) -> Iterator[float]:
    """(n - 2,) how far each bend turns, radians, positive to the left."""
    for (ax, ay), (bx, by) in pairwise(_ways(points)):
        turn = atan2(ax * by - ay * bx, ax * bx + ay * by)
        if abs(turn) > SHARPEST or cos(turn) > 1 - 1e-12:
            raise ValueError(f"a bend of {abs(turn) * 180 / pi:.1f} degrees")
        yield turn
