"""A run of folded trim: pieces cut from stock lengths, each next one's start lapped over the last one's end.

A lap needs one thickness of room. Every piece of a run leans by a small slope, thickness over the distance
from lap to lap, so that its far end lies flat and its start rides on its neighbour; the last one lies along
the one before, be it shorter. No piece leans less than the one it laps, so that none digs into another. Parts
of the section that cannot nest (a flange between framing and sheet, a lip) are snipped back by one lap at the
end that goes under, as on site.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise
from math import hypot

from ...catalog.fold import shifted
from ...envelope.skin_lines import HELD, STUB
from ...place import Place, Point2, Point3, add
from ...recipe import Cut, Joined, Part, Prism, Recipe, Section, grid
from ...roles import Role
from ..steel.blocks import block
from ..steel.straight_member import Plane, member
from .end_tabs import Tab, folded

SNIP_PAST = 0.5
"""mm; a snip reaches this far past the lap, so that a leaning edge finds no corner in its way. Ours."""

SLIT_PAST = 0.08
"""mm; the same where it would be seen: as far as a bend's own corner leans. Ours."""

PAST_LAP = 38.0
"""mm; the last line that holds a run lies so far past its last lap, that its last piece has a screw. Ours."""

SAME = 1e-6
"""mm; a run this much longer than a stick is one piece of it."""

Box = tuple[float, float, float, float]
Lengths = tuple[float, ...]
Spans = tuple[Point2, ...]


@dataclass(frozen=True, slots=True)
class TrimRun:
    """One edge to be trimmed, in a frame whose z is the direction of laying.

    line: (n, 2) corners of one face of the sheet in (x, y), its thickness laid to the right of the
    way along it. start, end: closing planes. nest: how far (x, y) an overlying piece is moved to
    lie on its neighbour. snips: (x0, y0, x1, y1) cut off the under end, one lap long. slits: the same where
    no sheet hides the cut. notches: the same with a z range in front, cut from whatever piece they meet.
    start_tabs, end_tabs: folded over its two ends. held: z of the lines at which alone screws hold it; none
    where they may stand anywhere.
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
    start_tabs: tuple[Tab, ...] = ()
    end_tabs: tuple[Tab, ...] = ()
    slits: tuple[Box, ...] = ()
    held: tuple[float, ...] = ()


def pieces(run: TrimRun, stock: Lengths, lap: float) -> Iterator[Part]:
    """The pieces of a run in the order of laying: full sticks of one of the stock lengths, then what
    remains."""
    section = strip(run.line, run.thickness)
    spans = _spans(run, section, stock, lap)
    for number in range(len(spans)):
        name = f"{run.name} {number + 1}" if len(spans) > 1 else run.name
        recipe, place = _piece(run, section, spans, number, lap)
        yield Part(name, run.role, run.group, recipe, place, run.labels)


def joints(run: TrimRun, stock: Lengths, lap: float) -> list[Point2]:
    """Every lap of a run: where the upper piece begins and where the one under it ends, along z."""
    spans = _spans(run, strip(run.line, run.thickness), stock, lap)
    return [(start, end) for (_, end), (start, _) in pairwise(spans)]


def lift(run: TrimRun, stock: Lengths, lap: float, z: float) -> float:
    """How far the outermost piece at z rides above where a run of one piece would lie, in `nest`s."""
    spans = _spans(run, strip(run.line, run.thickness), stock, lap)
    if len(spans) == 1:
        return 0.0
    flat, advance = _lean(spans, max(n for n, (a, _) in enumerate(spans) if a <= z or n == 0), lap)
    return (flat - z) / advance


def _lean(spans: Spans, number: int, lap: float) -> Point2:
    """How one piece of several leans: where it would lie flat, how far before that it is a thickness off."""
    last = len(spans) - 1
    if number == 0:
        own, after = spans[0][1] - spans[0][0] - lap, spans[min(1, last - 1)][1] - spans[0][1]
        # Shorter for its tabs, it leans no more than the one that it bears.
        return spans[0][1], max(own, after)
    if number < last:
        return spans[number][1], spans[number][1] - spans[number - 1][1]
    flat, advance = _lean(spans, number - 1, lap)
    return max(flat + advance, spans[number][1]), advance  # longer than one with tabs, it sinks nowhere


def _spans(run: TrimRun, section: Section, stock: Lengths, lap: float) -> Spans:
    low = min(_height(run.start, p) for p in section.outer)
    ends = [_height(run.end, p) for p in section.outer]
    before, after = (max((tab.takes for tab in tabs), default=0.0) for tabs in (run.start_tabs, run.end_tabs))
    high, within = max(ends) + after, min(ends)
    held = tuple(z for z in run.held if z < within - PAST_LAP)
    ways = list(_held_ways(low - before, high, stock, lap, within, held)) if held else []
    plain = sticks(low - before, high, stock, lap, within)
    best: Spans = min(ways, key=lambda spans: _loose(spans, held), default=plain)
    found = list(best)
    found[0] = (low, found[0][1])
    found[-1] = (found[-1][0], max(ends))
    return tuple(found)


def _held_ways(
    low: float, high: float, stock: Lengths, lap: float, within: float, held: Lengths
) -> Iterator[Spans]:
    """Ways in which the last piece has a screw: it laps before the last line that holds the run, or about it,
    where one screw holds both."""
    for past in (-PAST_LAP, lap / 2):
        end = max(held) + past
        if long := tuple(one for one in stock if one >= high - end + lap):
            yield sticks(low, high, long, lap, min(within, end + lap), held)


def _loose(spans: Spans, held: Lengths) -> int:
    """How many pieces no line that holds a run reaches; the first has its wall's foot."""
    return sum(not any(a + HELD <= z <= b - HELD for z in held) for a, b in spans[1:])


