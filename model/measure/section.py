"""The cross-section of a sheet, as graphs w(u), and the ribs it shows."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

import numpy as np

from ..place import Point2
from .faces import Vectors
from .outline import STRAIGHT, stands_out

Graph = tuple[Point2, ...]
"""Bends (u, w) of a section from left to right, mm."""

LEVEL = 1e-3
"""mm; a side of a graph that climbs less is flat."""
MAJOR = 10.0
"""mm; a lower rib is a minor one. Common practice, no source: major ribs are 1/2 in and more."""
SLENDER = 4.5
"""A major rib's base is at most so many times its height, the pans between are wider. Common practice."""
EVEN = 0.2
"""A rib cut on one flank keeps at least this part of it, or it counts as a step, not as a rib."""


@dataclass(frozen=True, slots=True)
class Rib:
    """A rib that the sheet still has, crown and something of both flanks.

    centre: u of the crown's middle. height: pan to crown, on the underside. crown: flat width of the
    crown, on the underside as catalogues give it. overlap: the rib that goes on top at a side lap,
    one sheet thickness higher than the others. All mm.
    """

    centre: float
    height: float
    crown: float
    overlap: bool = False


@dataclass(frozen=True, slots=True)
class _Flat:
    """A level stretch of a graph, with how far the graph falls on either side and where its feet stand."""

    start: float
    end: float
    level: float
    falls: tuple[float, float]
    feet: float

    @property
    def whole(self) -> bool:
        """A crown: the graph falls on both sides."""
        return min(self.falls) > LEVEL


def graph(points: Vectors) -> Graph:
    """The bends of the graph that all the points (n, 2) of (u, w) lie on."""
    ordered = points[np.lexsort((points[:, 1], points[:, 0]))]
    kept: list[Point2] = []
    for u, w in ordered.tolist():
        if kept and u - kept[-1][0] < STRAIGHT:
            continue
        while len(kept) > 1 and stands_out(kept[-1], kept[-2], (u, w)) < STRAIGHT:
            kept.pop()
        kept.append((u, w))
    return tuple(kept)


def has_pan(line: Graph) -> bool:
    """Whether a graph is level somewhere at its lowest."""
    lowest = min(w for _, w in line) + LEVEL
    return any(max(w0, w1) <= lowest for (_, w0), (_, w1) in pairwise(line))


def turned_over(line: Graph) -> Graph:
    """The other face's graph after the sheet is turned over about v."""
    return tuple((-u, -w) for u, w in reversed(line))


def upright(lower: Graph, upper: Graph) -> tuple[bool, bool]:
    """Whether the sheet may lie face up as it is, and whether turned over; both when nothing tells.

    The face with more slender ribs standing on it is up, else the one that lies low for most of its
    width: a crown is narrow, a pan is wide.
    """
    over = turned_over(upper)
    more_ribs = _slender(lower) - _slender(over)
    if more_ribs:
        return more_ribs > 0, more_ribs < 0
    lower_by = _lean(over) - _lean(lower)
    return lower_by > -LEVEL, lower_by < LEVEL


def _slender(line: Graph) -> int:
    """How many major ribs stand on a graph, by their proportions."""
    rise = max(w for _, w in line) - min(w for _, w in line)
    crowns = [flat for flat in _flats(line) if flat.whole and max(flat.falls) > rise / 2]
    even = [flat for flat in crowns if min(flat.falls) > EVEN * max(flat.falls)]
    return sum(flat.feet < SLENDER * max(flat.falls) for flat in even)


def _lean(line: Graph) -> float:
    """Mean height of a graph over the middle between its lowest and highest point."""
    under = sum((u1 - u0) * (w0 + w1) / 2 for (u0, w0), (u1, w1) in pairwise(line))
    heights = [w for _, w in line]
    return under / (line[-1][0] - line[0][0]) - (min(heights) + max(heights)) / 2


def _flats(line: Graph) -> list[_Flat]:
    found = []
    for i, ((u0, w0), (u1, w1)) in enumerate(pairwise(line)):
        if abs(w1 - w0) > LEVEL:
            continue
        left, right = _foot(line, i, -1), _foot(line, i + 1, 1)
        falls = (w0 - left[1], w1 - right[1])
        found.append(_Flat(u0, u1, (w0 + w1) / 2, falls, right[0] - left[0]))
    return found


def _foot(line: Graph, at: int, step: int) -> Point2:
    """Where a graph stops falling, seen from bend number `at`."""
    while 0 <= at + step < len(line) and line[at + step][1] < line[at][1] - LEVEL:
        at += step
    return line[at]


def ribs(lower: Graph, thickness: float) -> tuple[Rib, ...]:
    """The ribs of a sheet that lies face up, from left to right, by its underside's graph."""
    pan = min(w for _, w in lower)
    over = _overlap(lower, thickness)
    crowns = [flat for flat in _flats(lower) if flat.whole]
    return tuple(
        Rib((flat.start + flat.end) / 2, flat.level - pan, flat.end - flat.start, flat == over)
        for flat in crowns
    )


def majors(ribs: tuple[Rib, ...]) -> tuple[Rib, ...]:
    """The high ribs, told from the minor ones by their height."""
    return tuple(rib for rib in ribs if rib.height > MAJOR)


def overlap_side(lower: Graph, thickness: float) -> str:
    """Where the overlap rib is, "left" or "right", even a cut one; empty when the sheet shows none."""
    over = _overlap(lower, thickness)
    if over is None:
        return ""
    return "left" if over.start < (lower[0][0] + lower[-1][0]) / 2 else "right"


def _overlap(lower: Graph, thickness: float) -> _Flat | None:
    """The crown, whole or cut, at an end of the row of major ribs and one thickness above the others."""
    pan = min(w for _, w in lower)
    crowns = [flat for flat in _flats(lower) if flat.level - pan > MAJOR]
    low = min((flat.level for flat in crowns), default=0.0)
    higher = [flat for flat in crowns if flat.level > low + thickness / 2]
    if len(higher) != 1 or higher[0] not in (crowns[0], crowns[-1]):
        return None
    return higher[0] if higher[0].level < low + 1.5 * thickness else None
