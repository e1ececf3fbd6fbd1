"""A straight member: a section swept along an axis between two planes, in any frame."""

from __future__ import annotations

from dataclasses import dataclass

from ...envelope.top_line import TopLine
from ...place import Place, Point3, add, cross, dot, unit
from ...recipe import Prism, Section, grid


@dataclass(frozen=True, slots=True)
class Plane:
    """A plane through a point, square to a normal (any length, either way)."""

    point: Point3
    normal: Point3


def square(point: Point3, along: Point3) -> Plane:
    """The plane that cuts a member square at a point of its axis."""
    return Plane(point, along)


def member(
    section: Section, centre: Point3, along: Point3, depth: Point3, start: Plane, end: Plane
) -> tuple[Prism, Place]:
    """The prism of a member and its place.

    centre: any point of the axis (the section's origin). along: the axis, towards `end`. depth: where
    the section's y points, as nearly as square to `along` allows; its x is depth cross along.
    The recipe's own origin is set on the start plane, so that equal members are equal recipes.
    """
    z = unit(along)
    y = unit(add(depth, z, -dot(depth, z)))
    x = cross(y, z)
    first, last = _seen(start, centre, x, y, z), _seen(end, centre, x, y, z)
    place = Place(add(centre, z, first[2]), x, y)
    near = (_slope(first[0]), _slope(first[1]), 0.0)
    far = (_slope(last[0]), _slope(last[1]), grid(last[2] - first[2]))
    return Prism(section, near, far), place


def _slope(value: float) -> float:
    """A plane's slope, rounded finer than lengths: over a member's depth it makes less than GRID."""
    return round(value, 9) + 0.0


def under_roof(top: TopLine, u: float) -> Plane:
    """In a wall's frame, the plane of a line under its roof, over u."""
    (point, _), (across, up) = top.stretch(u), top.normal(u)
    return Plane((*point, 0.0), (across, up, 0.0))


def head_under(top: TopLine, u: float, half: float) -> Plane:
    """The plane that ends an upright under a line: along it, or square where the line breaks over it."""
    if top.stretch(u - half) == top.stretch(u + half):
        return under_roof(top, u)
    return square((u, min(top.height(u - half), top.height(u + half)), 0.0), (0.0, 1.0, 0.0))


def _seen(plane: Plane, centre: Point3, x: Point3, y: Point3, z: Point3) -> Point3:
    """(a, b, c) of the plane z = a*x + b*y + c in the member's frame about `centre`."""
    n = (dot(plane.normal, x), dot(plane.normal, y), dot(plane.normal, z))
    offset = dot(plane.normal, add(plane.point, centre, -1.0))
    return (-n[0] / n[2], -n[1] / n[2], offset / n[2])
