"""Where the corners of a piece are, and how large it is as it stands."""

from __future__ import annotations

import numpy as np

from ..pieces import Piece
from .faces import Vectors, body
from .round_bar import round_bar

UP = np.array([0.0, 0.0, 1.0])


def standing_corners(piece: Piece) -> Vectors:
    """(n, 3) mm: the corners of all bodies of a piece, in building axes; points of a round bar's rims."""
    place, rows = piece.place, np.array(piece.row or ((0.0, 0.0, 0.0),))
    bar = round_bar(piece.solid)
    corners = body(piece.solid).corners if bar is None else bar.rims()
    points = (corners[None, :, :] + rows[:, None, :]).reshape(-1, 3)
    found: Vectors = points @ np.array([place.x, place.y, place.z]) + np.array(place.origin)
    return found


def standing_box(piece: Piece) -> Vectors:
    """(2, 3) mm: the least and the greatest corner."""
    corners = standing_corners(piece)
    return np.array([corners.min(axis=0), corners.max(axis=0)])


def standing_size(piece: Piece) -> tuple[float, float]:
    """(how wide, how high) a piece stands, mm: wide is the longer of its two sides along the ground."""
    low, high = standing_box(piece)
    x, y, z = (high - low).tolist()
    return max(x, y), z


def lying_size(piece: Piece) -> tuple[float, float]:
    """(how wide, how long) a flat piece lies on its wall or its slope, mm: long is up it."""
    corners, place = standing_corners(piece), piece.place
    widest = max(body(piece.solid).faces, key=lambda face: face.area)
    out = widest.normal @ np.array([place.x, place.y, place.z])
    across = np.cross(out, UP) / np.hypot(out[0], out[1])
    wide, long = (float(np.ptp(corners @ way)) for way in (across, np.cross(out, across)))
    return wide, long
