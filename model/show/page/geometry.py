"""The bodies of a building as a page carries them: each once, then where its pieces stand; packed small.

Points to 0.01 mm. Everything is written as differences to what came before, axis by axis, which packs to
a third of plain floats.
"""

from __future__ import annotations

import base64
import gzip
from collections.abc import Sequence
from typing import Any

import numpy as np
from numpy.typing import NDArray

from ...pieces import Piece
from ...place import Point3
from ...solids.properties import triangles

FINE = 100
"""Steps in a millimetre."""


def geometry(pieces: Sequence[Piece]) -> dict[str, Any]:
    """For JSON. meshes: (points, triangles) of each body; rows: points of each row; mesh, row: which of them
    each piece is, -1 for no row; bytes: base64 of gzip of 32 bit numbers, low byte first: points of all
    meshes, all x, then y, then z; corners of triangles, counted in each mesh from 0; points of all rows as
    the first; then, as floats, x of each piece's origin, y, z, and its x and y axes likewise.
    """
    bodies = list(dict.fromkeys(piece.solid for piece in pieces))
    rows = list(dict.fromkeys(piece.row for piece in pieces if piece.row))
    meshes = [triangles(body) for body in bodies]
    numbers = {body: number for number, body in enumerate(bodies)}
    row_numbers = {row: number for number, row in enumerate(rows)}
    stretches = (
        _points([points for points, _ in meshes]),
        _differences(
            np.concatenate([np.zeros(0, dtype=np.int64), *(faces.reshape(-1) for _, faces in meshes)])
        ),
        _points([np.array(row) for row in rows]),
        _places(pieces).tobytes(),
    )
    return {
        "meshes": [[len(points), len(faces)] for points, faces in meshes],
        "rows": [len(row) for row in rows],
        "mesh": [numbers[piece.solid] for piece in pieces],
        "row": [row_numbers.get(piece.row, -1) for piece in pieces],
        "bytes": base64.b64encode(gzip.compress(b"".join(stretches), 6, mtime=0)).decode("ascii"),
    }


def _points(parts: Sequence[NDArray[np.float64]]) -> bytes:
    points = np.vstack([*parts, np.zeros((0, 3))])
    return b"".join(_differences(np.round(axis * FINE)) for axis in points.T)


def _differences(values: NDArray[Any]) -> bytes:
    return np.diff(values.astype("<i4"), prepend=np.int32(0)).astype("<i4").tobytes()


def _places(pieces: Sequence[Piece]) -> NDArray[np.float32]:
    places = (piece.place for piece in pieces)
    columns: list[tuple[Point3, Point3, Point3]] = [(place.origin, place.x, place.y) for place in places]
    return np.array(columns, dtype="<f4").reshape(len(pieces), 9).T.copy()
