"""Elevations of every plane of sheets, in true length: where each sheet goes, read from one corner."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise
from math import ceil

from shapely.geometry import Polygon

from ..drawing.dimensions import JOG
from ..drawing.font import width
from ..drawing.pens import Pen, Size
from ..drawing.values import Polyline, RunningDimension, Scale, Shape, Text, View
from ..measure.laps import side_laps
from .elevation_shapes import (
    Face,
    drawn_lines,
    edge_row,
    face_of,
    height_row,
    letters,
    opening_letters,
    rib_row,
    sheet_marks,
    start_arrows,
    trim_marks,
    window_of,
)
from .frame import ROW, Content, Room, lines_down, room_of, table, titled, wrapped
from .job import Job
from .labels import Labels
from .scales import fitting

LEAST = {"ft-in": 2, "mm": 1}
"""The number of the smallest scale that a run is drawn to; a longer one is drawn in parts."""
ROW_GAP = 4.0
"""mm on paper between an elevation and the leaders' bends."""
HEAD = 9.0
"""mm on paper that the title of a view takes."""
MARGIN = 3.0
"""mm on paper about what is seen."""
KEY = (
    "Below: overlap ribs. Above: leading edges. Left: screw lines above the sheets' feet. "
    "#: order of laying. ↓: stands head down. Dashed: steel behind."
)


def elevations(one: Job) -> Iterator[Content]:
    """A page for each plane of sheets, more for a long one."""
    names = [plane.name for plane, _ in one.faces]
    for number, (plane, plan) in enumerate(one.faces):
        name = plane.name
        if names.count(name) > 1:
            name = f"{name} ({names[: number + 1].count(name)})"
        yield from _face_pages(one, face_of(one, plane, plan), name)


def _face_pages(one: Job, face: Face, name: str) -> Iterator[Content]:
    room = room_of(one)
    kind = "slope, true length" if face.plane.sloped and "slope" not in name else "elevation"
    title = f"{name}: sheets" if kind == "elevation" else f"{name}: sheets, {kind}"
    notes = wrapped(one, f"{_said(one, face)} {KEY}", room.width)
    rows = _opening_rows(one, face)
    above = HEAD + ROW * len(notes) + _reach(one, face)
    below = _reach(one, face) + (ROW * (len(rows) + 1) + 2.0 if rows else 0.0) + 2 * ROW
    left, low, right, high = face.bounds
    side = _side(one, face)
    space = (room.width - side - 3 * MARGIN, room.height - above - below - 2 * MARGIN)
    scale = fitting((min(right - left, 1.0), high - low), space, one.units)
    scale = min(scale, fitting((right - left, high - low), space, one.units, LEAST[one.units]), key=_ratio)
    if (high - low) / scale.ratio > space[1]:
        scale = fitting((1.0, high - low), space, one.units)
    windows = _windows(face, space[0] * scale.ratio)
    for number, window in enumerate(windows, 1):
        part = "" if len(windows) == 1 else f", part {number} of {len(windows)}"
        yield _page(one, face, (title + part, name), scale, window, notes, rows, room, side)


def _ratio(scale: Scale) -> float:
    return -scale.ratio


def _windows(face: Face, most: float) -> list[Polygon]:
    """The elevation, or parts of it side by side, each within a width; parts end at a sheet's edge."""
    left, low, right, high = face.bounds
    count = ceil((right - left) / most)
    if count == 1:
        return [window_of((left - 1, low - 1, right + 1, high + 1))]
    edges = sorted({float(sheet.outline.bounds[2]) for sheet in face.plane.sheets})
    cuts = [left - 1]
    while right - cuts[-1] > most:
        cuts.append(max(edge for edge in edges if edge - cuts[-1] < most))
    cuts.append(right + 1)
    return [window_of((a, low - 1, b, high + 1)) for a, b in pairwise(cuts)]


