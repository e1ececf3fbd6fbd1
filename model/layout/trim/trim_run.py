"""A run of folded trim: pieces cut from stock lengths, each next one's start lapped over the last one's end.

A lap needs one thickness of room. Every piece of a run leans by the same small slope, thickness over
the distance from lap to lap, so that its far end lies flat and its start rides on its neighbour; short
pieces nest as full ones do. Parts of the section that cannot nest (a flange between framing and sheet,
a lip) are snipped back by one lap at the end that goes under, as on site.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from ...catalog.fold import shifted
from ...place import Place, Point2, Point3, add
from ...recipe import Cut, Part, Recipe, Section, grid
from ...roles import Role
from ..steel.blocks import block
from ..steel.straight_member import Plane, member

SNIP_PAST = 0.5
"""mm; a snip reaches this far past the lap, so that a leaning edge finds no corner in its way. Ours."""

Box = tuple[float, float, float, float]


@dataclass(frozen=True, slots=True)
class TrimRun:
    """One edge to be trimmed, in a frame whose z is the direction of laying.

    line: (n, 2) corners of one face of the sheet in (x, y), its thickness laid to the right of the
    way along it. start, end: closing planes. nest: how far (x, y) an overlying piece is moved to
    lie on its neighbour. snips: (x0, y0, x1, y1) cut off the under end, one lap long. notches: the
    same with a z range in front, cut from whatever piece they meet.
    """

    name: str
    role: Role
    group: tuple[str, ...]
    labels: tuple[tuple[str, str], ...]
    frame: Place
    line: tuple[Point2, ...]
    thickness: float
    start: Plane
    end: Plane
    nest: Point2
    snips: tuple[Box, ...] = ()
    notches: tuple[tuple[float, float, Box], ...] = ()


def pieces(run: TrimRun, stock: float, lap: float) -> Iterator[Part]:
    """The pieces of a run in the order of laying: full stock lengths, then what remains."""
    section = strip(run.line, run.thickness)
    spans = _spans(run, section, stock, lap)
    low = spans[0][0]
    for number, (a, b) in enumerate(spans, 1):
        name = f"{run.name} {number}" if len(spans) > 1 else run.name
        recipe, place = _piece(run, section, (a, b), (number, len(spans)), (low, stock, lap))
        yield Part(name, run.role, run.group, recipe, place, run.labels)


def joints(run: TrimRun, stock: float, lap: float) -> list[Point2]:
    """Every lap of a run: where the upper piece begins and where the one under it ends, along z."""
    spans = _spans(run, strip(run.line, run.thickness), stock, lap)
    return [(start, end) for (_, end), (start, _) in pairwise(spans)]


def lift(run: TrimRun, stock: float, lap: float, z: float) -> float:
    """How far the outermost piece at z rides above where a run of one piece would lie, in `nest`s."""
    spans = _spans(run, strip(run.line, run.thickness), stock, lap)
    if len(spans) == 1:
        return 0.0
    number = max(n for n, (a, _) in enumerate(spans, 1) if a <= z or n == 1)
    return _lean(number, spans, stock, lap, z)


def _lean(number: int, spans: Sequence[Point2], stock: float, lap: float, z: float) -> float:
    """How far a piece is off flat at z: nothing where it would lie flat, had every piece before it been a
    full stick, and a thickness a stick's advance before that."""
    return (number * (stock - lap) + lap - (z - spans[0][0])) / (stock - lap)


def _spans(run: TrimRun, section: Section, stock: float, lap: float) -> list[Point2]:
    low = min(_height(run.start, p) for p in section.outer)
    ends = [_height(run.end, p) for p in section.outer]
    return sticks(low, max(ends), stock, lap, within=min(ends))


def sticks(low: float, high: float, stock: float, lap: float, within: float) -> list[tuple[float, float]]:
    """Where each piece begins and ends along a run: full sticks first; the last is the remainder.

    within: no piece but the last may pass this; there the closing plane begins to cut.
    """
    if high - low <= stock + 1e-6:
        return [(low, high)]
    end = min(low + stock, within - lap)
    return [(low, end), *sticks(end - lap, high, stock, lap, within)]


def strip(line: tuple[Point2, ...], thickness: float) -> Section:
    """A folded sheet with sharp bends: the thin section to the right of a line."""
    far = shifted(line, thickness)
    return Section(tuple((grid(x), grid(y), 0.0) for x, y in [*line[::-1], *far]))


def mirrored(line: tuple[Point2, ...]) -> tuple[Point2, ...]:
    """The line seen in a mirror across y, walked so that its thickness stays on the same face."""
    return tuple((-x, y) for x, y in line[::-1])


def _piece(
    run: TrimRun,
    section: Section,
    span: tuple[float, float],
    place: tuple[int, int],
    stick: tuple[float, float, float],
) -> tuple[Recipe, Place]:
    """One piece: leaning from its start, where it lies on its neighbour, down to its far end."""
    (a, b), (number, count), (low, stock, lap) = span, place, stick
    first, last = number == 1, number == count
    along: Point3 = (0.0, 0.0, 1.0)
    axis, centre = along, (0.0, 0.0, a)
    if not (first and last):
        slope = 1 / (stock - lap)
        nest: Point3 = (run.nest[0], run.nest[1], 0.0)
        axis = add(along, nest, -slope)
        # Where its far end would lie flat, had every piece before it been a full stick.
        flat = number * (stock - lap) + lap - (a - low)
        centre = add(centre, nest, slope * flat)
    start = run.start if first else Plane((0.0, 0.0, a), along)
    end = run.end if last else Plane((0.0, 0.0, b), along)
    recipe, at = member(section, centre, axis, (0.0, 1.0, 0.0), start, end)
    body: Recipe = recipe
    # Cut positions are measured from the piece's own origin, along its axis.
    zero = at.origin[2]
    tools = [(zone, b - lap - SNIP_PAST - zero, b - zero + 1) for zone in run.snips if not last]
    tools += [
        (zone, max(z0, a - 1) - zero, min(z1, b + 1) - zero)
        for z0, z1, zone in run.notches
        if z1 > a and z0 < b
    ]
    if tools:
        body = Cut(
            recipe,
            tuple(
                (block(x1 - x0, y1 - y0, z1 - z0), Place((grid(x0), grid(y0), grid(z0))))
                for (x0, y0, x1, y1), z0, z1 in tools
            ),
        )
    return body, run.frame @ at


def _height(plane: Plane, point: Point3) -> float:
    """z of a plane over a point of the section."""
    n, p = plane.normal, plane.point
    return p[2] - (n[0] * (point[0] - p[0]) + n[1] * (point[1] - p[1])) / n[2]
