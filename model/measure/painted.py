"""Which side of a folded trim is seen, and so painted: told by what stands close before each of its legs."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise

import numpy as np

from ..pieces import Piece
from ..roles import list_of
from ..solids.placed import placed_triangles
from .bends import Bends
from .faces import Vectors
from .member import measure_member
from .standing import standing_box

CLOSE = 40.0
"""mm; a leg with steel or foam so close before it is not seen there. Ours."""
OFF = 0.02
"""mm off a face that a look outward starts."""
STATIONS, SPREAD = (0.2, 0.4, 0.6, 0.8), (0.25, 0.5, 0.75)
"""Where along a trim and across a leg one looks out, as shares."""
TINY = 1e-9


class Surroundings:
    """The bodies of a model that may stand before a trim."""

    def __init__(self, pieces: Sequence[Piece]) -> None:
        self._pieces = [piece for piece in pieces if list_of(piece.role) != "screws"]
        self._boxes = np.array([standing_box(piece) for piece in self._pieces]).reshape(-1, 2, 3)

    def painted(self, piece: Piece, bends: Bends) -> str:
        """The "outside" or "inside" of the bend beside the longer end leg; "" where no side is seen more."""
        near = self._near(piece)
        line, other = (self._seen(piece, bends, near, sign) for sign in (1.0, -1.0))
        if abs(line - other) < TINY:
            return ""
        return "outside" if (line > other) == (bends.outward > 0) else "inside"

    def _near(self, piece: Piece) -> Vectors:
        """(m, 3, 3) triangles of all that is close to a piece, itself too."""
        low, high = standing_box(piece)
        meets = (self._boxes[:, 0] <= high + CLOSE).all(axis=1) & (self._boxes[:, 1] >= low - CLOSE).all(
            axis=1
        )
        close = [self._pieces[i] for i in np.flatnonzero(meets)]
        return np.concatenate([points[faces] for points, faces in placed_triangles(close)])

    def _seen(self, piece: Piece, bends: Bends, near: Vectors, sign: float) -> float:
        """mm of legs, as shares of what is looked out from, that see free air. sign: 1 for the line's own
        side, -1 for the other."""
        seen = 0.0
        for leg, starts, way in _looks(piece, bends, sign):
            seen += leg * (1.0 - float(_hit(starts, way, near).mean()))
        return seen


def _looks(piece: Piece, bends: Bends, sign: float) -> Iterator[tuple[float, Vectors, Vectors]]:
    """For each leg its length, points (n, 3) just off its face, and the way out (3,), in the building."""
    at = piece.place @ bends.bench
    axes = np.array([at.x, at.y, at.z])
    length = measure_member(piece.solid).length
    for (ax, az), (bx, bz) in pairwise(bends.line):
        leg = float(np.hypot(bx - ax, bz - az))
        right = np.array([bz - az, ax - bx]) / leg  # away from the steel
        off = OFF if sign > 0 else -bends.thickness - OFF
        points = [
            (ax + t * (bx - ax) + off * right[0], y * length, az + t * (bz - az) + off * right[1])
            for t in SPREAD
            for y in STATIONS
        ]
        way = sign * np.array([right[0], 0.0, right[1]]) @ axes
        yield leg, np.array(points) @ axes + np.array(at.origin), way


def _hit(starts: Vectors, way: Vectors, near: Vectors) -> Vectors:
    """(n,) whether a triangle stands within CLOSE before each start (Moller and Trumbore, 1997)."""
    corner, one, two = near[:, 0], near[:, 1] - near[:, 0], near[:, 2] - near[:, 0]
    normal = np.cross(way, two)
    size = (one * normal).sum(axis=1)
    flat = np.abs(size) < TINY
    inverse = 1.0 / np.where(flat, 1.0, size)
    apart = starts[:, None, :] - corner[None, :, :]
    u = (apart * normal).sum(axis=2) * inverse
    side = np.cross(apart, one[None, :, :])
    v = (side @ way) * inverse
    far = (side * two).sum(axis=2) * inverse
    inside = (u >= -TINY) & (v >= -TINY) & (u + v <= 1 + TINY) & (far > 0) & (far < CLOSE) & ~flat
    found: Vectors = inside.any(axis=1)
    return found
