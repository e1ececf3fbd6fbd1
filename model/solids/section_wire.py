"""Sections: closed rings of corners, sharp or rounded by true arcs."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import NamedTuple

from OCP.BRepBuilderAPI import BRepBuilderAPI_MakeEdge, BRepBuilderAPI_MakeFace, BRepBuilderAPI_MakeWire
from OCP.gp import gp_Ax2, gp_Circ, gp_Dir, gp_Pnt
from OCP.TopoDS import TopoDS_Edge, TopoDS_Face, TopoDS_Wire

from ..place import Point2, Point3
from ..recipe import Section
from .strips import turned_to

NEAR = 1e-7  # mm; shorter sides are none


class Corner(NamedTuple):
    """A corner from where its arc starts to where it ends; a sharp one starts and ends in one point.

    turn: the angle the ring turns by, radians, positive to the left.
    """

    start: Point2
    end: Point2
    centre: Point2
    radius: float
    turn: float


def oriented(ring: Sequence[Point3], sign: int) -> list[Point3]:
    """A ring of (x, y, radius), counter-clockwise for sign 1, clockwise for -1."""
    points = [(x, y) for x, y, _ in ring]
    return list(ring) if turned_to(points, sign) == points else list(reversed(ring))


def is_sharp(section: Section) -> bool:
    """Whether no corner is rounded."""
    return not any(radius for ring in (section.outer, *section.holes) for _, _, radius in ring)


def rounded(ring: Sequence[Point3]) -> list[Corner]:
    """The corners of a ring with their arcs. Raises ValueError where two arcs overlap on a side."""
    found: list[Corner] = []
    for i, (x, y, radius) in enumerate(ring):
        (ax, ay, _), (bx, by, _) = ring[i - 1], ring[(i + 1) % len(ring)]
        in_x, in_y = _direction(ax, ay, x, y)
        out_x, out_y = _direction(x, y, bx, by)
        turn = math.atan2(in_x * out_y - in_y * out_x, in_x * out_x + in_y * out_y)
        reach = radius * math.tan(abs(turn) / 2.0)
        start = (x - reach * in_x, y - reach * in_y)
        side = math.copysign(radius, turn)
        centre = (start[0] - side * in_y, start[1] + side * in_x)
        end = (x + reach * out_x, y + reach * out_y) if reach else start
        found.append(Corner(start, end, centre, radius if reach else 0.0, turn))
    return [_after(found[i - 1], corner, ring[i - 1], ring[i]) for i, corner in enumerate(found)]


def _direction(ax: float, ay: float, bx: float, by: float) -> Point2:
    length = math.hypot(bx - ax, by - ay)
    return ((bx - ax) / length, (by - ay) / length)


def _after(before: Corner, corner: Corner, a: Point3, b: Point3) -> Corner:
    """The corner, starting where the one before it ends if no side is left between them."""
    side_x, side_y = b[0] - a[0], b[1] - a[1]
    gap_x, gap_y = corner.start[0] - before.end[0], corner.start[1] - before.end[1]
    gap = (gap_x * side_x + gap_y * side_y) / math.hypot(side_x, side_y)
    if gap < -NEAR:
        raise ValueError(f"the radii at {a} and {b} overlap")
    return corner._replace(start=before.end) if gap < NEAR else corner


def section_face(section: Section, z: float) -> TopoDS_Face:
    """The section as a face at height z, its normal up."""
    making = BRepBuilderAPI_MakeFace(_wire(rounded(oriented(section.outer, 1)), z), True)
    for hole in section.holes:
        making.Add(_wire(rounded(oriented(hole, -1)), z))
    return making.Face()


def _wire(ring: list[Corner], z: float) -> TopoDS_Wire:
    if _is_round(ring):
        return BRepBuilderAPI_MakeWire(BRepBuilderAPI_MakeEdge(_circle(ring[0], z)).Edge()).Wire()
    making = BRepBuilderAPI_MakeWire()
    for i, corner in enumerate(ring):
        before = ring[i - 1]
        if before.end != corner.start:
            making.Add(BRepBuilderAPI_MakeEdge(gp_Pnt(*before.end, z), gp_Pnt(*corner.start, z)).Edge())
        if corner.radius:
            making.Add(_arc(corner, z))
    return making.Wire()


def _is_round(ring: list[Corner]) -> bool:
    """Whether the arcs of a ring are one circle: no side left, and every corner about one centre."""
    return all(
        corner.radius > 0.0
        and math.dist(ring[i - 1].end, corner.start) < NEAR
        and math.dist(corner.centre, ring[0].centre) < NEAR
        for i, corner in enumerate(ring)
    )


def _arc(corner: Corner, z: float) -> TopoDS_Edge:
    circle = _circle(corner, z)
    return BRepBuilderAPI_MakeEdge(circle, gp_Pnt(*corner.start, z), gp_Pnt(*corner.end, z)).Edge()


def _circle(corner: Corner, z: float) -> gp_Circ:
    way = 1.0 if corner.turn > 0 else -1.0
    return gp_Circ(gp_Ax2(gp_Pnt(*corner.centre, z), gp_Dir(0.0, 0.0, way)), corner.radius)
