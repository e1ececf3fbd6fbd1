"""Trims up the corners of walls, over the ends of hung sheets, and up the ends of open bays, each as a run in
its own frame."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from ...envelope.edges import Edge
from ...envelope.face import HAIR, Face, Hung, in_turn
from ...envelope.headwall import in_line_at
from ...envelope.skin_lines import HEAD_CLEARANCE, SHELF_FALL
from ...place import Place, Point2, Point3, cross, dot
from ...roles import Role
from ..steel.straight_member import Plane
from .headwall_trims import at_headwall
from .in_line_trims import in_line_start, short_of_roof
from .trim_lines import PAST_STEEL, TrimLines
from .trim_run import Box, TrimRun, mirrored

UP: Point3 = (0.0, 0.0, 1.0)
ALONG: Point3 = (0.0, 0.0, 1.0)


@dataclass(frozen=True, slots=True)
class Corner:
    """Two walls that meet in a corner, the one on its left first; seen from outside."""

    before: Face
    after: Face

    def each(self) -> tuple[tuple[Face, str], ...]:
        """Both walls, each with the hand on which the corner is."""
        return (self.before, "right"), (self.after, "left")

    @property
    def hung(self) -> Hung | None:
        """Where hung sheets that meet here begin; of two walls' the same."""
        return self.before.hung or self.after.hung

    @property
    def bare(self) -> bool:
        """Whether neither wall is clad at its foot."""
        return self.before.open_at("right") and self.after.open_at("left")


def corners(lines: TrimLines) -> Iterator[Corner]:
    """The corners at which sheets of any wall end."""
    for wall in in_turn(lines.steel.walls):
        side = wall.beside("left")
        corner = Corner(lines.steel.named[side.other], wall)
        if side.kind is Edge.CORNER and (not corner.bare or corner.hung):
            yield corner


def corner_runs(lines: TrimLines) -> Iterator[TrimRun]:
    """Up the corners, over the side sheets' ends and the gable sheets' overrun; where one of the walls is
    open, around the upright that the other ends on. Over the ends of hung sheets a piece of its own, which
    lies over what comes up under it: nothing does in line with a lean-to's end."""
    for corner in corners(lines):
        if not corner.bare and not (corner.hung and _over_in_line(lines, corner)):
            yield _from_foot(lines, corner)
        if corner.hung:
            yield _hung(lines, corner, corner.hung)


def _from_foot(lines: TrimLines, corner: Corner) -> TrimRun:
    """From the walls' feet to the roof, to the cap of a half wall, or up under the trim over hung sheets by a
    lap."""
    before, after = corner.before, corner.after
    out = lines.corner(before, "right"), lines.corner(after, "left")
    legs = lines.corner_leg(before, "right"), lines.corner_leg(after, "left")
    run = _corner(lines, corner, out, legs)
    if half := corner.before.half or corner.after.half:
        under = Plane((0.0, 0.0, half.shelf - SHELF_FALL - HEAD_CLEARANCE), ALONG)
        return replace(run, end=under)
    if corner.hung:
        top = corner.hung.foot + lines.building.trim.lap
        # Its leg on the wall whose sheets hang ends under them.
        room, (near, far) = lines.crown(before) + lines.crown(after), (legs[0] + out[1], legs[1] + out[0])
        box = (
            (-room, -near - 1, room, out[1] - HAIR) if before.hung else (-far - 1, -room, out[0] - HAIR, room)
        )
        cut = (corner.hung.foot - 1, top + room, box)
        return replace(run, end=Plane((0.0, 0.0, top), ALONG), notches=(*run.notches, cut))
    return run


def _over_in_line(lines: TrimLines, corner: Corner) -> bool:
    """Whether a lean-to's clad end stands in line with one of the walls."""
    return in_line_at(lines.building, (corner.before.name, corner.after.name)) is not None


def _hung(lines: TrimLines, corner: Corner, hung: Hung) -> TrimRun:
    """From the feet of hung sheets to the roof."""
    (one, other), (near, far) = (
        [reach(lines, wall, hand) for wall, hand in corner.each()] for reach in (over_hung, hung_leg)
    )
    run = _corner(lines, corner, (one, other), (near, far))
    name = f"{run.name} over"
    if _over_in_line(lines, corner):
        return replace(run, name=name)
    return replace(run, name=name, start=Plane((0.0, 0.0, hung.foot), ALONG), notches=())


