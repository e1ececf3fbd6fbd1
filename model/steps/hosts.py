"""What a row of screws or a strip of foam belongs to: the sheets of a plane, or a trim, by where it is."""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache
from typing import TYPE_CHECKING

import numpy as np

from ..measure.clad_planes import CladPlane
from ..measure.faces import KEPT, Vectors, body
from ..measure.member import measure_member
from ..measure.standing import standing_box
from ..pieces import Piece

if TYPE_CHECKING:
    from OCP.TopoDS import TopoDS_Solid

ALONG_SCREW = (0.0, 0.25, 0.5, 0.75, 1.0)
"""Where along a screw one looks for what it holds, as shares of its length."""
AT_PLANE = 60.0
"""mm off the pans; a screw or strip farther out or in is on another plane. Ours."""
GROWN = 3.0
"""mm by which a trim's box is grown: a head stands on it. Ours."""
FOAM = (-1.0, 60.0)
"""mm off the underside of the pans between which the middle of foam under or over a roof sheet lies."""
OVER = (5.0, 80.0)
"""mm off the underside of the pans in which a leg lies that is over them. Ours."""
ROUND = 120.0
"""mm round the sheets of a roof that its foam may reach out. Ours."""


def shanks(piece: Piece) -> Vectors:
    """(n, 5, 3) mm: points along the axis of every screw of a row, in the building."""
    ends = _along(piece.solid)
    rows = np.array(piece.row or ((0.0, 0.0, 0.0),))
    points = rows[:, None, :] + ends[None, :, :]
    place = piece.place
    found: Vectors = points @ np.array([place.x, place.y, place.z]) + np.array(place.origin)
    return found


@lru_cache(maxsize=KEPT)
def _along(solid: TopoDS_Solid) -> Vectors:
    """(5, 3) mm: points along the longest direction of a body, in its own frame."""
    corners = body(solid).corners
    middle = corners.mean(axis=0)
    axis = np.linalg.svd(corners - middle, full_matrices=False)[2][0]
    reach = (corners - middle) @ axis
    return np.array([middle + axis * (reach.min() + share * np.ptp(reach)) for share in ALONG_SCREW])


def plane_of(planes: Sequence[CladPlane], screw: Piece) -> int | None:
    """The number of the plane whose sheets a row of screws holds; None where there is none."""
    points = shanks(screw).reshape(-1, 3)
    counts = [_on(plane, points) for plane in planes]
    return int(np.argmax(counts)) if any(counts) else None


def wall_of(planes: Sequence[CladPlane], trim: Piece) -> int | None:
    """The number of the wall that a trim lies along; None where there is none."""
    points = shanks(trim).reshape(-1, 3)
    counts = [0 if plane.sloped else _on(plane, points) for plane in planes]
    return int(np.argmax(counts)) if any(counts) else None


def plane_over(planes: Sequence[CladPlane], strip: Piece) -> int | None:
    """The number of the plane whose sheets lie over a strip of blanket; None where there is none."""
    middle = standing_box(strip).mean(axis=0)[None, :]
    return next((number for number, plane in enumerate(planes) if _on(plane, middle)), None)


def _on(plane: CladPlane, points: Vectors) -> int:
    seen = _seen(plane, points)
    left, low, right, high = plane.outline.bounds
    inside = (seen[:, :2] > (left, low)) & (seen[:, :2] < (right, high))
    return int((inside.all(axis=1) & (np.abs(seen[:, 2]) < AT_PLANE)).sum())


def _seen(plane: CladPlane, points: Vectors) -> Vectors:
    """(n, 3) mm: points (u, v, w) as the plane has them."""
    frame = plane.frame
    found: Vectors = (points - np.array(frame.origin)) @ np.array([frame.x, frame.y, frame.z]).T
    return found


def trim_of(trims: Sequence[Piece], screw: Piece) -> Piece | None:
    """The trim that most screws of a row go through; the last of those that as many do."""
    points = shanks(screw)
    best: tuple[int, Piece | None] = (0, None)
    for trim in trims:
        count = int(_inside(trim, points).any(axis=1).sum())
        if count and count >= best[0]:
            best = (count, trim)
    return best[1]


def _inside(trim: Piece, points: Vectors) -> Vectors:
    """Which points (..., 3) of the building lie in the box of a trim, set along it."""
    at = trim.place @ measure_member(trim.solid).ways[0].bench
    axes = np.array([at.x, at.y, at.z])
    place = trim.place
    corners = body(trim.solid).corners @ np.array([place.x, place.y, place.z]) + np.array(place.origin)
    own = (corners - np.array(at.origin)) @ axes.T
    seen = (points - np.array(at.origin)) @ axes.T
    inside: Vectors = ((seen > own.min(axis=0) - GROWN) & (seen < own.max(axis=0) + GROWN)).all(axis=-1)
    return inside


def roof_of(planes: Sequence[CladPlane], foam: Piece) -> int | None:
    """The number of the roof plane whose sheets a strip of foam fits; None for one at a wall."""
    middle = standing_box(foam).mean(axis=0)[None, :]
    found: list[tuple[float, int]] = []
    for number, plane in enumerate(planes):
        u, v, w = _seen(plane, middle)[0]
        left, low, right, high = plane.outline.bounds
        past = max(left - u, u - right, low - v, v - high, 0.0)
        if plane.sloped and past < ROUND and FOAM[0] < w < FOAM[1]:
            found.append((past, number))
    return min(found)[1] if found else None


def roof_under(planes: Sequence[CladPlane], trim: Piece) -> int | None:
    """The number of the roof plane over whose sheets, or beside them, a trim's leg lies, of several the one
    that it runs along; None for one over none."""
    place = trim.place
    corners = body(trim.solid).corners @ np.array([place.x, place.y, place.z]) + np.array(place.origin)
    found: list[tuple[float, int]] = []
    for number, plane in enumerate(planes):
        u, v, w = _seen(plane, corners).T
        left, low, right, high = plane.outline.bounds
        inside = (u > left - ROUND) & (u < right + ROUND) & (v > low - ROUND) & (v < high + ROUND)
        if plane.sloped and (inside & (w > OVER[0]) & (w < OVER[1])).any():
            found.append((float(np.ptp(w)), number))
    return min(found)[1] if found else None
