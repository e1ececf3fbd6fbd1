"""Which way a sheet lies: the directions across it, along its ribs and off its face."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from ..errors import RibwrightError
from .faces import Body, Vectors

COINCIDENT = 1e-3
"""mm; planes nearer than this are one plane."""
PARALLEL = 1e-9
"""How far the cosine between parallel normals may be off 1."""
BENT = 1e-7
"""Share of skin that must lean before its lean is trusted to show where the ribs run."""
STEEPEST = 0.1
"""Cosine between a flank and the pan; no rib is folded as steep."""


class NotASheet(RibwrightError):
    """A solid that is no sheet."""


@dataclass(frozen=True, slots=True, eq=False)
class Lie:
    """Axes of a sheet in its solid's frame, rows (u, v, w), right-handed, not yet told which way is up.

    w is square to every edge of the sheet, v runs along the ribs. top: the numbers of the faces on
    the +w side, bottom: on the -w side. flat: no rib or flank is left, so that v is a choice (along
    the longest edge).
    """

    axes: Vectors
    thickness: float
    flat: bool
    top: tuple[int, ...]
    bottom: tuple[int, ...]

    def sides(self, axes: Vectors) -> tuple[tuple[int, ...], tuple[int, ...]]:
        """The faces below and above for axes whose w is this one's or its opposite."""
        return (self.bottom, self.top) if axes[2] @ self.axes[2] > 0 else (self.top, self.bottom)


def lie(body: Body) -> Lie:
    """How a sheet lies, from its faces alone.

    The skin is every face that has another one facing away from it one thickness behind; the other
    faces are edges. Edges stand square to the sheet, skin runs along the ribs. Raises NotASheet when
    there is no skin or no edge.
    """
    if not body.faces:
        raise NotASheet("a body that is called a sheet is none: it has no flat face")
    normals = np.array([face.normal for face in body.faces])
    areas = np.array([face.area for face in body.faces])
    gaps = _gaps(body, normals)
    largest = normals[int(areas.argmax())]
    thickness = float(gaps[int(areas.argmax())].min())
    skin = np.isfinite(thickness) & (gaps.min(axis=1) < 1.2 * thickness)
    if skin.all() or not skin.any():
        raise NotASheet("a body that is called a sheet is none: it has no two faces a thickness apart")
    w = _off_edges(normals[~skin], areas[~skin], largest)
    skin |= np.abs(normals @ w) > BENT
    v, bent = _square_to(normals[skin], areas[skin])
    tilted = float(np.linalg.norm(np.cross(w, largest)))
    if not bent and tilted > COINCIDENT:
        v = np.cross(w, largest)
    elif not bent:
        v = np.cross(w, _longest(normals[~skin], areas[~skin]))
    v = v - (v @ w) * w
    v /= np.linalg.norm(v)
    axes = np.array([np.cross(v, w), v, w])
    facing = normals @ w
    return Lie(
        axes,
        thickness,
        not bent and tilted <= COINCIDENT,
        tuple(np.flatnonzero(skin & (facing > COINCIDENT)).tolist()),
        tuple(np.flatnonzero(skin & (facing < -COINCIDENT)).tolist()),
    )


def _gaps(body: Body, normals: Vectors) -> Vectors:
    """(n, n) how far behind each face another one lies that faces the other way; inf where none does."""
    starts = np.array([body.corners[face.rings[0][0]] for face in body.faces])
    # Both along the one normal: the other's differs in its last digits, which tell far from the origin.
    heights = normals @ starts.T
    behind = heights.diagonal()[:, None] - heights
    facing_away = normals @ normals.T < PARALLEL - 1
    gaps: Vectors = np.where(facing_away & (behind > COINCIDENT), behind, np.inf)
    return gaps


def _square_to(normals: Vectors, areas: Vectors) -> tuple[Vectors, bool]:
    """The direction most square to the faces, and whether it is the only one."""
    spread, directions = np.linalg.eigh((normals * areas[:, None]).T @ normals)
    return directions[:, 0], bool(spread[1] > BENT * spread[2])


def _off_edges(normals: Vectors, areas: Vectors, largest: Vectors) -> Vectors:
    """The direction off the sheet: the one that most edge is square to, not lying in the largest skin.

    A sliver of skin beside a cut may have lost what lay behind it and pass for edge; it is outvoted.
    """
    pairs = np.cross(normals[:, None], normals[None, :]).reshape(-1, 3)
    sizes = np.linalg.norm(pairs, axis=1)
    off = np.abs(pairs @ largest) > STEEPEST * sizes
    pairs = pairs[(sizes > COINCIDENT) & off] / sizes[(sizes > COINCIDENT) & off, None]
    if not len(pairs):
        raise NotASheet("a body that is called a sheet is none: its edges stand square to no one face")
    square = np.abs(pairs @ normals.T) < BENT
    agreed = square[int((square @ areas).argmax())]
    return _square_to(normals[agreed], areas[agreed])[0]


def _longest(normals: Vectors, areas: Vectors) -> Vectors:
    """Of the directions that edges face, the one with most edge."""
    alike = np.abs(normals @ normals.T) > 1 - PARALLEL
    longest: Vectors = normals[int((alike @ areas).argmax())]
    return longest
