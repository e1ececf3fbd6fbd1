"""A page as what is put on paper (mm): filled areas, strokes, words and pictures, in the order they go on.

What knows only such things (PDF, SVG) stands on this. Words go on last, each view's after its lines.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from math import ceil, cos, radians, sin

import numpy as np
import shapely

from ..place import Point2
from .dimensions import Word, drawn
from .pens import STYLES, Pen, Style
from .values import Arc, Dimension, Hatch, Image, Line, Page, Polyline, RunningDimension, Shape, Text, View

CHORD = 7.5
"""Degrees of an arc that one chord stands for."""


@dataclass(frozen=True, slots=True)
class Stroke:
    """A line through points."""

    points: tuple[Point2, ...]
    pen: Pen
    closed: bool = False


@dataclass(frozen=True, slots=True)
class Area:
    """A filled polygon, "#rrggbb"."""

    points: tuple[Point2, ...]
    colour: str


@dataclass(frozen=True, slots=True)
class Picture:
    """An image on a rectangle from its lower left corner."""

    at: Point2
    width: float
    height: float
    data: bytes


Ink = Stroke | Area | Word | Picture
BLACK = "#000000"


def inked(page: Page) -> Iterator[Ink]:
    """Everything on a page, the words of a view after its lines."""
    style = STYLES[page.units]
    for view in page.layers:
        late: list[Word] = []
        for shape in view.shapes:
            for ink in _ink(shape, view, style):
                if isinstance(ink, Word):
                    late.append(ink)
                else:
                    yield ink
        yield from late


def words_on(page: Page) -> Iterator[Word]:
    """The words of a page where they stand."""
    return (ink for ink in inked(page) if isinstance(ink, Word))


def _ink(shape: Shape, view: View, style: Style) -> Iterator[Ink]:
    on = view.on_paper
    match shape:
        case Line():
            yield Stroke((on(shape.start), on(shape.end)), shape.pen)
        case Polyline():
            points = tuple(map(on, shape.points))
            if shape.fill:
                yield Area(points, shape.fill)
            if shape.pen:
                yield Stroke(points, shape.pen, shape.closed)
        case Arc():
            yield Stroke(tuple(map(on, chords(shape))), shape.pen)
        case Text():
            yield word(shape, view, style)
        case Dimension() | RunningDimension():
            found = drawn(shape, view, style)
            yield from (Stroke(line, Pen.DIMENSION) for line in found.lines)
            yield from (Area(arrow, BLACK) for arrow in found.arrows)
            yield from found.words
        case Hatch():
            rings = [tuple(map(on, ring)) for ring in shape.rings]
            yield from (Stroke(line, Pen.HATCH) for line in hatched(rings, shape.turn, shape.spacing))
        case Image():
            ratio = view.scale.ratio
            yield Picture(on(shape.at), shape.width / ratio, shape.height / ratio, shape.data)


def word(text: Text, view: View, style: Style) -> Word:
    """A text where it stands on paper."""
    height = style.heights[text.size]
    return Word(view.on_paper(text.at), text.text, height, text.anchor, text.turn, text.patch)


def chords(arc: Arc) -> list[Point2]:
    """Points along an arc."""
    count = max(2, ceil(abs(arc.end - arc.start) / CHORD) + 1)
    (x, y), r = arc.centre, arc.radius
    turns = (arc.start + (arc.end - arc.start) * i / (count - 1) for i in range(count))
    return [(x + r * cos(radians(turn)), y + r * sin(radians(turn))) for turn in turns]


def hatched(rings: list[tuple[Point2, ...]], turn: float, spacing: float) -> Iterator[tuple[Point2, Point2]]:
    """Lines over an area (its outer ring, then its holes), as far apart as `spacing`."""
    area = shapely.Polygon(rings[0], rings[1:]).buffer(0)
    if area.is_empty:
        return
    turned = shapely.affinity.rotate(area, -turn, origin=(0, 0))
    left, low, right, high = turned.bounds
    for number in range(ceil(low / spacing), int(np.floor(high / spacing)) + 1):
        level = shapely.LineString([(left - 1, number * spacing), (right + 1, number * spacing)])
        for part in shapely.get_parts(turned.intersection(level)):
            if part.geom_type == "LineString" and not part.is_empty:
                start, end = shapely.affinity.rotate(part, turn, origin=(0, 0)).coords
                yield (float(start[0]), float(start[1])), (float(end[0]), float(end[1]))
