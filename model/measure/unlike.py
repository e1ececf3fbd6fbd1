"""How two bodies differ that every figure says the same of: as mirror images, or where along them."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from ..place import Point2
from .blank import TOLERANCE
from .faces import Vectors
from .member import Lying, MeasuredMember
from .snap import snapped


def mirrored(one: MeasuredMember, other: MeasuredMember) -> bool:
    """Whether one is the other's mirror image, to the tolerance of marks."""
    return any(way.fits(_image(other.ways[0])) for way in one.ways)


def unlike(one: MeasuredMember, other: MeasuredMember) -> tuple[Point2, Point2, Point2] | None:
    """Where corners of either have no fellow: from where to where along the other as it lies flat on the
    bench, and across it; and how long and wide it is there (mm). None where all have. Of the ways that the
    two can lie it is one in which most corners fit, and of several such ways the one in which they are
    closest together: noise must not choose."""
    broad = max(_width(way) for way in other.ways) - TOLERANCE
    flat = [way for way in other.ways if _width(way) > broad]
    found = [(_lonely(way.points, there.points), there) for way in one.ways for there in flat]
    fewest = min(len(lonely) for lonely, _ in found)
    if not fewest:
        return None
    spans = (_spans(lonely, there.points) for lonely, there in found if len(lonely) == fewest)
    return min(spans, key=lambda span: (_extent(span), span))


def _width(lying: Lying) -> float:
    return float(lying.points[:, 0].max())


def _extent(spans: tuple[Point2, Point2, Point2]) -> float:
    """mm: along and across together."""
    (near, far), (left, right), _ = spans
    return snapped(far - near + right - left, 0.01)


def _spans(corners: Vectors, there: Vectors) -> tuple[Point2, Point2, Point2]:
    low, high, size = (
        ends.tolist() for ends in (corners.min(axis=0), corners.max(axis=0), there.max(axis=0))
    )
    (low_x, low_y, _), (high_x, high_y, _), (wide, long, _) = (
        [snapped(at, 0.01) for at in ends] for ends in (low, high, size)
    )
    return (low_y, high_y), (low_x, high_x), (long, wide)


def _image(lying: Lying) -> Lying:
    points = lying.points.copy()
    points[:, 0] = points[:, 0].max() - points[:, 0]
    return replace(lying, points=points)


def _lonely(some: Vectors, others: Vectors) -> Vectors:
    """Corners that lie on none of the other body's."""
    apart = np.linalg.norm(some[:, None, :] - others[None, :, :], axis=2)
    return np.concatenate([some[apart.min(axis=1) > TOLERANCE], others[apart.min(axis=0) > TOLERANCE]])
