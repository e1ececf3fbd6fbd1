"""What a solid says of itself: its corners, and its planar faces with outward normals and rings."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import TypeAlias

import numpy as np
from numpy.typing import NDArray
from OCP.BRep import BRep_Tool
from OCP.BRepAdaptor import BRepAdaptor_Surface
from OCP.BRepGProp import BRepGProp
from OCP.BRepTools import BRepTools, BRepTools_WireExplorer
from OCP.GeomAbs import GeomAbs_Cylinder, GeomAbs_Plane
from OCP.GProp import GProp_GProps
from OCP.TopAbs import TopAbs_FACE, TopAbs_REVERSED, TopAbs_ShapeEnum, TopAbs_VERTEX, TopAbs_WIRE
from OCP.TopExp import TopExp, TopExp_Explorer
from OCP.TopoDS import TopoDS, TopoDS_Face, TopoDS_Solid, TopoDS_Wire
from OCP.TopTools import TopTools_IndexedMapOfShape

from ..place import Point3

Vectors: TypeAlias = NDArray[np.float64]
"""Array of points or directions, (n, 3) or (n, 2)."""
Ring: TypeAlias = NDArray[np.intp]
"""Corner numbers around a ring, (n,), not closed by repeating."""

FULL_TURN = 6.28
"""Radians: a cylinder that goes this far round is a whole one."""
KEPT = 32768
"""Solids whose measurements are remembered; a large building has a few hundred, but a file from elsewhere
may hold every screw as a solid of its own."""


@dataclass(frozen=True, slots=True, eq=False)
class Face:
    """A planar face: outward unit normal (3,), rings of corner numbers, area (mm2).

    The first ring is the outer one, counter-clockwise seen from outside; the others go clockwise.
    """

    normal: Vectors
    rings: tuple[Ring, ...]
    area: float


@dataclass(frozen=True, slots=True, eq=False)
class Body:
    """A solid as its planar faces over shared corners.

    corners: (n, 3) in the solid's own frame, mm. curved: how many faces are not planar and are left
    out of `faces`. volume: mm3, curved faces and all. bores: diameters of the round holes (mm).
    bends: the corners of each curved face, in no order.
    """

    corners: Vectors
    faces: tuple[Face, ...]
    curved: int
    volume: float
    bores: tuple[float, ...] = ()
    bends: tuple[Ring, ...] = ()

    def points(self, face: Face) -> tuple[Vectors, ...]:
        """The rings of a face as points, each (n, 3)."""
        return tuple(self.corners[ring] for ring in face.rings)


@lru_cache(maxsize=KEPT)
def body(solid: TopoDS_Solid) -> Body:
    """The faces of a solid, read once for each solid."""
    numbers = TopTools_IndexedMapOfShape()
    TopExp.MapShapes_s(solid, TopAbs_VERTEX, numbers)
    points = [BRep_Tool.Pnt_s(TopoDS.Vertex_s(numbers.FindKey(i + 1))) for i in range(numbers.Extent())]
    corners = [(p.X(), p.Y(), p.Z()) for p in points]
    shapes = solid_faces(solid)
    found = [_planar(face, corners, numbers) for face in shapes]
    flat = tuple(face for face in found if face is not None)
    curved = len(found) - len(flat)
    where = np.array(corners).reshape(-1, 3)
    if not curved:
        return Body(where, flat, curved, _pyramids(where, flat))
    # A flat face beside a curved one has arcs in its rim: its corners alone do not give its area.
    exact = tuple(
        replace(face, area=_area(shape))
        for face, shape in zip(found, shapes, strict=True)
        if face is not None
    )
    bends = tuple(_corners(shape, numbers) for face, shape in zip(found, shapes, strict=True) if face is None)
    return Body(where, exact, curved, _volume(solid), tuple(_bores(solid)), bends)


@lru_cache(maxsize=KEPT)
def flats(solid: TopoDS_Solid) -> tuple[Vectors, Vectors, tuple[tuple[Vectors, ...], ...]]:
    """A solid's flat faces with corners: normals (n, 3), heights (n,) along them (mm), rings of corners."""
    shape = body(solid)
    faces = [face for face in shape.faces if face.rings]  # the round end of a bar has no corners
    normals = np.array([face.normal for face in faces]).reshape(-1, 3)
    heights = np.array([face.normal @ shape.corners[face.rings[0][0]] for face in faces])
    return normals, heights, tuple(shape.points(face) for face in faces)


