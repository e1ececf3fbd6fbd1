"""Details cut from the solids at true section: every piece named, laps and gaps dimensioned."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import count

import numpy as np
import shapely

from ..drawing.dimensions import spread
from ..drawing.pens import Pen, Size
from ..drawing.values import Dimension, Hatch, Line, Polyline, Scale, Shape, Text, View
from ..pieces import Piece
from ..place import Point2
from ..roles import Role, list_of
from .detail import Detail, Measured
from .frame import Content, Room, cut, room_of, titled
from .job import Job
from .labels import Labels
from .places import details_of
from .scales import fitting
from .sections import cut_area, is_thin
from .seen import lines_in, rims
from .single import window_of

ACROSS, DOWN = 2, 2
"""Details on a page, if all are as large as they may be."""
TITLE, HEAD = 8.0, 11.0
"""mm on paper over a detail that are kept for its title, and that it begins under."""
NAMES = 50.0
"""mm on paper beside a detail for the names of its pieces."""
APART = 1.6
"""mm on paper between two names."""
DIMS, STEP, ASIDE = 23.5, 7.0, 3.0
"""mm on paper left of a detail for its dimensions; from one under it to the next; of the upright one."""
BETWEEN = 4.0
"""mm on paper under a detail."""
LEAST = 0.05
"""mm; a lap or a gap that is less is none."""
GREY, FOAM = "#d8d8d8", "#f0f0f0"


@dataclass(frozen=True, eq=False)
class Bare:
    """A piece that a cut lays bare, and what is seen of it (mm, in the cut's plane)."""

    piece: Piece
    area: shapely.Geometry


@dataclass(frozen=True, eq=False)
class _Cell:
    """A detail, what it lays bare, and the scale that it is drawn to."""

    detail: Detail
    bare: Sequence[Bare]
    scale: Scale


def details(one: Job) -> Iterator[Content]:
    """Pages of details, in rows as high as what is in them."""
    room = room_of(one)
    cells = [
        _Cell(detail, bare, _scale(one, detail, room))
        for detail in details_of(one)
        if len(bare := laid_bare(one, detail)) > 1
    ]
    page: list[tuple[float, Sequence[_Cell]]] = []
    top = room.high
    for start in range(0, len(cells), ACROSS):
        row = cells[start : start + ACROSS]
        high = max(_height(one, cell) for cell in row)
        if page and top - high < room.low:
            yield _page(one, room, page)
            page, top = [], room.high
        page.append((top, row))
        top -= high
    if page:
        yield _page(one, room, page)


def _page(one: Job, room: Room, rows: Sequence[tuple[float, Sequence[_Cell]]]) -> Content:
    drawn = [
        _drawn(one, cell, (room.left + column * room.width / ACROSS, top))
        for top, row in rows
        for column, cell in enumerate(row)
    ]
    names = [cell.detail.name.split(",")[0] for _, row in rows for cell in row]
    return Content(
        f"details: {names[0]} to {names[-1]}" if len(names) > 1 else f"detail: {names[0]}",
        tuple(view for view, _ in drawn),
        tuple(shape for _, shapes in drawn for shape in shapes),
    )


def laid_bare(one: Job, detail: Detail) -> list[Bare]:
    """The pieces that a detail cuts, from the largest area down."""
    window, (left, low, right, high) = window_of(*detail.window), detail.window
    rim = np.array([detail.frame.point((u, v, 0.0)) for u in (left, right) for v in (low, high)])
    below, above = one.boxes[:, 0] <= rim.max(axis=0), one.boxes[:, 1] >= rim.min(axis=0)
    meets = below.all(axis=1) & above.all(axis=1)
    found = []
    for piece in (one.model.pieces[i] for i in np.flatnonzero(meets)):
        if list_of(piece.role) == "screws":
            continue
        area = cut_area(detail.frame, piece, window)
        if not area.is_empty:
            found.append(Bare(piece, area))
    return sorted(found, key=lambda bare: (-round(bare.area.area, 1), bare.piece.name))


def _scale(one: Job, detail: Detail, room: Room) -> Scale:
    left, low, right, high = detail.window
    free = (room.width / ACROSS - 3.0 - NAMES - DIMS, room.height / DOWN - TITLE - 2.6 * STEP)
    return fitting((right - left, high - low), free, one.units)


def _height(one: Job, cell: _Cell) -> float:
    """mm on paper that a detail takes: its title, it and the dimensions under it, or the names beside it."""
    _, low, _, high = cell.detail.window
    lowest = min((shape.at[1] for shape in _dimensions(one, cell) if not shape.turn), default=low)
    names = len(cell.bare) * (one.style.heights[Size.SMALL] + APART)
    return HEAD + max((high - lowest) / cell.scale.ratio, names) + BETWEEN


def _drawn(one: Job, cell: _Cell, corner: Point2) -> tuple[View, list[Shape]]:
    """A detail and its title, from their upper left."""
    detail, scale, (x, top) = cell.detail, cell.scale, corner
    left, _, _, high = detail.window
    at = x + DIMS - left / scale.ratio, top - HEAD - high / scale.ratio
    view = View(detail.name, scale, at, ())
    shapes: list[Shape] = []
    for part in cell.bare:
        shapes += _filled(part, scale, detail)
    shapes += _dimensions(one, cell)
    shapes += _names(one, detail, cell.bare, view)
    return replace(view, shapes=tuple(shapes)), titled(one, view, (x, top - 5.0), Size.PLAIN)


def _filled(part: Bare, scale: Scale, detail: Detail) -> Iterator[Shape]:
    """Solid where it is thin on paper; else its outline, hatched, open where the window ends."""
    thin = is_thin(part.area, scale.ratio)
    inner = window_of(*detail.window).buffer(-LEAST, join_style="mitre")
    for piece in shapely.get_parts(part.area):
        if piece.geom_type != "Polygon":
            continue
        if thin:
            yield from (Polyline(ring, None, True, "#000000") for ring in rims(piece))
        elif list_of(part.piece.role) in ("closures", "insulation"):
            yield Polyline(next(rims(piece)), None, True, FOAM)
        elif list_of(part.piece.role) in ("slab", "openings"):
            rings = tuple(rims(piece))
            yield Hatch(rings, 45.0 if part.piece.role == Role.SLAB else 135.0, 2.5)
        else:
            yield Polyline(next(rims(piece)), None, True, GREY)
    pen = Pen.THIN if thin else Pen.CUT
    yield from (Polyline(line, pen, False) for line in lines_in(part.area.boundary, inner))


def _dimensions(one: Job, cell: _Cell) -> Iterator[Dimension]:
    """Level ones in rows under a detail, each in the first where its text meets none of the names beside it;
    upright ones on its left."""
    detail, ratio = cell.detail, cell.scale.ratio
    left, low, _, _ = detail.window
    names = Labels(View("", cell.scale, (0.0, 0.0), ()), one.style)
    names.keep(_names(one, detail, cell.bare, names.view))
    row, aside = 0, ASIDE
    for measured in detail.measured:
        ends = _ends(detail, cell.bare, measured)
        if ends is None:
            continue
        (start, end), axis = ends, measured[3]
        text = one.length(abs(end[axis] - start[axis]))
        if axis == 1:
            yield Dimension(start, end, (left - aside * ratio, low), text, 90.0)
            aside += STEP
            continue
        under = (Dimension(start, end, (left, low - STEP * n * ratio), text) for n in count(row + 1))
        shape = next(one for one in under if names.has_room(one))
        row = round((low - shape.at[1]) / ratio / STEP)
        yield shape


def _ends(
    detail: Detail, bare: Sequence[Bare], measured: Measured
) -> tuple[tuple[float, float], tuple[float, float]] | None:
    """Two points whose distance along the axis is the lap or the gap; None where there is none in sight.

    Of several pairs of pieces the longest lap counts, else the nearest ends. Where a body goes on past the
    window's rim is no end of it.
    """
    what, ones, others, axis = measured
    tries = []
    for first in (part for part in bare if part.piece.role in ones):
        for second in (part for part in bare if part.piece.role in others and part is not first):
            low, high = _between(what, _span(first, axis), _span(second, axis))
            if high - low > LEAST:
                tries.append((high - low, low, high, first, second))
    if not tries:
        return None
    pick = max if what == "lap" else min
    _, low, high, first, second = pick(tries, key=lambda one: (round(one[0], 2), one[3].piece.name))
    rim = (detail.window[axis], detail.window[axis + 2])
    if min(abs(end - edge) for end in (low, high) for edge in rim) < LEAST:
        return None
    across = 1 - axis
    side = min(first.area.bounds[across], second.area.bounds[across])
    start = (low, side) if axis == 0 else (side, low)
    end = (high, side) if axis == 0 else (side, high)
    return start, end


def _between(what: str, one: tuple[float, float], other: tuple[float, float]) -> tuple[float, float]:
    """From where to where a lap, a gap, or what lies between two low or two high ends reaches."""
    if what == "low":
        return min(one[0], other[0]), max(one[0], other[0])
    if what == "high":
        return min(one[1], other[1]), max(one[1], other[1])
    low, high = max(one[0], other[0]), min(one[1], other[1])
    return (low, high) if what == "lap" else (high, low)


def _span(part: Bare, axis: int) -> tuple[float, float]:
    return float(part.area.bounds[axis]), float(part.area.bounds[axis + 2])


def _names(one: Job, detail: Detail, bare: Sequence[Bare], view: View) -> Iterator[Shape]:
    """What each piece is, beside the detail, with a line to it."""
    _, _, right, high = detail.window
    ratio = view.scale.ratio
    height = one.style.heights[Size.SMALL]
    spots = []
    for part in bare:
        largest = max(shapely.get_parts(part.area), key=lambda area: float(area.area))
        spot = largest.representative_point()
        spots.append((float(spot.y), float(spot.x), part.piece))
    spots.sort(key=lambda spot: (spot[0], spot[1]))
    places = spread([y for y, _, _ in spots], (height + APART) * ratio)
    places = [place - max(0.0, places[-1] - high) for place in places]
    for (y, x, piece), place in zip(spots, places, strict=True):
        end = (right + 4.0 * ratio, place)
        yield Line((x, y), end, Pen.DIMENSION)
        full = f"{piece.role} {piece.mark}".strip()
        short = full.split(" ", 1)[-1]  # "flashing TF1": its mark tells which
        text = next((said for said in (full, short) if cut(one, said, NAMES - 5.0) == said), short)
        yield Text((end[0] + 1.0 * ratio, place - height / 2 * ratio), text)
