"""How two bodies differ that every figure says the same of: as mirror images, or where along them."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from ..place import Point2
from .blank import TOLERANCE
from .faces import Vectors
from .member import Lying, MeasuredMember


def mirrored(one: MeasuredMember, other: MeasuredMember) -> bool:
    """Whether one is the other's mirror image, to the tolerance of marks."""
    return any(way.fits(_image(other.ways[0])) for way in one.ways)


def unlike(one: MeasuredMember, other: MeasuredMember) -> tuple[Point2, Point2] | None:
    """Where corners of either have no fellow, the other lying as it does first on the bench: from where to
    where along it, and across (mm); None where all have. The one lies as most of them do."""
    there = other.ways[0].points
    lonely = min((_lonely(way.points, there) for way in one.ways), key=len)
    if not len(lonely):
        return None
    (low_x, low_y, _), (high_x, high_y, _) = lonely.min(axis=0).tolist(), lonely.max(axis=0).tolist()
    return (low_y, high_y), (low_x, high_x)


def _image(lying: Lying) -> Lying:
    points = lying.points.copy()
    points[:, 0] = points[:, 0].max() - points[:, 0]
    return replace(lying, points=points)


def _lonely(some: Vectors, others: Vectors) -> Vectors:
    """Corners that lie on none of the other body's."""
    apart = np.linalg.norm(some[:, None, :] - others[None, :, :], axis=2)
    return np.concatenate([some[apart.min(axis=1) > TOLERANCE], others[apart.min(axis=0) > TOLERANCE]])
