"""What a body covers, seen along a direction: exact polygons off its flat faces."""

from __future__ import annotations

from functools import lru_cache

import numpy as np
import shapely
from OCP.TopoDS import TopoDS_Solid

from ..measure.faces import Vectors, body
from ..place import Point3
from ..solids.properties import REMEMBERED, triangles
from .rays import across
from .site import Site, point

FACING = 1e-6
"""Cosine under which a face stands edge on."""
GRID = 1e-4
"""mm; on which a shadow's corners lie: of steps between rounded edges, finer ones cross when it is turned."""


@lru_cache(maxsize=8 * REMEMBERED)
def shadow(solid: TopoDS_Solid, toward: Point3) -> shapely.Geometry:
    """All of a body that an eye in the direction `toward` (in the solid's frame) sees of its outline.

    In the plane of `across(toward)`, through the solid's origin; mm.
    """
    axes = across(np.array(toward))
    shape = body(solid)
    faces = [face for face in shape.faces if float(face.normal @ toward) > FACING]
    if shape.curved or not faces:
        points, corners = triangles(solid)
        flat = shapely.polygons((points @ axes.T)[corners])
        parts = shapely.make_valid(flat[shapely.area(flat) > FACING])
        return _without_cracks(shapely.union_all(parts, grid_size=GRID))
    rings = [[points @ axes.T for points in shape.points(face)] for face in faces]
    parts = shapely.make_valid([shapely.Polygon(ring[0], ring[1:]) for ring in rings])
    return shapely.union_all(parts, grid_size=GRID)


def _without_cracks(flat: shapely.Geometry) -> shapely.Geometry:
    """Triangles that meet aslant part along their common side where their corners go to the grid; that is no
    edge of the body."""
    wider = shapely.buffer(flat, GRID, join_style="mitre")
    return shapely.buffer(wider, -GRID, join_style="mitre")


def seen(site: Site, k: int, plane: Vectors) -> shapely.Geometry:
    """A body's shadow on a plane of the building.

    plane: (3, 3) rows u, v and n, square to each other; the eye is in the direction n. Coordinates are
    u and v from the building's origin, mm.
    """
    turn = site.turns[k]
    toward = point(plane[2] @ turn, 9)
    inner = across(np.array(toward)) @ turn.T
    onto, shift = plane[:2] @ inner.T, plane[:2] @ site.origins[k]
    flat = shadow(site.bodies[k].solid, toward)
    return shapely.transform(flat, lambda points: points @ onto.T + shift)
