"""Planar faces welded into one solid: equal points become one vertex, equal sides one edge.

This is the whole B-rep of a planar-faced body, written at once. It needs no sewing, no boolean and
no healing, because callers compute each point once: two corners meet when their numbers are equal.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import NamedTuple

from OCP.TopoDS import TopoDS_Edge, TopoDS_Face, TopoDS_Solid

from ..place import Point3
from .brep import Corner, corner, flat, solid, straight

Ring = Sequence[Point3]


class Facet(NamedTuple):
    """A planar face: its outward normal (any length) and its rings.

    The first ring is the outer one, counter-clockwise seen from outside the body; the others are
    holes, clockwise. Rings are not closed by repeating; repeated neighbours are dropped.
    """

    normal: Point3
    rings: Sequence[Ring]


def weld(facets: Iterable[Facet]) -> TopoDS_Solid:
    """The solid that facets enclose (mm).

    Points weld when their coordinates are equal. Raises ValueError when the facets leave a gap or
    use a side twice in the same direction.
    """
    welding = _Welding()
    for facet in facets:
        welding.add(facet)
    return welding.solid()


class _Welding:
    """A shell under construction, with the corners and edges its faces share; corners go by number."""

    def __init__(self) -> None:
        self._faces: list[TopoDS_Face] = []
        self._numbers: dict[Point3, int] = {}
        self._corners: list[Corner] = []
        self._sides: set[tuple[int, int]] = set()
        self._open: dict[tuple[int, int], TopoDS_Edge] = {}  # sides whose other face is still to come

    def add(self, facet: Facet) -> None:
        rings = [ring for ring in map(_without_repeats, facet.rings) if len(ring) > 2]
        if rings:  # else it has shrunk to a line, where two graphs meet
            self._faces.append(flat(rings[0][0], facet.normal, map(self._around, rings)))

    def solid(self) -> TopoDS_Solid:
        if self._open:
            raise ValueError(f"the body is not closed along {len(self._open)} sides")
        return solid(self._faces)

    def _around(self, ring: Ring) -> list[TopoDS_Edge]:
        numbers = [self._number(point) for point in ring]
        return [self._edge(*side) for side in zip([numbers[-1], *numbers], numbers, strict=False)]

    def _number(self, point: Point3) -> int:
        found = self._numbers.get(point)
        if found is None:
            found = self._numbers[point] = len(self._corners)
            self._corners.append(corner(point))
        return found

    def _edge(self, start: int, end: int) -> TopoDS_Edge:
        if (start, end) in self._sides:
            raise ValueError(f"more than two faces meet along a side at {self._corners[start].point}")
        self._sides.add((start, end))
        other = self._open.pop((end, start), None)
        if other is not None:
            return other.Reversed()
        edge = self._open[start, end] = straight(self._corners[start], self._corners[end])
        return edge


def _without_repeats(ring: Ring) -> list[Point3]:
    return [point for before, point in zip((ring[-1], *ring), ring, strict=False) if point != before]
