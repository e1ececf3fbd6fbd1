"""Binary STL: the whole building in place as triangles, mm. Names, colours and units are lost in it."""

from __future__ import annotations

from pathlib import Path

import numpy as np
from numpy.typing import NDArray

from ..errors import FileError
from ..files import read_whole
from ..pieces import Model, Piece
from ..printable import printable
from ..solids.placed import placed_triangles
from ..solids.properties import triangles
from .atomic_files import Target, whole_file

LARGEST = 500_000_000  # bytes
HEADER = 80

FACET = np.dtype([("normal", "<f4", 3), ("corners", "<f4", (3, 3)), ("attribute", "<u2")])


def write_stl(model: Model, target: Target) -> None:
    """Writes every piece, rows and all, outward sides out. target: a path, or a binary stream.

    Piece by piece, so that a long building takes no more memory than a short one.
    """
    count = sum(len(triangles(piece.solid)[1]) * piece.count for piece in model.pieces)
    header = f"ribwright {printable(model.name)} mm".encode("ascii", "replace")[:HEADER].ljust(HEADER, b" ")
    with whole_file(target) as stream:
        stream.write(header + np.uint32(count).tobytes())
        for piece in model.pieces:
            stream.write(_facets(piece).tobytes())


def _facets(piece: Piece) -> NDArray[np.void]:
    """A piece in place as facets."""
    ((points, faces),) = placed_triangles([piece])
    corners = points[faces]
    across = np.cross(corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0])
    size = np.linalg.norm(across, axis=1, keepdims=True)
    facets = np.zeros(len(corners), FACET)
    facets["normal"] = across / np.where(size > 0, size, 1)
    facets["corners"] = corners
    return facets


def read_stl(path: str | Path) -> NDArray[np.float64]:
    """The triangles of a binary STL file, (n, 3, 3). Raises FileError for anything else."""
    data = read_whole(path, LARGEST)
    count = int(np.frombuffer(data, "<u4", 1, HEADER)[0]) if len(data) >= HEADER + 4 else -1
    if count < 0 or len(data) != HEADER + 4 + count * FACET.itemsize:
        raise FileError(f"{path}: is not a binary STL file")
    return np.frombuffer(data, FACET, count, HEADER + 4)["corners"].astype(float)
