"""What belongs on the elevation of a plane of sheets: its trims, fillings, steel behind it, screw lines."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache
from statistics import fmean

import numpy as np
import shapely

from ..measure.clad_planes import CladPlane
from ..measure.member import measure_member
from ..pieces import Piece
from ..place import Place, Point2, dot
from ..roles import Role, list_of
from .job import Job
from .seen import box_in, in_plane

BEFORE, BEHIND = 260.0, 420.0
"""mm before and behind a plane in which trims, fillings and steel belong to it."""
AROUND = 400.0
"""mm about the sheets in which they do."""
SPILL = 20.0
"""mm past the sheets' ends in which the middle of steel must lie that is a plane's own."""
IN_LINE = 5.0
"""mm; trims whose middles are nearer than this run on from each other: a lapped one lies aslant."""
SHORTEST_LAP, LONGEST_LAP = 5.0, 400.0
"""mm; what lies over each other less, or more, is no lap of two lengths."""
MOSTLY = 0.8
"""Share of a piece's length that is seen of one that lies in a plane."""
KEPT = 32
"""Planes whose screw lines and openings are remembered."""
LEVEL = 1.0
"""mm; screws nearer than this in height are one line."""
FEWEST = 4
"""Screws of a line."""
BACKING = (
    *(Role.COLUMN, Role.POST, Role.RAFTER, Role.BASE_RAIL, Role.GIRT, Role.EAVE_STRUT, Role.LEDGER),
    *(Role.PURLIN, Role.RAKE_ANGLE, Role.JAMB, Role.HEADER, Role.SILL, Role.MEMBER),
)
END_ON = 0.3
"""Share of a piece's length that is seen of it; of what shows less, the level line is taken."""
ALONG = 0.98
"""Cosine between a plane's normal and a trim's that faces it, on a slope."""


def near(plane: CladPlane, pieces: Sequence[Piece], lists: Sequence[str]) -> Iterator[Piece]:
    """The pieces of some lists that stand at a plane."""
    left, low, right, high = plane.outline.bounds
    for piece in pieces:
        if list_of(piece.role) not in lists:
            continue
        least, most = box_in(plane.frame, piece)
        if most[2] < -BEHIND or least[2] > BEFORE or most[2] > BEFORE:
            continue
        if (
            most[0] > left - AROUND
            and least[0] < right + AROUND
            and most[1] > low - AROUND
            and least[1] < high + AROUND
        ):
            yield piece


def steel_behind(
    plane: CladPlane, pieces: Sequence[Piece], roles: Sequence[str] = BACKING
) -> Iterator[Piece]:
    """The steel of some roles that backs a plane, or stands close behind it."""
    reached = shapely.box(*plane.outline.bounds).buffer(SPILL)
    for piece in near(plane, pieces, ("members",)):
        least, most = box_in(plane.frame, piece)
        if piece.role not in roles or least[2] < -BEHIND or most[2] > 1.0 + 2 * LEVEL:
            continue
        u, v, _ = ((least + most) / 2).tolist()
        if reached.covers(shapely.Point(u, v)):
            yield piece


@dataclass(frozen=True, slots=True)
class ScrewLine:
    """A level line of sheet screws: its height and where it starts and ends (mm, in the plane)."""

    v: float
    start: float
    end: float
    count: int


@lru_cache(maxsize=KEPT)
def screw_lines(one: Job, plane: CladPlane) -> tuple[ScrewLine, ...]:
    """The level lines of screws through the sheets of a plane, from below; slanting rows are left out."""
    found: list[Point2] = []
    names = {sheet.piece.label("face") for sheet in plane.sheets}
    for piece in one.model.pieces:
        if piece.role != Role.SHEET_SCREW or piece.label("face") not in names:
            continue
        if abs(dot(piece.place.z, plane.frame.z)) < ALONG:
            continue
        for x, y, z in piece.row or ((0.0, 0.0, 0.0),):
            u, v, w = plane.frame.seen(piece.place.point((x, y, z)))
            if abs(w) < AROUND / 4:
                found.append((v, u))
    rows: list[list[Point2]] = []
    for v, u in sorted(found):
        if not rows or v - rows[-1][0][0] > LEVEL:
            rows.append([])
        rows[-1].append((v, u))
    places = ((fmean(v for v, _ in row), [u for _, u in row]) for row in rows)
    lines = (ScrewLine(v, min(us), max(us), len(us)) for v, us in places)
    return tuple(line for line in lines if line.count >= FEWEST and line.end - line.start > AROUND)


