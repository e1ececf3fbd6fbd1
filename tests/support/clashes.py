"""Which pieces of a model share volume, by manifold3d: an independent judge of the kernel's solids."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

import manifold3d
import numpy as np
from ribwright.pieces import Piece
from ribwright.solids.properties import triangles

SHARED = 1.0
"""mm3 that two pieces may seem to share: touching faces of a square metre, on a grid of 1e-6 mm."""


def manifold(piece: Piece) -> manifold3d.Manifold:
    """A piece in place."""
    points, faces = triangles(piece.solid)
    mesh = manifold3d.Mesh64(np.array(points, order="C"), np.array(faces, np.uint64, order="C"))
    body = manifold3d.Manifold(mesh)
    assert body.status() == manifold3d.Error.NoError, piece.name
    x, y, z, o = piece.place.x, piece.place.y, piece.place.z, piece.place.origin
    return body.transform(np.array([[x[i], y[i], z[i], o[i]] for i in range(3)]))


def clashes(pieces: Sequence[Piece]) -> list[tuple[str, str, float]]:
    """Pairs that share more than SHARED, boxes first. Rows (screws) are left out: they pass through."""
    solid = [piece for piece in pieces if not piece.row]
    bodies = [manifold(piece) for piece in solid]
    boxes = np.array([body.bounding_box() for body in bodies])
    found = []
    for i, j in _near(boxes):
        shared = (bodies[i] ^ bodies[j]).volume()
        if shared > SHARED:
            found.append((solid[i].name, solid[j].name, shared))
    return found


def _near(boxes: np.ndarray) -> Iterable[tuple[int, int]]:
    for i in range(len(boxes)):
        low, high = boxes[:, :3], boxes[:, 3:]
        meet = np.all((boxes[i, :3] < high - 1e-3) & (boxes[i, 3:] > low + 1e-3), axis=1)
        yield from ((i, int(j)) for j in np.flatnonzero(meet) if j > i)
