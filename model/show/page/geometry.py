"""The bodies of a building as a page carries them: each once, then where its pieces stand.

Points to 0.01 mm. Everything is written as differences to what came before, axis by axis, which packs to
a third of plain floats.
"""

from __future__ import annotations

import hashlib
from collections.abc import Sequence
from functools import lru_cache
from typing import Any

import numpy as np
from numpy.typing import NDArray
from OCP.TopoDS import TopoDS_Solid

from ...pieces import Piece
from ...place import Point3
from ...solids.properties import REMEMBERED, triangles
from .carried import Body, Geometry

FINE = 100
"""Steps in a millimetre."""


def geometry(pieces: Sequence[Piece]) -> Geometry:
    """The bodies of pieces, each once, and where the pieces stand."""
    bodies = list(dict.fromkeys(body(piece.solid) for piece in pieces))
    rows = list(dict.fromkeys(piece.row for piece in pieces if piece.row))
    numbers = {one: number for number, one in enumerate(bodies)}
    row_numbers = {row: number for number, row in enumerate(rows)}
    points = np.vstack([*(np.array(row) for row in rows), np.zeros((0, 3))])
    return Geometry(
        tuple(bodies),
        tuple(map(len, rows)),
        tuple(numbers[body(piece.solid)] for piece in pieces),
        tuple(row_numbers.get(piece.row, -1) for piece in pieces),
        _points(points) + _places(pieces).tobytes(),
    )


@lru_cache(maxsize=REMEMBERED)
def body(solid: TopoDS_Solid) -> Body:
    """A solid's triangles as they are carried."""
    points, faces = triangles(solid)
    data = _points(points) + _differences(faces.reshape(-1))
    key = hashlib.sha256(b"%d %d " % (len(points), len(faces)) + data).hexdigest()[:24]
    return Body(len(points), len(faces), data, key)


def _points(points: NDArray[np.float64]) -> bytes:
    return b"".join(_differences(np.round(axis * FINE)) for axis in points.T)


def _differences(values: NDArray[Any]) -> bytes:
    return np.diff(values.astype("<i4"), prepend=np.int32(0)).astype("<i4").tobytes()


def _places(pieces: Sequence[Piece]) -> NDArray[np.float32]:
    places = (piece.place for piece in pieces)
    columns: list[tuple[Point3, Point3, Point3]] = [(place.origin, place.x, place.y) for place in places]
    return np.array(columns, dtype="<f4").reshape(len(pieces), 9).T.copy()
