"""Planar faces welded into one solid: equal points become one vertex, equal sides one edge.

This is the whole B-rep of a planar-faced body, written at once. It needs no sewing, no boolean and
no healing, because callers compute each point once: two corners meet when their numbers are equal.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import NamedTuple

from OCP.BRep import BRep_Builder
from OCP.BRepBuilderAPI import BRepBuilderAPI_MakeEdge
from OCP.Geom import Geom_Plane
from OCP.gp import gp_Dir, gp_Pnt
from OCP.TopLoc import TopLoc_Location
from OCP.TopoDS import TopoDS_Edge, TopoDS_Face, TopoDS_Shell, TopoDS_Solid, TopoDS_Vertex, TopoDS_Wire

from ..place import Point3

TOLERANCE = 1e-7  # mm; the kernel's own confusion distance
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
    """A shell under construction, with the vertices and edges its faces share."""

    def __init__(self) -> None:
        self._builder = BRep_Builder()
        self._shell = TopoDS_Shell()
        self._builder.MakeShell(self._shell)
        self._vertices: dict[Point3, TopoDS_Vertex] = {}
        self._edges: dict[tuple[Point3, Point3], TopoDS_Edge] = {}
        self._open: set[tuple[Point3, Point3]] = set()  # sides whose other face is still to come
        self._nowhere = TopLoc_Location()

    def add(self, facet: Facet) -> None:
        rings = [ring for ring in map(_without_repeats, facet.rings) if len(ring) > 2]
        if not rings:
            return  # shrunk to a line, where two graphs meet
        plane = Geom_Plane(gp_Pnt(*rings[0][0]), gp_Dir(*facet.normal))
        face = TopoDS_Face()
        self._builder.MakeFace(face, plane, self._nowhere, TOLERANCE)
        for ring in rings:
            self._builder.Add(face, self._wire(ring))
        self._builder.Add(self._shell, face)

    def solid(self) -> TopoDS_Solid:
        if self._open:
            raise ValueError(f"the body is not closed along {len(self._open)} sides")
        self._shell.Closed(True)
        solid = TopoDS_Solid()
        self._builder.MakeSolid(solid)
        self._builder.Add(solid, self._shell)
        return solid

    def _wire(self, ring: Ring) -> TopoDS_Wire:
        wire = TopoDS_Wire()
        self._builder.MakeWire(wire)
        start = ring[-1]
        for end in ring:
            self._builder.Add(wire, self._edge(start, end))
            start = end
        wire.Closed(True)
        return wire

    def _edge(self, start: Point3, end: Point3) -> TopoDS_Edge:
        if (end, start) in self._open:
            self._open.remove((end, start))
            return self._edges[end, start].Reversed()
        if (start, end) in self._edges or (end, start) in self._edges:
            raise ValueError(f"more than two faces meet along a side at {start}")
        edge = BRepBuilderAPI_MakeEdge(self._vertex(start), self._vertex(end)).Edge()
        self._edges[start, end] = edge
        self._open.add((start, end))
        return edge

    def _vertex(self, point: Point3) -> TopoDS_Vertex:
        vertex = self._vertices.get(point)
        if vertex is None:
            vertex = TopoDS_Vertex()
            self._builder.MakeVertex(vertex, gp_Pnt(*point), TOLERANCE)
            self._vertices[point] = vertex
        return vertex


def _without_repeats(ring: Ring) -> list[Point3]:
    return [point for before, point in zip((ring[-1], *ring), ring, strict=False) if point != before]
