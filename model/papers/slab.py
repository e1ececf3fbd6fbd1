"""The slab plan: its sizes and diagonals, the steel line, and the centres of columns and posts."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import partial
from math import hypot

import shapely
from shapely.geometry import Polygon

from ..drawing.dimensions import readable
from ..drawing.pens import Pen, Size
from ..drawing.values import Anchor, Line, Polyline, Shape, Text
from ..measure.standing import standing_box
from ..pieces import Piece
from ..place import Place, Point2
from ..roles import Role, list_of
from ..units import FOOT, INCH, Units
from .elevation_shapes import degrees_of
from .frame import Content
from .framing import corners_of
from .job import Job
from .labels import Labels
from .seen import Flat, box_in, flats_of, lines_in, rims
from .single import Row, Station, Subject, around, page_of, scale_for, sorted_out

LYING = Place((0.0, 0.0, 0.0), (0.0, 1.0, 0.0), (-1.0, 0.0, 0.0))
"""Seen from above, the front on the left: the long side of most buildings lies across the paper."""
FROM_BELOW = Place((0.0, 0.0, 0.0), (0.0, 1.0, 0.0), (1.0, 0.0, 0.0))
ANCHORS = "Anchors by others: NOT FOR CONSTRUCTION."
LONG = 40 * FOOT
BESIDE: tuple[tuple[int, Anchor], ...] = ((1, "left"), (-1, "right"))
PLUMB = 500.0
"""Columns plumb to 1 in 500 of their height (AISC 303-16 7.13.1.1)."""


def tolerance(diagonal: float, units: Units) -> str:
    """How near two diagonals must come: 1/4 in up to 40 ft, 1/2 in beyond. Common practice, no source."""
    near = diagonal <= LONG
    return ('1/4"' if near else '1/2"') if units == "ft-in" else ("6 mm" if near else "13 mm")


@dataclass(frozen=True, eq=False)
class _Plan:
    """What the plan shows. flats, unders: of the slab, seen from above and from below; uprights: columns
    and posts, with plates."""

    flats: tuple[Flat, ...]
    unders: tuple[Flat, ...]
    uprights: tuple[tuple[Piece, Polygon], ...]
    steel: Polygon


def slab_plan(one: Job) -> Iterator[Content]:
    """The plan, where the model has a slab or columns."""
    slabs = [piece for piece in one.model.pieces if list_of(piece.role) == "slab"]
    flats, unders = (tuple(f for piece in slabs for f in flats_of(way, piece)) for way in (LYING, FROM_BELOW))
    uprights = tuple(
        (piece, _foot(piece)) for piece in one.model.pieces if piece.role in (Role.COLUMN, Role.POST)
    )
    if not uprights:
        return
    ends = [LYING.seen(corner) for corner in corners_of(one)]
    (a, b), (c, d) = sorted((ends[0][:2], ends[1][:2]))
    plan = _Plan(flats, unders, uprights, shapely.box(a, min(b, d), c, max(b, d)))
    front, right, back, left = plan.steel.bounds  # v falls from the left side of the building to its right
    whole = around([plan.steel, *(flat.area for flat in flats)])
    low, start = whole.bounds[1], whole.bounds[0]
    centres = [(area.centroid.x, area.centroid.y) for _, area in uprights]
    along = [Station((u, low), abs(u - front)) for u in (*(u for u, _ in centres), back)]
    across = [Station((start, v), abs(v - left)) for v in (*(v for _, v in centres), right)]
    subject = Subject(
        "slab plan",
        "slab plan",
        whole,
        " ".join(_notes(one, plan)),
        (Row("below", (front, low), tuple(along)), Row("left", (start, left), tuple(across))),
        partial(_painted, one, plan),
    )
    yield from page_of(one, (subject, scale_for(one, subject)))


def _foot(piece: Piece) -> Polygon:
    low, high = box_in(LYING, piece)
    return shapely.box(float(low[0]), float(low[1]), float(high[0]), float(high[1]))


def _notes(one: Job, plan: _Plan) -> Iterator[str]:
    yield ANCHORS
    yield "The front is on the left. Centres of columns and posts from the front left steel corner."
    yield "Dashed: steel line."
    front, right, back, left = plan.steel.bounds
    steel = hypot(right - left, back - front)
    yield f"Steel line {_by(one, left - right, back - front)}, both diagonals {one.length(steel)}."
    if plan.flats:
        a, b, c, d = shapely.union_all([flat.area for flat in plan.flats]).bounds
        yield f"Slab {_by(one, d - b, c - a)}, both diagonals {one.length(hypot(c - a, d - b))}."
    yield f"Two diagonals within {tolerance(steel, one.units)} of each other."
    levels = sorted({round(flat.near, 2) for flat in plan.flats}, reverse=True)
    if plan.unders:
        yield _thick(one, plan, levels[0])
    if len(levels) > 1:
        wide = _ledge(plan)
        yield f"Ledge {one.length(wide)} wide, {one.length(levels[0] - levels[1])} below the slab's top."
    tall = max(float(standing_box(piece)[1][2]) for piece, _ in plan.uprights)
    unit = '"' if one.units == "ft-in" else " mm"
    off = tall / PLUMB / (INCH if one.units == "ft-in" else 1.0)
    yield f"Plumb within {off:.1f}{unit} in {one.length(tall)} (1 in 500, AISC 303-16 7.13.1.1)."


def _thick(one: Job, plan: _Plan, top: float) -> str:
    """How thick the slab is, and its edge where that is thicker; what lies in it."""
    thin, thick = (find(plan.unders, key=lambda flat: flat.near) for find in (min, max))
    said = f"Slab {one.length(top + thin.near)} thick"
    if thick.near - thin.near > 1:
        wide = thin.area.bounds[0] - thick.area.bounds[0]
        said += f", {one.length(top + thick.near)} at its edge, {one.length(wide)} wide"
    mesh = one.model.terms.mesh
    return f"{said}; {mesh} in it." if mesh else f"{said}."


def _by(one: Job, wide: float, long: float) -> str:
    return f"{one.length(wide)} x {one.length(long)}"


def _ledge(plan: _Plan) -> float:
    """How far the slab's edge stands out from its top."""
    top = max(plan.flats, key=lambda flat: flat.near).area.bounds
    whole = shapely.union_all([flat.area for flat in plan.flats]).bounds
    return float(top[0] - whole[0])


