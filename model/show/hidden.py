"""Which places are hidden in a picture by what stands before them."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from ..audit.rays import spans
from ..pieces import Piece
from ..place import Point3
from ..solids.placed import placed_triangles
from .lines import Floats
from .views import Camera

BEFORE = 60.0
"""mm; what is less before a place does not hide it: the sheets of a lap, a trim on its sheet. Ours."""


def hidden(places: Sequence[Point3 | None], camera: Camera, pieces: Sequence[Piece]) -> list[bool]:
    """Whether something stands between each place and the eye; not where there is no place. Rows of screws
    hide nothing."""
    single = (piece for piece in pieces if not piece.row)
    bodies = [points[faces] for points, faces in placed_triangles(single)]
    if not bodies or not any(places):
        return [False] * len(places)
    corners = np.concatenate(bodies)
    return [place is not None and _met(np.array(place), camera, corners) for place in places]


def _met(place: Floats, camera: Camera, corners: Floats) -> bool:
    """Whether the line from a place to the eye goes through one of some triangles (n, 3, 3)."""
    far = np.inf if camera.half else float(np.linalg.norm(np.array(camera.eye) - place))
    way = np.array(camera.axes[2]) if camera.half else (np.array(camera.eye) - place) / far
    _, enters, leaves = spans(corners, place[None, :], way, np.zeros((1, 2)))
    met = np.concatenate([enters, leaves])
    return bool(((met > BEFORE) & (met < far)).any())
