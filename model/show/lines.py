"""What is drawn of pieces: triangles gathered by colour, and the lines where their surfaces turn."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import lru_cache

import numpy as np
import numpy.typing as npt
from OCP.TopoDS import TopoDS_Solid

from ..pieces import Piece
from ..place import Point3
from ..solids.placed import row_triangles, stood
from ..solids.surface import facing
from .paint import Colour
from .views import Bounds

Floats = npt.NDArray[np.float64]
Ints = npt.NDArray[np.int64]

BEND = 22.0  # degrees; below are the facets of round things, which show no line
EDGE = 75.0  # degrees; from here on it is an edge, below it a bend, such as a rib's, drawn faintly


@dataclass(frozen=True, slots=True)
class Drawing:
    """Pieces as a picture needs them, in building axes, mm.

    skins: (points (n, 3), triangles (m, 3)) of each colour. edges, bends: (points (n, 3), pairs of
    points (m, 2)).
    """

    skins: dict[Colour, tuple[Floats, Ints]]
    edges: tuple[Floats, Ints]
    bends: tuple[Floats, Ints]

    @property
    def bounds(self) -> Bounds:
        """Lowest and highest corner of everything drawn."""
        points = np.vstack([points for points, _ in self.skins.values()])
        low, high = points.min(axis=0), points.max(axis=0)
        return (low[0], low[1], low[2]), (high[0], high[1], high[2])


def drawing(pieces: Sequence[Piece], colour: Callable[[Piece], Colour]) -> Drawing:
    """Triangles and lines of pieces, at least one."""
    skins: dict[Colour, list[tuple[Floats, Ints]]] = defaultdict(list)
    edges, bends = [], []
    for piece in pieces:
        points, faces = placed_triangles(piece)
        sharp, blunt = lines(piece.solid, piece.row)
        skins[colour(piece)].append((points, faces))
        edges.append((points, sharp))
        bends.append((points, blunt))
    return Drawing({key: _merged(meshes) for key, meshes in skins.items()}, _merged(edges), _merged(bends))


def placed_triangles(piece: Piece) -> tuple[Floats, Ints]:
    """A piece's points (n, 3), in building axes, and triangles (m, 3)."""
    points, faces = row_triangles(piece.solid, piece.row)
    return stood(points, piece.place), faces


@lru_cache(maxsize=4096)
def lines(solid: TopoDS_Solid, row: tuple[Point3, ...] = ()) -> tuple[Ints, Ints]:
    """The edges and the bends of a solid, or a row of it, as pairs (n, 2) of its triangles' points."""
    pairs, turns = creases(*row_triangles(solid, row))
    return pairs[turns >= EDGE], pairs[(turns >= BEND) & (turns < EDGE)]


def creases(points: Floats, faces: Ints) -> tuple[Ints, Floats]:
    """The sides that two triangles of a closed surface share, and how far it turns there.

    Returns (n, 2) indices of points and (n,) degrees: 0 within a flat, 90 at the edges of a box.
    """
    normals = facing(points, faces)
    sides = np.sort(np.concatenate([faces[:, [0, 1]], faces[:, [1, 2]], faces[:, [2, 0]]]), axis=1)
    owners = np.tile(np.arange(len(faces)), 3)
    order = np.lexsort((sides[:, 1], sides[:, 0]))
    one, other = order[0::2], order[1::2]  # in a closed surface every side stands there twice
    cosines = np.einsum("ij,ij->i", normals[owners[one]], normals[owners[other]])
    return sides[one], np.degrees(np.arccos(np.clip(cosines, -1.0, 1.0)))


def _merged(meshes: list[tuple[Floats, Ints]]) -> tuple[Floats, Ints]:
    """Several (points, triangles or pairs) as one."""
    starts = np.cumsum([0, *(len(points) for points, _ in meshes[:-1])])
    shifted = [corners + start for (_, corners), start in zip(meshes, starts, strict=True)]
    return np.vstack([points for points, _ in meshes]), np.vstack(shifted)
