"""What stands around a building in a picture: the ground, and a person of 1.75 m for its size."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from ..pieces import Piece
from ..place import Point3, add, dot
from .lines import Floats, Ints, bounds_of, placed_triangles
from .views import Bounds, around_all, corners, toward_eye

SHOWN = 120.0  # mm of a slab that stand out of the ground at most
ASIDE = 1000.0  # mm from the building to the person
AROUND = 14
BODY: tuple[tuple[float, tuple[tuple[float, float, float], ...]], ...] = (
    (0, ((760, 130, 80), (900, 165, 110), (1060, 140, 95), (1250, 190, 115), (1400, 215, 105),
         (1450, 150, 80), (1480, 60, 55))),
    (0, ((1470, 50, 50), (1530, 55, 62), (1570, 72, 88), (1640, 80, 98), (1700, 70, 84), (1740, 38, 46),
         (1750, 4, 4))),
    *((side, ((0, 48, 120), (70, 46, 90), (110, 42, 46), (400, 58, 62), (500, 60, 62), (800, 88, 90)))
      for side in (-95, 95)),
    *((side, ((760, 26, 34), (860, 38, 42), (1100, 42, 44), (1380, 50, 52), (1420, 30, 30)))
      for side in (-232, 232)),
)  # fmt: skip
"""A standing person: an offset to the side, and rings of height, half width and half depth, mm."""


def bounds_of_pieces(pieces: Sequence[Piece]) -> Bounds:
    """The box around all that stands, screws left out."""
    single = [piece for piece in pieces if not piece.row] or pieces
    return around_all([bounds_of(placed_triangles(piece)[0]) for piece in single])


def ground_level(pieces: Sequence[Piece]) -> float:
    """Height of the ground, mm: under all that stands, but no deeper below the slab's top than is seen."""
    return max(bounds_of_pieces(pieces)[0][2], -SHOWN)


def beside(bounds: Bounds, view: str, ground: float) -> Point3:
    """Where a person stands who is at the right end of the picture, a step toward the eye."""
    back = toward_eye(view)
    right: Point3 = (-back[1], back[0], 0.0)
    place = max(corners(bounds), key=lambda corner: (round(dot(corner, right), 3), dot(corner, back)))
    axes: list[Point3] = [(1.0, 0.0, 0.0), (-1.0, 0.0, 0.0), (0.0, 1.0, 0.0), (0.0, -1.0, 0.0)]
    out = max(axes, key=lambda axis: dot(axis, right))
    near = max(axes, key=lambda axis: dot(axis, back) if axis[0] * out[0] + axis[1] * out[1] == 0 else -1.0)
    x, y, _ = add(add(place, out, ASIDE), near, ASIDE / 3)
    return (x, y, ground)


def person(at: Point3) -> tuple[Floats, Ints]:
    """Points and triangles of someone who stands at a point."""
    turns = 2 * np.pi * np.arange(AROUND) / AROUND
    points, faces = [], []
    count = 0
    for side, rings in BODY:
        for height, wide, deep in rings:
            ring = (side + wide * np.cos(turns), deep * np.sin(turns), np.full(AROUND, height))
            points.append(np.stack(ring, axis=1) + np.array(at))
        for number in range(len(rings) - 1):
            low = count + number * AROUND + np.arange(AROUND)
            beside_low = count + number * AROUND + (np.arange(AROUND) + 1) % AROUND
            faces.append(np.stack([low, beside_low, beside_low + AROUND], axis=1))
            faces.append(np.stack([low, beside_low + AROUND, low + AROUND], axis=1))
        count += AROUND * len(rings)
    return np.vstack(points), np.vstack(faces).astype(np.int64)
