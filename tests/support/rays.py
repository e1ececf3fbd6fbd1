"""Plain ray casting: what a straight line meets, off the triangles of placed pieces. Shares no code with
layout or measure."""

from __future__ import annotations

from collections.abc import Iterable
from typing import NamedTuple

import numpy as np
from ribwright.pieces import Piece
from ribwright.place import Point3
from ribwright.solids.properties import triangles

NUDGE = np.array([3.1e-4, 2.3e-4, 1.7e-4])
"""mm; rays are moved this much, so that none runs along an edge between triangles."""


class Span(NamedTuple):
    """A stretch of a ray inside a piece: distances from its start to where it goes in and comes out."""

    enter: float
    leave: float
    piece: Piece


class Solids:
    """Pieces that can be looked at along rays. Rows are left out."""

    def __init__(self, pieces: Iterable[Piece]) -> None:
        self.pieces = [piece for piece in pieces if not piece.row]
        self.corners = [points[faces] for points, faces in map(standing_triangles, self.pieces)]
        self.low = np.array([corners.min(axis=(0, 1)) for corners in self.corners])
        self.high = np.array([corners.max(axis=(0, 1)) for corners in self.corners])

    def along(self, start: Point3, way: Point3, reach: float) -> list[Span]:
        """What lies along a ray within its reach (mm), nearest first."""
        a, d = np.array(start) + NUDGE, np.array(way) / np.linalg.norm(way)
        ends = np.array([a, a + reach * d])
        near = np.all((self.low <= ends.max(axis=0)) & (self.high >= ends.min(axis=0)), axis=1)
        found = []
        for i in np.flatnonzero(near):
            at = _crossings(self.corners[i], a, d)
            spans = zip(at[::2], at[1::2], strict=True)
            found += [Span(p, q, self.pieces[i]) for p, q in spans if q > 0 and p < reach]
        return sorted(found, key=lambda span: span.enter)


def standing_triangles(piece: Piece) -> tuple[np.ndarray, np.ndarray]:
    """A piece's corners where it stands, (n, 3), mm, and its triangles as numbers of them, (m, 3)."""
    points, faces = triangles(piece.solid)
    place = piece.place
    return points @ np.array([place.x, place.y, place.z]) + np.array(place.origin), faces


def _crossings(corners: np.ndarray, start: np.ndarray, way: np.ndarray) -> list[float]:
    """Distances along a line at which it crosses triangles (n, 3, 3), in order (Moeller and Trumbore)."""
    a, e, f = corners[:, 0], corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0]
    p = np.cross(way, f)
    size = np.einsum("ij,ij->i", e, p)
    flat = np.abs(size) < 1e-9
    with np.errstate(divide="ignore", invalid="ignore"):
        s = start - a
        u = np.einsum("ij,ij->i", s, p) / size
        q = np.cross(s, e)
        v = (q @ way) / size
        t = np.einsum("ij,ij->i", f, q) / size
        met = ~flat & (u >= 0) & (v >= 0) & (u + v <= 1)
    return sorted(t[met].tolist())
