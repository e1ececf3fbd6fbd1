"""Screws, washers and the like: a meridian turned about z."""

from __future__ import annotations

import math
from collections.abc import Iterator

from OCP.BRepBuilderAPI import BRepBuilderAPI_MakeFace, BRepBuilderAPI_MakePolygon
from OCP.BRepPrimAPI import BRepPrimAPI_MakeRevol
from OCP.gp import gp, gp_Pnt
from OCP.TopoDS import TopoDS, TopoDS_Solid

from ..place import Point2, Point3
from ..recipe import Turned
from .strips import turned_to
from .weld import Facet, weld


def turned(recipe: Turned) -> TopoDS_Solid:
    """The solid of a meridian turned about z (mm). With sides, its radii are those of the corners,
    and the first corner stands on the x axis."""
    meridian = turned_to(recipe.meridian, 1)
    if recipe.sides:
        return weld(_flats(meridian, recipe.sides))
    return _round(meridian)


def _round(meridian: list[Point2]) -> TopoDS_Solid:
    polygon = BRepBuilderAPI_MakePolygon()
    for r, z in reversed(meridian):  # clockwise seen from -y, so that the body is not inside out
        polygon.Add(gp_Pnt(r, 0.0, z))
    polygon.Close()
    face = BRepBuilderAPI_MakeFace(polygon.Wire(), True).Face()
    return TopoDS.Solid_s(BRepPrimAPI_MakeRevol(face, gp.OZ_s(), True).Shape())


def _flats(meridian: list[Point2], sides: int) -> Iterator[Facet]:
    for p, q in zip(meridian, [*meridian[1:], meridian[0]], strict=True):
        if p[1] == q[1]:
            yield _lid(p, q, sides)
        elif p[0] or q[0]:
            yield from _belt(p, q, sides)


def _lid(p: Point2, q: Point2, sides: int) -> Facet:
    """The level face between two points; the body lies to the left of p q."""
    if q[0] < p[0]:
        return Facet((0.0, 0.0, 1.0), [_ring(p, sides), _ring(q, sides)[::-1]])
    return Facet((0.0, 0.0, -1.0), [_ring(q, sides)[::-1], _ring(p, sides)])


def _belt(p: Point2, q: Point2, sides: int) -> Iterator[Facet]:
    below, above = _ring(p, sides), _ring(q, sides)
    across = math.pi / sides
    # the middle of a flat is nearer to the axis than its corners, so it leans a little steeper
    rise, run = q[1] - p[1], (q[0] - p[0]) * math.cos(across)
    for k in range(sides):
        turn, after = 2.0 * math.pi * k / sides + across, (k + 1) % sides
        normal = (rise * math.cos(turn), rise * math.sin(turn), -run)
        yield Facet(normal, [[below[k], below[after], above[after], above[k]]])


def _ring(point: Point2, sides: int) -> list[Point3]:
    """The corners of a point turned about z, counter-clockwise seen from above."""
    r, z = point
    turns = [2.0 * math.pi * k / sides for k in range(sides)]
    return [(r * math.cos(turn), r * math.sin(turn), z) if r else (0.0, 0.0, z) for turn in turns]
