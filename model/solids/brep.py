"""What a B-rep is written with. Whoever shares a vertex or an edge hands on the same one."""

from __future__ import annotations

from collections.abc import Iterable
from typing import NamedTuple

from OCP.BRep import BRep_Builder
from OCP.BRepBuilderAPI import BRepBuilderAPI_MakeEdge
from OCP.Geom import Geom_Curve, Geom_Plane, Geom_Surface
from OCP.gp import gp_Dir, gp_Pnt
from OCP.TopAbs import TopAbs_REVERSED
from OCP.TopLoc import TopLoc_Location
from OCP.TopoDS import (
    TopoDS,
    TopoDS_Edge,
    TopoDS_Face,
    TopoDS_Shell,
    TopoDS_Solid,
    TopoDS_Vertex,
    TopoDS_Wire,
)

from ..place import Point3

TOLERANCE = 1e-7  # mm; the kernel's own confusion distance
NOWHERE = TopLoc_Location()
BUILDER = BRep_Builder()


class Corner(NamedTuple):
    """A vertex and where it is (mm)."""

    point: Point3
    vertex: TopoDS_Vertex


def corner(point: Point3) -> Corner:
    """A new vertex at a point."""
    vertex = TopoDS_Vertex()
    BUILDER.MakeVertex(vertex, gp_Pnt(*point), TOLERANCE)
    return Corner(point, vertex)


def edge(curve: Geom_Curve, first: float, last: float, start: Corner, end: Corner) -> TopoDS_Edge:
    """A curve from one parameter to another, where two corners stand; or all round from one and the same."""
    made = TopoDS_Edge()
    BUILDER.MakeEdge(made, curve, TOLERANCE)
    BUILDER.Range(made, first, last)
    BUILDER.Add(made, start.vertex)
    BUILDER.Add(made, end.vertex.Oriented(TopAbs_REVERSED))
    return made


def straight(start: Corner, end: Corner) -> TopoDS_Edge:
    """A straight edge, its parameter the way (mm) from its start. Raises ValueError where that is none."""
    making = BRepBuilderAPI_MakeEdge(start.vertex, end.vertex)
    if not making.IsDone():
        raise ValueError(f"a side at {start.point} has no length")
    return making.Edge()


def back(edges: Iterable[TopoDS_Edge]) -> list[TopoDS_Edge]:
    """The same way the other way round."""
    return [TopoDS.Edge_s(part.Reversed()) for part in reversed(list(edges))]


def face(surface: Geom_Surface, rings: Iterable[Iterable[TopoDS_Edge]]) -> TopoDS_Face:
    """What rings of edges bound of a surface: it lies to their left, seen against its normal."""
    made = TopoDS_Face()
    BUILDER.MakeFace(made, surface, NOWHERE, TOLERANCE)
    for ring in rings:
        wire = TopoDS_Wire()
        BUILDER.MakeWire(wire)
        for part in ring:
            BUILDER.Add(wire, part)
        wire.Closed(True)
        BUILDER.Add(made, wire)
    return made


def flat(point: Point3, normal: Point3, rings: Iterable[Iterable[TopoDS_Edge]]) -> TopoDS_Face:
    """A planar face through a point; its normal (any length) looks out of the body."""
    return face(Geom_Plane(gp_Pnt(*point), gp_Dir(*normal)), rings)


def solid(faces: Iterable[TopoDS_Face]) -> TopoDS_Solid:
    """The solid inside faces that close."""
    shell, made = TopoDS_Shell(), TopoDS_Solid()
    BUILDER.MakeShell(shell)
    for part in faces:
        BUILDER.Add(shell, part)
    shell.Closed(True)
    BUILDER.MakeSolid(made)
    BUILDER.Add(made, shell)
    return made
