"""Prisms with rounded corners, written at once: every vertex, edge and face made once, no boolean."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from OCP.TopoDS import TopoDS, TopoDS_Edge, TopoDS_Face, TopoDS_Solid

from ..place import Point3
from ..recipe import Section
from .brep import BUILDER, TOLERANCE, Corner, back, corner, edge, face, flat, solid, straight
from .rounds import Round
from .section_sides import Side, sides


class Rim(NamedTuple):
    """A plane z = a x + b y + c over a ring: by side, the corner it starts at and the edge along it."""

    plane: Point3
    corners: list[Corner]
    edges: list[TopoDS_Edge]


def rounded_prism(section: Section, start: Point3, end: Point3) -> TopoDS_Solid:
    """The solid of a section (mm) between two planes (a, b, c), z = a x + b y + c, that meet nowhere on it.

    Arcs stand as cylinders, which the planes cross in circles or ellipses. Raises ValueError where
    two arcs overlap or the planes meet.
    """
    rings = [sides(section.outer, 1), *(sides(hole, -1) for hole in section.holes)]
    return solid(_faces(rings, start, end))


def _faces(rings: list[list[Side]], start: Point3, end: Point3) -> Iterator[TopoDS_Face]:
    low, high = ([_rim(ring, plane) for ring in rings] for plane in (start, end))
    yield flat(low[0].corners[0].point, (start[0], start[1], -1.0), [back(rim.edges) for rim in low])
    yield flat(high[0].corners[0].point, (-end[0], -end[1], 1.0), [rim.edges for rim in high])
    for ring, under, over in zip(rings, low, high, strict=True):
        yield from _walls(ring, under, over)


def _rim(ring: list[Side], plane: Point3) -> Rim:
    a, b, c = plane
    corners = [corner((x, y, a * x + b * y + c)) for x, y in (side.start for side in ring)]
    ends = zip(ring, corners, [*corners[1:], corners[0]], strict=True)
    return Rim(plane, corners, [_along(side, plane, p, q) for side, p, q in ends])


def _along(side: Side, plane: Point3, start: Corner, end: Corner) -> TopoDS_Edge:
    """The edge of a plane over a side, as the ring runs."""
    if not side.turn:
        return straight(start, end)
    curve, first, last = Round(side).crossing(plane)
    if side.turn > 0.0:
        return edge(curve, first, last, start, end)
    (against,) = back([edge(curve, first, last, end, start)])
    return against


def _walls(ring: list[Side], low: Rim, high: Rim) -> Iterator[TopoDS_Face]:
    """What stands on the sides of a ring, between two rims."""
    uprights = [straight(p, q) for p, q in zip(low.corners, high.corners, strict=True)]
    for i, side in enumerate(ring):
        after = (i + 1) % len(ring)
        around = [low.edges[i], uprights[after], *back([uprights[i], high.edges[i]])]
        if side.turn:
            yield _round_wall(side, (low, high), i, around)
        else:
            (px, py), (qx, qy) = side.start, side.end
            yield flat(low.corners[i].point, (qy - py, px - qx, 0.0), [around])


def _round_wall(side: Side, rims: tuple[Rim, Rim], i: int, around: list[TopoDS_Edge]) -> TopoDS_Face:
    """A wall over an arc. The kernel wants each edge drawn on a surface that is no plane.

    around: the edges along the low rim, up, back along the high rim and down, as seen from outside.
    """
    under, outward = Round(side), side.turn > 0.0
    made = face(under.cylinder(), [around if outward else back(around)])
    for rim in rims:
        BUILDER.UpdateEdge(rim.edges[i], under.drawn_crossing(rim.plane), made, TOLERANCE)
    corners = rims[0].corners
    feet = corners[i].point[2], corners[(i + 1) % len(corners)].point[2]
    _, up, _, down = around
    begin, end = (down, up) if outward else (up, down)
    at_begin, at_end = under.drawn_uprights(*(feet if outward else feet[::-1]))
    if begin.IsSame(end):  # a whole circle: its one upright is drawn at both ends, first where it runs up
        BUILDER.UpdateEdge(begin, at_end, at_begin, made, TOLERANCE)
    else:
        BUILDER.UpdateEdge(begin, at_begin, made, TOLERANCE)
        BUILDER.UpdateEdge(end, at_end, made, TOLERANCE)
    return made if outward else TopoDS.Face_s(made.Reversed())
