"""What is drawn of pieces: triangles gathered by colour, and the lines where their surfaces turn."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache

import numpy as np
import numpy.typing as npt
from OCP.TopoDS import TopoDS_Solid

from ..pieces import Piece
from ..place import Place, Point3
from ..roles import Role
from ..solids.placed import row_triangles, stood
from ..solids.surface import facing
from .paint import Colour
from .views import Bounds

Floats = npt.NDArray[np.float64]
Ints = npt.NDArray[np.int64]

BEND = 22.0  # degrees; below are the facets of round things, which show no line
EDGE = 75.0  # degrees; from here on it is an edge, below it a bend, such as a rib's, drawn faintly


@dataclass(frozen=True, slots=True)
class Creases:
    """Lines at which surfaces turn. points: (2 n, 3), the two ends of each. normals: (2 n, 3), the mean of
    the two that meet there, by which a line is lit."""

    points: Floats
    normals: Floats


@dataclass(frozen=True, slots=True)
class Drawing:
    """Pieces as a picture needs them, in building axes, mm, by colour.

    skins, panes: (points (n, 3), triangles (m, 3)); light comes through panes. edges, bends: the sharp
    turns and the blunt ones.
    """

    skins: dict[Colour, tuple[Floats, Ints]]
    panes: dict[Colour, tuple[Floats, Ints]]
    edges: dict[Colour, Creases]
    bends: dict[Colour, Creases]

    @property
    def bounds(self) -> Bounds:
        """Lowest and highest corner of everything drawn."""
        meshes = [points for points, _ in (*self.skins.values(), *self.panes.values())]
        return bounds_of(np.vstack(meshes))


def drawing(
    pieces: Sequence[Piece],
    colour: Callable[[Piece], Colour],
    lined: Callable[[Piece], bool] = lambda piece: True,
) -> Drawing:
    """Triangles and lines of pieces, at least one. lined: whether a piece's lines are drawn."""
    skins: dict[Colour, list[tuple[Floats, Ints]]] = defaultdict(list)
    panes: dict[Colour, list[tuple[Floats, Ints]]] = defaultdict(list)
    edges: dict[Colour, list[Creases]] = defaultdict(list)
    bends: dict[Colour, list[Creases]] = defaultdict(list)
    for piece in pieces:
        own = colour(piece)
        (panes if piece.role == Role.PANE else skins)[own].append(placed_triangles(piece))
        if lined(piece):
            for found, gathered in zip(lines(piece.solid, piece.row), (edges, bends), strict=True):
                gathered[own].append(_stood(found, piece.place))
    return Drawing(_meshes(skins), _meshes(panes), _joined(edges), _joined(bends))


def placed_triangles(piece: Piece) -> tuple[Floats, Ints]:
    """A piece's points (n, 3), in building axes, and triangles (m, 3)."""
    points, faces = row_triangles(piece.solid, piece.row)
    return stood(points, piece.place), faces


def bounds_of(points: Floats) -> Bounds:
    """Lowest and highest corner of points (n, 3)."""
    low, high = points.min(axis=0).tolist(), points.max(axis=0).tolist()
    return (low[0], low[1], low[2]), (high[0], high[1], high[2])


@lru_cache(maxsize=4096)
def lines(solid: TopoDS_Solid, row: tuple[Point3, ...] = ()) -> tuple[Creases, Creases]:
    """The edges and the bends of a solid, or a row of it, in its own frame."""
    points, faces = row_triangles(solid, row)
    pairs, turns, normals = creases(points, faces)
    sharp, blunt = turns >= EDGE, (turns >= BEND) & (turns < EDGE)
    return _ends(points, pairs[sharp], normals[sharp]), _ends(points, pairs[blunt], normals[blunt])


def creases(points: Floats, faces: Ints) -> tuple[Ints, Floats, Floats]:
    """The sides that two triangles of a closed surface share, and how it turns there.

    Returns (n, 2) indices of points, (n,) degrees: 0 within a flat, 90 at the edges of a box, and (n, 3)
    the mean of the two normals.
    """
    normals = facing(points, faces)
    sides = np.sort(np.concatenate([faces[:, [0, 1]], faces[:, [1, 2]], faces[:, [2, 0]]]), axis=1)
    owners = np.tile(np.arange(len(faces)), 3)
    order = np.lexsort((sides[:, 1], sides[:, 0]))
    one, other = order[0::2], order[1::2]  # in a closed surface every side stands there twice
    a, b = normals[owners[one]], normals[owners[other]]
    cosines = np.einsum("ij,ij->i", a, b)
    between = (a + b) / np.maximum(np.linalg.norm(a + b, axis=1, keepdims=True), 1e-9)
    return sides[one], np.degrees(np.arccos(np.clip(cosines, -1.0, 1.0))), between


def _ends(points: Floats, pairs: Ints, normals: Floats) -> Creases:
    return Creases(points[pairs.ravel()], np.repeat(normals, 2, axis=0))


def _stood(found: Creases, place: Place) -> Creases:
    turned = replace(place, origin=(0.0, 0.0, 0.0))
    return Creases(stood(found.points, place), stood(found.normals, turned))


def _meshes(gathered: dict[Colour, list[tuple[Floats, Ints]]]) -> dict[Colour, tuple[Floats, Ints]]:
    return {colour: _merged(meshes) for colour, meshes in sorted(gathered.items())}


def _joined(gathered: dict[Colour, list[Creases]]) -> dict[Colour, Creases]:
    return {
        colour: Creases(np.vstack([one.points for one in some]), np.vstack([one.normals for one in some]))
        for colour, some in sorted(gathered.items())
    }


def _merged(meshes: list[tuple[Floats, Ints]]) -> tuple[Floats, Ints]:
    """Several (points, triangles) as one."""
    starts = np.cumsum([0, *(len(points) for points, _ in meshes[:-1])])
    shifted = [faces + start for (_, faces), start in zip(meshes, starts, strict=True)]
    return np.vstack([points for points, _ in meshes]), np.vstack(shifted)
