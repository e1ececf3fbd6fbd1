"""A round bar told by its faces: one cylinder, cut square at both ends."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache

import numpy as np
from OCP.BRepAdaptor import BRepAdaptor_Surface
from OCP.GeomAbs import GeomAbs_Cylinder, GeomAbs_Plane
from OCP.gp import gp_Ax1, gp_Dir, gp_Pnt
from OCP.TopoDS import TopoDS_Solid

from .faces import KEPT, Vectors, body, solid_faces

ALIKE = 1e-6
"""mm, or of a cosine: by how much what is one cylinder may differ between its faces."""
SIDES = 24
"""Points on a rim that stand for it where corners are asked for."""


@dataclass(frozen=True, slots=True, eq=False)
class RoundBar:
    """ends: (2, 3) mm, of its axis, in the solid's own frame."""

    ends: Vectors
    diameter: float

    @property
    def axes(self) -> Vectors:
        """(3, 3) unit vectors in rows: across it, along it, and across it the other way."""
        along = self.ends[1] - self.ends[0]
        along = along / np.linalg.norm(along)
        across = np.cross(along, np.eye(3)[int(np.abs(along).argmin())])
        across = across / np.linalg.norm(across)
        return np.array([across, along, np.cross(across, along)])

    def rims(self) -> Vectors:
        """(n, 3) mm: points around both ends."""
        across, _, other = self.axes
        turns = np.arange(SIDES) * 2 * np.pi / SIDES
        rim = np.outer(np.cos(turns), across) + np.outer(np.sin(turns), other)
        return np.concatenate([end + rim * self.diameter / 2 for end in self.ends])


@lru_cache(maxsize=KEPT)
def round_bar(solid: TopoDS_Solid) -> RoundBar | None:
    """The bar that a solid is; None for any other body."""
    shape = body(solid)
    if len(shape.faces) != 2 or not shape.curved:  # two ends
        return None
    surfaces = [BRepAdaptor_Surface(face) for face in solid_faces(solid)]
    if any(one.GetType() not in (GeomAbs_Cylinder, GeomAbs_Plane) for one in surfaces):
        return None
    round_ = [one.Cylinder() for one in surfaces if one.GetType() == GeomAbs_Cylinder]
    axis, radius = round_[0].Axis(), round_[0].Radius()
    if any(not _same(axis, one.Axis()) or abs(one.Radius() - radius) > ALIKE for one in round_):
        return None
    at, along = _vector(axis.Location()), _vector(axis.Direction())
    ends = np.array(list(_ends(surfaces, at, along)))
    length = float(np.linalg.norm(ends[1] - ends[0])) if len(ends) == 2 else 0.0
    whole = abs(np.pi * radius**2 * length - shape.volume) < 1e-6 * shape.volume
    return RoundBar(ends, 2 * radius) if whole else None


def _ends(surfaces: list[BRepAdaptor_Surface], at: Vectors, along: Vectors) -> Iterator[Vectors]:
    """Where planes that are square to an axis cross it."""
    for one in (one.Plane() for one in surfaces if one.GetType() == GeomAbs_Plane):
        normal = _vector(one.Axis().Direction())
        if abs(abs(float(normal @ along)) - 1) < ALIKE:
            yield at + along * float(normal @ (_vector(one.Location()) - at)) / float(normal @ along)


def _same(one: gp_Ax1, other: gp_Ax1) -> bool:
    at, along = _vector(one.Location()), _vector(one.Direction())
    apart = _vector(other.Location()) - at
    turned = 1 - abs(float(along @ _vector(other.Direction())))
    return turned < ALIKE and float(np.linalg.norm(np.cross(apart, along))) < ALIKE


def _vector(of: gp_Pnt | gp_Dir) -> Vectors:
    return np.array([of.X(), of.Y(), of.Z()])
