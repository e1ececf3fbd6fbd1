"""The blank a flat outline was cut from, how its ends are cut, and what is cut out of it."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise
from typing import Literal, TypeAlias

import numpy as np
import shapely
from shapely.geometry import LineString, Polygon

from ..place import Point2
from .faces import Vectors
from .outline import STRAIGHT, started, straightened
from .snap import snapped

TOLERANCE = 0.01
"""mm; differences up to this are no differences, between pieces and within one."""
GRID = 1e-3
"""mm; the grid on which polygons are subtracted. Corners are set back to where they were afterwards."""

EndKind: TypeAlias = Literal["square", "rake", "peak", "bent", "shaped"]


@dataclass(frozen=True, slots=True)
class End:
    """How one end of a sheet is cut, over its full width (mm).

    left, right: how far the end falls short, at that edge, of the point where the sheet is longest.
    A rake has one of them: its drop, high on the other side. A peak has both and stands at `at`,
    from the left edge. One that is bent has one of them, and falls short by `bend` at `at`, where it
    grows steeper or flatter. For other kinds those are 0. "shaped": any other line.
    """

    kind: EndKind
    left: float = 0.0
    right: float = 0.0
    at: float = 0.0
    bend: float = 0.0

    @property
    def drop(self) -> float:
        """Of a rake, or a bent end: how much longer one edge is than the other."""
        return max(self.left, self.right)

    @property
    def high(self) -> str:
        """Of a rake, or a bent end: the longer edge, "left" or "right"."""
        return "left" if self.left < self.right else "right"


@dataclass(frozen=True, slots=True)
class Cutout:
    """What is cut out of the blank: its bounding box from the lower left corner of the sheet (mm).

    sides: which sides of the blank it opens, of "left", "right", "foot", "head"; none for a hole.
    corners: of the piece cut out, counter-clockwise.
    """

    x: float
    y: float
    width: float
    height: float
    sides: tuple[str, ...]
    corners: tuple[Point2, ...]


@dataclass(frozen=True, slots=True)
class Blank:
    """The sheet before anything was cut out of it, as far as its own edges tell.

    ring: counter-clockwise from the lower left corner, within the outline's bounding box; convex but for a
    hollow end.
    foot, head: its ends at low and high v, as they ran before corners were notched away.
    sides: the line (n, 2) along each side of the ring, by name: "left", "right", "foot", "head".
    """

    ring: tuple[Point2, ...]
    foot: End
    head: End
    sides: dict[str, Vectors]


def blank(outline: Polygon) -> Blank:
    """The blank of an outline whose bounding box starts at (0, 0): where its supporting edges meet.

    An edge supports the outline when all of the outline lies on one side of it. Where a side has no
    such edge the bounding box stands in.
    """
    corners = np.array(outline.exterior.coords)[:-1]
    full = _supported(corners)
    ends = _sides(full)
    ring = full
    for side, inward in _BOX:
        ring = _clipped(ring, side * corners.max(axis=0), inward)
    ring = straightened(_set_back(ring, corners))
    for end, line in _hollow(corners).items():
        ends[end] = line
        ring = _ended(ring, end, line)
    ring = started(ring)
    return Blank(_points(ring), _end(ends["foot"] * (1, -1)), _end(ends["head"]), _sides(ring))


def _hollow(corners: Vectors) -> dict[str, Vectors]:
    """The ends (3, 2), from left to right, over which an outline falls from one edge to the other, first
    steeply: under a roof that grows flatter no line supports them."""
    found = {}
    sides = _sides(corners)
    for end, up in (("foot", -1), ("head", 1)):
        line = sides[end]
        if len(line) == 3:
            (u0, v0), (u1, v1), (u2, v2) = (line * (1, up)).tolist()
            chord = v0 + (v2 - v0) * (u1 - u0) / (u2 - u0)
            if u0 < u1 < u2 and min(v0, v2) + TOLERANCE < v1 < chord - TOLERANCE:
                found[end] = line
    return found


def _ended(ring: Vectors, end: str, line: Vectors) -> Vectors:
    """A counter-clockwise ring with another line, from left to right, for one of its ends."""
    sides = _sides(ring)
    if end == "head":
        return np.vstack([sides["foot"], line[::-1]])
    return np.vstack([line, sides["head"][::-1]])


_BOX = tuple((side, np.array(way)) for side, way in ((0, (1, 0)), (1, (-1, 0)), (0, (0, 1)), (1, (0, -1))))
"""Sides of a bounding box from (0, 0): through its far corner or not, and the direction inward."""


def _supported(corners: Vectors) -> Vectors:
    """The convex ring that the supporting edges of an outline (n, 2) bound together.

    It may reach past the bounding box: a rake runs on where its high corner is notched away.
    """
    size = corners.max(axis=0)
    ring = np.array(shapely.box(*-size, *2 * size, ccw=True).exterior.coords)[:-1]
    for start, end in zip(corners, np.roll(corners, -1, axis=0), strict=True):
        along = end - start
        length = float(np.hypot(*along))
        aside = np.array([-along[1], along[0]]) / length
        if length > TOLERANCE and float(((corners - start) @ aside).min()) > -STRAIGHT:
            ring = _clipped(ring, start, aside)
    for side, inward in _BOX:
        stand_in = (3 * side - 1) * size  # a corner of the big box; still reached where nothing supports
        if float(((ring - stand_in) @ inward).min()) < STRAIGHT:
            ring = _clipped(ring, side * size, inward)
    return straightened(_set_back(ring, corners))


def cutouts(outline: Polygon, sheet: Blank) -> tuple[Cutout, ...]:
    """What is missing from the blank: holes, edge and corner notches; lowest first, then from the left. One
    with a step in it is told as what lies below the step and what lies above, as it is marked and cut."""
    holes = [part for hole in outline.interiors for part in _stacked(np.array(hole.coords)[-2::-1])]
    found = [_cutout(hole, ()) for hole in holes]
    full, rim = Polygon(sheet.ring), Polygon(outline.exterior)
    if full.area - rim.area > TOLERANCE:
        exact = np.vstack([np.array(sheet.ring), np.array(rim.exterior.coords)])
        missing = shapely.difference(full, rim, grid_size=GRID)
        parts = [shapely.geometry.polygon.orient(part) for part in shapely.get_parts(missing)]
        rings = [straightened(_set_back(np.array(part.exterior.coords)[:-1], exact)) for part in parts]
        found += [_cutout(part, _opened(part, sheet)) for ring in rings for part in _stacked(ring)]
    real = [cut for cut in found if min(cut.width, cut.height) > TOLERANCE]
    return tuple(sorted(real, key=lambda cut: (snapped(cut.y, GRID), snapped(cut.x, GRID))))


def _stacked(ring: Vectors) -> list[Vectors]:
    """A counter-clockwise ring (n, 2), divided across at the height of each corner that turns inward."""
    before, after = ring - np.roll(ring, 1, axis=0), np.roll(ring, -1, axis=0) - ring
    turn = before[:, 0] * after[:, 1] - before[:, 1] * after[:, 0]
    sharp = turn < -STRAIGHT * np.hypot(*before.T) * np.hypot(*after.T)
    levels = sorted({snapped(v, GRID): v for v in ring[sharp, 1].tolist()}.values())
    if not levels:
        return [ring]
    (left, low), (right, high) = ring.min(axis=0).tolist(), ring.max(axis=0).tolist()
    shape, found = Polygon(ring), []
    for foot, head in pairwise((low - 1, *levels, high + 1)):
        for part in shapely.get_parts(shape.intersection(shapely.box(left - 1, foot, right + 1, head))):
            if part.geom_type == "Polygon" and part.area > TOLERANCE:
                corners = np.array(shapely.geometry.polygon.orient(part).exterior.coords)[:-1]
                found.append(straightened(_set_back(corners, ring)))
    return found


def _cutout(ring: Vectors, sides: tuple[str, ...]) -> Cutout:
    (x, y), (right, top) = ring.min(axis=0).tolist(), ring.max(axis=0).tolist()
    return Cutout(x, y, right - x, top - y, sides, _points(started(ring)))


def _opened(ring: Vectors, sheet: Blank) -> tuple[str, ...]:
    """The sides of the blank that a ring runs along."""
    rim = Polygon(ring).exterior
    bands = {name: LineString(line).buffer(GRID) for name, line in sheet.sides.items()}
    return tuple(name for name, band in bands.items() if rim.intersection(band).length > 10 * GRID)


def _points(ring: Vectors) -> tuple[Point2, ...]:
    return tuple((u, v) for u, v in ring.tolist())


def _clipped(ring: Vectors, start: Vectors, inward: Vectors) -> Vectors:
    """The part of a convex ring on the inner side of the line through start."""
    depths = (ring - start) @ inward
    kept: list[Vectors] = []
    for i, depth in enumerate(depths):
        before = depths[i - 1]
        if (depth < -STRAIGHT and before > STRAIGHT) or (depth > STRAIGHT and before < -STRAIGHT):
            kept.append(ring[i - 1] + (ring[i] - ring[i - 1]) * before / (before - depth))
        if depth >= -STRAIGHT:
            kept.append(ring[i])
    return np.array(kept)


def _set_back(ring: Vectors, exact: Vectors) -> Vectors:
    """The ring with every point that stands within the grid of an exact one moved onto it."""
    away = np.hypot(*(ring[:, None, :] - exact[None, :, :]).transpose(2, 0, 1))
    near = away.argmin(axis=1)
    moved: Vectors = np.where((away.min(axis=1) < 2 * GRID)[:, None], exact[near], ring)
    return moved


def _sides(ring: Vectors) -> dict[str, Vectors]:
    """The sides of a convex ring, from left to right and from low to high."""
    left = np.flatnonzero(ring[:, 0] < ring[:, 0].min() + TOLERANCE)
    right = np.flatnonzero(ring[:, 0] > ring[:, 0].max() - TOLERANCE)
    low_left, high_left = left[ring[left, 1].argmin()], left[ring[left, 1].argmax()]
    low_right, high_right = right[ring[right, 1].argmin()], right[ring[right, 1].argmax()]
    return {
        "foot": _between(ring, low_left, low_right),
        "head": _between(ring, high_right, high_left)[::-1],
        "left": ring[[low_left, high_left]],
        "right": ring[[low_right, high_right]],
    }


def _between(ring: Vectors, first: int, last: int) -> Vectors:
    """The points of a ring from one to another, both included."""
    return np.roll(ring, -first, axis=0)[: (last - first) % len(ring) + 1]


def _end(line: Vectors) -> End:
    """The cut along a line from left to right, longer where the line is higher."""
    top = line[:, 1].max()
    left, right = float(top - line[0, 1]), float(top - line[-1, 1])
    if len(line) == 2:
        return End("square") if max(left, right) <= TOLERANCE else End("rake", left, right)
    at, bend = float(line[1, 0] - line[0, 0]), float(top - line[1, 1])
    if len(line) == 3 and min(left, right) > TOLERANCE:
        return End("peak", left, right, at)
    if len(line) == 3 and TOLERANCE < bend < max(left, right) - TOLERANCE:
        return End("bent", left, right, at, bend)
    return End("shaped", left, right)
