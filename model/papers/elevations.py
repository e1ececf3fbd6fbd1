"""Elevations of every plane of sheets, in true length: where each sheet goes, read from one corner."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from functools import partial
from itertools import pairwise

from shapely.geometry import Polygon

from ..drawing.pens import Pen
from ..drawing.values import Polyline, Shape
from ..measure.placing import PlacedSheet
from ..roles import list_of
from .elevation_parts import lies_in, trim_laps
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
)
from .frame import Content
from .job import Job
from .labels import Labels
from .sheet_notes import stretches
from .single import Subject, around, scale_for, sorted_out, width_for, window_of
from .stacked import stacked

MOST, FOR_LONG, PARTS = 100.0, 130.0, 3
"""The ratio of the smallest scale that a run is drawn to; a longer one is drawn in parts, and one of more
parts than a few to the smaller scale."""
BROKEN = 2.0
"""mm; where a part ends farther from the end of the whole, another goes on."""
EVERY = 5
"""Of sheets that are not drawn, the place of every so many is told."""
KEY = (
    "Below: overlap ribs; above: leading edges; left: screw lines over the feet. "
    "# order of laying; ↓ head down; dashed: steel."
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
    whole = around([area for _, area in face.seen])
    subject = Subject(
        f"{name}: sheets",
        name,
        whole,
        f"{_said(one, face)} {KEY}",
        (rib_row(face), edge_row(face), height_row(face)),
        partial(_painted, face),
        OPENING_HEAD,
        tuple(_opening_rows(one, face, whole)),
    )
    scale = scale_for(one, subject, MOST)
    windows = _windows(face, subject.window, width_for(one, subject, scale))
    if len(windows) > PARTS:
        scale = scale_for(one, subject, FOR_LONG)
        windows = _windows(face, subject.window, width_for(one, subject, scale))
    parts = _parts(one, face, subject, windows)
    if len(parts) == 2 < len(windows):  # all between its ends is told: these go beside each other
        windows = _windows(face, subject.window, width_for(one, subject, scale, 2))
        ends = list(stacked(one, [(part, scale) for part in _parts(one, face, subject, windows)]))
        if len(ends) == 1:
            yield from ends
            return
    yield from stacked(one, [(part, scale) for part in parts])


def _parts(one: Job, face: Face, subject: Subject, windows: Sequence[Polygon]) -> list[Subject]:
    """The parts of an elevation that are drawn, each with what is told of those that go on in its way."""
    parts: list[Subject] = []
    for number, window in enumerate(windows, 1):
        part = "" if len(windows) == 1 else f", part {number} of {len(windows)}"
        cells = tuple(_opening_rows(one, face, window))
        title, name = subject.title + part, subject.name + part
        if parts and _is_typical(face, window, parts[-1].window):
            _, low, right, high = window.bounds
            told = window_of(parts[-1].window.bounds[2], low, right, high)
            parts[-1] = _with_more(one, face, parts[-1], told)
        else:
            parts.append(replace(subject, title=title, name=name, window=window, cells=cells))
    return parts


def _is_typical(face: Face, window: Polygon, drawn: Polygon) -> bool:
    """Whether a part is full of sheets of one mark, as the last of the part left of it."""
    kinds = {(sheet.mark, sheet.head_up) for sheet in _marked_in(face, window)}
    before = [(sheet.mark, sheet.head_up) for sheet in _marked_in(face, drawn)]
    inner = window.buffer(-BROKEN)
    openings = (opening for _, opening in opening_letters(face))
    ends = any(abs(window.bounds[i] - face.bounds[i]) < BROKEN for i in (0, 2))
    met = any(opening.left < inner.bounds[2] and opening.right > inner.bounds[0] for opening in openings)
    return len(kinds) == 1 and kinds <= set(before[-1:]) and not ends and not met


def _marked_in(face: Face, window: Polygon) -> list[PlacedSheet]:
    """The sheets of a face, from left to right, whose marks stand in a window: as `sheet_marks` has it."""
    placed = {sheet.name: sheet for sheet in face.plan.sheets}
    found = [
        (area.centroid.x, placed[piece.name])
        for piece, area in face.seen
        if piece.name in placed and window.contains(area.centroid)
    ]
    return [sheet for _, sheet in sorted(found, key=lambda one: one[0])]


def _with_more(one: Job, face: Face, part: Subject, window: Polygon) -> Subject:
    """A part drawn, with the places of the sheets that go on beside it in the same way: the first, every
    fifth and the last, and how far from one to the next."""
    sheets = sorted(_marked_in(face, window), key=lambda sheet: sheet.number)
    first, last = sheets[0], sheets[-1]
    mark = f"{first.mark}{'' if first.head_up else '↓'}"
    every = one.length(abs(last.edge - first.edge) / max(last.number - first.number, 1))
    told = [sheet for sheet in sheets if not sheet.number % EVERY or sheet in (first, last)]
    cells = (f"#{sheet.number} {one.length(sheet.rib or 0.0)} / {one.length(sheet.edge)}" for sheet in told)
    said = f"Not drawn: more {mark} with steel and trims as here, every {every}. Overlap rib / leading edge:"
    return replace(part, said=said, listed=tuple(cells))


def _windows(face: Face, whole: Polygon, most: float) -> list[Polygon]:
    """The elevation, or parts of it side by side, each within a width; parts end at a sheet's edge."""
    left, low, right, high = whole.bounds
    edges = sorted({float(sheet.outline.bounds[2]) for sheet in face.plane.sheets})
    cuts = [left]
    while right - cuts[-1] > most:
        cuts.append(max(edge for edge in edges if edge - cuts[-1] < most))
    return [window_of(a, low, b, high) for a, b in pairwise([*cuts, right])]


