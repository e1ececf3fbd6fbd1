"""A sheet on the bench: face up, foot at the left, overlap edge at the top; running distances from both."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

import shapely
from shapely.geometry import Polygon

from ..drawing.dimensions import APART, JOG, spread
from ..drawing.font import width
from ..drawing.pens import Pen, Size
from ..drawing.values import (
    Dimension,
    Hatch,
    Line,
    Polyline,
    RunningDimension,
    Scale,
    Shape,
    Text,
    View,
)
from ..measure.sheet import MeasuredSheet
from ..order.lists.schedule import Row
from ..place import Point2
from .breaks import Broken, break_lines, broken
from .cards import Card, plain
from .frame import lines_down, room_of, wrapped
from .job import Job
from .labels import Labels
from .scales import SCALES
from .seen import lines_in, rims
from .sheet_notes import sheet_notes

NOTES = 74.0
"""mm on paper for the lines beside a drawing."""
TOP, LINE = 9.0, 4.9
"""mm on paper from a card's top to its notes, and from one line of them to the next."""
ROW_GAP = 2.0
"""mm on paper between a sheet and the bend of a row's leaders."""
EDGE = 6.0
"""mm on paper from a sheet to the dimension line of an edge's length."""
USUAL = {"ft-in": 5, "mm": 3}
"""The number of the scale that sheets are drawn to, where they fit: 3/8 in to a foot, 1:20."""
SPREAD = (0.0, *(sign * far for far in (10.0, 20.0, 30.0, 40.0, 50.0, 60.0) for sign in (-1, 1)))
"""mm on paper along an edge from its middle at which a word is tried."""
On = Callable[[Sequence[float]], Point2]
"""From a place on the sheet, across and along (mm), to where it is drawn."""
SAME = 0.05
"""mm; corners nearer than this along one edge are said once."""


@dataclass(frozen=True, eq=False)
class Bench:
    """A sheet to be drawn. whole: the width of the sheet it is cut from (mm)."""

    row: Row
    measured: MeasuredSheet
    whole: float

    @property
    def blank(self) -> Polygon:
        """What it is cut from, as it lies: ripped at the right where its overlap rib is left on it."""
        rip = self.whole - self.measured.width
        left = 0.0 if self.row.overlap else -rip
        return shapely.box(left, 0.0, left + self.whole, self.measured.length)

    @property
    def simple(self) -> bool:
        """Whether its two edges' lengths say where all its corners are along it."""
        ends = {self.row.head.kind, self.row.foot.kind}
        return not self.row.cutouts and self.row.foot.kind == "square" and ends <= {"square", "rake"}

    @property
    def busy(self) -> Iterator[tuple[float, float]]:
        """Stretches along it where something is cut."""
        yield from ((cut.y, cut.y + cut.height) for cut in self.row.cutouts)
        head, foot, length = self.row.head, self.row.foot, self.measured.length
        yield length - max(head.left, head.right), length
        yield 0.0, max(foot.left, foot.right)


def sheet_card(one: Job, bench: Bench) -> Card:
    """The card of a sheet."""
    lines = [line for text in sheet_notes(one, bench.row, bench.whole) for line in wrapped(one, text, NOTES)]
    side = _side(one, bench)
    room = room_of(one).width - NOTES - side - 10.0
    scale, where = _scale(one, bench, room)
    high = bench.whole / scale.ratio
    below = EDGE + 1.5 if bench.simple else _reach(one, bench)
    above = max(EDGE + 4.5 if bench.simple else 3.0, _over(one, bench, scale.ratio))
    height = max(above + high + below, TOP + LINE * len(lines))

    def put(at: Point2) -> tuple[Sequence[View], Sequence[Shape]]:
        origin = (at[0] + NOTES + side, at[1] - above - high)
        view = View(bench.row.mark, scale, origin, ())
        drawn, loose = _shapes(one, bench, view, where)
        texts: list[Shape] = [
            Text((at[0], at[1] - 6.5), bench.row.mark, Size.LARGE),
            Text((at[0] + NOTES - 4.0, at[1] - 6.5), _scaled(scale, where), anchor="right"),
            *lines_down(lines, (at[0], at[1] - TOP - 3.0), row=LINE),
        ]
        return [replace(view, shapes=tuple(drawn))], [*texts, *loose]

    return Card(bench.row.mark, height, put)


def _scaled(scale: Scale, where: Broken) -> str:
    return f"scale {scale.name}{'' if where.whole else ', broken'}"


def _scale(one: Job, bench: Bench, room: float) -> tuple[Scale, Broken]:
    """The usual scale, with a break if need be; a smaller one where no break helps."""
    for scale in reversed(SCALES[one.units][: USUAL[one.units] + 1]):
        where = broken(bench.measured.length, bench.busy, room, scale.ratio)
        if where is not None:
            return scale, where
    smallest = SCALES[one.units][0]
    return smallest, Broken()


def _side(one: Job, bench: Bench) -> float:
    """mm on paper that the distances across take."""
    height = one.style.heights[Size.SMALL]
    return max(width(one.length(u), height) for u in _across(bench)) + JOG + ROW_GAP + 2.0


def _reach(one: Job, bench: Bench) -> float:
    """mm on paper that the distances along take."""
    height = one.style.heights[Size.SMALL]
    return max(width(one.length(v), height) for v in _along(bench)) + JOG + ROW_GAP + 2.0


def _over(one: Job, bench: Bench, ratio: float) -> float:
    """mm on paper that the distances across reach above the top of the blank where they crowd."""
    height = one.style.heights[Size.SMALL]
    first = spread([u / ratio for u in (0.0, *_across(bench))], height + APART)[0]
    return height / 2 + 1.0 - first - max(-float(bench.blank.bounds[0]), 0.0) / ratio


