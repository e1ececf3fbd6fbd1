"""Gutters at low eaves and their downspouts, where asked for: a gutter is the eave's trim gone on with, its
leg under the roof sheets and its back over the wall's closures, run in one length along the eave; the ends of
its bottom are folded up. From each of its outlets a downspout goes straight down before the wall."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from math import ceil

from ...envelope.face import Face
from ...envelope.roof_lines import Eave
from ...envelope.skin_lines import DRIP_PAST
from ...envelope.stretches import remaining
from ...envelope.tiers import tiered
from ...place import Place, Point2, Point3, dot
from ...recipe import Part, Prism, Section, grid
from ...roles import Role
from ..steel.straight_member import Plane
from .end_tabs import CLEAR, tab
from .trim_lines import TrimLines
from .trim_run import TrimRun, mirrored

UNDER = 19.05
"""mm; the front stands so far (3/4 in) lower than the back's bend, so that it runs over outward. Ours."""

SQUARE = 76.2
"""mm; outside, of a downspout, which is square (3 in). Ours."""

OFF = 6.35
"""mm; a downspout stands so far (1/4 in) before the gutter's back or a trim behind it, clear of heads of
screws. Ours."""

ABOVE = 25.4
"""mm; its foot is so far (1 in) over the slab's top. Ours."""

CORNER = 304.8
"""mm; from the wall's end to a downspout beside it (1 ft). Ours."""

BESIDE = 76.2
"""mm; a downspout's edge stands so far (3 in) beside an opening, clear of its drip's ends. Ours."""


def gutter(lines: TrimLines, eave: Eave, run: TrimRun, onward: bool) -> TrimRun:
    """A gutter in place of an eave's trim. run: that. onward: whether it is laid as the wall's u runs."""
    t, wall = lines.thickness, lines.steel.named[eave.wall]
    legs, lip = lines.profile("gutter"), lines.profile("gutter").out_of_plane
    inner = run.line if onward else mirrored(run.line)
    (x, bottom), bend = inner[2], inner[1][1]
    front, top = x - legs.in_plane, bend - UNDER
    line = (*inner, (front, bottom), (front, top), (front + lip, top))
    ends = (run.start.point[2] + t + CLEAR, run.end.point[2] - t - CLEAR)
    deep = bend - ends_under(lines, eave) - bottom
    back, before, foot = x - t - CLEAR, front + t + CLEAR, bottom + t / 2
    corners = ((back, foot), (before, foot), (before, bottom + deep), (back, bottom + deep))
    closed = tab([(x if onward else -x, y) for x, y in corners], deep, t)
    return replace(
        run,
        name=f"{wall.name} gutter",
        role=Role.GUTTER,
        line=line if onward else mirrored(line),
        start=Plane((0.0, 0.0, ends[0]), run.start.normal),
        end=Plane((0.0, 0.0, ends[1]), run.end.normal),
        notches=tuple(_holes(lines, wall, run, (-spout_back(lines, wall) - t, bottom))),
        start_tabs=closed,
        end_tabs=closed,
    )


def ends_under(lines: TrimLines, eave: Eave) -> float:
    """How far under the bend the ends stand: no higher than the front, and under the rake trims' folded feet,
    which stand a hair before the roof's."""
    return max(UNDER, foot_under(lines, eave) + CLEAR) + CLEAR


def foot_under(lines: TrimLines, eave: Eave) -> float:
    """How far under the bend the roof's steel plane comes where its rake trims' feet are folded."""
    past = lines.building.sheets.overhang - lines.head(lines.steel.named[eave.wall])
    return past * eave.rise + (CLEAR + lines.thickness) * eave.rise * eave.cos


def _holes(
    lines: TrimLines, wall: Face, run: TrimRun, near: Point2
) -> Iterator[tuple[float, float, tuple[float, float, float, float]]]:
    """Outlets, as wide as downspouts are inside. near: x, away from the wall below nought, and y of the edge
    that is nearest the wall."""
    wide, (x, y) = SQUARE - 2 * lines.thickness, near
    outward = dot(run.frame.x, wall.frame.z)
    low, high = sorted((-x * outward, (wide - x) * outward))
    for u in outlets(lines, wall):
        middle = run.frame.seen(wall.frame.point((u, 0.0, 0.0)))[2]
        yield middle - wide / 2, middle + wide / 2, (low, y - 1.0, high, y + 2 * lines.thickness)


def outlets(lines: TrimLines, wall: Face) -> tuple[float, ...]:
    """u of the middle of each: one a foot from the end that the run begins at for as much eave as one drains,
    else at both ends and evenly between, moved aside to clear openings."""
    most, width = lines.building.trim.downspout_apart, wall.width
    spaces = 1 if width <= 2 * most else ceil((width - 2 * CORNER) / most)
    wanted = [CORNER + k * (width - 2 * CORNER) / spaces for k in range(spaces + 1)]
    if width <= most:
        rear = dot(wall.frame.x, (0.0, 1.0, 0.0)) > 0
        wanted = wanted[-1:] if rear else wanted[:1]
    clear = SQUARE / 2 + BESIDE + DRIP_PAST
    taken = [(o.from_left - clear, o.from_left + o.width + clear) for o in wall.openings]
    free = remaining((SQUARE, width - SQUARE), taken) or [(SQUARE, width - SQUARE)]
    return tuple(min((min(max(u, a), b) for a, b in free), key=lambda v: abs(v - u)) for u in wanted)


def spout_back(lines: TrimLines, wall: Face) -> float:
    """w of the backs of a wall's downspouts: before the gutter's, and before the trim at a seam between
    tiers, which stands out as far as the deepest sheets of any wall asks."""
    past = lines.seam if tiered(lines.building, wall.name) else 0.0
    return max(lines.head(wall), past) + lines.thickness + OFF


def downspouts(lines: TrimLines) -> Iterator[Part]:
    """Straight down from every outlet."""
    for eave in lines.steel.eaves.values():
        wall = lines.steel.named[eave.wall]
        if not lines.guttered(wall):
            continue
        e = lines.head(wall)
        top = eave.height - e * eave.rise - lines.eave_drop(eave) - CLEAR
        for number, u in enumerate(outlets(lines, wall), 1):
            yield _downspout(lines, wall, (u, spout_back(lines, wall) + SQUARE / 2), top, number)


def _downspout(lines: TrimLines, wall: Face, at: Point2, top: float, number: int) -> Part:
    """at: u and w of its middle."""
    t = lines.thickness
    half = SQUARE / 2
    section = Section(_ring(half), (_ring(half - t),))
    return Part(
        f"{wall.name} downspout {number}",
        Role.DOWNSPOUT,
        ("trims", wall.name),
        Prism(section, (0.0, 0.0, 0.0), (0.0, 0.0, grid(top - ABOVE))),
        Place(wall.frame.point((at[0], ABOVE, at[1])), wall.frame.z, wall.frame.x),
        lines.labels(wall.name, "eave"),
    )


def _ring(half: float) -> tuple[Point3, ...]:
    return tuple((grid(x * half), grid(y * half), 0.0) for x, y in ((-1, -1), (1, -1), (1, 1), (-1, 1)))
