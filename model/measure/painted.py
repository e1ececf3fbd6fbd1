"""Which side of a folded trim is seen from outside, and so painted: told by which way each of its legs faces
and by what stands close before it."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from itertools import pairwise

import numpy as np

from ..pieces import Piece
from ..place import Point2
from ..roles import list_of
from ..solids.placed import placed_triangles
from .bends import Bends
from .faces import Vectors
from .member import measure_member
from .sheet import measure_sheet
from .standing import standing_box

CLOSE = 40.0
"""mm; a leg with steel or foam so close before it is not seen there. Ours."""
OFF = 0.02
"""mm off a face that a look outward starts."""
STATIONS, SPREAD = (0.2, 0.4, 0.6, 0.8), (0.25, 0.5, 0.75)
"""Where along a trim and across a leg one looks out, as shares."""
FACING = 0.95
"""Cosine between ways; a leg that is turned no further from a sheet faces as it does. Ours."""
TINY = 1e-9


Look = tuple[float, Vectors, Vectors]
"""The length of a leg, points (n, 3) just off its face, and the way out (3,), in the building."""


class Surroundings:
    """The bodies of a model that may stand before a trim."""

    def __init__(self, pieces: Sequence[Piece]) -> None:
        self._pieces = [piece for piece in pieces if list_of(piece.role) != "screws"]
        self._boxes = np.array([standing_box(piece) for piece in self._pieces]).reshape(-1, 2, 3)

    def painted(self, piece: Piece, bends: Bends) -> str:
        """The "outside" or "inside" of the bend beside the longer end leg; "" where no side is seen more."""
        close = self._close(piece)
        own, near, out = _triangles([piece]), _triangles(close), _outward(close)

        def hidden(starts: Vectors, way: Vectors) -> float:
            return float(np.logical_or(_hit(starts, way, own, np.inf), _hit(starts, way, near, CLOSE)).mean())

        sides = (_seen(_looks(piece, bends, sign), out, hidden) for sign in (1.0, -1.0))
        for line, other in zip(*sides, strict=True):
            if abs(line - other) > TINY:
                return "outside" if (line > other) == (bends.outward > 0) else "inside"
        return ""

    def _close(self, piece: Piece) -> list[Piece]:
        """All that is close to a piece, itself too."""
        low, high = standing_box(piece)
        meets = (self._boxes[:, 0] <= high + CLOSE).all(axis=1) & (self._boxes[:, 1] >= low - CLOSE).all(
            axis=1
        )
        return [self._pieces[i] for i in np.flatnonzero(meets)]


def _outward(close: Sequence[Piece]) -> Vectors:
    """(n, 3) ways out of the building: what the sheets face that are close, each way once."""
    sheets = (piece for piece in close if list_of(piece.role) == "sheets")
    ways = ((piece.place @ measure_sheet(piece.solid).bench).z for piece in sheets)
    return np.array([*dict.fromkeys(tuple(round(at, 6) for at in way) for way in ways)]).reshape(-1, 3)


def _triangles(pieces: Sequence[Piece]) -> Vectors:
    """(m, 3, 3) of all of them."""
    return np.concatenate([points[faces] for points, faces in placed_triangles(pieces)])


def _seen(looks: Iterable[Look], out: Vectors, hidden: Callable[[Vectors, Vectors], float]) -> Point2:
    """mm of legs: those that are seen, as shares of what is looked out from; then all, for a trim that is
    hidden all over. Where sheets are close, a leg counts that faces as one of them does: the air in an
    opening or under a roof shows a trim to nobody outside. A trim hides itself however far."""
    free = faced = 0.0
    for leg, starts, way in looks:
        if not len(out) or (out @ way).max() > FACING:
            free += leg * (1.0 - hidden(starts, way))
            faced += leg
    return free, faced


def _looks(piece: Piece, bends: Bends, sign: float) -> Iterator[Look]:
    """From each leg of a side. sign: 1 for the line's own, -1 for the other."""
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


def _hit(starts: Vectors, way: Vectors, near: Vectors, reach: float) -> Vectors:
    """(n,) whether a triangle stands within reach before each start (Moller and Trumbore, 1997)."""
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
    inside = (u >= -TINY) & (v >= -TINY) & (u + v <= 1 + TINY) & (far > 0) & (far < reach) & ~flat
    found: Vectors = inside.any(axis=1)
    return found