def _across(bench: Bench) -> list[float]:
    """Distances from the left edge that are said: major ribs, corners."""
    return _distinct([*(rib.centre for rib in bench.measured.majors), *_corners(bench, 0)])


def _along(bench: Bench) -> list[float]:
    """Distances from the foot that are said: corners."""
    return _distinct(_corners(bench, 1))


def _corners(bench: Bench, axis: int) -> list[float]:
    return [float(point[axis]) for ring in rims(bench.measured.outline) for point in ring]


def _distinct(values: Sequence[float]) -> list[float]:
    found: list[float] = []
    for value in sorted(values):
        if value > SAME and (not found or value - found[-1] > SAME):
            found.append(value)
    return found


def _shapes(one: Job, bench: Bench, view: View, where: Broken) -> tuple[list[Shape], list[Shape]]:
    """What is drawn to scale; and what lies on the paper itself."""
    ratio = view.scale.ratio
    top = max(float(bench.blank.bounds[2]), bench.measured.width)

    def on(point: Sequence[float]) -> Point2:
        return where(point[1]), top - point[0]

    dimensions = list(_dimensions(one, bench, on, ratio))
    shapes: list[Shape] = list(_lines(bench, on))
    low, high = top - float(bench.blank.bounds[2]), top - float(bench.blank.bounds[0])
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
    shapes += _words(bench, labels, on, ratio)
    return shapes, loose


def _lines(bench: Bench, on: On) -> Iterator[Shape]:
    """Waste, blank, ribs, outline."""
    outline = bench.measured.outline
    for part in shapely.get_parts(bench.blank.difference(outline)):
        if part.geom_type == "Polygon" and part.area > 1.0:
            rings = (part.exterior, *part.interiors)
            yield Hatch(tuple(tuple(on(point) for point in list(ring.coords)[:-1]) for ring in rings))
    yield Polyline(tuple(on(point) for point in list(bench.blank.exterior.coords)[:-1]), Pen.HIDDEN)
    for rib in bench.measured.majors:
        for u in (rib.centre - rib.crown / 2, rib.centre + rib.crown / 2):
            line = shapely.LineString([(u, -1.0), (u, bench.measured.length + 1.0)])
            for points in lines_in(line.intersection(outline), None):
                yield Line(on(points[0]), on(points[-1]), Pen.THIN)
    for ring in rims(outline):
        yield Polyline(tuple(map(on, ring)))


def _dimensions(one: Job, bench: Bench, on: On, ratio: float) -> Iterator[Dimension | RunningDimension]:
    """Across from the left edge; along from the foot, as a row or as the lengths of both edges."""
    across = _across(bench)
    left, bend = 0.0, (ROW_GAP + JOG) * ratio
    yield RunningDimension(
        on((left, 0.0)),
        tuple(on((u, 0.0)) for u in across),
        tuple(map(one.length, across)),
        (-bend, on((0.0, 0.0))[1]),
        -90.0,
    )
    right, length, head = bench.measured.width, bench.measured.length, bench.row.head
    low, high = (on((float(u), 0.0))[1] for u in (bench.blank.bounds[2], bench.blank.bounds[0]))
    if bench.simple:
        for u, fall, y in ((0.0, head.left, high + EDGE * ratio), (right, head.right, low - EDGE * ratio)):
            ends = on((u, 0.0)), on((u, length - fall))
            yield Dimension(*ends, (0.0, y), one.length(length - fall))
        return
    along = _along(bench)
    yield RunningDimension(
        (0.0, low),
        tuple((on((0.0, v))[0], low) for v in along),
        tuple(map(one.length, along)),
        (0.0, low - bend),
    )


def _words(bench: Bench, labels: Labels, on: On, ratio: float) -> Iterator[Shape]:
    """Which end is which, which edge laps, the numbers of the cutouts."""
    tries = [
        _about(on((cut.x + cut.width / 2, cut.y + cut.height / 2)), str(number), ratio)
        for number, cut in enumerate(bench.row.cutouts, 1)
    ]
    inside = shapely.Polygon([on(point) for point in list(bench.measured.outline.exterior.coords)])
    words = ["foot", "head", *(["overlap edge"] if bench.row.overlap else [])]
    found = [labels.place(texts) for texts in tries]
    found += [labels.place(_inside(bench, on, word, ratio), inside) for word in words]
    yield from (text for text in found if text)


def _about(at: Point2, word: str, ratio: float) -> list[Text]:
    """A word at a place, or a little aside."""
    return [
        Text((at[0] + dx * ratio, at[1] + (dy - 1.5) * ratio), word, Size.SMALL, "middle", 0.0, True)
        for dx, dy in ((0, 0), (0, 4), (0, -4), (4, 0), (-4, 0), (0, 8), (0, -8))
    ]


def _inside(bench: Bench, on: On, word: str, ratio: float) -> list[Text]:
    """A word within a sheet beside one of its ends, or along its overlap edge, between ribs not on them."""
    width, ribs = bench.measured.width, [rib.centre for rib in bench.measured.majors]
    pans = [(a + b) / 2 for a, b in pairwise(ribs)] or [width / 2]
    if word == "overlap edge":
        x, y = on((pans[0], bench.measured.length / 2))
        return [Text((x + far * ratio, y - 1.5 * ratio), word, anchor="middle", patch=True) for far in SPREAD]
    pans.sort(key=lambda u: abs(u - width / 2))
    way, v = (1, 0.0) if word == "foot" else (-1, bench.measured.length)
    return [
        Text(
            (x + way * far * ratio, y - 1.5 * ratio), word, anchor="left" if way > 0 else "right", patch=True
        )
        for far in range(2, 60, 3)
        for x, y in (on((u, v)) for u in pans)
    ]
