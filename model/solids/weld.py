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
    """A shell under construction, with the corners and edges its faces share."""

    def __init__(self) -> None:
        self._faces: list[TopoDS_Face] = []
        self._corners: dict[Point3, Corner] = {}
        self._edges: dict[tuple[Point3, Point3], TopoDS_Edge] = {}
        self._open: set[tuple[Point3, Point3]] = set()  # sides whose other face is still to come

    def add(self, facet: Facet) -> None:
        rings = [ring for ring in map(_without_repeats, facet.rings) if len(ring) > 2]
        if rings:  # else it has shrunk to a line, where two graphs meet
            self._faces.append(flat(rings[0][0], facet.normal, map(self._around, rings)))

    def solid(self) -> TopoDS_Solid:
        if self._open:
            raise ValueError(f"the body is not closed along {len(self._open)} sides")
        return solid(self._faces)

    def _around(self, ring: Ring) -> list[TopoDS_Edge]:
        return [self._edge(start, end) for start, end in zip((ring[-1], *ring), ring, strict=False)]

    def _edge(self, start: Point3, end: Point3) -> TopoDS_Edge:
        if (end, start) in self._open:
            self._open.remove((end, start))
            return self._edges[end, start].Reversed()
        if (start, end) in self._edges or (end, start) in self._edges:
            raise ValueError(f"more than two faces meet along a side at {start}")
        edge = straight(self._corner(start), self._corner(end))
        self._edges[start, end] = edge
        self._open.add((start, end))
        return edge

    def _corner(self, point: Point3) -> Corner:
        found = self._corners.get(point)
        if found is None:
            found = self._corners[point] = corner(point)
        return found


def _without_repeats(ring: Ring) -> list[Point3]:
    return [point for before, point in zip((ring[-1], *ring), ring, strict=False) if point != before]
