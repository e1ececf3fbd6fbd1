"""Pieces as triangles where they stand, rows and all."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from functools import lru_cache

import numpy as np
from OCP.TopoDS import TopoDS_Solid

from ..pieces import Piece
from ..place import Place, Point3
from .properties import REMEMBERED, triangles
from .surface import Triangles, Vertices


@lru_cache(maxsize=REMEMBERED)
def row_triangles(solid: TopoDS_Solid, row: tuple[Point3, ...]) -> tuple[Vertices, Triangles]:
    """A row of one body as triangles in the row's frame: vertices (n, 3) in mm, faces (m, 3)."""
    points, faces = triangles(solid)
    if not row:
        return points, faces
    offsets = np.array(row)
    stood = (points[None, :, :] + offsets[:, None, :]).reshape(-1, 3)
    starts = np.arange(len(row)) * len(points)
    return stood, (faces[None, :, :] + starts[:, None, None]).reshape(-1, 3)


def stood(points: Vertices, place: Place) -> Vertices:
    """Points (n, 3) of a frame that stands at `place`, in building axes."""
    axes = np.array([place.x, place.y, place.z])
    return np.asarray(points @ axes + np.array(place.origin))


def placed_triangles(pieces: Iterable[Piece]) -> Iterator[tuple[Vertices, Triangles]]:
    """Every piece in building axes."""
    for piece in pieces:
        points, faces = row_triangles(piece.solid, piece.row)
        yield stood(points, piece.place), faces
