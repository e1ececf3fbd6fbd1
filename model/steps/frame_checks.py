"""What the tape must read of slab, frames and openings, measured off the solids."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Iterator, Sequence

import numpy as np

from ..measure.faces import Vectors
from ..measure.nested import MemberLap
from ..measure.standing import standing_box, standing_corners
from ..pieces import Piece
from ..roles import Role
from ..units import FOOT, INCH
from .frames import Frame
from .step import Dimension

COMMON = "common practice"
SQUARE = (40 * FOOT, INCH / 4, INCH / 2)
"""mm: diagonals up to the first agree within the second, longer ones within the third. Common practice."""
PLUMB, PLUMB_SOURCE = 500.0, "AISC 303-16, 7.13.1.1"
"""A column is out of plumb by no more than its height over this."""
SAME = 0.5
"""mm; lengths that differ by less are said once."""


def slab_checks(slabs: Sequence[Piece]) -> Iterator[Dimension]:
    """Overall sizes of each slab, and its diagonals."""
    for slab in slabs:
        points = standing_corners(slab)[:, :2]
        corners = [_outermost(points, way) for way in ((-1, -1), (1, -1), (1, 1), (-1, 1))]
        at = "slab, outside" if len(slabs) == 1 else f"{slab.name}, outside"
        yield Dimension("width", at, float(np.ptp(points[:, 0])))
        yield Dimension("length", at, float(np.ptp(points[:, 1])))
        yield from _diagonals(at, *corners)


def frame_checks(stations: Sequence[Frame], span: range, bays: range, start: int) -> Iterator[Dimension]:
    """Frames by their numbers, and bays by those of their first frames: how wide frames stand, how far from
    the one that was stood first, square bays, plumb."""
    first, last = span.start, span.stop
    for one, until in _alike([_width(frame) for frame in stations[first:last]], first):
        at = _named("frame", one, until)
        yield Dimension("outer columns, centre to centre", at, _width(stations[one]))
    for number in (number for number in span if number != start):
        what = f"from frame {start + 1}, centre to centre"
        yield Dimension(what, f"frame {number + 1}", abs(_apart(stations, start, number)))
    for one, until in _alike([_apart(stations, k, k + 1) for k in bays], bays.start):
        here, there = stations[one].centres, stations[one + 1].centres
        yield from _diagonals(_named("bay", one, until), here[0], here[-1], there[-1], there[0])
    for one, until in _alike([frame.height for frame in stations[first:last]], first):
        height = stations[one].height
        at = f"{_named('frame', one, until)}, over the column's height"
        yield Dimension("out of plumb, at most 1/500", at, height, height / PLUMB, PLUMB_SOURCE)


def lap_checks(laps: Iterable[MemberLap], pieces: Iterable[Piece]) -> Iterator[Dimension]:
    """How far members of a step lap over frames, from end to end."""
    names = {piece.name for piece in pieces}
    lengths: dict[str, list[float]] = defaultdict(list)
    for lap in laps:
        if {lap.upper.name, lap.lower.name} & names:
            lengths[lap.upper.role].append(lap.length)
    for role, found in lengths.items():
        for size in sorted({min(found), max(found)} if max(found) - min(found) > SAME else {min(found)}):
            yield Dimension("lap over a frame, end to end", f"{role}s", size)


def _width(frame: Frame) -> float:
    return float(np.linalg.norm(frame.centres[-1] - frame.centres[0]))


def _apart(stations: Sequence[Frame], one: int, other: int) -> float:
    return stations[other].at - stations[one].at


def _alike(sizes: Sequence[float], first: int) -> Iterator[tuple[int, int]]:
    """Numbers of the first and the last of each stretch of equal sizes."""
    start = 0
    for k in range(1, len(sizes) + 1):
        if k == len(sizes) or abs(sizes[k] - sizes[start]) > SAME:
            yield first + start, first + k - 1
            start = k


def _named(what: str, first: int, last: int) -> str:
    """ "frame 2" or "frames 2 to 5": people count from one."""
    if first == last:
        return f"{what} {first + 1}"
    return f"each of {what}s {first + 1} {'and' if last == first + 1 else 'to'} {last + 1}"


def _outermost(points: Vectors, way: tuple[int, int]) -> Vectors:
    found: Vectors = points[int((points @ np.array(way)).argmax())]
    return found


def _diagonals(at: str, *corners: Vectors) -> Iterator[Dimension]:
    """Both diagonals of a four-sided figure: once where they are equal."""
    a, b, c, d = corners
    sizes = (float(np.linalg.norm(c - a)), float(np.linalg.norm(d - b)))
    within = SQUARE[1] if max(sizes) <= SQUARE[0] else SQUARE[2]
    if abs(sizes[0] - sizes[1]) < SAME:
        yield Dimension("diagonals, both", at, sizes[0], within, COMMON)
        return
    yield Dimension("diagonal from front left", at, sizes[0], within, COMMON)
    yield Dimension("diagonal from front right", at, sizes[1], within, COMMON)


def opening_checks(framing: Iterable[Piece]) -> Iterator[Dimension]:
    """The rough size of each opening, between its jambs and from its sill, or the slab, to its header."""
    groups: dict[tuple[str, ...], list[Piece]] = defaultdict(list)
    for piece in framing:
        groups[piece.group].append(piece)
    for group, pieces in groups.items():
        jambs = sorted(_boxes(pieces, Role.JAMB), key=lambda box: tuple(box[0]))
        headers = _boxes(pieces, Role.HEADER)
        if len(jambs) != 2 or not headers:
            continue
        gap = jambs[1][0] - jambs[0][1]
        wide = float(max(gap[0], gap[1]))
        sills = _boxes(pieces, Role.SILL)
        floor = max((float(box[1, 2]) for box in sills), default=0.0)
        high = min(float(box[0, 2]) for box in headers) - floor
        at = group[-1] if group else ""
        yield Dimension("rough width, between jambs", at, wide)
        under = "rough height, sill to header" if sills else "rough height, slab to header"
        yield Dimension(under, at, high)
        diagonal = float(np.hypot(wide, high))
        yield Dimension("diagonals, both", at, diagonal, SQUARE[1], COMMON)


def _boxes(pieces: Iterable[Piece], role: Role) -> list[Vectors]:
    return [standing_box(piece) for piece in pieces if piece.role == role]
