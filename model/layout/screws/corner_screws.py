"""Screws in the legs of corner trims: at the framing lines that reach them, up the upright beside an open
wall, and over the ends of hung sheets."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import copysign, dist

from ...envelope.edges import Edge
from ...envelope.headwall import in_line_at
from ...roles import Role
from ..trim.cap_trims import under_cap
from ..trim.corner_trims import hung_leg, over_hung
from ..trim.headwall_trims import leg_spans
from ..trim.in_line_trims import NAME as IN_LINE
from ..trim.trim_run import TrimRun
from .screw_kinds import CLEAR, EDGE, INCH
from .trimmed import Trimmed, Wanted, spread, up_a_leg

HUNG_APART = 12 * INCH
"""mm; the greatest distance between screws where hung sheets end on an upright. Ours."""

UPRIGHT = (Role.CORNER_TRIM, Role.INSIDE_CORNER_TRIM)
"""Trims that stand at the ends of walls."""

ENDS = (("left", 0.0, 1.0), ("right", 1.0, -1.0))
"""A wall's hands, each with its share of the width, and the way in from there."""


def corner_screws(on: Trimmed) -> Iterator[Wanted]:
    """In each corner leg on a wall, one at every framing line that reaches it below the trim's head; beside
    an open wall, and on it, as far apart as asked, into the upright, up to hung sheets if any. Flush girts
    end at the corner's column, which is the upright there."""
    lines, face, apart = on.lines, on.plan.face, on.lines.building.screws.apart
    for hand, share, into in ENDS:
        if leg := lines.corner_leg(face, hand):
            foot, top = _foot(on, hand), _top(on, hand)
            upright = lines.steel.upright_at(face, hand)
            spans = leg_spans(lines, face, hand, leg, min(top, foot or top))
            heights = [low + v for low, high in spans for v in spread(high - low, 3 * INCH, apart)]
            inside = face.beside(hand).kind is Edge.INSIDE_CORNER
            name = f"{face.name} {'inside ' if inside else ''}corner trim {hand}"
            seat = lines.corner(face, hand) + lines.thickness
            where = (lines.steel.steel_end(face, hand), into * leg)
            yield from _by_trim(on, hand, _leg(on, (name, 0), where, seat, heights if upright else None))
        if not face.bare_at(hand) and (foot := _foot(on, hand)) is not None:
            yield from _over_hung(on, hand, (share * face.width, into), foot)


def _by_trim(on: Trimmed, hand: str, row: Wanted) -> Iterator[Wanted]:
    """The screws of a leg by the trims that stand over each other at a corner: where a lean-to's end stands
    in line with a gable, one under its roof, and no leg there on the wall inside."""
    (name, run, seat, spots), building, face = row, on.lines.building, on.plan.face
    headwall = in_line_at(building, (face.name, face.beside(hand).other))
    if headwall is None:
        yield f"{face.name} {IN_LINE} {hand}" if run.name.endswith(IN_LINE) else name, run, seat, spots
        return
    if face.name != headwall.wall:
        under = on.run(f"{building.lean_tos[headwall.number].name} {face.name} {IN_LINE}")
        low = [spot for spot in spots if spot[0][1] < headwall.head]
        yield f"{face.name} {IN_LINE} {hand}", under, seat, low
    yield name, _at_corner(on, hand)[-1], seat, [spot for spot in spots if spot[0][1] > headwall.foot]


def _foot(on: Trimmed, hand: str) -> float | None:
    """Where hung sheets begin at a corner; None without any."""
    face = on.plan.face
    hung = face.hung or on.lines.steel.named[face.beside(hand).other].hung
    return hung.foot if hung else None


def _top(on: Trimmed, hand: str) -> float:
    """What the screws at a corner stay under: the eave, or the cap of a half wall, which holds it there."""
    face = on.plan.face
    if half := face.half or on.lines.steel.named[face.beside(hand).other].half:
        return under_cap(on.lines, half) - CLEAR
    return on.lines.under_eave(on.lines.steel.over_corner(on.plan.face, hand))


def _over_hung(on: Trimmed, hand: str, end: tuple[float, float], foot: float) -> Iterator[Wanted]:
    """In the trim over the ends of hung sheets: in their wall's leg, at its lines or up an upright there; in
    that of the wall that is clad down to the slab, up its own."""
    lines, face, room = on.lines, on.plan.face, _top(on, hand) - foot
    u, into = end
    leg, seat = into * hung_leg(lines, face, hand), over_hung(lines, face, hand) + lines.thickness
    name = (f"{face.name} corner trim over {hand}", -1)
    beside = lines.steel.named[face.beside(hand).other]
    bare = face.beside(hand).open and not beside.hung
    at_lines = lines.steel.setback > 0 and (bare or (beside.hung and face.hung))
    if face.hung:
        only = face.hung.row if lines.steel.setback else foot + room / 2
        rows = [foot + v for v in spread(room, 3 * INCH, HUNG_APART)] if room > HUNG_APART else [only]
        yield _leg(on, name, (u, leg), seat, None if at_lines else rows)
    elif room > HUNG_APART and not at_lines:
        past = lines.building.trim.lap
        rows = [foot + past + v for v in spread(room - past, 3 * INCH, lines.building.screws.apart)]
        yield _leg(on, name, (u, leg), seat, rows)


def _leg(
    on: Trimmed,
    which: tuple[str, int],
    leg: tuple[float, float],
    seat: float,
    heights: Sequence[float] | None,
) -> Wanted:
    """The screws in one leg, from its wall's end so far along it, of the lowest (0) or the highest (-1) of
    the runs at its corner. heights: None is one at every line that reaches it."""
    (end, edge), into = leg, copysign(1.0, leg[1])
    hand = "left" if into > 0 else "right"
    far = end + edge - into * (on.lines.ride + EDGE)
    u, strip = end + edge / 2, sorted((end + into * EDGE, far))
    heights = on.level_rows(u, _top(on, hand)) if heights is None else _with_laps(on, heights)
    return which[0], _at_corner(on, hand)[which[1]], seat, up_a_leg(u, strip, heights)


def _at_corner(on: Trimmed, hand: str) -> list[TrimRun]:
    """The upright runs at an end of a wall, from the lowest up."""
    corner = on.plan.face.frame.point((0.0 if hand == "left" else on.plan.face.width, 0.0, 0.0))
    runs = [run for run in on.runs if run.role in UPRIGHT]
    near = min(dist(run.frame.origin, corner) for run in runs)
    return sorted((run for run in runs if dist(run.frame.origin, corner) == near), key=_begins)


def _begins(run: TrimRun) -> float:
    """How high an upright run begins."""
    return run.frame.point(run.start.point)[2]


def _with_laps(on: Trimmed, heights: Sequence[float]) -> list[float]:
    """Heights up an upright, with those at which sheets lap between the first and the last: beside the last
    rib there no other screw holds both."""
    laps = [lap for lap in on.end_laps if heights[0] < lap.row < heights[-1]]
    apart = (v for v in heights if not any(lap.foot < v < lap.head for lap in laps))
    return sorted([*apart, *(lap.row for lap in laps)])
