"""The cap along a ridge, as a run in its own frame."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from itertools import pairwise
from math import hypot

from ...envelope.face import Face
from ...envelope.ridge_vents import slot_half, vent_spans
from ...envelope.stretches import remaining
from ...place import Place, Point3, add, cross, dot, unit
from ...roles import Role
from ..steel.straight_member import Plane
from .closed_ends import cap_end
from .trim_lines import TrimLines
from .trim_run import Box, TrimRun, joints

UP: Point3 = (0.0, 0.0, 1.0)
ALONG: Point3 = (0.0, 0.0, 1.0)


def ridge_runs(lines: TrimLines) -> Iterator[TrimRun]:
    """Along a ridge, over the rake trims, its legs past the upper purlins' screws.

    Laid towards the wind: each piece's start lies on the one before, and its edge faces away from it.
    """
    t = lines.thickness
    for slope in lines.steel.slopes:
        ridge = lines.steel.ridge_of(slope)
        # Each ridge once: from the slope that falls to the left of someone who lays it towards the wind.
        if ridge is None or dot(slope.frame.x, lines.towards_wind) < 0:
            continue
        other = lines.steel.named[ridge.other]
        near, far = (_leg(lines, one) for one in (slope, other))
        # Inner faces, heights measured from the ridge of the steel planes; each leg on its own slope.
        apex = (far.over - near.over) / (near.rise + far.rise)
        peak = near.over + apex * near.rise
        line = (
            (far.reach, far.over - far.reach * far.rise),
            (apex, peak),
            (-near.reach, near.over - near.reach * near.rise),
        )
        start, end = (slope.frame.point((*point, 0.0)) for point in (ridge.end, ridge.start))
        past, beyond = (lines.head_beside(slope, hand) + lines.lap_room for hand in ("left", "right"))
        along = unit(add(end, start, -1.0))
        level, closed = unit(cross(UP, along)), cap_end(lines, line, (far.rise, near.rise))
        frame = Place(add(start, along, -past), level, cross(along, level))
        run = TrimRun(
            name="ridge cap",
            role=Role.RIDGE_CAP,
            group=("trims", "ridge"),
            labels=lines.labels("ridge", "ridge"),
            frame=frame,
            line=line,
            thickness=t,
            start=Plane((0.0, 0.0, 0.0), ALONG),
            end=Plane((0.0, 0.0, past + ridge.length + beyond), ALONG),
            nest=(0.0, t / min(near.cos, far.cos)),
            start_tabs=closed,
            end_tabs=closed,
        )
        yield replace(run, notches=tuple(_open(lines, run)))


def _open(lines: TrimLines, run: TrimRun) -> Iterator[tuple[float, float, Box]]:
    """What is cut from a cap for its slots. A piece that lies in one altogether would fall in two: where it
    lies on the one before it stays whole."""
    met = joints(run, lines.stock(run.role), lines.building.trim.lap)
    within = [(start, under, end) for (start, under), (_, end) in pairwise(met)]
    x, y = run.line[1]
    for low, high, half in slots(lines, run.frame):
        bridges = [(start, under) for start, under, end in within if low <= start and end <= high]
        for z0, z1 in remaining((low, high), bridges):
            yield z0, z1, (x - half, y - 3 * half, x + half, y + 3 * half)


def slots(lines: TrimLines, frame: Place) -> Iterator[Point3]:
    """Where a ridge cap is cut open under vents: from z to z of its run, and how far to either side."""
    slope = next(slope for slope in lines.steel.slopes if lines.steel.ridge_of(slope))
    half = slot_half(lines.steel, slope)
    for span in vent_spans(lines.building):
        low, high = sorted(frame.seen((frame.origin[0], y, frame.origin[2]))[2] for y in span)
        yield low, high, half


@dataclass(frozen=True, slots=True)
class _Leg:
    """A ridge cap's leg on one slope: how far it reaches in plan, how high its inner face would stand over
    the ridge, the slope's rise and its cosine."""

    reach: float
    over: float
    rise: float
    cos: float


def _leg(lines: TrimLines, slope: Face) -> _Leg:
    steel, up = lines.steel, slope.frame.y[2]
    cos = hypot(slope.frame.y[0], slope.frame.y[1])
    past = lines.profile("ridge").in_plane + lines.ridge * up / cos  # as much its legs lose over the crowns
    along = steel.slope_length(slope) - steel.purlins(slope)[-1] + past
    return _Leg(along * cos, lines.ridge / cos, up / cos, cos)
