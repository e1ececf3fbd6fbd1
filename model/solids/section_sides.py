"""Sections: closed rings of corners, sharp or rounded, as straight sides and arcs."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import NamedTuple

from ..place import Point2, Point3
from ..recipe import Section
from .strips import FLAT, off_line, turned_to

NEAR = 1e-7  # mm; shorter sides are none


class Side(NamedTuple):
    """A side of a ring: straight, or an arc about a centre.

    turn: the angle an arc turns by, radians, positive to the left; 0 of a straight side, whose centre
    says nothing. A side that ends where it starts is a whole circle.
    """

    start: Point2
    end: Point2
    centre: Point2 = (0.0, 0.0)
    radius: float = 0.0
    turn: float = 0.0


def is_sharp(section: Section) -> bool:
    """Whether no corner is rounded."""
    return not any(radius for ring in (section.outer, *section.holes) for _, _, radius in ring)


def oriented(ring: Sequence[Point3], sign: int) -> list[Point3]:
    """A ring of (x, y, radius), counter-clockwise for sign 1, clockwise for -1."""
    points = [(x, y) for x, y, _ in ring]
    return list(ring) if turned_to(points, sign) == points else list(reversed(ring))


def sides(ring: Sequence[Point3], sign: int) -> list[Side]:
    """The sides of a ring of (x, y, radius), counter-clockwise for sign 1, clockwise for -1.

    Neighbours on one line or one circle are one side. Raises ValueError where two arcs overlap.
    """
    ring = oriented(ring, sign)
    arcs = [_arc(ring[i - 1], corner, ring[(i + 1) % len(ring)]) for i, corner in enumerate(ring)]
    found: list[Side] = []
    for i, arc in enumerate(arcs):
        if _gap(ring[i - 1], ring[i], arcs[i - 1].end, arc.start) >= NEAR:
            found.append(Side(arcs[i - 1].end, arc.start))
        if arc.turn:
            found.append(arc)
    return _united([_after(found[i - 1], side) for i, side in enumerate(found)])


def _arc(a: Point3, corner: Point3, b: Point3) -> Side:
    """The arc that rounds a corner between two others, of no turn where the corner is sharp or straight."""
    (ax, ay, _), (x, y, radius), (bx, by, _) = a, corner, b
    in_x, in_y = _direction(ax, ay, x, y)
    out_x, out_y = _direction(x, y, bx, by)
    turn = math.atan2(in_x * out_y - in_y * out_x, in_x * out_x + in_y * out_y)
    reach = radius * math.tan(abs(turn) / 2.0)
    if reach < NEAR:
        return Side((x, y), (x, y))
    start = (x - reach * in_x, y - reach * in_y)
    aside = math.copysign(radius, turn)
    centre = (start[0] - aside * in_y, start[1] + aside * in_x)
    return Side(start, (x + reach * out_x, y + reach * out_y), centre, radius, turn)


def _direction(ax: float, ay: float, bx: float, by: float) -> Point2:
    length = math.hypot(bx - ax, by - ay)
    return ((bx - ax) / length, (by - ay) / length)


def _gap(a: Point3, b: Point3, start: Point2, end: Point2) -> float:
    """What two arcs leave straight between two corners. Raises ValueError where it is less than nothing."""
    way_x, way_y = _direction(a[0], a[1], b[0], b[1])
    gap = (end[0] - start[0]) * way_x + (end[1] - start[1]) * way_y
    if gap < -NEAR:
        raise ValueError(f"the radii at {a} and {b} overlap")
    return gap


def _after(before: Side, side: Side) -> Side:
    """The side, from where the one before it ends: short of it or past it, by less than NEAR."""
    if not side.turn:
        return side._replace(start=before.end)
    (x, y), (ax, ay), (bx, by) = side.centre, before.end, side.end
    short = math.atan2(by - y, bx - x) - math.atan2(ay - y, ax - x) - side.turn
    return side._replace(start=before.end, turn=side.turn + math.remainder(short, math.tau))


def _united(ring: list[Side]) -> list[Side]:
    """The ring with neighbours that are one side made one."""
    found = ring[:1]
    for side in ring[1:]:
        found[-1:] = _as_one(found[-1], side)
    while len(found) > 1 and len(both := _as_one(found[-1], found[0])) == 1:
        found = [*both, *found[1:-1]]
    return found


def _as_one(a: Side, b: Side) -> list[Side]:
    """Two neighbours, or the one side that they are."""
    if a.turn and b.turn:
        same = math.dist(a.centre, b.centre) < NEAR and a.turn * b.turn > 0.0
    else:
        same = not a.turn and not b.turn and off_line(a.start, a.end, b.end) < FLAT
    return [Side(a.start, b.end, a.centre, a.radius, a.turn + b.turn)] if same else [a, b]
