"""Trims around openings: J-trim, and for overhead doors jamb and head angles with a drip over them."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from ...description.building import Opening
from ...envelope.face import Face
from ...envelope.skin_lines import DRIP_PAST, SHELF_FALL, head_angle
from ...place import Place, Point3
from ...roles import Role
from ..steel.straight_member import Plane
from .shelves import Shelf
from .trim_lines import TrimLines
from .trim_run import Box, TrimRun, mirrored

ALONG: Point3 = (0.0, 0.0, 1.0)
EARS = 12.7
"""mm; leg and lip of a drip run on past its shelf, behind and before the sheets' cut edge (1/2 in). Ours."""

UPRIGHT, DOWN, LEFT = (0.0, 1.0, 0.0), (0.0, -1.0, 0.0), (-1.0, 0.0, 0.0)


def opening_runs(lines: TrimLines, face: Face) -> Iterator[TrimRun]:
    """Every opening's trims, in the order they are fixed: before the sheets."""
    for number, opening in enumerate(face.openings, 1):
        name = f"{face.name} {opening.kind} {number}"
        if opening.overhead:
            yield from _angles(lines, face, name, opening)
        else:
            yield from _pocket(lines, face, name, opening)
        yield _drip(lines, face, name, opening)


def _edges(lines: TrimLines, face: Face, opening: Opening) -> dict[str, tuple[Place, float, float]]:
    """Each edge's frame and where it begins and ends along z: both sides from the bottom up, the head to
    the right, the sill to the left.

    y out of the wall, z along the edge. x away from the opening, but on the right side into it: there
    sections are mirrored, so that on both sides the upper piece of a lap lies outside. z is 0 at the
    opening's corner it leaves from; a side without a sill begins on the concrete.
    """
    left, right = opening.from_left, opening.from_left + opening.width
    low, top = opening.sill, opening.sill + opening.height
    foot = 0.0 if opening.sill > 0 else lines.door_foot
    out = (0.0, 0.0, 1.0)

    def frame(u: float, v: float, x: Point3) -> Place:
        return face.frame @ Place((u, v, 0.0), x, out)

    return {
        "left": (frame(left, low, LEFT), foot, opening.height),
        "head": (frame(left, top, UPRIGHT), 0.0, opening.width),
        "right": (frame(right, low, LEFT), foot, opening.height),
        "sill": (frame(right, low, DOWN), 0.0, opening.width),
    }


def _handed(run: TrimRun, edge: str) -> TrimRun:
    """The run as it is, or seen in a mirror across y on an opening's right side."""
    if edge != "right":
        return run
    return replace(
        run,
        line=mirrored(run.line),
        nest=(-run.nest[0], run.nest[1]),
        snips=tuple(_across(box) for box in run.snips),
        notches=tuple((low, high, _across(box)) for low, high, box in run.notches),
        start=_turned(run.start),
        end=_turned(run.end),
    )


def _across(box: Box) -> Box:
    return (-box[2], box[1], -box[0], box[3])


def _turned(plane: Plane) -> Plane:
    (x, y, z), (a, b, c) = plane.point, plane.normal
    return Plane((-x, y, z), (-a, b, c))


def _j(lines: TrimLines, face: Face, name: str, frame: Place, ends: tuple[Plane, Plane]) -> TrimRun:
    """One J along one edge: flange on the framing, web, lip over the sheet's ribs. At a lap only the webs
    nest: flange and lip of the under end are snipped."""
    t, legs, depth = lines.thickness, lines.profile("j"), lines.crown(face) + 2 * lines.thickness
    reach = legs.in_plane
    return TrimRun(
        name=name,
        role=Role.J_TRIM,
        group=("trims", face.name),
        labels=lines.labels(face.name, "opening"),
        frame=frame,
        line=((reach, 0.0), (0.0, 0.0), (0.0, depth), (legs.out_of_plane, depth)),
        thickness=t,
        start=ends[0],
        end=ends[1],
        nest=(-t, 0.0),
        snips=((-3 * t, -1.0, reach + 1, t), (-3 * t, depth - t, reach + 1, depth + 1)),
    )


