"""Planar-faced solids as corner rings, and those as triangles, three times as fast as by the mesher."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

import numpy as np
import shapely
from numpy.typing import NDArray
from OCP.BRep import BRep_Tool
from OCP.BRepAdaptor import BRepAdaptor_Surface
from OCP.BRepTools import BRepTools_WireExplorer
from OCP.GeomAbs import GeomAbs_Plane
from OCP.TopAbs import TopAbs_FACE, TopAbs_REVERSED, TopAbs_WIRE
from OCP.TopExp import TopExp_Explorer
from OCP.TopoDS import TopoDS, TopoDS_Face, TopoDS_Solid, TopoDS_Wire

from ..place import Point3

NOTHING = (np.empty((0, 3)), np.empty((0, 3), dtype=np.int64))


class PlanarFace(NamedTuple):
    """A planar face. normal: outward, of length 1. rings: of corners (mm), in no stated order."""

    normal: Point3
    rings: list[list[Point3]]


def faces_of(solid: TopoDS_Solid) -> Iterator[TopoDS_Face]:
    """The faces of a solid, in its own order."""
    explorer = TopExp_Explorer(solid, TopAbs_FACE)
    while explorer.More():
        yield TopoDS.Face_s(explorer.Current())
        explorer.Next()


def planar_faces(solid: TopoDS_Solid) -> list[PlanarFace]:
    """The faces of a solid whose faces are all planar; empty for any other."""
    found = []
    for face in faces_of(solid):
        surface = BRepAdaptor_Surface(face, False)
        if surface.GetType() != GeomAbs_Plane:
            return []
        plane = surface.Plane()
        x, y, z = plane.Axis().Direction().Coord()
        out = 1.0 if plane.Direct() == (face.Orientation() != TopAbs_REVERSED) else -1.0
        found.append(PlanarFace((out * x, out * y, out * z), list(_rings(face))))
    return found


def _rings(face: TopoDS_Face) -> Iterator[list[Point3]]:
    explorer = TopExp_Explorer(face, TopAbs_WIRE)
    while explorer.More():
        yield _corners(TopoDS.Wire_s(explorer.Current()))
        explorer.Next()


def _corners(wire: TopoDS_Wire) -> list[Point3]:
    corners = []
    explorer = BRepTools_WireExplorer(wire)
    while explorer.More():
        corners.append(BRep_Tool.Pnt_s(explorer.CurrentVertex()).Coord())
        explorer.Next()
    return corners


def planar_triangles(solid: TopoDS_Solid) -> tuple[NDArray[np.float64], NDArray[np.int64]]:
    """Vertices (n, 3) and outward triangles (m, 3) of a planar-faced solid, (0, 3) of any other.

    Every face is triangulated on its own corners, so that neighbours meet without a gap.
    """
    faces = planar_faces(solid)
    if not faces:
        return NOTHING
    flat = [_flattened(face) for face in faces]
    parts = shapely.constrained_delaunay_triangles(np.array([polygon for polygon, _ in flat]))
    tips, face_of = shapely.get_coordinates(shapely.get_parts(parts)), np.arange(len(parts))
    face_of = np.repeat(face_of, shapely.get_num_geometries(parts))
    return _lifted(tips.reshape(-1, 4, 2)[:, :3], face_of.tolist(), faces, [axes for _, axes in flat])


def _flattened(face: PlanarFace) -> tuple[shapely.Polygon, tuple[int, int]]:
    """A face seen along the axis nearest to its normal, and the two axes that are left."""
    along = max(range(3), key=lambda axis: abs(face.normal[axis]))
    i, j = (along + 1) % 3, (along + 2) % 3
    rings = [[(corner[i], corner[j]) for corner in ring] for ring in face.rings]
    if len(rings) == 1:
        return shapely.Polygon(rings[0]), (i, j)
    rings.sort(key=lambda ring: -shapely.Polygon(ring).area)  # a hole is smaller than what it is in
    return shapely.Polygon(rings[0], rings[1:]), (i, j)


def _lifted(
    tips: NDArray[np.float64],
    face_of: list[int],
    faces: list[PlanarFace],
    axes: list[tuple[int, int]],
) -> tuple[NDArray[np.float64], NDArray[np.int64]]:
    """Flat triangles (m, 3, 2) back on their faces, as indices into the solid's own corners."""
    numbers: dict[Point3, int] = {}
    corner_at = [
        {
            (corner[i], corner[j]): numbers.setdefault(corner, len(numbers))
            for ring in face.rings
            for corner in ring
        }
        for face, (i, j) in zip(faces, axes, strict=True)
    ]
    found = np.array(
        [[corner_at[face][u, v] for u, v in tip] for face, tip in zip(face_of, tips.tolist(), strict=True)],
        dtype=np.int64,
    )
    vertices = np.array(list(numbers))
    a, b, c = (vertices[found[:, k]] for k in range(3))
    normals = np.array([face.normal for face in faces])[face_of]
    inside_out = np.einsum("ij,ij->i", np.cross(b - a, c - a), normals) < 0.0
    found[inside_out] = found[inside_out][:, ::-1]
    return vertices, found
