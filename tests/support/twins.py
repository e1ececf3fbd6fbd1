"""The boolean twin of a rounded prism: drawn too long, its corners filleted, its ends cut by half spaces."""

from __future__ import annotations

from OCP.BRepBuilderAPI import BRepBuilderAPI_MakeFace, BRepBuilderAPI_MakePolygon
from OCP.BRepFilletAPI import BRepFilletAPI_MakeFillet2d
from OCP.BRepPrimAPI import BRepPrimAPI_MakeHalfSpace, BRepPrimAPI_MakePrism
from OCP.BRepTools import BRepTools_WireExplorer
from OCP.gp import gp_Dir, gp_Pln, gp_Pnt, gp_Vec
from OCP.TopoDS import TopoDS_Shape
from ribwright.place import Point3
from ribwright.recipe import Prism
from ribwright.solids.booleans import less, one_body
from ribwright.solids.section_sides import oriented

FAR = 1e4  # mm; past the ends of any prism that is tried


def boolean_twin(recipe: Prism) -> TopoDS_Shape:
    """The solid of a prism by the kernel's fillets and booleans alone."""
    holes = [_drawn(hole) for hole in recipe.section.holes]
    ends = [_beyond(recipe.start, -1.0), _beyond(recipe.end, 1.0)]
    return one_body(less(_drawn(recipe.section.outer), [*holes, *ends]))


def _drawn(ring: tuple[Point3, ...]) -> TopoDS_Shape:
    """A ring's filleted prism from FAR below to FAR above."""
    ring = tuple(oriented(ring, 1))
    polygon = BRepBuilderAPI_MakePolygon()
    for x, y, _ in ring:
        polygon.Add(gp_Pnt(x, y, -FAR))
    polygon.Close()
    rounding = BRepFilletAPI_MakeFillet2d(BRepBuilderAPI_MakeFace(polygon.Wire(), True).Face())
    corners = []
    walk = BRepTools_WireExplorer(polygon.Wire())
    while walk.More():
        corners.append(walk.CurrentVertex())
        walk.Next()
    for corner, (_, _, radius) in zip(corners, ring, strict=True):
        if radius:
            rounding.AddFillet(corner, radius)
    rounding.Build()
    assert rounding.IsDone()
    return BRepPrimAPI_MakePrism(rounding.Shape(), gp_Vec(0.0, 0.0, 2 * FAR)).Shape()


def _beyond(plane: Point3, side: float) -> TopoDS_Shape:
    """All space above (side 1) or below (side -1) a plane."""
    a, b, c = plane
    face = BRepBuilderAPI_MakeFace(gp_Pln(gp_Pnt(0.0, 0.0, c), gp_Dir(-a, -b, 1.0))).Face()
    return BRepPrimAPI_MakeHalfSpace(face, gp_Pnt(0.0, 0.0, c + side)).Solid()
