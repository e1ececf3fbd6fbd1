"""What a straight body shows to someone who looks along it: the closed loops of its section."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property

import numpy as np

from .faces import Body, Vectors
from .outline import area

ALONG = 1e-6
"""How far the cosine between an axis and the normal of a face that runs along it may be off 0."""
NEAR = 1e-3
"""mm; ends nearer than this meet."""
WHOLE = 0.01
"""mm; a cut that is this much less deep or wide than the body has lost a part of the section."""
TRIED = 4
"""Cuts tried where the faces all together do not show the section."""


@dataclass(frozen=True, eq=False)
class Loop:
    """A closed loop of straight sides, the steel on their left, joined by sharp or rounded corners.

    corners: (n, 2) mm, where neighbouring sides would meet sharp; side i runs from corner i to the next.
    radii: (n,) of the arcs that round the corners, 0 for sharp ones. turns: (n,) radians by which the
    way turns there, positive to the left.
    """

    corners: Vectors
    radii: Vectors
    turns: Vectors

    @cached_property
    def sides(self) -> Vectors:
        """(n,) the lengths of the sides, between sharp corners."""
        ahead: Vectors = np.roll(self.corners, -1, axis=0) - self.corners
        return np.hypot(ahead[:, 0], ahead[:, 1])

    @cached_property
    def area(self) -> float:
        """mm2 between sharp corners; negative for the rim of a hollow."""
        return area(self.corners)


@dataclass(frozen=True, slots=True, eq=False)
class _Side:
    """A flat seen edge on: from where to where it runs, its unit direction."""

    start: Vectors
    end: Vectors
    way: Vectors


def loops(shape: Body, axes: Vectors) -> Iterator[tuple[Loop, ...]]:
    """The loops that make up a body's section, the outer one first; every reading of it in turn.

    axes: (3, 3) rows x, y, z in the body's frame, y along it. First a cut across the body where it runs
    on longest without a corner, if that is as deep and wide as the whole body. Then all the faces that
    run along it, seen together: a short body mitred at both ends is whole nowhere. Then the cuts again,
    since something wider may be built on. A reading that does not close is left out.
    """
    arcs = _arcs(shape, axes)
    together = _flats(shape, axes, None)
    cuts = [_flats(shape, axes, height) for height in _heights(shape, axes)]
    whole = [cut for cut in cuts[:1] if np.abs(_box(cut) - _box(together)).max() < WHOLE]
    for reading in (*whole, together, *cuts):
        if closed := _closed(reading, arcs):
            yield closed


def _heights(shape: Body, axes: Vectors) -> list[float]:
    """Places along a body half way between two corners, where they are farthest apart first."""
    ends = np.unique(shape.corners @ axes[1])
    free = np.diff(ends)
    order = np.argsort(-np.round(free, 3), kind="stable")[:TRIED]
    return [float(ends[i] + free[i] / 2) for i in order if free[i] > NEAR]


def _box(sides: Sequence[_Side]) -> Vectors:
    points = np.array([point for side in sides for point in (side.start, side.end)]).reshape(-1, 2)
    return np.array([points.min(axis=0), points.max(axis=0)]) if len(points) else np.zeros((2, 2))


def _flats(shape: Body, axes: Vectors, height: float | None) -> list[_Side]:
    """The flat faces along the axis, seen along it; with a height only what a cut there meets."""
    found: list[tuple[Vectors, float, float, float]] = []
    for face in shape.faces:
        facing = axes @ face.normal
        if not face.rings or abs(float(facing[1])) > ALONG:
            continue
        way = np.array([-facing[2], facing[0]]) / np.hypot(facing[0], facing[2])
        rings = [points @ axes.T for points in shape.points(face)]
        if height is None:
            places = rings[0][:, [0, 2]] @ way
            spans = [(float(places.min()), float(places.max()))]
        else:
            spans = _crossed(rings, height, way)
        off = float(rings[0][0, [0, 2]] @ (way[1], -way[0]))
        found += [(way, off, low, high) for low, high in spans]
    return [_side(*one) for one in _merged(found)]


def _crossed(rings: Sequence[Vectors], height: float, way: Vectors) -> list[tuple[float, float]]:
    """Where a face with these rings is met by a cut, as spans along its way."""
    met: list[float] = []
    for ring in rings:
        after = np.roll(ring, -1, axis=0)
        over = (ring[:, 1] > height) != (after[:, 1] > height)
        share = (height - ring[over, 1]) / (after[over, 1] - ring[over, 1])
        points = ring[over] + share[:, None] * (after[over] - ring[over])
        met += (points[:, [0, 2]] @ way).tolist()
    met.sort()
    return list(zip(met[::2], met[1::2], strict=True))


def _merged(
    flats: list[tuple[Vectors, float, float, float]],
) -> list[tuple[Vectors, float, float, float]]:
    """Flats (way, offset from the origin, from, to) with those made one that lie in one line and touch."""
    kept: list[tuple[Vectors, float, float, float]] = []
    for way, off, low, high in sorted(flats, key=lambda flat: flat[2]):
        for i, (other, beside, start, end) in enumerate(kept):
            if float(way @ other) > 1 - ALONG and abs(off - beside) < NEAR and low < end + NEAR:
                kept[i] = (other, beside, start, max(end, high))
                break
        else:
            kept.append((way, off, low, high))
    return kept


def _side(way: Vectors, off: float, low: float, high: float) -> _Side:
    foot = off * np.array([way[1], -way[0]])
    return _Side(foot + low * way, foot + high * way, way)


def _arcs(shape: Body, axes: Vectors) -> list[Vectors]:
    """(2, 2) for each curved face its ends, seen along the axis; one that lies across it joins nothing."""
    found = []
    for bend in shape.bends:
        points = shape.corners[bend] @ axes[[0, 2]].T
        apart = np.linalg.norm(points[:, None] - points[None, :], axis=2)
        found.append(points[list(np.unravel_index(int(apart.argmax()), apart.shape))])
    return found


def _closed(sides: Sequence[_Side], arcs: Sequence[Vectors]) -> tuple[Loop, ...]:
    """The loops that the sides close into, the largest first; none when the largest side is in no loop."""
    after = {i: _next(side, sides, arcs) for i, side in enumerate(sides)}
    sizes = [float(np.linalg.norm(side.end - side.start)) for side in sides]
    found: list[Loop] = []
    left = sorted(range(len(sides)), key=lambda i: -sizes[i])
    while left:
        chain = [left[0]]
        while (i := after[chain[-1]]) is not None and i not in chain:
            chain.append(i)
        loop = _loop([sides[j] for j in chain]) if i == chain[0] else None
        if loop is None and not found:
            return ()
        found += [loop] if loop else []
        left = [j for j in left if j not in chain]
    return tuple(sorted(found, key=lambda loop: -loop.area))


def _next(side: _Side, sides: Sequence[_Side], arcs: Sequence[Vectors]) -> int | None:
    """The number of the side that goes on where this one ends, at a corner or at the far end of an arc."""
    ends = [side.end]
    for one, other in arcs:
        ends += [other] if _meet(one, side.end) else [one] if _meet(other, side.end) else []
    for end in ends:
        for i, following in enumerate(sides):
            if _meet(following.start, end):
                return i
    return None


def _meet(one: Vectors, other: Vectors) -> bool:
    return abs(float(one[0] - other[0])) < NEAR and abs(float(one[1] - other[1])) < NEAR


def _loop(chain: Sequence[_Side]) -> Loop | None:
    """The loop of sides in order; None for sides that turn straight back, or that are too few."""
    corners, radii, turns = [], [], []
    for before, side in zip([chain[-1], *chain[:-1]], chain, strict=True):
        across = float(before.way[0] * side.way[1] - before.way[1] * side.way[0])
        turn = float(np.arctan2(across, before.way @ side.way))
        if abs(across) < ALONG:
            return None
        gap = side.start - before.end
        reach = float(gap[0] * side.way[1] - gap[1] * side.way[0]) / across
        corners.append(before.end + reach * before.way)
        radius = reach / float(np.tan(abs(turn) / 2))
        radii.append(radius if radius > NEAR else 0.0)
        turns.append(turn)
    return Loop(np.array(corners), np.array(radii), np.array(turns)) if len(chain) > 2 else None