@lru_cache(maxsize=1000)
def sticks(low: float, high: float, stock: Lengths, lap: float, within: float, held: Lengths = ()) -> Spans:
    """Where each piece begins and ends along a run: of the one stock length that gives the fewest laps, and
    of such ones wastes least; what remains at the end may come from a shorter stick.

    within: no piece but the last may pass this; there the closing plane begins to cut. held: where alone,
    besides at its start, screws hold the run: a length that leaves no piece without one goes before others.
    """

    def bought(spans: Spans) -> float:
        return sum(min(one for one in stock if one >= b - a - SAME) for a, b in spans)

    ways = [_full_first(low, high, one, lap, within) for one in stock]
    return min(ways, key=lambda spans: (_loose(spans, held), len(spans), bought(spans)))


def _full_first(low: float, high: float, stick: float, lap: float, within: float) -> Spans:
    """Full sticks, then what remains; the last but one is cut where that would be a stub."""
    if high - low <= stick + SAME:
        return ((low, high),)
    end = min(low + stick, within - lap, high - STUB + lap)
    return ((low, end), *_full_first(end - lap, high, stick, lap, within))


def strip(line: tuple[Point2, ...], thickness: float) -> Section:
    """A folded sheet with sharp bends: the thin section to the right of a line."""
    far = shifted(line, thickness)
    return Section(tuple((grid(x), grid(y), 0.0) for x, y in [*line[::-1], *far]))


def mirrored(line: tuple[Point2, ...]) -> tuple[Point2, ...]:
    """The line seen in a mirror across y, walked so that its thickness stays on the same face."""
    return tuple((-x, y) for x, y in line[::-1])


def _piece(run: TrimRun, section: Section, spans: Spans, number: int, lap: float) -> tuple[Recipe, Place]:
    """One piece: leaning from its start, where it lies on its neighbour, down to its far end."""
    (a, b), first, last = spans[number], number == 0, number == len(spans) - 1
    along: Point3 = (0.0, 0.0, 1.0)
    axis, centre = along, (0.0, 0.0, a)
    if not (first and last):
        flat, advance = _lean(spans, number, lap)
        nest: Point3 = (run.nest[0], run.nest[1], 0.0)
        lean = hypot(1.0, hypot(*run.nest) / advance) / advance  # what leans is thicker, seen along `nest`
        axis = add(along, nest, -lean)
        centre = add(centre, nest, lean * (flat - a))
    start = run.start if first else Plane((0.0, 0.0, a), along)
    end = run.end if last else Plane((0.0, 0.0, b), along)
    recipe, at = member(section, centre, axis, (0.0, 1.0, 0.0), start, end)
    body: Recipe = recipe
    # Cut positions are measured from the piece's own origin, along its axis.
    zero = at.origin[2]
    snips = [(zone, SNIP_PAST) for zone in run.snips] + [(zone, SLIT_PAST) for zone in run.slits]
    tools = [(zone, b - lap - past - zero, b - zero + 1) for zone, past in snips if not last]
    tools += [
        (
            _to_edge(run, z1, zone) if z0 < a and not first else zone,
            max(z0, a - 1) - zero,
            min(z1, b + 1) - zero,
        )
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
    return _with_tabs(run, body, recipe, zero, (first, last)), run.frame @ at


def _to_edge(run: TrimRun, z: float, zone: Box) -> Box:
    """The zone of a notch that a piece begins in, with those of notches that begin where it ends: what it
    leaves of a leg that they cut off hangs from the piece before alone."""
    zones = [zone, *(other for start, _, other in run.notches if abs(start - z) < SAME)]
    lefts, lows, rights, highs = zip(*zones, strict=True)
    return min(lefts), min(lows), max(rights), max(highs)


def _with_tabs(run: TrimRun, body: Recipe, strip: Prism, zero: float, ends: tuple[bool, bool]) -> Recipe:
    """A piece with the tabs at those of its ends that are the run's own. zero: where its frame stands along
    the run."""
    parts = []
    sides = ((run.start_tabs, strip.start, -1.0), (run.end_tabs, strip.end, 1.0))
    for (tabs, own, away), is_end in zip(sides, ends, strict=True):
        for one in tabs if is_end else ():
            plane = own if one.at is None else (0.0, 0.0, grid(one.at - zero))
            parts.append(folded(one, run.thickness, plane, away))
    return Joined(((body, Place()), *parts)) if parts else body


def _height(plane: Plane, point: Point3) -> float:
    """z of a plane over a point of the section."""
    n, p = plane.normal, plane.point
    return p[2] - (n[0] * (point[0] - p[0]) + n[1] * (point[1] - p[1])) / n[2]