def over_hung(lines: TrimLines, wall: Face, hand: str) -> float:
    """w of the inner face of the corner trim over hung sheets at a wall's end: over its sheets, over the trim
    that comes up beside them where the wall is clad down to the slab, or on the strut where it is open."""
    if wall.bare_at(hand):
        return 0.0
    out = lines.crown(wall) if wall.beside(hand).covers else lines.side
    return out if wall.hung else out + lines.lap_room


def hung_leg(lines: TrimLines, wall: Face, hand: str) -> float:
    """How far that trim reaches along a wall from its steel corner."""
    if wall.bare_at(hand):
        return lines.building.framing.jamb.width + PAST_STEEL
    side = wall.beside(hand)
    legs, there = lines.profile("corner"), "left" if hand == "right" else "right"
    out = over_hung(lines, lines.steel.named[side.other], there)
    return (legs.in_plane if side.covers else legs.out_of_plane) - out


def _corner(lines: TrimLines, corner: Corner, outs: Point2, legs: Point2) -> TrimRun:
    """The trim of one corner, in a frame at its foot: x out of the wall on the left of it, z up.

    outs: of its inner faces from both walls' steel. legs: how far it reaches along them. x, y of what stands
    out from two walls by so much: the point that is so far from both.
    """
    t, before, after = lines.thickness, corner.before, corner.after
    covering, covered = (after, before) if after.beside("left").covers else (before, after)
    frame = Place(after.frame.origin, before.frame.z, cross(UP, before.frame.z))
    normal, along = ((dot(v, frame.x), dot(v, frame.y)) for v in (after.frame.z, after.frame.x))
    x, out = outs
    y = (out - normal[0] * x) / normal[1]
    near, far = legs[0] + out, legs[1] + x
    line = ((x, y - near), (x, y), (x + far * along[0], y + far * along[1]))
    eave = lines.steel.eaves[covered.name]
    head = covered.top.height(0.0 if covered is after else covered.width)
    return TrimRun(
        name=f"{covering.name} {covered.name} corner trim",
        role=Role.CORNER_TRIM,
        group=("trims", covering.name),
        labels=lines.labels(covering.name, "corner"),
        frame=frame,
        line=line,
        thickness=t,
        start=in_line_start(lines, (before, after), frame) or Plane((0.0, 0.0, lines.foot), ALONG),
        end=short_of_roof(lines, eave, frame, head),
        nest=(t, t),
        notches=(
            *_at_slab(lines, before, after, (near, far)),
            *at_headwall(lines, before, after, (near, far), (x, y)),
        ),
        held=lines.steel.corner_girts(before, after),
    )


def gap_runs(lines: TrimLines, wall: Face) -> Iterator[TrimRun]:
    """Up the ends of a wall's open bays: over the sheets' edge, and back past the upright to the column."""
    t, steel = lines.thickness, lines.steel
    deep = steel.setback or lines.building.framing.jamb.width
    leg = lines.end_leg
    line = ((leg, lines.side), (0.0, lines.side), (0.0, -deep))
    for number, (u, into) in enumerate(wall.gap_ends(), 1):
        frame = wall.frame @ Place((u, 0.0, 0.0), (-1.0, 0.0, 0.0), (0.0, 0.0, 1.0))
        eave = steel.eaves[wall.name]
        behind = (-leg - 1, -deep - 1, leg + 1, 0.0)
        notches = [(steel.strut_foot(eave), eave.height + 2 * deep, behind)]
        if lines.bottom < 0.0:
            notches.append((lines.foot - 1, 0.0, behind))
        yield TrimRun(
            name=f"{wall.name} end trim {number}",
            role=Role.CORNER_TRIM,
            group=("trims", wall.name),
            labels=lines.labels(wall.name, "corner"),
            frame=frame,
            line=line if into < 0 else mirrored(line),
            thickness=t,
            start=Plane((0.0, 0.0, lines.foot), ALONG),
            end=short_of_roof(lines, eave, frame, eave.height),
            nest=(into * t, t),
            notches=tuple(notches),
        )


def _at_slab(
    lines: TrimLines, before: Face, after: Face, legs: Point2
) -> tuple[tuple[float, float, Box], ...]:
    """What a corner trim that stands in a ledge loses of its leg on an open wall: the slab is there."""
    if not lines.building.slab.ledge_depth or not (before.open_at("right") or after.open_at("left")):
        return ()
    room, (near, far) = lines.lap_room + lines.thickness + 1, legs
    box = (-1.0, -near - 1, room, 0.0) if before.open_at("right") else (-far - 1, -1.0, 0.0, room)
    return ((lines.foot - 1, 0.0, box),)
