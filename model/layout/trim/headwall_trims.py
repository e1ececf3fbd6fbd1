"""What a headwall does to trims: its flashing, and the corner trims that its roof comes through.

The flashing's upper leg lies behind the sheets above, its lower leg over the heads of the roof's sheets and
of its rake trims, past the row of screws in the ledger and the closures.
"""

from __future__ import annotations

from collections.abc import Iterator
from math import inf

from ...envelope.beside import at_gable, open_round_corner
from ...envelope.face import HAIR, Face
from ...envelope.headwall import NOTCH, Headwall, headwall_of, past_end
from ...envelope.skin_lines import over_in_line
from ...place import Place, Point2, Point3, dot
from ...roles import Role
from ..steel.straight_member import Plane
from .opening_trims import EARS
from .trim_lines import TrimLines
from .trim_run import Box, TrimRun, mirrored

ALONG: Point3 = (0.0, 0.0, 1.0)


def flashing_runs(lines: TrimLines) -> Iterator[TrimRun]:
    """Along the wall that a lean-to stands at, in its own frame, towards the wind as a ridge cap."""
    eave = lines.steel.eaves.get(lines.building.joined or "")
    if eave is None:
        return
    t, legs, wall = lines.thickness, lines.profile("headwall"), lines.steel.named[eave.wall]
    # x off the main wall, y up.
    bend, reach = lines.ridge / eave.cos, legs.in_plane * eave.cos
    line = ((reach, bend + reach * eave.rise), (0.0, bend), (0.0, bend + legs.out_of_plane))
    # Behind the sheets there is room for one thickness.
    behind: Box = (-1.0, bend - 3 * t, t, bend + legs.out_of_plane + 3 * t)
    onward = dot(wall.frame.x, lines.towards_wind) > 0
    x, (u, v) = (-1.0, eave.left) if onward else (1.0, eave.right)
    hands = ("left", "right") if onward else ("right", "left")
    (before, cut), (after, other) = (_past_end(lines, wall.beside(hand).other) for hand in hands)
    low, high = -before - cut, wall.width + after + other
    # Past them runs on the leg behind the sheets alone.
    over: Box = (t, -reach, 2 * reach, bend + 3 * t) if onward else (-2 * reach, -reach, -t, bend + 3 * t)
    ears = ((low - 1, -before, over), (high - other, high + 1, over))
    yield TrimRun(
        name="headwall flashing",
        role=Role.FLASHING,
        group=("trims", "headwall"),
        labels=lines.labels("headwall", "headwall"),
        frame=wall.frame @ Place((u, v, 0.0), (0.0, 0.0, x), (0.0, 1.0, 0.0)),
        line=line if onward else mirrored(line),
        thickness=t,
        start=Plane((0.0, 0.0, low), ALONG),
        end=Plane((0.0, 0.0, high), ALONG),
        nest=(0.0, t / eave.cos),
        snips=(behind if onward else (-behind[2], behind[1], -behind[0], behind[3]),),
        notches=tuple(ear for ear, long in zip(ears, (cut, other), strict=True) if long),
    )


def _past_end(lines: TrimLines, end: str) -> Point2:
    """How far the flashing runs past an end of the roof, and its upper leg past that: at an end that stands
    short of the wall's corner, behind the sheets beside it; where nothing is clad under it, to the ends of a
    gable's sheets, whose corner ribs it closes: at the corner itself where the wall round it is open."""
    building = lines.building
    if end in building.inset:
        return past_end(building, end), EARS
    hung = building.between == "open" and at_gable(building)
    if not hung or (lines.main and open_round_corner(lines.main, building, end)):
        return 0.0, 0.0
    return over_in_line(building), 0.0


def at_headwall(
    lines: TrimLines, before: Face, after: Face, legs: Point2, bend: Point2
) -> Iterator[tuple[float, float, Box]]:
    """What a corner trim, in its own frame (see `corner_runs`), loses of its leg on a wall that a lean-to's
    roof ends at: from the lower sheets' heads to the upper ones' feet, and lower where a rafter comes out."""
    found = (headwall_of(lines.building, wall.name) for wall in (before, after))
    headwall = next((one for one in found if one), None)
    if headwall is None or {before.name, after.name} & headwall.inset:
        return
    past = lines.lap_room + lines.thickness + 1
    low = _round_rafters(lines, headwall, max(bend) + past)
    wall, leg, out = (
        (before, legs[0], bend[0] + past)
        if headwall.wall == before.name
        else (after, legs[1], bend[1] + past)
    )

    def box(start: float, end: float) -> Box:
        """Of the leg, from so far to so far from the corner."""
        return (0.0, -end, out, -start) if wall is before else (-end, 0.0, -start, out)

    # The flashing runs on under the ribs of a gable's hung sheets.
    hand, there = ("right", bend[1]) if wall is before else ("left", bend[0])
    on = there - HAIR if wall.hung and wall.beside(hand).covers else 0.0
    yield headwall.head, headwall.foot, box(-on, leg + 1)
    for left, _, right, _ in wall.cuts:
        start, end = (wall.width - right, wall.width - left) if wall is before else (left, right)
        if start < leg:
            yield low, headwall.head, box(max(0.0, start), end)


def _round_rafters(lines: TrimLines, headwall: Headwall, out: float) -> float:
    """Height from which a trim so far out is cut round the rafters."""
    return headwall.under(out, lines.steel.rafter_under) - NOTCH


def leg_spans(lines: TrimLines, wall: Face, hand: str, leg: float, top: float) -> list[Point2]:
    """From which height to which, up to a top, a corner trim's leg that reaches so far along a wall stands:
    where a lean-to's roof ends at it, up to that or to the rafter that it is cut round, and on from the feet
    over it where no sheets hang."""
    headwall = headwall_of(lines.building, wall.name)
    if headwall is None or wall.beside(hand).other in headwall.inset:
        return [(0.0, top)]
    beside = (min(left, wall.width - right) for left, _, right, _ in wall.cuts)
    low = _round_rafters(lines, headwall, lines.side) if min(beside, default=inf) < leg else headwall.head
    under = (0.0, min(low, top))
    return [under] if wall.hung else [under, (headwall.foot, top)]
