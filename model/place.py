"""Rigid placements in millimetres, as plain numbers.

Axes of the building: X across the width, left to right as seen from the front; Y from the front
gable (0) to the back; Z up from the top of the slab. Right-handed.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

Point2 = tuple[float, float]
Point3 = tuple[float, float, float]


def add(a: Point3, b: Point3, scale: float = 1.0) -> Point3:
    """a + scale * b."""
    return (a[0] + scale * b[0], a[1] + scale * b[1], a[2] + scale * b[2])


def dot(a: Point3, b: Point3) -> float:
    """Scalar product."""
    return a[0] * b[0] + a[1] * b[1] + a[2] * b[2]


def cross(a: Point3, b: Point3) -> Point3:
    """Vector product, right-handed."""
    return (
        a[1] * b[2] - a[2] * b[1],
        a[2] * b[0] - a[0] * b[2],
        a[0] * b[1] - a[1] * b[0],
    )


def unit(a: Point3) -> Point3:
    """a scaled to length 1."""
    size = math.sqrt(dot(a, a))
    return (a[0] / size, a[1] / size, a[2] / size)


def way(start: Point2, end: Point2) -> Point2:
    """The unit vector in the plane from one point to another."""
    size = math.hypot(end[0] - start[0], end[1] - start[1])
    return ((end[0] - start[0]) / size, (end[1] - start[1]) / size)


@dataclass(frozen=True, slots=True)
class Place:
    """Where a body's own frame stands in the building: a point maps to origin + x*px + y*py + z*pz.

    x, y: orthogonal unit vectors in building axes; z follows from them.
    """

    origin: Point3 = (0.0, 0.0, 0.0)
    x: Point3 = (1.0, 0.0, 0.0)
    y: Point3 = (0.0, 1.0, 0.0)

    @property
    def z(self) -> Point3:
        """Third axis, x cross y."""
        return cross(self.x, self.y)

    def rounded(self) -> Place:
        """As it is written: the origin to 1e-6 mm, the axes to 1e-12, far below anything measured.

        Two ways of working out one place so give one text.
        """
        return Place(_round(self.origin, 6), _round(self.x, 12), _round(self.y, 12))

    def point(self, p: Point3) -> Point3:
        """The building point of a local point."""
        return add(self.origin, self.vector(p))

    def seen(self, p: Point3) -> Point3:
        """A building point in this frame's own coordinates: the inverse of `point`."""
        offset = add(p, self.origin, -1.0)
        return (dot(offset, self.x), dot(offset, self.y), dot(offset, self.z))

    def within(self, other: Place) -> Place:
        """Another place as it stands in this frame: `self @ self.within(other)` is the other."""
        axes = (tuple(dot(axis, own) for own in (self.x, self.y, self.z)) for axis in (other.x, other.y))
        (xx, xy, xz), (yx, yy, yz) = axes
        return Place(self.seen(other.origin), (xx, xy, xz), (yx, yy, yz))

    def vector(self, v: Point3) -> Point3:
        """The building direction of a local direction."""
        return add(add(add((0.0, 0.0, 0.0), self.x, v[0]), self.y, v[1]), self.z, v[2])

    def __matmul__(self, inner: Place) -> Place:
        """`outer @ inner`: the place, in the building, of a frame that stands at inner in this one."""
        return Place(self.point(inner.origin), self.vector(inner.x), self.vector(inner.y))


def _round(p: Point3, digits: int) -> Point3:
    return (round(p[0], digits) + 0.0, round(p[1], digits) + 0.0, round(p[2], digits) + 0.0)