def _page(
    one: Job,
    face: Face,
    title: tuple[str, str],
    scale: Scale,
    window: Polygon,
    notes: Sequence[str],
    rows: Sequence[Sequence[str]],
    room: Room,
    side: float,
) -> Content:
    reach = _reach(one, face)
    left, low, right, high = window.bounds
    top = room.high - HEAD - ROW * len(notes) - reach - MARGIN
    free = room.width - side - (right - left) / scale.ratio
    at = (room.left + side + free / 2 - left / scale.ratio, top - high / scale.ratio)
    view = View(title[1], scale, at, ())
    shapes, listed = _shapes(one, face, view, window)
    view = View(title[1], scale, at, tuple(shapes))
    foot = at[1] + low / scale.ratio - MARGIN - reach
    under, taken = table(one, OPENING_HEAD, rows, (room.left, foot), room.width)
    said = [f"No room on the drawing: {'; '.join(listed)}."] if listed else []
    more = [line for text in said for line in wrapped(one, text, room.width)]
    return Content(
        title[0],
        (view,),
        (
            *titled(one, view, (room.left, room.high - 6.0)),
            *lines_down(notes, (room.left, room.high - HEAD - 2.0)),
            *under,
            *lines_down(more, (room.left, foot - taken - ROW)),
        ),
    )


def _shapes(one: Job, face: Face, view: View, window: Polygon) -> tuple[list[Shape], list[str]]:
    """All of a view; and what had no room in it."""
    ratio = view.scale.ratio
    left, low, right, high = window.bounds
    bend = (ROW_GAP + JOG) * ratio
    running: list[RunningDimension] = [
        *rib_row(one, face, window, low - bend),
        *edge_row(one, face, window, high + bend),
    ]
    heights = height_row(one, face, window, left - bend)
    running += [heights] if heights else []
    labels = Labels(view, one.style)
    labels.keep(running)
    shapes: list[Shape] = [*drawn_lines(face, window), *running]
    for cut, ends in ((left, face.bounds[0]), (right, face.bounds[2])):
        if abs(cut - ends) > 2.0:  # mm: a part ends here and another goes on
            shapes.append(Polyline(((cut, low), (cut, high)), Pen.CENTRE, False))
    listed: list[str] = []
    shapes += letters(face, labels, window)
    for found in (*trim_marks(face, labels, window), *sheet_marks(face, labels, window)):
        if isinstance(found, Text):
            shapes.append(found)
        else:
            listed.append(found)
    shapes += start_arrows(face, labels, window)
    return shapes, listed


def _reach(one: Job, face: Face) -> float:
    """mm on paper that a row of running distances takes."""
    height = one.style.heights[Size.SMALL]
    longest = max(width(one.length(sheet.edge), height) for sheet in face.plan.sheets)
    return longest + JOG + ROW_GAP + 2.0


def _side(one: Job, face: Face) -> float:
    """mm on paper that the heights of screw lines take."""
    height = one.style.heights[Size.SMALL]
    texts = [one.length(line.v - face.foot) for line in face.screws]
    return max((width(text, height) for text in texts), default=0.0) + JOG + ROW_GAP + 2.0


def _said(one: Job, face: Face) -> str:
    """Where the run starts, and which sheet is on top at its laps, as measured."""
    plan = face.plan
    laps = list(side_laps(face.plane))
    said = f"Sheets {plan.said}; distances likewise."
    if laps:
        sides = {"left" if lap.leftward else "right" for lap in laps}
        widths = sorted({one.length(lap.width) for lap in laps})
        over = f"{sides.pop()} sheet" if len(sides) == 1 else "left or right sheet"
        unit = "" if one.units == "ft-in" else " mm"
        said += f" Side laps {' to '.join(widths)}{unit}: the {over} is on top."
    lifted = [sheet.number for sheet in plan.sheets if sheet.lift]
    if lifted:
        said += f" Lift the overlap leg of the one before at #{min(lifted)} to #{max(lifted)}."
    return said


OPENING_HEAD = ("", "opening", "fill", "rough", "from the corner", "sill", "head")


def _opening_rows(one: Job, face: Face) -> list[tuple[str, ...]]:
    rows: list[tuple[str, ...]] = []
    for letter, opening in opening_letters(face):
        near, far = sorted(abs(u - face.plan.zero) for u in (opening.left, opening.right))
        fill = "open" if opening.filling is None else _by(one, *opening.filling[1:])
        rows.append(
            (
                letter,
                opening.name,
                fill,
                _by(one, opening.right - opening.left, opening.high - opening.low),
                f"{one.length(near)} to {one.length(far)}",
                one.length(_up(face, opening.low)),
                one.length(_up(face, opening.high)),
            )
        )
    return rows


def _up(face: Face, v: float) -> float:
    """Height above the slab of a place on a wall; along the slope from the feet on a roof."""
    return v - face.foot if face.plane.sloped else face.plane.point(0.0, v)[2]


def _by(one: Job, wide: float, high: float) -> str:
    return f"{one.length(wide)} x {one.length(high)}"
