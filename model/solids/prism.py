"""Members, trims, plates: a section between two end planes."""

from __future__ import annotations

from collections.abc import Iterator

from OCP.BRepBuilderAPI import BRepBuilderAPI_MakeFace
from OCP.BRepPrimAPI import BRepPrimAPI_MakeHalfSpace, BRepPrimAPI_MakePrism
from OCP.gp import gp_Dir, gp_Pln, gp_Pnt, gp_Vec
from OCP.TopoDS import TopoDS, TopoDS_Shape, TopoDS_Solid

from ..place import Point2, Point3
from ..recipe import Prism, Section
from .booleans import less, one_body
from .section_wire import is_sharp, oriented, section_face
from .weld import Facet, weld

SPARE = 1.0  # mm; how far a rounded prism is drawn past its end planes before they cut it


def prism(recipe: Prism) -> TopoDS_Solid:
    """The solid of a prism in its own frame (mm), rounded corners as true cylinders.

    Raises ValueError when the radii of two corners overlap or the end planes cross the section.
    """
    _check_ends(recipe)
    if is_sharp(recipe.section):
        return weld(_facets(recipe))
    if not any((*recipe.start[:2], *recipe.end[:2])):
        return _square_cut(recipe.section, recipe.start[2], recipe.end[2])
    return _mitred(recipe)


def _check_ends(recipe: Prism) -> None:
    for x, y, _ in recipe.section.outer:
        if height(recipe.start, (x, y)) > height(recipe.end, (x, y)):
            raise ValueError(f"the end planes of a prism cross before ({x}, {y})")


def height(plane: Point3, point: Point2) -> float:
    """The z of the plane z = a x + b y + c at (x, y)."""
    return plane[0] * point[0] + plane[1] * point[1] + plane[2]


def _facets(recipe: Prism) -> Iterator[Facet]:
    rings = [[(x, y) for x, y, _ in oriented(recipe.section.outer, 1)]]
    rings += [[(x, y) for x, y, _ in oriented(hole, -1)] for hole in recipe.section.holes]
    start = [_lifted(recipe.start, ring) for ring in rings]
    end = [_lifted(recipe.end, ring) for ring in rings]
    (a, b, _), (d, e, _) = recipe.start, recipe.end
    yield Facet((a, b, -1.0), [ring[::-1] for ring in start])
    yield Facet((-d, -e, 1.0), end)
    for low, high in zip(start, end, strict=True):
        for i, (p, q) in enumerate(zip(low, [*low[1:], low[0]], strict=True)):
            yield Facet((q[1] - p[1], p[0] - q[0], 0.0), [[p, q, high[(i + 1) % len(high)], high[i]]])


def _lifted(plane: Point3, ring: list[Point2]) -> list[Point3]:
    return [(*point, height(plane, point)) for point in ring]


def _square_cut(section: Section, low: float, high: float) -> TopoDS_Solid:
    drawn = BRepPrimAPI_MakePrism(section_face(section, low), gp_Vec(0.0, 0.0, high - low))
    return TopoDS.Solid_s(drawn.Shape())


def _mitred(recipe: Prism) -> TopoDS_Solid:
    """A rounded prism drawn too long and cut by its end planes."""
    corners = [(x, y) for x, y, _ in recipe.section.outer]
    low = min(height(recipe.start, corner) for corner in corners) - SPARE
    high = max(height(recipe.end, corner) for corner in corners) + SPARE
    long = _square_cut(recipe.section, low, high)
    return one_body(less(long, [_beyond(recipe.start, -1.0), _beyond(recipe.end, 1.0)]))


def _beyond(plane: Point3, side: float) -> TopoDS_Shape:
    """All space above (side 1) or below (side -1) a plane."""
    a, b, c = plane
    face = BRepBuilderAPI_MakeFace(gp_Pln(gp_Pnt(0.0, 0.0, c), gp_Dir(-a, -b, 1.0))).Face()
    return BRepPrimAPI_MakeHalfSpace(face, gp_Pnt(0.0, 0.0, c + side)).Solid()
