"""Binary STL: the building in place as triangles, or each mark by itself, mm.

Names, colours and units are lost in it, so marks come as files named by their mark, in one archive.
"""

from __future__ import annotations

import io
import zipfile
from dataclasses import replace
from pathlib import Path

import numpy as np
from numpy.typing import NDArray

from ..errors import FileError
from ..files import read_whole
from ..measure.role_measures import measured
from ..pieces import Model, Piece
from ..place import Place
from ..printable import printable
from ..solids.placed import placed_triangles
from ..solids.properties import triangles
from ..solids.surface import facing
from .archives import undated
from .atomic_files import Target, whole_file
from .names import with_printable_names

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


def write_marks(model: Model, target: Target) -> None:
    """Writes a zip archive with an STL file for every mark, one piece of it as it lies on the bench.

    Equal models give equal bytes. target: a path, or a binary stream.
    """
    first: dict[str, Piece] = {}
    for piece in with_printable_names(model).pieces:
        if piece.mark:
            first.setdefault(piece.mark, piece)
    with whole_file(target) as stream, zipfile.ZipFile(stream, "w", zipfile.ZIP_DEFLATED) as archive:
        for mark, piece in first.items():
            lying = replace(piece, place=_on_bench(piece), row=())
            file = io.BytesIO()
            write_stl(Model(mark, model.units, (lying,)), file)
            entry = undated(f"{mark} {piece.role}.stl")
            entry.compress_type = zipfile.ZIP_DEFLATED
            archive.writestr(entry, file.getvalue())


def _on_bench(piece: Piece) -> Place:
    """Where a body stands that lies on its bench, the lowest corner of its triangles at the origin."""
    lying = measured(piece.role, piece.solid).ways[0].bench.within(Place())
    corners = np.array([lying.point(corner) for corner in triangles(piece.solid)[0].tolist()])
    x, y, z = corners.min(axis=0).tolist()
    return Place((-x, -y, -z)) @ lying


def _facets(piece: Piece) -> NDArray[np.void]:
    """A piece in place as facets."""
    ((points, faces),) = placed_triangles([piece])
    corners = points[faces]
    facets = np.zeros(len(corners), FACET)
    facets["normal"] = facing(points, faces)
    facets["corners"] = corners
    return facets


def read_stl(path: str | Path) -> NDArray[np.float64]:
    """The triangles of a binary STL file, (n, 3, 3). Raises FileError for anything else."""
    data = read_whole(path, LARGEST)
    count = int(np.frombuffer(data, "<u4", 1, HEADER)[0]) if len(data) >= HEADER + 4 else -1
    if count < 0 or len(data) != HEADER + 4 + count * FACET.itemsize:
        raise FileError(f"{path}: is not a binary STL file")
    return np.frombuffer(data, FACET, count, HEADER + 4)["corners"].astype(float)
