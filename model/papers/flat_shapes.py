"""A flat as it is drawn: waste hatched, ribs or folds thin, distances from its upper edge and its foot."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from itertools import pairwise
from typing import Literal

import numpy as np
import shapely

from ..drawing.dimensions import APART, JOG, spread
from ..drawing.pens import Pen, Size
from ..drawing.values import Dimension, Hatch, Line, Polyline, RunningDimension, Shape, Text, View
from ..place import Point2
from .breaks import Broken, break_lines
from .cards import plain
from .flat import Flat
from .job import Job
from .labels import Labels
from .seen import lines_in, rims

ROW_GAP = 2.0
"""mm on paper between a flat and the bend of a row's leaders."""
EDGE = 6.0
"""mm on paper from a flat to the dimension line of an edge's length."""
SLIVER = 0.5
"""mm; waste that is narrower is none."""
ALIKE = 0.65
"""mm; corners nearer than this that are shown alike are said once."""
SPREAD = (0.0, *(sign * far for far in (10.0, 20.0, 30.0, 40.0, 50.0, 60.0) for sign in (-1, 1)))
"""mm on paper along an edge from its middle at which a word is tried."""
On = Callable[[Sequence[float]], Point2]
"""From a place on the flat, across and along (mm), to where it is drawn."""


def flat_shapes(one: Job, flat: Flat, view: View, where: Broken) -> tuple[list[Shape], list[Shape]]:
    """What is drawn to scale; and what lies on the paper itself."""
    ratio = view.scale.ratio
    top = flat.top

    def on(point: Sequence[float]) -> Point2:
        return where(point[1]), top - point[0]

    dimensions = list(_dimensions(one, flat, on, ratio))
    shapes: list[Shape] = list(_lines(flat, on))
    low, high = top - float(flat.blank.bounds[2]), top - float(flat.blank.bounds[0])
    shapes += break_lines(where, low, high, ratio)
    loose: list[Shape] = []
    for dimension in dimensions:
        if where.whole:
            shapes.append(dimension)
        else:
            loose += plain(dimension, view, one.style)
    labels = Labels(view, one.style)
    labels.keep(dimensions)
    if not where.whole:
        band = shapely.box(where.start - ratio, low, where.start + where.gap + ratio, high)
        labels.taken.append(labels.on_paper(band))
    shapes += _words(flat, labels, on, ratio)
    return shapes, loose


def _lines(flat: Flat, on: On) -> Iterator[Shape]:
    """Waste, blank, ribs, outline."""
    outline = flat.outline
    for part in shapely.get_parts(flat.blank.difference(outline)):
        if not part.buffer(-SLIVER / 2).is_empty:
            rings = (part.exterior, *part.interiors)
            yield Hatch(tuple(tuple(on(point) for point in list(ring.coords)[:-1]) for ring in rings))
    yield Polyline(tuple(on(point) for point in list(flat.blank.exterior.coords)[:-1]), Pen.HIDDEN)
    for middle, wide in flat.folds:
        for u in dict.fromkeys((middle - wide / 2, middle + wide / 2)):
            line = shapely.LineString([(u, -1.0), (u, flat.length + 1.0)])
            for points in lines_in(line.intersection(outline), None):
                yield Line(on(points[0]), on(points[-1]), Pen.THIN)
    for start, end in flat.creases:
        yield Line(on(start), on(end), Pen.THIN)
    for ring in rims(outline):
        yield Polyline(tuple(map(on, ring)))