def _corners(face: TopoDS_Face, numbers: TopTools_IndexedMapOfShape) -> Ring:
    """The numbers of a face's corners, each once."""
    found = {numbers.FindIndex(corner) - 1 for corner in _under(face, TopAbs_VERTEX)}
    return np.array(sorted(found), dtype=np.intp)


def _pyramids(corners: Vectors, faces: tuple[Face, ...]) -> float:
    """Volume between planar faces: the pyramids from one corner to each, exact and quick."""
    heights = [float(face.normal @ (corners[face.rings[0][0]] - corners[0])) for face in faces]
    return sum(height * face.area for height, face in zip(heights, faces, strict=True)) / 3


def _area(face: TopoDS_Face) -> float:
    figures = GProp_GProps()
    BRepGProp.SurfaceProperties_s(face, figures)
    return float(figures.Mass())


def _bores(solid: TopoDS_Solid) -> Iterator[float]:
    """Diameters of whole cylinders that face inward."""
    for face in solid_faces(solid):
        surface = BRepAdaptor_Surface(face)
        if surface.GetType() != GeomAbs_Cylinder:
            continue
        cylinder = surface.Cylinder()
        inward = (face.Orientation() == TopAbs_REVERSED) == cylinder.Direct()
        if inward and surface.LastUParameter() - surface.FirstUParameter() > FULL_TURN:
            yield 2 * float(cylinder.Radius())


def _volume(solid: TopoDS_Solid) -> float:
    figures = GProp_GProps()
    BRepGProp.VolumeProperties_s(solid, figures)
    return float(figures.Mass())


def solid_faces(solid: TopoDS_Solid) -> list[TopoDS_Face]:
    """Its faces, in its own order."""
    return [TopoDS.Face_s(shape) for shape in _under(solid, TopAbs_FACE)]


def _under(shape: TopoDS_Solid | TopoDS_Face, kind: TopAbs_ShapeEnum) -> list[TopoDS_Face]:
    explorer = TopExp_Explorer(shape, kind)
    found = []
    while explorer.More():
        found.append(explorer.Current())
        explorer.Next()
    return found


def _planar(face: TopoDS_Face, corners: list[Point3], numbers: TopTools_IndexedMapOfShape) -> Face | None:
    """The face as numbers, or None when it is curved."""
    surface = BRepAdaptor_Surface(face, False)
    if surface.GetType() != GeomAbs_Plane:
        return None
    plane = surface.Plane()
    direction = plane.Axis().Direction()
    inward = (face.Orientation() == TopAbs_REVERSED) == plane.Direct()
    sign = -1.0 if inward else 1.0
    normal = (sign * direction.X(), sign * direction.Y(), sign * direction.Z())
    outer = BRepTools.OuterWire_s(face)
    rings: list[Ring] = []
    area = 0.0
    for wire in (TopoDS.Wire_s(shape) for shape in _under(face, TopAbs_WIRE)):
        ring = _ring(wire, face, numbers)
        if len(ring) < 3:  # the rim of a round hole
            continue
        around = _around([corners[i] for i in ring], normal)
        first = wire.IsSame(outer)
        area += abs(around) if first else -abs(around)
        turned = ring if (around > 0) == first else ring[::-1]
        rings.insert(0 if first else len(rings), np.array(turned, dtype=np.intp))
    return Face(np.array(normal), tuple(rings), area)


def _ring(wire: TopoDS_Wire, face: TopoDS_Face, numbers: TopTools_IndexedMapOfShape) -> list[int]:
    walk = BRepTools_WireExplorer(wire, face)
    ring = []
    while walk.More():
        ring.append(numbers.FindIndex(walk.CurrentVertex()) - 1)
        walk.Next()
    return ring


def _around(ring: list[Point3], normal: Point3) -> float:
    """Area a ring goes around, positive when it goes counter-clockwise about the normal."""
    x0, y0, z0 = ring[0]
    # Plain floats: most rings have four corners, where arrays cost ten times as much.
    x, y, z = ring[1][0] - x0, ring[1][1] - y0, ring[1][2] - z0
    twice = 0.0
    for x1, y1, z1 in ring[2:]:
        x2, y2, z2 = x1 - x0, y1 - y0, z1 - z0
        twice += normal[0] * (y * z2 - z * y2) + normal[1] * (z * x2 - x * z2) + normal[2] * (x * y2 - y * x2)
        x, y, z = x2, y2, z2
    return twice / 2
