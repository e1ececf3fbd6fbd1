"""Where straight lines enter and leave a closed mesh: exact on planar faces, many lines at once."""

from __future__ import annotations

from functools import lru_cache

import numpy as np

from ..measure.faces import Vectors
from ..place import Point3, cross, unit
from ..solids.properties import REMEMBERED
from .site import Numbers

SLIVER = 1e-9
"""mm2; a triangle whose shadow along the lines is smaller stands edge on and is not crossed."""
SAME = 1e-5
"""mm; crossings nearer than this on one line, the same way, are one: the line meets a shared edge."""


def across(direction: Vectors) -> Vectors:
    """Axes (2, 3) square to a direction and to each other, so that first x second is the direction."""
    return _across(_point(direction))


@lru_cache(maxsize=REMEMBERED)
def _across(direction: Point3) -> Vectors:
    aside = np.eye(3)[int(np.abs(direction).argmin())]
    first = unit(cross(_point(aside), direction))
    axes = np.array([first, cross(direction, first)])
    axes.flags.writeable = False  # since it is shared
    return axes


def _point(vector: Vectors) -> Point3:
    x, y, z = vector.tolist()
    return (x, y, z)


def spans(
    mesh: Vectors, starts: Vectors, direction: Vectors, bundle: Vectors
) -> tuple[Numbers, Vectors, Vectors]:
    """The stretches of bundles of parallel lines inside a mesh.

    mesh: (m, 3, 3) outward triangles. starts: (k, 3), a point of each bundle's middle. direction: (3,),
    of length 1. bundle: (r, 2), where its lines stand about the middle, along the axes of `across`.
    Returns line numbers (n,), bundle times r plus the line in it, where each stretch begins and where
    it ends, in mm from the start along the direction, in order along each line.
    """
    axes = np.vstack([across(direction), direction])
    tips, middles = (mesh.reshape(-1, 3) @ axes.T).reshape(mesh.shape), starts @ axes.T
    flat = tips[..., :2]
    low, high = flat.min(axis=1) - bundle.max(axis=0), flat.max(axis=1) - bundle.min(axis=0)
    middle, triangle = _within(middles[:, :2], low - SLIVER, high + SLIVER)
    at = middles[middle, None, :2] + bundle
    corners = flat[triangle][:, None]
    shares = np.stack([_twice(corners[..., k, :], corners[..., (k + 1) % 3, :], at) for k in range(3)])
    whole = shares.sum(axis=0)
    sign = np.sign(whole)
    hit = (np.abs(whole) > SLIVER) & ((shares * sign).min(axis=0) >= 0)
    pair, ray = np.nonzero(hit)
    weights = shares[:, pair, ray] / whole[pair, ray]
    heights = tips[triangle[pair], :, 2]
    depth = weights[1] * heights[:, 0] + weights[2] * heights[:, 1] + weights[0] * heights[:, 2]
    line = middle[pair] * len(bundle) + ray
    return _paired(line, depth - middles[middle[pair], 2], sign[pair, ray])


def _within(points: Vectors, low: Vectors, high: Vectors) -> tuple[Numbers, Numbers]:
    """Which points (k, 2) lie in which boxes, low and high (m, 2): numbers (n,) of both, by point, then box.

    Along the axis on which fewer do, points are sorted and each box's looked up; the other tells them apart.
    """
    orders = np.argsort(points, axis=0, kind="stable")
    first, last = (
        np.column_stack(
            [np.searchsorted(points[orders[:, k], k], ends[:, k], side) for k in range(2)],  # type: ignore[call-overload]  # a side by name
        )
        for ends, side in ((low, "left"), (high, "right"))
    )
    counts = last - first
    axis = int(counts.sum(axis=0).argmin())
    of_box = counts[:, axis]
    box = np.repeat(np.arange(len(low)), of_box)
    place = np.arange(len(box)) - np.repeat(np.cumsum(of_box) - of_box, of_box) + first[box, axis]
    point, other = orders[place, axis], 1 - axis
    inside = (points[point, other] >= low[box, other]) & (points[point, other] <= high[box, other])
    point, box = point[inside], box[inside]
    order = np.lexsort((box, point))
    return point[order], box[order]


def _twice(a: Vectors, b: Vectors, p: Vectors) -> Vectors:
    """Twice the area of the triangles a, b, p (..., 2)."""
    area: Vectors = (b[..., 0] - a[..., 0]) * (p[..., 1] - a[..., 1]) - (b[..., 1] - a[..., 1]) * (
        p[..., 0] - a[..., 0]
    )
    return area


def _paired(line: Numbers, depth: Vectors, leaves: Vectors) -> tuple[Numbers, Vectors, Vectors]:
    """Crossings as stretches: each entry (-1) with the exit (+1) that follows it on its line."""
    order = np.lexsort((leaves, np.round(depth / SAME), line))
    line, depth, leaves = line[order], depth[order], leaves[order]
    again = (line[1:] == line[:-1]) & (leaves[1:] == leaves[:-1]) & (np.diff(depth) < SAME)
    kept = np.concatenate([[True], ~again]) if len(line) else np.empty(0, bool)
    line, depth, leaves = line[kept], depth[kept], leaves[kept]
    enters = np.flatnonzero((line[1:] == line[:-1]) & (leaves[:-1] < 0) & (leaves[1:] > 0))
    return line[enters], depth[enters], depth[enters + 1]
