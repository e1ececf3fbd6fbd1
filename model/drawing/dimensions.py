"""Dimensions as the lines, arrows and words they are drawn with, on paper (mm)."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import atan2, cos, degrees, radians, sin

from ..place import Point2
from .font import width
from .pens import Size, Style
from .values import Anchor, Dimension, RunningDimension, View

GAP, BEYOND = 1.0, 1.5
"""mm between a measured point and its extension line, and of that beyond the dimension line."""
ABOVE = 0.8
"""mm between a dimension line and the text above it."""
APART = 1.2
"""mm between the texts of a row of running distances."""
JOG = 4.0
"""mm before a row of texts in which its leaders bend."""
STEEP = 45.0
"""Degrees; a dimension that rises more is upright."""
ZERO = "0"


@dataclass(frozen=True, slots=True)
class Word:
    """A text on paper: its baseline's point, capitals' height, turn and anchor."""

    at: Point2
    text: str
    height: float
    anchor: Anchor = "left"
    turn: float = 0.0
    patch: bool = False


@dataclass(frozen=True, slots=True)
class Drawn:
    """A dimension on paper: lines, arrowheads (triangles), words."""

    lines: tuple[tuple[Point2, ...], ...]
    arrows: tuple[tuple[Point2, ...], ...]
    words: tuple[Word, ...]


def along(at: Point2, way: Point2, far: float) -> Point2:
    """The point so far from another."""
    return at[0] + far * way[0], at[1] + far * way[1]


def direction(turn: float) -> Point2:
    """The unit vector at an angle (degrees), exact for quarter turns."""
    return round(cos(radians(turn)), 12), round(sin(radians(turn)), 12)


def _dot(a: Point2, b: Point2) -> float:
    return a[0] * b[0] + a[1] * b[1]


def _foot(point: Point2, at: Point2, way: Point2) -> Point2:
    """A point dropped onto the line through `at` along `way`."""
    return along(at, way, _dot((point[0] - at[0], point[1] - at[1]), way))


def readable(turn: float) -> float:
    """A direction of reading from below or from the right: above -89 up to 91 degrees, so that what is
    all but upright reads from the right either way."""
    return round((turn + 89.0) % 180.0 - 89.0, 6)


def dimension(one: Dimension, view: View, style: Style) -> Drawn:
    """A dimension: its text above the line between the arrows, or outside where it does not fit."""
    turn = readable(one.turn)
    way = direction(turn)
    start, end, at = (view.on_paper(point) for point in (one.start, one.end, one.at))
    feet = sorted((_foot(point, at, way), point) for point in (start, end))
    feet.sort(key=lambda foot: _dot(foot[0], way))
    (a, first), (b, last) = feet
    height = style.heights[Size.SMALL]
    room, needed = _dot((b[0] - a[0], b[1] - a[1]), way), width(one.text, height)
    inside = room >= needed + 2 * style.arrow
    lines = [line for line in (_extension(first, a), _extension(last, b)) if line]
    off = (-way[1], way[0])
    if inside:
        lines.append((a, b))
        word = along(along(a, way, room / 2), off, ABOVE)
        arrows = (_arrow(a, way, style), _arrow(b, (-way[0], -way[1]), style))
        said = Word(word, one.text, height, "middle", turn)
    else:
        lines += [(along(a, way, -2 * style.arrow), a), (b, along(b, way, 2 * style.arrow))]
        arrows = (_arrow(a, (-way[0], -way[1]), style), _arrow(b, way, style))
        said = _outside(one.text, (a, b), turn, style)
    return Drawn(tuple(lines), arrows, (said,))


def _outside(text: str, ends: tuple[Point2, Point2], turn: float, style: Style) -> Word:
    """The text of a dimension too short for it: after its end; of an upright one level, on its left."""
    (ax, ay), (bx, by), height = *ends, style.heights[Size.SMALL]
    if turn > STEEP:
        return Word((ax - 2.0, (ay + by) / 2 - height / 2), text, height, "right", 0.0, True)
    way = direction(turn)
    spot = along(along((bx, by), way, 2 * style.arrow + ABOVE), (-way[1], way[0]), -height / 2)
    return Word(spot, text, height, "left", turn, True)


def _extension(point: Point2, foot: Point2) -> tuple[Point2, Point2] | None:
    dx, dy = foot[0] - point[0], foot[1] - point[1]
    far = (dx * dx + dy * dy) ** 0.5
    if far < GAP:
        return None
    way = (dx / far, dy / far)
    return along(point, way, GAP), along(foot, way, BEYOND)


def _arrow(tip: Point2, way: Point2, style: Style) -> tuple[Point2, ...]:
    """A head whose tip points against `way`."""
    back, half = along(tip, way, style.arrow), style.arrow / 6
    off = (-way[1], way[0])
    return tip, along(back, off, half), along(back, off, -half)


def spread(places: Sequence[float], pitch: float) -> list[float]:
    """Places of a row in their order, moved as little as can be until each is a pitch from the next.

    Those that push each other stand evenly about the mean of where they belong.
    """
    blocks: list[tuple[float, int]] = []  # where its first stands, how many
    for place in places:
        start, count = place, 1
        while blocks and blocks[-1][0] + blocks[-1][1] * pitch > start:
            before, size = blocks.pop()
            start = (before * size + (start - size * pitch) * count) / (size + count)
            count += size
        blocks.append((start, count))
    return [start + i * pitch for start, count in blocks for i in range(count)]


def running(one: RunningDimension, view: View, style: Style) -> Drawn:
    """A row of running distances: leaders from the points, bent where texts would touch; zero first."""
    way, height = direction(one.turn), style.heights[Size.SMALL]
    hook, said = ((one.zero,), (ZERO,)) if one.hooked else ((), ())
    at, points = view.on_paper(one.at), [view.on_paper(point) for point in (*hook, *one.points)]
    texts = [*said, *one.texts]
    order = sorted(range(len(points)), key=lambda i: (_dot(points[i], way), i))
    places = spread([_dot(points[i], way) for i in order], height + APART)
    off = _dot((points[0][0] - at[0], points[0][1] - at[1]), (-way[1], way[0]))
    out = (way[1], -way[0]) if off > 0 else (-way[1], way[0])
    turn = readable(degrees(atan2(out[1], out[0])))
    anchor: Anchor = "left" if _dot(direction(turn), out) > 0 else "right"
    low = direction(turn + 90)
    lines, words = [], []
    for i, place in zip(order, places, strict=True):
        foot = _foot(at, (0.0, 0.0), out)
        base = _foot(points[i], at, way)
        spot = along(foot, way, place)
        leader = [along(points[i], out, GAP), along(base, out, -JOG), spot]
        lines.append(tuple(leader if abs(place - _dot(base, way)) > 1e-6 else [leader[0], spot]))
        words.append(Word(along(along(spot, out, ABOVE), low, -height / 2), texts[i], height, anchor, turn))
    return Drawn(tuple(lines), (), tuple(words))


def drawn(one: Dimension | RunningDimension, view: View, style: Style) -> Drawn:
    """Either kind of dimension."""
    return dimension(one, view, style) if isinstance(one, Dimension) else running(one, view, style)


def words(one: Dimension | RunningDimension, view: View, style: Style) -> Iterator[Word]:
    """The words of a dimension where they stand."""
    yield from drawn(one, view, style).words
