"""Closed rings of points on the bench, and the outline that a sheet's top faces make together."""

from __future__ import annotations

from collections.abc import Iterable
from math import hypot

import numpy as np
from shapely.geometry import Polygon

from ..place import Point2
from .faces import Ring, Vectors
from .snap import snapped

STRAIGHT = 1e-4
"""mm; a corner that stands out less than this from the line between its neighbours is none."""
START = 1e-3
"""mm; corners nearer than this in height are equally low when a ring's first one is looked for."""


def outline(corners: Vectors, rings: Iterable[Ring]) -> Polygon:
    """What faces cover together, seen from above, without corners on straight lines.

    corners: (n, 2) or (n, 3), of which (u, v) count. rings: of all the faces, each with its face on
    the left. Sides that two of them share cancel, the others chain up: a solid is a manifold, so
    every corner on the rim of a sheet has one way on. Raises ValueError where one has two.
    """
    sides = {
        (a, b)
        for ring in rings
        for a, b in zip(ring.tolist(), [*ring[1:].tolist(), int(ring[0])], strict=True)
    }
    rim = [(a, b) for a, b in sides if (b, a) not in sides]
    following = dict(rim)
    if len(following) < len(rim):
        raise ValueError("faces that meet in a corner alone")
    loops = []
    while following:
        loop = [next(iter(following))]
        while (after := following.pop(loop[-1])) != loop[0]:
            loop.append(after)
        loops.append(started(straightened(corners[loop, :2])))
    loops.sort(key=area, reverse=True)
    return Polygon(loops[0], [loop[::-1] for loop in loops[1:]])


def area(ring: Vectors) -> float:
    """Area of a ring (n, 2), positive when it goes counter-clockwise."""
    u, v = (ring - ring[0]).T
    return 0.5 * float((u * np.roll(v, -1) - v * np.roll(u, -1)).sum())


def straightened(ring: Vectors) -> Vectors:
    """A closed ring (n, 2) without the points that lie on the line between their neighbours."""
    points: list[Point2] = [(u, v) for u, v in ring.tolist()]
    sizes = [stands_out(p, points[i - 1], points[i + 1 - len(points)]) for i, p in enumerate(points)]
    start = sizes.index(max(sizes))
    kept: list[Point2] = []
    for point in [*points[start:], *points[: start + 1]]:
        while len(kept) > 1 and stands_out(kept[-1], kept[-2], point) < STRAIGHT:
            kept.pop()
        kept.append(point)
    return np.array(kept[:-1])


def stands_out(point: Point2, before: Point2, after: Point2) -> float:
    """Distance of a point from the line between its neighbours, or from these if they meet."""
    x, y = after[0] - before[0], after[1] - before[1]
    size = hypot(x, y)
    if size < STRAIGHT:
        return hypot(point[0] - before[0], point[1] - before[1])
    return abs(x * (point[1] - before[1]) - y * (point[0] - before[0])) / size


def started(ring: Vectors) -> Vectors:
    """The ring from its lower left corner on: the leftmost of its lowest points."""
    order = [(snapped(v, START), snapped(u, START)) for u, v in ring.tolist()]
    return np.roll(ring, -order.index(min(order)), axis=0)
