"""Ribbed sheets, closures: what lies over an outline between two graphs, built without a boolean."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterator
from itertools import pairwise

from OCP.TopoDS import TopoDS_Solid

from ..place import Point2, Point3
from ..recipe import Sheet
from .strips import FLAT, corners, crossed, noded, pieces, turned_to
from .weld import Facet, weld

SNAP = 1e-4  # mm; a bend of a graph nearer than this to a corner of the outline is set on it


def sheet(recipe: Sheet) -> TopoDS_Solid:
    """The solid of a sheet in its bench frame (mm).

    The outline is cut into strips where a graph bends, the strips are lifted onto the graphs, and
    every side of the outline is walled between them. Raises ValueError when a graph does not cover
    the outline.
    """
    rings = [corners(turned_to(recipe.outline, 1))]
    rings += [corners(turned_to(hole, -1)) for hole in recipe.holes]
    lower = _Graph(recipe.lower, rings)
    upper = _Graph(recipe.upper, rings)
    return weld([*_cover(upper, rings, 1), *_cover(lower, rings, -1), *_walls(lower, upper, rings)])


class _Graph:
    """A graph w(u) over a region: its bends within the region, and its height at any u."""

    def __init__(self, points: tuple[Point2, ...], rings: list[list[Point2]]) -> None:
        corner_us = sorted({u for ring in rings for u, _ in ring})
        first, last = corner_us[0], corner_us[-1]
        if points[0][0] > first + SNAP or points[-1][0] < last - SNAP:
            raise ValueError(f"a graph from u {points[0][0]} to {points[-1][0]} covers no {first} to {last}")
        bends = [points[0], *_bends(points), points[-1]]
        self._us: list[float] = []
        self._ws: list[float] = []
        for u, w in ((_snapped(u, corner_us), w) for u, w in bends):
            if not self._us or u - self._us[-1] > SNAP:
                self._us.append(u)
                self._ws.append(w)
        points_on = pairwise(zip(self._us, self._ws, strict=True))
        self._slopes = [(w - v) / (u - t) for (t, v), (u, w) in points_on]
        self.cuts = [first, *(u for u in self._us if first < u < last), last]

    def height(self, u: float) -> float:
        """W at u, on the first or last side past the graph's ends."""
        i = self._side(u)
        return self._ws[i] + self._slopes[i] * (u - self._us[i])

    def slope(self, u: float) -> float:
        """Slope dw/du of the side over u."""
        return self._slopes[self._side(u)]

    def _side(self, u: float) -> int:
        return min(max(bisect_right(self._us, u) - 1, 0), len(self._slopes) - 1)

    def lifted(self, points: list[Point2]) -> list[Point3]:
        """The points (u, v) on the graph."""
        return [(u, v, self.height(u)) for u, v in points]


def _bends(points: tuple[Point2, ...]) -> list[Point2]:
    """The inner points at which a graph changes its slope."""
    bends: list[Point2] = []
    before = points[0]
    for point, after in pairwise(points[1:]):
        straight = before[1] + (after[1] - before[1]) * (point[0] - before[0]) / (after[0] - before[0])
        if abs(point[1] - straight) > FLAT:
            bends.append(point)
            before = point
    return bends


def _snapped(u: float, corner_us: list[float]) -> float:
    return min(
        (corner for corner in corner_us if abs(corner - u) < SNAP), key=lambda c: abs(c - u), default=u
    )


def _cover(graph: _Graph, rings: list[list[Point2]], side: int) -> Iterator[Facet]:
    """The faces on a graph: the upper ones for side 1, the lower for -1."""
    for piece in pieces([noded(ring, graph.cuts) for ring in rings], graph.cuts):
        middle = 0.5 * (graph.cuts[piece.strip] + graph.cuts[piece.strip + 1])
        normal = (-side * graph.slope(middle), 0.0, float(side))
        yield Facet(normal, [graph.lifted(ring)[::side] for ring in piece.rings])


def _walls(lower: _Graph, upper: _Graph, rings: list[list[Point2]]) -> Iterator[Facet]:
    """The faces that stand on the sides of the outline and its holes."""
    for ring in rings:
        for p, q in zip(ring, [*ring[1:], ring[0]], strict=True):
            below = lower.lifted([*crossed(p, q, lower.cuts), q])
            above = upper.lifted([*crossed(p, q, upper.cuts), q])
            yield Facet((q[1] - p[1], p[0] - q[0], 0.0), [below + above[::-1]])