def _painted(one: Job, plan: _Plan, labels: Labels, window: Polygon) -> tuple[list[Shape], list[str]]:
    shapes: list[Shape] = []
    for flat in plan.flats:
        shapes += [Polyline(ring, Pen.OUTLINE) for ring in rims(flat.area)]
    shapes += [Polyline(part, Pen.HIDDEN, False) for part in lines_in(plan.steel.boundary, window)]
    for _, area in plan.uprights:
        shapes += [Polyline(ring, Pen.THIN) for ring in rims(area)]
        shapes += _cross((area.centroid.x, area.centroid.y), 3.0 * labels.view.scale.ratio)
    left, front, right, back = plan.steel.bounds
    shapes += [Line((left, front), (right, back), Pen.CENTRE), Line((left, back), (right, front), Pen.CENTRE)]
    diagonal = one.length(hypot(right - left, back - front))
    found: list[Text | str] = []
    for start, end in (((left, front), (right, back)), ((left, back), (right, front))):
        tries = [
            Text(_between(start, end, share), diagonal, Size.SMALL, "middle", _turn(start, end), True)
            for share in (0.3, 0.35, 0.25, 0.4)
        ]
        found.append(labels.place(tries) or diagonal)
    for piece, area in plan.uprights:
        x, y, k = area.centroid.x, area.centroid.y, labels.view.scale.ratio
        tries = [
            Text((x + side * 4.0 * k, y + up * k), piece.mark, Size.PLAIN, anchor, 0.0, True)
            for up in (1.5, -5.0, 6.0)
            for side, anchor in BESIDE
        ]
        found.append(labels.place(tries) or piece.mark)
    texts, listed = sorted_out(found)
    return [*shapes, *texts], listed


def _cross(at: Point2, half: float) -> list[Shape]:
    x, y = at
    return [
        Line((x - half, y), (x + half, y), Pen.CENTRE),
        Line((x, y - half), (x, y + half), Pen.CENTRE),
    ]


def _between(start: Point2, end: Point2, share: float) -> Point2:
    return start[0] + share * (end[0] - start[0]), start[1] + share * (end[1] - start[1])


def _turn(start: Point2, end: Point2) -> float:
    return readable(degrees_of(start, end))