def _dimensions(one: Job, flat: Flat, on: On, ratio: float) -> Iterator[Dimension | RunningDimension]:
    """Across from the left edge; along from the foot, as a row or as the lengths of both edges."""
    across = told_once(one, flat.across)
    left, bend = 0.0, (ROW_GAP + JOG) * ratio
    yield RunningDimension(
        on((left, 0.0)),
        tuple(on((u, 0.0)) for u in across),
        tuple(map(one.length, across)),
        (-bend, on((0.0, 0.0))[1]),
        -90.0,
    )
    right, length = flat.width, flat.length
    low, high = (on((float(u), 0.0))[1] for u in (flat.blank.bounds[2], flat.blank.bounds[0]))
    if flat.fall:
        edges = ((0.0, high + EDGE * ratio), (right, low - EDGE * ratio))
        for (u, y), fall in zip(edges, flat.fall, strict=True):
            ends = on((u, 0.0)), on((u, length - fall))
            yield Dimension(*ends, (0.0, y), one.length(length - fall))
        return
    along = told_once(one, flat.along)
    yield RunningDimension(
        (0.0, low),
        tuple((on((0.0, v))[0], low) for v in along),
        tuple(map(one.length, along)),
        (0.0, low - bend - below(one, flat, ratio) * ratio),
    )


def told_once(one: Job, values: Sequence[float]) -> list[float]:
    """Distances of which no two neighbours are shown alike, nor one as the edge that they begin at."""
    found = [0.0]
    for value in values:
        if value - found[-1] >= ALIKE or one.length(value) != one.length(found[-1]):
            found.append(value)
    return found[1:]


def rows_down(one: Job, flat: Flat, ratio: float) -> tuple[float, float]:
    """mm on paper from a flat's upper edge down to the first and to the last of the distances across, with
    half their height: they stand apart where they crowd."""
    height = one.style.heights[Size.SMALL]
    places = spread([u / ratio for u in (0.0, *told_once(one, flat.across))], height + APART)
    return places[0] - height / 2, places[-1] + height / 2


def below(one: Job, flat: Flat, ratio: float) -> float:
    """mm on paper that they reach past the blank's lower edge: the row along it stands clear of them."""
    return max(0.0, rows_down(one, flat, ratio)[1] + 1.0 - float(flat.blank.bounds[2]) / ratio)


def _words(flat: Flat, labels: Labels, on: On, ratio: float) -> Iterator[Shape]:
    """Which end is which, which edge laps, the numbers of the cutouts."""
    tries = [_about(on(spot), str(number), ratio) for number, spot in enumerate(flat.spots, 1)]
    found = [labels.place(texts) for texts in tries]
    inside = shapely.transform(flat.outline, lambda points: np.array([on(point) for point in points]))
    for word, place in ((flat.foot, "foot"), (flat.head, "head"), (flat.edge, "edge")):
        if word:
            found.append(labels.place(_inside(flat, on, word, place, ratio), inside))
    yield from (text for text in found if text)


def _about(at: Point2, word: str, ratio: float) -> list[Text]:
    """A word at a place, or a little aside."""
    return [
        Text((at[0] + dx * ratio, at[1] + (dy - 1.5) * ratio), word, Size.SMALL, "middle", 0.0, True)
        for dx, dy in ((0, 0), (0, 4), (0, -4), (4, 0), (-4, 0), (0, 8), (0, -8))
    ]


def _inside(flat: Flat, on: On, word: str, place: str, ratio: float) -> list[Text]:
    """A word within a sheet beside one of its ends, or along its overlap edge, between ribs not on them."""
    width, ribs = flat.width, [u for u, _ in flat.folds]
    pans = [(a + b) / 2 for a, b in pairwise(ribs)] or [width / 2]
    if place == "edge":
        x, y = on((pans[0], flat.length / 2))
        return [Text((x + far * ratio, y - 1.5 * ratio), word, anchor="middle", patch=True) for far in SPREAD]
    pans.sort(key=lambda u: abs(u - width / 2))
    way, v = (1, 0.0) if place == "foot" else (-1, flat.length)
    anchor: Literal["left", "right"] = "left" if way > 0 else "right"
    return [
        Text((x + way * far * ratio, y + (aside - 1.5) * ratio), word, anchor=anchor, patch=True)
        for far in range(2, 60, 3)
        for aside in (0.0, 0.5, -0.5)
        for x, y in (on((u, v)) for u in pans)
    ]
