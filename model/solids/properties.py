"""What is read off any solid, remembered by solid: volume, validity, triangles."""

from __future__ import annotations

from functools import lru_cache

from OCP.BRepCheck import BRepCheck_Analyzer
from OCP.BRepGProp import BRepGProp
from OCP.GProp import GProp_GProps
from OCP.TopoDS import TopoDS_Solid

from .surface import Triangles, Vertices, surface

DEFLECTION = 0.1  # mm; how far triangles may stand off a curved face, in every file and picture
REMEMBERED = 4096  # solids; more than a building has distinct ones


@lru_cache(maxsize=REMEMBERED)
def volume(solid: TopoDS_Solid) -> float:
    """Volume (mm3), negative for a solid that is inside out."""
    properties = GProp_GProps()
    BRepGProp.VolumeProperties_s(solid, properties)
    return float(properties.Mass())


@lru_cache(maxsize=REMEMBERED)
def is_valid(solid: TopoDS_Solid) -> bool:
    """Whether the kernel's own checks find nothing wrong and the volume is positive."""
    return bool(BRepCheck_Analyzer(solid).IsValid()) and volume(solid) > 0.0


@lru_cache(maxsize=REMEMBERED)
def triangles(solid: TopoDS_Solid, deflection: float = DEFLECTION) -> tuple[Vertices, Triangles]:
    """The solid's surface as triangles, in its own frame.

    deflection: how far the triangles may stand off a curved face (mm). Returns vertices (n, 3) in
    mm, each point once, and faces (m, 3) of vertex indices, counter-clockwise seen from outside: a
    closed surface. Read only, since they are shared.
    """
    return surface(solid, deflection)
