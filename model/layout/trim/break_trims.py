"""The trim where a slope changes its pitch.

One bend: its upper leg lies on the purlins under the upper sheets, its lower leg over the heads of the lower
sheets and of their rake trims, as a ridge cap's. Common practice, no source, unless one is named.
"""

from __future__ import annotations

from collections.abc import Iterator
from math import cos, sin, tan

from ...envelope.face import Face
from ...envelope.pitch_break import PitchBreak, break_under
from ...place import Place, Point2, Point3, add, cross, dot, unit
from ...roles import Role
from ..steel.straight_member import Plane
from .break_lines import over_break, rake_foot
from .closed_ends import leg_tab
from .end_tabs import CLEAR, Tab
from .trim_lines import TrimLines
from .trim_run import Box, TrimRun, mirrored

UP: Point3 = (0.0, 0.0, 1.0)
ALONG: Point3 = (0.0, 0.0, 1.0)
FAR = 2000.0
"""mm; more than any leg reaches."""


def break_runs(lines: TrimLines) -> Iterator[TrimRun]:
    """Along each break, laid towards the wind as a ridge cap, over the lower rake trims and inside the upper
    ones."""
    for slope in lines.steel.slopes:
        if (there := break_under(lines.building, slope)) is not None:
            yield _run(lines, slope, there)


def _run(lines: TrimLines, upper: Face, there: PitchBreak) -> TrimRun:
    t, foot = lines.thickness, upper.sides[0]
    onward = dot(upper.frame.x, lines.towards_wind) > 0.0
    start, end = (upper.frame.point((*point, 0.0)) for point in (foot.start, foot.end))
    near, far = "left", "right"
    if not onward:
        start, end, near, far = end, start, far, near
    past, beyond = (lines.head_beside(upper, hand) + lines.lap_room for hand in (near, far))
    run = past + foot.length + beyond
    along = unit(add(end, start, -1.0))
    level = unit(cross(UP, along))  # up the slope where it is laid from its left, else down
    line = _line(lines, upper, there)
    shift = t / sin(there.turn)
    nest = (-shift * cos(there.upper), -shift * sin(there.upper))
    # Behind the upper sheets there is room for one thickness; in a hollow, before their feet, a cut is seen.
    first, feet = line[1][0] - abs(shift) - 1.0, _up(there, there.foot + 3.0)[0]
    hidden = max(first, feet) if there.turn < 0.0 else first
    seen: Box = (first, -FAR, hidden + CLEAR, FAR)
    under: Box = (hidden, -FAR, line[0][0] + 1.0, FAR)
    # At its ends only what lies over the lower rake trims runs on out over them. Pieces lean up the slope.
    at, out = rake_foot(lines, there), max(t, over_break(lines, there))
    lean = abs(lines.lap_room / sin(there.turn))
    inside: Box = (at * cos(there.upper) - out * sin(there.upper) - lean - CLEAR, -FAR, FAR, FAR)
    ends = ((-1.0, lines.lap_room + CLEAR), (run - lines.lap_room - CLEAR, run + 1.0))
    tabs = _tabs(lines, line, there, inside[0])
    boxes = [under, seen, inside]
    if not onward:
        line, nest, tabs = mirrored(line), (-nest[0], nest[1]), tuple(_turned(tab) for tab in tabs)
        boxes = [(-x1, y0, -x0, y1) for x0, y0, x1, y1 in boxes]
    return TrimRun(
        name=f"{foot.other} pitch break trim",
        role=Role.BREAK_TRIM,
        group=("trims", "pitch break"),
        labels=lines.labels("pitch break", "ridge"),
        frame=Place(add(start, along, -past), level, cross(along, level)),
        line=line,
        thickness=t,
        start=Plane((0.0, 0.0, 0.0), ALONG),
        end=Plane((0.0, 0.0, run), ALONG),
        nest=nest,
        snips=(boxes[0],),
        slits=(boxes[1],) if hidden > first else (),
        notches=tuple((low, high, boxes[2]) for low, high in ends),
        start_tabs=tabs,
        end_tabs=tabs,
    )


def _line(lines: TrimLines, upper: Face, there: PitchBreak) -> tuple[Point2, ...]:
    """Its inner faces, x level and up the slope, y up, from where the steel planes meet: the upper leg's
    edge, the bend, the lower leg's edge."""
    steel, legs, past = lines.steel, lines.profile("break"), lines.profile("ridge").in_plane
    lower = steel.named[upper.sides[0].other]
    on_top = max(there.bend + legs.out_of_plane, steel.purlins(upper)[0] + past)
    down = steel.slope_length(lower) - steel.purlins(lower)[-1] + past
    down = max(down, there.over / tan(there.turn) + legs.in_plane)
    x, y = (cos(there.pitch), sin(there.pitch))
    return (
        _up(there, on_top),
        _up(there, there.bend),
        (-down * x - there.over * y, -down * y + there.over * x),
    )


def _up(there: PitchBreak, along: float) -> Point2:
    return along * cos(there.upper), along * sin(there.upper)


def _tabs(lines: TrimLines, line: tuple[Point2, ...], there: PitchBreak, inner: float) -> tuple[Tab, ...]:
    """At an end: of the lower leg, down before the lower rake trim as far as the roof's steel plane."""
    rise = tan(there.pitch)
    near = min(inner, line[1][0]) - CLEAR
    return leg_tab(line[2], near, rise, (there.over, lines.thickness))


def _turned(one: Tab) -> Tab:
    return Tab(tuple((-x, y) for x, y in one.ring[::-1]), one.takes, one.at)
