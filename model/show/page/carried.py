"""Bodies and places as they are carried to a page: plain values, packed small. No kernel."""

from __future__ import annotations

import base64
import gzip
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any


@dataclass(frozen=True, slots=True)
class Body:
    """A mesh as it is carried: how many points and triangles, their numbers, a key that equal ones share."""

    points: int
    faces: int
    data: bytes
    key: str


@dataclass(frozen=True, slots=True)
class Geometry:
    """What stands where. mesh, row: of each piece, which of the bodies it is, and which of the rows it stands
    in, -1 for none; rows: the points of each; placed: those points and the pieces' places, as bytes."""

    bodies: tuple[Body, ...]
    rows: tuple[int, ...]
    mesh: tuple[int, ...]
    row: tuple[int, ...]
    placed: bytes


def packed(found: Geometry, carried: Sequence[Body]) -> dict[str, Any]:
    """For JSON. meshes: points and triangles of each body that is carried; rows: points of each row; mesh,
    row: which of all bodies and rows each piece is, -1 for no row; bytes: base64 of gzip of 32 bit numbers,
    low byte first: of each mesh all x, y, z of its points and the corners of its triangles; x, y, z of the
    points of all rows; then, as floats, x of each piece's origin, y, z, and its x and y axes likewise.
    """
    data = b"".join([*(one.data for one in carried), found.placed])
    return {
        "meshes": [[one.points, one.faces] for one in carried],
        "rows": list(found.rows),
        "mesh": list(found.mesh),
        "row": list(found.row),
        "bytes": base64.b64encode(gzip.compress(data, 6, mtime=0)).decode("ascii"),
    }