def _pocket(lines: TrimLines, face: Face, name: str, opening: Opening) -> Iterator[TrimRun]:
    """J-trim up both sides to the drip, and over the sheets under a sill, mitred at its corners."""
    edges = _edges(lines, face, opening)
    del edges["head"]
    if opening.sill <= 0:
        del edges["sill"]
    room, deep = lines.lap_room, lines.crown(face) + 2 * lines.thickness
    for edge, (frame, start, end) in edges.items():
        # A mitre bisects the corner: z falls back as x (away from the opening) grows, or runs on.
        first = Plane((0.0, 0.0, start), (1.0, 0.0, 1.0))
        last = Plane((0.0, 0.0, end), (-1.0, 0.0, 1.0))
        if edge != "sill":
            last = Plane((0.0, 0.0, end - SHELF_FALL - room), ALONG)
        run = _j(lines, face, f"{name} j trim {edge}", frame, (first, last))
        if opening.sill <= 0:
            run = replace(run, start=Plane((0.0, 0.0, start), ALONG))
            if start < 0 and end - start > max(lines.stock(Role.J_TRIM)):
                # A lapped run leans into the opening, where in a ledge the slab stands beside its foot.
                run = replace(run, notches=((start - 1, 0.0, (-room - 1, -1.0, 0.0, deep + 1)),))
        yield _handed(run, edge)


def _angles(lines: TrimLines, face: Face, name: str, opening: Opening) -> Iterator[TrimRun]:
    """Jamb angles and a head angle around an overhead door.

    The head angle is as long as the opening is wide, the jambs reach up to the underside of the header,
    their legs in the opening notched back under the head angle's. In a ledge the flanges go down to its
    floor, their other legs notched at the slab.
    """
    t = lines.thickness
    # A jamb longer than its stock is two pieces, the upper one of which leans into the opening.
    room = lines.lap_room
    depth = lines.building.framing.jamb.depth
    for edge, (frame, start, end) in _edges(lines, face, opening).items():
        if edge == "sill":
            continue
        head = edge == "head"
        flange = lines.profile("head angle" if head else "jamb angle").in_plane
        low, high = start, end
        notches: list[tuple[float, float, Box]] = []
        inner = (-room - 1, -depth - 1, 0.0, t + 1)
        if head and opening.height - min(lines.door_foot, 0.0) > max(lines.stock(Role.JAMB_ANGLE)):
            low, high = low + room, high - room
        elif not head:
            notches.append((end - room, high + 1, inner))
            if low < 0:
                notches.append((low - 1, 0.0, inner))
        run = TrimRun(
            name=f"{name} {'head' if head else 'jamb'} angle{'' if head else ' ' + edge}",
            role=Role.HEAD_ANGLE if head else Role.JAMB_ANGLE,
            group=("trims", face.name),
            labels=lines.labels(face.name, "opening"),
            frame=frame,
            line=((flange, 0.0), (0.0, 0.0), (0.0, -depth)),
            thickness=t,
            start=Plane((0.0, 0.0, low), ALONG),
            end=Plane((0.0, 0.0, high), ALONG),
            nest=(-t, 0.0),
            snips=((-3 * t, 0.0, flange + 1, t + 1),),
            notches=tuple(notches),
        )
        yield _handed(run, edge)


def _drip(lines: TrimLines, face: Face, name: str, opening: Opening) -> TrimRun:
    """Over the head, past both sides of the opening: a back leg behind the sheets above, a shelf that falls
    outward, a lip turned down before the lips of J's beside it. At a lap only the shelves nest."""
    t, legs, deep = lines.thickness, lines.profile("drip"), lines.crown(face) + 3 * lines.thickness
    deep += lines.lap_room
    frame, start, end = _edges(lines, face, opening)["head"]
    section = Shelf(legs.in_plane, legs.out_of_plane, deep, t)
    low, high = start - DRIP_PAST - EARS, end + DRIP_PAST + EARS
    shelf: Box = (-SHELF_FALL - 3 * t, t, 3 * t, deep)
    return TrimRun(
        name=f"{name} drip",
        role=Role.DRIP,
        group=("trims", face.name),
        labels=lines.labels(face.name, "opening"),
        frame=frame @ Place((head_angle(lines.building, opening), 0.0, 0.0)),
        line=section.line,
        thickness=t,
        start=Plane((0.0, 0.0, low), ALONG),
        end=Plane((0.0, 0.0, high), ALONG),
        nest=(-section.nest, 0.0),
        snips=section.snips,
        notches=((low - 1, start - DRIP_PAST, shelf), (end + DRIP_PAST, high + 1, shelf)),
    )
