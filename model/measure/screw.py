"""A screw measured off its solid: shank diameter and length under its head."""

from __future__ import annotations

import numpy as np

from .faces import Vectors
from .member import MeasuredMember

SAME = 1e-3  # mm


def shank(measured: MeasuredMember) -> tuple[float, float]:
    """(diameter, length under the head) of a turned body on the bench, mm.

    The shank is the ring of corners nearest the axis, but for those on it; the head's seat is where
    the shank ends. Faceted bodies are measured across their corners.
    """
    points = measured.ways[0].points
    axis = (points[:, [0, 2]].max(axis=0) + points[:, [0, 2]].min(axis=0)) / 2
    radius = np.hypot(*(points[:, [0, 2]] - axis).T)
    least = float(radius[radius > SAME].min())
    ring = points[np.abs(radius - least) < SAME][:, 1]
    tip = points[radius <= SAME][:, 1]
    ends = tip if len(tip) else points[:, 1]
    return 2 * least, float(np.abs(ring - _tip(ends, ring)).max())


def _tip(ends: Vectors, ring: Vectors) -> float:
    """Of the points on the axis, the tip: the one nearer the shank's own ring."""
    return float(min(ends, key=lambda y: float(np.abs(ring - y).min())))
