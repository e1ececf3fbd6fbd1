"""Trims around openings: J-trim, and for overhead doors jamb and head angles with a J over them as a drip."""

from __future__ import annotations

from collections.abc import Iterator

from ..description.building import Opening
from ..place import Place, Point3
from ..roles import Role
from .faces import Face, head_angle
from .member import Plane
from .trim_lines import TrimLines
from .trim_run import TrimRun

ALONG: Point3 = (0.0, 0.0, 1.0)
UPRIGHT, RIGHT, DOWN, LEFT = (0.0, 1.0, 0.0), (1.0, 0.0, 0.0), (0.0, -1.0, 0.0), (-1.0, 0.0, 0.0)


def opening_runs(lines: TrimLines, face: Face) -> Iterator[TrimRun]:
    """Every opening's trims, in the order they are fixed: before the sheets."""
    for number, opening in enumerate(face.openings, 1):
        name = f"{face.name} {opening.kind} {number}"
        if opening.kind == "overhead door":
            yield from _angles(lines, face, name, opening)
            yield _drip(lines, face, name, opening)
        else:
            yield from _pocket(lines, face, name, opening)


def _edges(lines: TrimLines, face: Face, opening: Opening) -> dict[str, tuple[Place, float, float]]:
    """Each edge's frame and where it begins and ends along z, clockwise as seen from outside.

    x away from the opening, y out of the wall, z along the edge: up the left side, right over the
    head, down the right side, left under the sill. z is 0 at the opening's corner it leaves from; a
    side without a sill begins or ends at the sheets' feet.
    """
    left, right = opening.from_left, opening.from_left + opening.width
    low, top = opening.sill, opening.sill + opening.height
    below = 0.0 if opening.sill > 0 else opening.sill - lines.foot
    out = (0.0, 0.0, 1.0)

    def frame(u: float, v: float, x: Point3) -> Place:
        return face.frame @ Place((u, v, 0.0), x, out)

    return {
        "left": (frame(left, low, LEFT), -below, opening.height),
        "head": (frame(left, top, UPRIGHT), 0.0, opening.width),
        "right": (frame(right, top, RIGHT), 0.0, opening.height + below),
        "sill": (frame(right, low, DOWN), 0.0, opening.width),
    }


def _j_line(lines: TrimLines) -> tuple[tuple[float, float], ...]:
    """A J in (x, y): flange on the framing, web, lip over the sheet's ribs."""
    legs, depth = lines.profile("j"), lines.crown + 2 * lines.thickness
    return ((legs.in_plane, 0.0), (0.0, 0.0), (0.0, depth), (legs.out_of_plane, depth))


def _j(lines: TrimLines, face: Face, name: str, frame: Place, ends: tuple[Plane, Plane]) -> TrimRun:
    """One J along one edge. At a lap only the webs nest: flange and lip of the under end are snipped."""
    t, line = lines.thickness, _j_line(lines)
    depth, reach = line[2][1], line[0][0]
    return TrimRun(
        name=name,
        role=Role.J_TRIM,
        group=("trims", face.name),
        labels=_labels(lines, face),
        frame=frame,
        line=line,
        thickness=t,
        start=ends[0],
        end=ends[1],
        nest=(-t, 0.0),
        snips=((-3 * t, -1.0, reach + 1, t), (-3 * t, depth - t, reach + 1, depth + 1)),
    )


def _pocket(lines: TrimLines, face: Face, name: str, opening: Opening) -> Iterator[TrimRun]:
    """J-trim on all sides that have an edge, mitred at the corners."""
    edges = _edges(lines, face, opening)
    if opening.sill <= 0:
        del edges["sill"]
    for edge, (frame, start, end) in edges.items():
        # A mitre bisects the corner: z falls back as x (away from the opening) grows, or runs on.
        first = Plane((0.0, 0.0, start), (1.0, 0.0, 1.0))
        last = Plane((0.0, 0.0, end), (-1.0, 0.0, 1.0))
        if opening.sill <= 0 and edge == "left":
            first = Plane((0.0, 0.0, start), ALONG)
        if opening.sill <= 0 and edge == "right":
            last = Plane((0.0, 0.0, end), ALONG)
        yield _j(lines, face, f"{name} j trim {edge}", frame, (first, last))


def _angles(lines: TrimLines, face: Face, name: str, opening: Opening) -> Iterator[TrimRun]:
    """Jamb angles and a head angle around an overhead door.

    The head angle is as long as the opening is wide. The jambs' flanges run up past it, their other
    legs notched back under it, so that no square gap is left at the corner.
    """
    t, flange = lines.thickness, lines.profile("jamb angle").in_plane
    # A jamb longer than its stock is two pieces, the upper one of which leans into the opening.
    room = lines.lap_room
    depth = lines.building.framing.jamb.depth
    line = ((flange, 0.0), (0.0, 0.0), (0.0, -depth))
    for edge, (frame, start, end) in _edges(lines, face, opening).items():
        if edge == "sill":
            continue
        low, high = (max(start, 0.0), end) if edge == "left" else (start, min(end, _length(edge, opening)))
        notches: tuple[tuple[float, float, tuple[float, float, float, float]], ...] = ()
        inner = (-room - 1, -depth - 1, 0.0, t + 1)
        if edge == "head" and opening.height + flange > lines.building.trim.stock:
            low, high = low + room, high - room
        elif edge == "left":
            high = end + flange
            notches = ((end - room, high + 1, inner),)
        elif edge == "right":
            low = start - flange
            notches = ((low - 1, start + room, inner),)
        yield TrimRun(
            name=f"{name} {'head' if edge == 'head' else 'jamb'} angle{'' if edge == 'head' else ' ' + edge}",
            role=Role.HEAD_ANGLE if edge == "head" else Role.JAMB_ANGLE,
            group=("trims", face.name),
            labels=_labels(lines, face),
            frame=frame,
            line=line,
            thickness=t,
            start=Plane((0.0, 0.0, low), ALONG),
            end=Plane((0.0, 0.0, high), ALONG),
            nest=(-t, 0.0),
            snips=((-3 * t, 0.0, flange + 1, t + 1),),
            notches=notches,
        )


def _length(edge: str, opening: Opening) -> float:
    """How long an edge of the opening itself is: the angles stand on the slab, whatever the ledge."""
    return opening.width if edge == "head" else opening.height


def _drip(lines: TrimLines, face: Face, name: str, opening: Opening) -> TrimRun:
    """A J over the head angle, between the edges of the sheets beside the door."""
    clear = lines.building.sheets.cut_clearance
    frame, start, end = _edges(lines, face, opening)["head"]
    raised = frame @ Place((head_angle(lines.building, opening), 0.0, 0.0))
    ends = (Plane((0.0, 0.0, start - clear), ALONG), Plane((0.0, 0.0, end + clear), ALONG))
    return _j(lines, face, f"{name} drip", raised, ends)


def _labels(lines: TrimLines, face: Face) -> tuple[tuple[str, str], ...]:
    trim = lines.building.trim
    return (("face", face.name), ("gauge", trim.gauge), ("colour", trim.colour), ("material", "steel"))
