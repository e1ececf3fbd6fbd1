"""The cross-section of a ribbed sheet, as two graphs w(u) over its width."""

from __future__ import annotations

from collections.abc import Sequence
from functools import cache
from itertools import pairwise
from math import hypot

from ...catalog.profiles import RibProfile
from ...place import Point2
from ...recipe import grid

Graph = tuple[Point2, ...]


@cache
def graphs(profile: RibProfile, thickness: float) -> tuple[Graph, Graph]:
    """Underside and top of a whole sheet in its bench frame: (lower, upper), points (u, w) in mm.

    u runs from -leg to cover + leg, 0 at the overlap rib's centre; w is 0 at the underside of the
    pan. The overlap rib's underside is the top of a plain rib: one sheet thickness outside, so that
    at a side lap the neighbour's underlap rib nests in it and touches it without sharing volume.
    """
    plain = _underside(profile)
    outside = _offset(plain, thickness)
    # The overlap rib is the first four points. Its inner foot is where the offset flank meets w = 0.
    crown, foot = outside[2], outside[3]
    run = (foot[0] - crown[0]) / (crown[1] - foot[1])
    lower = [*outside[:3], (crown[0] + run * crown[1], 0.0), *plain[4:]]
    upper = _offset(lower, thickness)
    ends = (-profile.leg, profile.cover + profile.leg)
    return _trimmed(lower, *ends), _trimmed(upper, *ends)


@cache
def rise_of_lap(profile: RibProfile, thickness: float) -> float:
    """How far a sheet that lies over the head of another, in line with it, stands over it: a thickness square
    to the steepest flank."""
    lower, upper = graphs(profile, thickness)
    bends = sorted({u for u, _ in (*lower, *upper)})
    return max(height_at(upper, u) - height_at(lower, u) for u in bends)


def stack(profile: RibProfile, thickness: float) -> float:
    """Height from the underside of the pan to the top of the overlap rib, the highest point of a face."""
    return max(w for _, w in graphs(profile, thickness)[1])


def _underside(profile: RibProfile) -> list[Point2]:
    """Underside with all ribs alike, from the first rib's outer foot to the last one's."""
    points: list[Point2] = []
    for k in range(round(profile.cover / profile.pitch) + 1):
        at = k * profile.pitch
        points += _rib(at, profile.height, profile.crown, profile.base)
        if at > profile.cover - profile.pitch / 2:
            break
        for i in range(profile.minors):
            minor = at + profile.pitch * (i + 1) / (profile.minors + 1)
            points += _rib(minor, profile.minor_height, profile.minor_crown, profile.minor_base)
    return points


def _rib(at: float, height: float, crown: float, base: float) -> list[Point2]:
    return [(at - base / 2, 0.0), (at - crown / 2, height), (at + crown / 2, height), (at + base / 2, 0.0)]


def _offset(line: list[Point2], distance: float) -> list[Point2]:
    """A polyline moved to its left (up, for one that runs along +u), corners mitred."""
    normals = []
    for (u0, w0), (u1, w1) in pairwise(line):
        size = hypot(u1 - u0, w1 - w0)
        normals.append(((w0 - w1) / size, (u1 - u0) / size))
    moved = []
    for point, before, after in zip(line, [normals[0], *normals], [*normals, normals[-1]], strict=True):
        scale = distance / (1 + before[0] * after[0] + before[1] * after[1])
        moved.append((point[0] + scale * (before[0] + after[0]), point[1] + scale * (before[1] + after[1])))
    return moved


def _trimmed(line: list[Point2], start: float, end: float) -> Graph:
    """The polyline between two values of u, its ends interpolated, on the recipes' grid."""
    inside = [p for p in line if start < p[0] < end]
    whole = [(start, height_at(line, start)), *inside, (end, height_at(line, end))]
    return tuple((grid(u), grid(w)) for u, w in whole)


def height_at(line: Sequence[Point2], u: float) -> float:
    """w of a graph over u; past its ends that of its ends."""
    for (u0, w0), (u1, w1) in pairwise(line):
        if u0 <= u <= u1:
            return w0 + (w1 - w0) * (u - u0) / (u1 - u0)
    return line[0][1] if u < line[0][0] else line[-1][1]
