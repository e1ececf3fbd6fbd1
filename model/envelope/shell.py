"""A shell: corners in space, faces as loops of them. Nothing here knows a roof from a wall.

Coordinates are the building's, mm (see `ribwright.place`).
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise
from math import dist

from ..place import Place, Point2, Point3, add, cross, unit

FLAT = 0.01
"""mm; how far a loop's corners may lie off its plane: what a sheet does not feel. Ours."""


@dataclass(frozen=True, slots=True)
class Loop:
    """One face: its name and the numbers of its corners, counter-clockwise as seen from outside.

    The first two are its foot, from left to right: where sheets stand (a wall's base, a slope's eave).
    """

    name: str
    corners: tuple[int, ...]

    def edges(self) -> Iterator[tuple[int, int]]:
        """Its edges in order, each as the corners it runs from and to."""
        yield from pairwise((*self.corners, self.corners[0]))


@dataclass(frozen=True, slots=True)
class Shell:
    """vertices: corners in space. loops: the faces; two that share an edge run along it opposite ways."""

    vertices: tuple[Point3, ...]
    loops: tuple[Loop, ...]

    def points(self, loop: Loop) -> tuple[Point3, ...]:
        """The corners of a face in space."""
        return tuple(self.vertices[number] for number in loop.corners)

    def frame(self, loop: Loop) -> Place:
        """A face's own frame: origin at its foot's left end, x along the foot, z outward.

        Raises ValueError where the corners do not lie in one plane.
        """
        points = self.points(loop)
        normal = _normal(points)
        x = unit(add(points[1], points[0], -1.0))
        frame = Place(points[0], x, cross(normal, x)).rounded()
        if (off := max(abs(frame.seen(point)[2]) for point in points)) > FLAT:
            raise ValueError(f"{loop.name}: a corner lies {off:.2f} mm off the face's plane")
        return frame

    def beyond(self, edge: tuple[int, int]) -> Loop | None:
        """The face on the other side of an edge; None at the shell's rim."""
        across = edge[::-1]
        return next((loop for loop in self.loops if across in loop.edges()), None)

    def cut(self, y: float) -> tuple[Crossing, ...]:
        """Where the upright plane at y crosses the faces: over the roof from the foot of the left wall to
        that of the right one, in (x, z)."""
        found = {loop.name: ends for loop in self.loops if (ends := _crossing(self.points(loop), y))}
        feet = [end for ends in found.values() for end in ends]
        at = min(feet, key=lambda end: (round(end[1], 3), end[0]))
        chain: list[Crossing] = []
        while found:
            name = min(found, key=lambda one: min(dist(at, end) for end in found[one]))
            start, end = sorted(found.pop(name), key=lambda point: dist(at, point))
            chain.append(Crossing(name, start, end))
            at = end
        return tuple(chain)


def along_foot(frame: Place, y: float) -> float:
    """u at which the upright plane at y crosses a face's foot."""
    return (y - frame.origin[1]) / frame.x[1]


@dataclass(frozen=True, slots=True)
class Crossing:
    """Where a plane crosses one face: from start to end, (x, z)."""

    face: str
    start: Point2
    end: Point2


def _crossing(points: tuple[Point3, ...], y: float) -> tuple[Point2, Point2] | None:
    """The ends of a loop's stretch in the upright plane at y; None where they do not meet in a stretch."""
    ends = []
    for a, b in pairwise((*points, points[0])):
        if (a[1] - y) * (b[1] - y) < 0:
            share = (y - a[1]) / (b[1] - a[1])
            ends.append((a[0] + share * (b[0] - a[0]), a[2] + share * (b[2] - a[2])))
    return (min(ends), max(ends)) if ends and min(ends) != max(ends) else None


def _normal(points: tuple[Point3, ...]) -> Point3:
    """The outward unit normal of a loop: the sum of its triangles' about the first corner."""
    total: Point3 = (0.0, 0.0, 0.0)
    for a, b in pairwise(points[1:]):
        total = add(total, cross(add(a, points[0], -1.0), add(b, points[0], -1.0)))
    return unit(total)
