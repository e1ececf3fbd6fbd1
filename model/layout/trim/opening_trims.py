"""Trims around openings: sill and J-trims, for overhead doors jamb and head angles, a drip over all."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from ...description.opening import Opening
from ...envelope.face import Face
from ...envelope.skin_lines import DRIP_PAST, SHELF_FALL, head_angle
from ...place import Place, Point3
from ...roles import Role
from ..steel.straight_member import Plane
from .closed_ends import drip_end
from .shelves import Shelf, nest_of_shelf
from .trim_lines import TrimLines
from .trim_run import Box, TrimRun, mirrored

ALONG: Point3 = (0.0, 0.0, 1.0)
EARS = 12.7
"""mm; leg and lip of a drip run on past its shelf, behind and before the sheets' cut edge (1/2 in). Ours."""

HAIR = 0.5
"""mm; between the end of a sill's shelf and the edge of the sheet beside it. Ours."""

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


def _pocket(lines: TrimLines, face: Face, name: str, opening: Opening) -> Iterator[TrimRun]:
    """In shingle order: a sill, J's up both sides that lap in front of its ends and drain onto it and the
    sheet below; the drip comes over them."""
    edges = _edges(lines, face, opening)
    if opening.sill > 0:
        yield _sill(lines, face, f"{name} sill trim", edges["sill"])
    for edge in ("left", "right"):
        yield _handed(_jamb(lines, face, f"{name} j trim {edge}", edges[edge], opening.sill > 0), edge)


def _jamb(
    lines: TrimLines, face: Face, name: str, edge: tuple[Place, float, float], on_sill: bool
) -> TrimRun:
    """A J up to the drip: flange on the framing, web, lip over the sheet's ribs; down past a sill, its lip so
    far before the sill's that water comes down between them. At a lap only the webs nest: flange and lip of
    the under end are snipped."""
    t, legs, room = lines.thickness, lines.profile("j"), lines.lap_room
    frame, start, end = edge
    reach, deep = legs.in_plane, _lip(lines, face) + room + t
    notches: list[tuple[float, float, Box]] = []
    if on_sill:
        # All but the lip stands on the sill, which rises so far towards the steel, and where it laps.
        start = -DRIP_PAST
        notches = [(start - 1, SHELF_FALL + room, (-room - 1, -1.0, reach + 1, deep - t))]
    elif start < 0 and end - start > max(lines.stock(Role.J_TRIM)):
        # A lapped run leans into the opening, where in a ledge the slab stands beside its foot.
        notches = [(start - 1, 0.0, (-room - 1, -1.0, 0.0, deep + 1))]
    return TrimRun(
        name=name,
        role=Role.J_TRIM,
        group=("trims", face.name),
        labels=lines.labels(face.name, "opening"),
        frame=frame,
        line=((reach, 0.0), (0.0, 0.0), (0.0, deep), (legs.out_of_plane, deep)),
        thickness=t,
        start=Plane((0.0, 0.0, start), ALONG),
        end=Plane((0.0, 0.0, end - SHELF_FALL - room), ALONG),
        nest=(-t, 0.0),
        snips=((-3 * t, -1.0, reach + 1, t), (-3 * t, deep - t, reach + 1, deep + 1)),
        notches=tuple(notches),
    )


def _lip(lines: TrimLines, face: Face) -> float:
    """w of the outer face of a sill's lip, over the sheets below it."""
    return lines.crown(face) + 2 * lines.thickness


def _sill(lines: TrimLines, face: Face, name: str, edge: tuple[Place, float, float]) -> TrimRun:
    """A flange behind the sheet below, a shelf that falls outward as far as it rises over the steel, a lip
    over that sheet. The shelf fills the hole; flange and lip run on behind and before its edges."""
    t, legs, deep = lines.thickness, lines.profile("j"), _lip(lines, face)
    frame, start, end = edge
    low, high = start - DRIP_PAST, end + DRIP_PAST
    hole = lines.building.sheets.cut_clearance - HAIR
    reach, shelf = legs.in_plane, (-SHELF_FALL - 3 * t, t, 3 * t, deep - t)
    return TrimRun(
        name=name,
        role=Role.SILL_TRIM,
        group=("trims", face.name),
        labels=lines.labels(face.name, "opening"),
        frame=frame,
        line=((reach, 0.0), (-SHELF_FALL, 0.0), (0.0, deep), (legs.out_of_plane, deep)),
        thickness=t,
        start=Plane((0.0, 0.0, low), ALONG),
        end=Plane((0.0, 0.0, high), ALONG),
        nest=(-nest_of_shelf(t, deep), 0.0),
        snips=(
            (-SHELF_FALL - 3 * t, -1.0, reach + 1, t),
            (-3 * t, deep - t, reach + 1, deep + 1),
        ),
        notches=((low - 1, start - hole, shelf), (end + hole, high + 1, shelf)),
    )


def _angles(lines: TrimLines, face: Face, name: str, opening: Opening) -> Iterator[TrimRun]:
    """Jamb angles and a head angle around an overhead door.

    The head angle is as long as the opening is wide, the jambs end square under it, so that one that needs no
    notch at its foot fits either side. In a ledge the flanges go down to its floor, their other legs notched
    at the slab.
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
            high = end - room
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
    t, legs, deep = lines.thickness, lines.profile("drip"), _lip(lines, face) + lines.thickness
    deep += 2 * lines.lap_room
    frame, start, end = _edges(lines, face, opening)["head"]
    section = Shelf(legs.in_plane, legs.out_of_plane, deep, t)
    low, high = start - DRIP_PAST - EARS, end + DRIP_PAST + EARS
    shelf: Box = (-SHELF_FALL - 3 * t, t, 3 * t, deep)
    left, right = start - DRIP_PAST, end + DRIP_PAST
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
        notches=((low - 1, left, shelf), (right, high + 1, shelf)),
        start_tabs=drip_end(lines, face, opening.from_left + left, section, (left, low)),
        end_tabs=drip_end(lines, face, opening.from_left + right, section, (right, high)),
    )
