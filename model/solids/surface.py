"""The surface of a solid as triangles: planar faces directly, others by the kernel's mesher."""

from __future__ import annotations

from typing import Any

import numpy as np
from numpy.typing import NDArray
from OCP.BRep import BRep_Tool
from OCP.BRepMesh import BRepMesh_IncrementalMesh
from OCP.BRepTools import BRepTools
from OCP.TopAbs import TopAbs_REVERSED
from OCP.TopLoc import TopLoc_Location
from OCP.TopoDS import TopoDS_Solid

from ..place import Point3
from .planar import faces_of, planar_triangles

ANGLE = 0.5  # radians between neighbouring triangles on a curved face

Vertices = NDArray[np.float64]
Triangles = NDArray[np.int64]


def surface(solid: TopoDS_Solid, deflection: float) -> tuple[Vertices, Triangles]:
    """Vertices (n, 3) and outward triangles (m, 3) of a solid; see `properties.triangles`."""
    vertices, faces = planar_triangles(solid)
    if not len(faces) or not is_closed(faces):
        vertices, faces = _meshed(solid, deflection)
    vertices.flags.writeable = faces.flags.writeable = False
    return vertices, faces


def facing(points: Vertices, faces: Triangles) -> Vertices:
    """(m, 3) the unit vectors that triangles face; nought for one without area."""
    a, b, c = (points[faces[:, corner]] for corner in range(3))
    across = np.cross(b - a, c - a)
    size = np.linalg.norm(across, axis=1, keepdims=True)
    normals: Vertices = across / np.where(size > 0, size, 1)
    return normals


def is_closed(faces: Triangles) -> bool:
    """Whether every side of the triangles (m, 3) is used once, and once the other way round."""
    sides = np.concatenate([faces[:, [0, 1]], faces[:, [1, 2]], faces[:, [2, 0]]])
    count = int(faces.max()) + 1
    forth = np.sort(sides[:, 0] * count + sides[:, 1])
    back = np.sort(sides[:, 1] * count + sides[:, 0])
    return bool(np.array_equal(forth, back) and np.all(np.diff(forth) > 0))


def _meshed(solid: TopoDS_Solid, deflection: float) -> tuple[Vertices, Triangles]:
    """By the kernel's mesher, which also does curved faces."""
    BRepTools.Clean_s(solid)  # the mesher would leave a finer mesh that someone asked for before
    BRepMesh_IncrementalMesh(solid, deflection, False, ANGLE, False)
    points: list[Point3] = []
    faces: list[tuple[int, int, int]] = []
    for face in faces_of(solid):
        _add_face(face, points, faces)
    return _welded(np.array(points), np.array(faces, dtype=np.int64))


def _add_face(
    face: Any,  # TopoDS_Face
    points: list[Point3],
    faces: list[tuple[int, int, int]],
) -> None:
    location = TopLoc_Location()
    mesh = BRep_Tool.Triangulation_s(face, location)
    turn = location.Transformation()
    first = len(points) - 1  # the kernel counts from 1
    points += [mesh.Node(i).Transformed(turn).Coord() for i in range(1, mesh.NbNodes() + 1)]
    inside_out = face.Orientation() == TopAbs_REVERSED
    for i in range(1, mesh.NbTriangles() + 1):
        a, b, c = mesh.Triangle(i).Get()
        faces.append((first + a, first + c, first + b) if inside_out else (first + a, first + b, first + c))


def _welded(points: Vertices, faces: Triangles) -> tuple[Vertices, Triangles]:
    """Points that are the same on every axis made one; triangles that shrink to a line left out."""
    keys = np.column_stack([_ranks(points[:, axis]) for axis in range(3)])
    _, kept, new = np.unique(keys, axis=0, return_index=True, return_inverse=True)
    welded = new.reshape(-1)[faces]
    a, b, c = welded.T
    return points[kept], welded[(a != b) & (b != c) & (c != a)]


def _ranks(values: NDArray[np.float64], apart: float = 1e-6) -> NDArray[np.int64]:
    """For each value the number of gaps wider than `apart` below it: equal for what is meant equal."""
    order = np.argsort(values, kind="stable")
    ranks = np.empty(len(values), dtype=np.int64)
    ranks[order] = np.concatenate([[0], np.cumsum(np.diff(values[order]) > apart)])
    return ranks