def _painted(face: Face, labels: Labels, window: Polygon) -> tuple[list[Shape], list[str]]:
    """All of an elevation but its rows; and what had no room in it."""
    left, low, right, high = window.bounds
    shapes = list(drawn_lines(face, window))
    for cut, end in ((left, face.bounds[0]), (right, face.bounds[2])):
        if abs(cut - end) > BROKEN:
            shapes.append(Polyline(((cut, low), (cut, high)), Pen.CENTRE, False))
    marks = list(sheet_marks(face, labels, window))
    named = list(letters(face, labels, window))
    texts, listed = sorted_out([*marks, *named, *trim_marks(face, labels, window)])
    return [*shapes, *texts, *start_arrows(face, labels, window)], listed


def _said(one: Job, face: Face) -> str:
    """Where the run starts, and which sheet is on top at its laps, as measured."""
    plan = face.plan
    laps = list(face.plane.side_laps)
    said = f"Sheets and distances {plan.said}."
    unit = "" if one.units == "ft-in" else " mm"
    if laps:
        sides = {"left" if lap.leftward else "right" for lap in laps}
        widths = sorted({one.length(lap.width) for lap in laps})
        top = f"{sides.pop()} sheet" if len(sides) == 1 else "left or right sheet"
        said += f" Side laps {' to '.join(widths)}{unit}: the {top} is on top."
    if ends := face.plane.end_laps:
        wide = sorted({one.length(lap.length) for lap in ends})
        feet = sorted({round(float(lap.upper.outline.bounds[1]) - face.foot, 2) for lap in ends})
        up = ", ".join(one.length(foot) for foot in feet)
        said += f" End laps {' to '.join(wide)}{unit}: the higher sheet is on top, its foot {up} up."
    trims = [piece for piece, _ in face.seen if list_of(piece.role) == "trims" and lies_in(face.plane, piece)]
    if over := list(dict.fromkeys(map(one.length, trim_laps(face.plane, trims)))):
        said += f" Trims lap {' to '.join((over[0], *over[1:][-1:]))}{unit}."
    lifted = [sheet.number for sheet in plan.sheets if sheet.lift]
    if lifted:
        said += f" Lift the overlap leg of the one before at #{min(lifted)} to #{max(lifted)}."
    return said + _raised_feet(one, face)


def _raised_feet(one: Job, face: Face) -> str:
    """How far over the lowest the feet of sheets over openings, and of higher tiers, are."""
    feet: dict[str, list[int]] = {}
    for sheet in face.plan.sheets:
        if sheet.foot > BROKEN and not sheet.part.startswith("course"):
            feet.setdefault(one.length(sheet.foot), []).append(sheet.number)
    unit = "" if one.units == "ft-in" else " mm"
    told = [f"{up}{unit} at #{stretches(numbers)}" for up, numbers in feet.items()]
    return f" Feet over the lowest: {'; '.join(told)}." if told else ""


OPENING_HEAD = ("", "opening", "leaf", "rough", "from the left corner", "sill", "head")


def _opening_rows(one: Job, face: Face, window: Polygon) -> list[tuple[str, ...]]:
    """Of the openings that are in a window, in whole or in part."""
    rows: list[tuple[str, ...]] = []
    left, _, right, _ = window.bounds
    for letter, opening in opening_letters(face):
        if opening.right < left or opening.left > right:
            continue
        near, far = (u - face.plan.corners[0] for u in (opening.left, opening.right))
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
