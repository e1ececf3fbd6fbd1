"""Where members nest over a frame: cut across them, and along them through the flanges that lie together."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from ..measure.nested import MemberLap, member_laps
from ..measure.standing import standing_corners
from ..place import Place, Point3
from .detail import Detail, Measured
from .job import Job

ABOUT = 50.0
"""mm shown about a lap."""
BESIDE = 100.0
"""mm shown to both sides of the webs."""
OFF_WEB = 25.4
"""mm off the web that flanges are cut (1 in): past their bends."""


def lap_details(one: Job) -> Iterator[Detail]:
    """Both cuts of the first lap."""
    for lap in member_laps(one.model.pieces)[:1]:
        along = (lap.ends[1] - lap.ends[0]) / lap.length
        middle, role, deep = lap.ends.mean(axis=0), lap.upper.role, lap.depth / 2 + lap.deep + ABOUT
        side = _top_flange(lap) * np.cross(lap.up, along)
        quarter = middle + along * lap.length / 4  # beside the frame
        frame = Place(_point(quarter), _point(side), _point(lap.up))
        yield Detail(f"lap, {role}, across", frame, (-BESIDE, -deep, BESIDE, deep), ())
        at = Place(_point(middle + side * OFF_WEB + lap.up * lap.depth / 2), _point(along), _point(lap.up))
        lapped: Measured = ("lap", (role,), (role,), 0)
        half = lap.length / 2 + ABOUT
        yield Detail(f"lap, {role}, along", at, (-half, -ABOUT, half, ABOUT), (lapped,))


def _top_flange(lap: MemberLap) -> float:
    """On which side of the web, of up cross along, the upper flanges lie."""
    corners = standing_corners(lap.upper) - lap.ends.mean(axis=0)
    high = corners @ lap.up > lap.depth / 4
    side = np.cross(lap.up, lap.ends[1] - lap.ends[0])
    return float(np.sign((corners[high].mean(axis=0) - corners[~high].mean(axis=0)) @ side))


def _point(vector: np.ndarray) -> Point3:
    x, y, z = vector.tolist()
    return (x, y, z)
