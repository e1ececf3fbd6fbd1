"""From a shell to its faces, each with what meets at its edges."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from math import hypot

from ..description.building import Building
from ..place import Place, Point2, add, dot, unit
from .clad import regions_of
from .edges import AT_ANOTHER, Edge, angle_between, is_wall, kind_of
from .face import Face, Side
from .half import half_of
from .headwall import rafter_cuts
from .hung import hung_of
from .shell import Loop, Shell, along_foot
from .top_line import crossed


def faces_of(shell: Shell, building: Building) -> tuple[Face, ...]:
    """The faces of a shell, to be clad and framed as a building says."""
    return tuple(_face(shell, loop, building) for loop in shell.loops)


def _face(shell: Shell, loop: Loop, building: Building) -> Face:
    frame = shell.frame(loop)
    sides = tuple(_side(shell, loop, edge, building) for edge in loop.edges())
    is_open = loop.name in building.open_walls
    openings = tuple(opening for opening in building.openings if opening.wall == loop.name)
    wall, sheets = is_wall(frame.z), building.sheets
    skin = (sheets.gables if _raked(shell, loop) else sheets.sides) if wall else sheets.roof
    if not wall and (past := building.roof.gable_overhang):
        frame, sides = _run_on(frame, sides, past)
    gaps = tuple(_gaps(building, loop, frame))
    regions = () if is_open else regions_of(building, loop.name, sides, skin, wall, gaps)
    cuts = () if is_open else tuple(rafter_cuts(building, loop.name, frame))
    hung = hung_of(building, loop.name)
    half = half_of(building, loop.name)
    return Face(loop.name, frame, skin, sides, regions, openings, is_open, gaps, cuts, hung=hung, half=half)


def _run_on(frame: Place, sides: tuple[Side, ...], past: float) -> tuple[Place, tuple[Side, ...]]:
    """A slope that runs on past its gables, in a frame that starts at its own corner."""
    lines = [side.moved(past if side.kind is Edge.RAKE else 0.0) for side in sides]
    corners = [crossed(lines[number - 1], line) for number, line in enumerate(lines)]
    (u, v), ends = corners[0], [*corners[1:], corners[0]]
    wider = tuple(
        replace(side, start=(a[0] - u, a[1] - v), end=(b[0] - u, b[1] - v))
        for side, a, b in zip(sides, corners, ends, strict=True)
    )
    return Place(frame.point((u, v, 0.0)), frame.x, frame.y).rounded(), wider


def _gaps(building: Building, loop: Loop, frame: Place) -> Iterator[Point2]:
    """The open bays of a wall, between the faces of the columns that sheets end at."""
    half = building.frame.column.width / 2
    for wall, start, end in building.open_bays:
        if wall == loop.name:
            ends = start + half if start > 0.0 else start, end - half if end < building.length else end
            one, other = (along_foot(frame, y) for y in ends)
            yield min(one, other), max(one, other)


def _open_there(building: Building, wall: str, y: float, here: str) -> bool:
    """Whether a wall is open at the corner of its end at y, as seen from another one there: of two walls with
    hung sheets neither is."""
    if wall in building.open_walls:
        return True
    if wall in building.hung_walls and here not in building.hung_walls:
        return True
    return any(one == wall and y in (start, end) for one, start, end in building.open_bays)


def _side(shell: Shell, loop: Loop, edge: tuple[int, int], building: Building) -> Side:
    frame, other, kind = shell.frame(loop), shell.beyond(edge), kind_of(shell, loop, edge)
    if kind is Edge.HIGH_EAVE and other is not None and building.joined in (loop.name, other.name):
        kind = Edge.HEADWALL
    if kind is Edge.CORNER and other is not None and _at_another(building, loop.name, other.name):
        kind = Edge.INSIDE_CORNER if {loop.name, other.name} & building.inset else Edge.IN_LINE
    start, end = (frame.seen(shell.vertices[number]) for number in edge)
    rise = _rise(shell, loop, edge, kind)
    ends = (Edge.CORNER, *AT_ANOTHER)
    covers = kind in ends and other is not None and _covers(shell, loop, other, edge)
    angle = angle_between(shell, loop, other, edge) if other else 90.0
    beyond = other.name if other else ""
    is_open = kind in ends and _open_there(building, beyond, shell.vertices[edge[0]][1], loop.name)
    return Side(kind, start[:2], end[:2], beyond, rise, angle, covers, is_open)


def _at_another(building: Building, name: str, other: str) -> bool:
    """Whether a clad wall ends at another building's: in line with it, where that one's corner is, or before
    it."""
    beside = {name, other} - {building.joined}
    return building.joined in (name, other) and not beside & building.open_walls


LEVEL = (Edge.EAVE, Edge.HIGH_EAVE, Edge.HEADWALL, Edge.RIDGE, Edge.BREAK, Edge.HOLLOW)


def _rise(shell: Shell, loop: Loop, edge: tuple[int, int], kind: Edge) -> float:
    """How much the slope at an edge (this face, or the one beyond) rises away from it in one of run."""
    other = shell.beyond(edge)
    if kind not in LEVEL or other is None:
        return 0.0
    slope = loop if not is_wall(shell.frame(loop).z) else other
    normal = shell.frame(slope).z
    start, end = (shell.vertices[number] for number in edge)
    along = unit(add(end, start, -1.0))
    # Level, square to the edge, and into the slope: on its left where the edge runs as its own loop does.
    left = (-along[1], along[0], 0.0) if slope is loop else (along[1], -along[0], 0.0)
    return -dot(normal, left) / normal[2] / hypot(*left)


def _covers(shell: Shell, loop: Loop, other: Loop, edge: tuple[int, int]) -> bool:
    """A gable's sheets run past the ends of a side wall's; of two alike those of the wall on the right."""
    raked, beyond = (_raked(shell, one) for one in (loop, other))
    return raked if raked != beyond else edge == (loop.corners[-1], loop.corners[0])


def _raked(shell: Shell, loop: Loop) -> bool:
    return any(kind_of(shell, loop, edge) is Edge.RAKE for edge in loop.edges())
