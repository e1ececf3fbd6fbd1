"""Bend sketches: a trim's section by its measured corners, with its legs and angles."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import pairwise
from math import hypot

import shapely
from shapely.geometry import Polygon

from ..drawing.pens import Pen
from ..drawing.values import Anchor, Polyline, Shape, Text, View
from ..measure.bends import Bends
from ..place import Point2
from .flat_card import Aside
from .job import Job
from .labels import Labels
from .scales import fitting

ROOM = (22.0, 24.0)
"""mm on paper that a section is drawn in."""
AROUND, UNDER = 15.0, 7.0
"""mm on paper beside it, and over and under it, for its numbers."""
PAINT = 1.2
"""mm on paper of the dashed line off the painted side."""
CLEAR = 0.3
"""mm on paper between a line and a number."""
ANCHORS: dict[int, Anchor] = {1: "left", -1: "right", 0: "middle"}
CLOSED = 10.0
"""Degrees; a narrower inside angle is a hem."""


def sketch(one: Job, read: Bends, painted: str) -> Aside:
    """A section as it is bent, to the largest standard scale that it fits, its first leg level and to the
    left; dashed: its painted side."""
    bends = replace(read, line=_levelled(read.line))
    lows, highs = _bounds(bends)
    size = highs[0] - lows[0], highs[1] - lows[1]
    scale = fitting(size, ROOM, one.units)
    wide, high = ROOM[0] + 2 * AROUND, size[1] / scale.ratio + 2 * UNDER

    def put(at: Point2) -> tuple[Sequence[View], Sequence[Shape]]:
        middle = at[0] + wide / 2, at[1] - high / 2
        within = shapely.box(at[0], at[1] - high, at[0] + wide, at[1])
        origin = tuple(
            m - (low + top) / 2 / scale.ratio for m, low, top in zip(middle, lows, highs, strict=True)
        )
        view = View("", scale, (origin[0], origin[1]), ())
        return [View("", scale, view.at, tuple(_shapes(one, bends, painted, view, within)))], ()

    return Aside(wide, high, put)


def _levelled(line: tuple[Point2, ...]) -> tuple[Point2, ...]:
    """A line turned so that it begins to the right."""
    (ax, ay), (bx, by) = line[:2]
    size = hypot(bx - ax, by - ay)
    c, s = (bx - ax) / size, (by - ay) / size
    return tuple(
        (round((x - ax) * c + (y - ay) * s, 6) + 0.0, round((y - ay) * c - (x - ax) * s, 6) + 0.0)
        for x, y in line
    )


def _bounds(bends: Bends) -> tuple[Point2, Point2]:
    xs, ys = zip(*bends.line, strict=True)
    return (min(xs), min(ys)), (max(xs), max(ys))


def _shapes(one: Job, bends: Bends, painted: str, view: View, within: Polygon) -> Iterator[Shape]:
    ratio = view.scale.ratio
    lines = [Polyline(bends.line, Pen.OUTLINE, False)]
    if painted:
        side = bends.outward if painted == "outside" else -bends.outward
        for a, b in pairwise(bends.line):
            off = _off(a, b, side * PAINT * ratio)
            lines.append(Polyline((_plus(a, off), _plus(b, off)), Pen.HIDDEN, False))
    yield from lines
    labels = Labels(view, one.style, within)
    labels.taken += [labels.on_paper(shapely.LineString(line.points)).buffer(CLEAR) for line in lines]
    legs = list(zip(pairwise(bends.line), bends.legs, strict=True))
    for (a, b), leg in legs:
        found = labels.place(_beside(a, b, one.length(leg), ratio))
        yield from [found] if found else []
    for corner, angle in zip(bends.line[1:-1], bends.angles, strict=True):
        said = "hem" if angle < CLOSED else f"{angle:.1f}".removesuffix(".0") + "°"
        found = labels.place(_about(corner, said, ratio))
        yield from [found] if found else []


def _beside(a: Point2, b: Point2, text: str, ratio: float) -> Iterator[Text]:
    """A leg's length beside its middle, on either side."""
    middle = (a[0] + b[0]) / 2, (a[1] + b[1]) / 2
    for far in (2.5, 3.5, 5.0, 8.0, 11.0):
        for side in (1.0, -1.0):
            x, y = _plus(middle, _off(a, b, side * far * ratio))
            right = x >= middle[0]
            upright = abs(b[1] - a[1]) > abs(b[0] - a[0])
            anchor: Anchor = "middle" if not upright else "left" if right else "right"
            yield Text((x, y - 1.5 * ratio), text, anchor=anchor)


def _about(at: Point2, text: str, ratio: float) -> Iterator[Text]:
    """An angle near its corner."""
    for far in (2.0, 3.0, 5.0, 8.0, 11.0):
        for dx, dy in ((1, 1), (-1, 1), (1, -1), (-1, -1), (0, 1), (0, -1)):
            place = at[0] + dx * far * ratio, at[1] + (dy * far - 1.5) * ratio
            yield Text(place, text, anchor=ANCHORS[dx])


def _off(a: Point2, b: Point2, far: float) -> Point2:
    """So far to the right of the way from a to b."""
    size = hypot(b[0] - a[0], b[1] - a[1])
    return (b[1] - a[1]) / size * far, (a[0] - b[0]) / size * far


def _plus(a: Point2, b: Point2) -> Point2:
    return a[0] + b[0], a[1] + b[1]