@dataclass(frozen=True, slots=True)
class Opening:
    """An opening in a plane (mm): rough, between its framing; filling: what closes it and its size.

    left, right, low, high: of the rough opening, in the plane.
    """

    name: str
    left: float
    right: float
    low: float
    high: float
    filling: tuple[str, float, float] | None


FRAMED = (Role.JAMB, Role.HEADER, Role.SILL, Role.LEAF, Role.SASH, Role.LOUVRE)
"""What tells an opening."""


@lru_cache(maxsize=KEPT)
def openings(one: Job, plane: CladPlane) -> tuple[Opening, ...]:
    """The framed openings of a plane, from left to right."""
    groups: dict[tuple[str, ...], list[Piece]] = defaultdict(list)
    for piece in near(plane, one.model.pieces, ("members", "openings")):
        if piece.role in FRAMED and piece.group:
            groups[piece.group].append(piece)
    found = (_opening(plane, group[-1], pieces) for group, pieces in groups.items())
    known = (opening for opening in found if opening)
    return tuple(sorted(known, key=lambda opening: (opening.left, opening.low)))


def _opening(plane: CladPlane, name: str, pieces: Sequence[Piece]) -> Opening | None:
    boxes = {piece.name: box_in(plane.frame, piece) for piece in pieces}
    jambs = sorted((boxes[p.name] for p in pieces if p.role == Role.JAMB), key=lambda box: float(box[0][0]))
    if len(jambs) < 2:  # one on each side
        return None
    left, right = float(jambs[0][1][0]), float(jambs[-1][0][0])
    heads = [float(boxes[p.name][0][1]) for p in pieces if p.role == Role.HEADER]
    sills = [float(boxes[p.name][1][1]) for p in pieces if p.role == Role.SILL]
    low = max(sills) if sills else min(float(box[0][1]) for box in jambs)
    high = min(heads) if heads else min(float(box[1][1]) for box in jambs)
    fill = next((p for p in pieces if list_of(p.role) == "openings" and p.role != Role.PANE), None)
    size = None
    if fill is not None:
        width, height = (boxes[fill.name][1] - boxes[fill.name][0])[:2].tolist()
        size = (fill.role, float(width), float(height))
    return Opening(name, left, right, low, high, size)


def lies_in(plane: CladPlane, piece: Piece) -> bool:
    """Whether most of a straight piece's length is seen in a plane, not from an end."""
    (ax, ay), (bx, by) = ends_of(plane.frame, piece)
    return bool(np.hypot(bx - ax, by - ay) > MOSTLY * measure_member(piece.solid).length)


def trim_laps(plane: CladPlane, trims: Sequence[Piece]) -> list[float]:
    """How far trims of one kind lie over each other along their length, each length once (mm, to 0.1)."""
    found: set[float] = set()
    depths = [float(sum(box[2] for box in box_in(plane.frame, trim))) / 2 for trim in trims]
    for i, one in enumerate(trims):
        for j, other in enumerate(trims[i + 1 :], i + 1):
            if one.role == other.role and abs(depths[i] - depths[j]) < IN_LINE:
                lap = _lap(ends_of(plane.frame, one), ends_of(plane.frame, other))
                if SHORTEST_LAP < lap < LONGEST_LAP:
                    found.add(round(lap, 1))
    return sorted(found)


def _lap(one: tuple[Point2, Point2], other: tuple[Point2, Point2]) -> float:
    """Of two lines in one, how far one lies over the other; 0 where they are not in one."""
    (ax, ay), (bx, by) = one
    size = float(np.hypot(bx - ax, by - ay))
    way = ((bx - ax) / size, (by - ay) / size)
    along = sorted((x - ax) * way[0] + (y - ay) * way[1] for x, y in other)
    aside = max(abs((y - ay) * way[0] - (x - ax) * way[1]) for x, y in other)
    return min(size, along[1]) - max(0.0, along[0]) if aside < IN_LINE else 0.0


def ends_of(frame: Place, piece: Piece) -> tuple[Point2, Point2]:
    """The line along the middle of a straight piece, as seen in a frame, to the right or upward."""
    points = in_plane(frame, piece)[:, :2]
    axis = (piece.place @ measure_member(piece.solid).ways[0].bench).y
    way = np.array([dot(axis, frame.x), dot(axis, frame.y)])
    size = float(np.hypot(*way))
    way = way / size if size > END_ON else np.array([1.0, 0.0])
    way = way if way[int(np.abs(way).argmax())] > 0 else -way
    aside = np.array([-way[1], way[0]])
    along, across = points @ way, points @ aside
    middle = aside * (across.max() + across.min()) / 2
    (ax, ay), (bx, by) = (middle + way * along.min()).tolist(), (middle + way * along.max()).tolist()
    return (ax, ay), (bx, by)
