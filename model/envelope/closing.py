"""What closes each edge of the shell: one row for every kind, by how many of its faces are clad there.

A kind that has no row cannot be built yet, and `check` says so. Common practice throughout, no source.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from ..description.reading.positions import Path
from ..roles import Role
from .edges import Edge
from .face import Face, Side

Objection = tuple[Path, str]


@dataclass(frozen=True, slots=True)
class Closing:
    """trim: what runs along the edge, None where nothing needs it. foam: what closes ribs there: inside
    closures under sheets' feet, outside ones over their heads. caps: whether the trim lies over the heads of
    a slope's sheets."""

    trim: Role | None = None
    foam: tuple[Role, ...] = ()
    caps: bool = False


INSIDE, OUTSIDE = Role.INSIDE_CLOSURE, Role.OUTSIDE_CLOSURE

CLOSINGS: Mapping[tuple[Edge, int], Closing] = {
    (Edge.BASE, 1): Closing(Role.BASE_TRIM),
    (Edge.BASE, 0): Closing(),
    (Edge.CORNER, 2): Closing(Role.CORNER_TRIM),
    (Edge.CORNER, 1): Closing(Role.CORNER_TRIM),
    (Edge.CORNER, 0): Closing(),
    (Edge.IN_LINE, 1): Closing(Role.CORNER_TRIM),
    (Edge.IN_LINE, 0): Closing(),
    (Edge.INSIDE_CORNER, 1): Closing(Role.INSIDE_CORNER_TRIM),
    (Edge.EAVE, 2): Closing(Role.EAVE_TRIM, (INSIDE, OUTSIDE)),
    (Edge.EAVE, 1): Closing(Role.EAVE_TRIM, (INSIDE,)),
    (Edge.HIGH_EAVE, 2): Closing(Role.EAVE_TRIM, (INSIDE, OUTSIDE)),
    (Edge.HIGH_EAVE, 1): Closing(Role.EAVE_TRIM, (INSIDE,)),
    (Edge.RAKE, 2): Closing(Role.RAKE_TRIM),
    (Edge.RAKE, 1): Closing(Role.RAKE_TRIM),
    (Edge.RIDGE, 2): Closing(Role.RIDGE_CAP, (OUTSIDE,), caps=True),
    (Edge.BREAK, 2): Closing(Role.BREAK_TRIM, (INSIDE, OUTSIDE), caps=True),
    (Edge.HOLLOW, 2): Closing(Role.BREAK_TRIM, (INSIDE, OUTSIDE), caps=True),
    (Edge.HEADWALL, 1): Closing(Role.FLASHING, (OUTSIDE,), caps=True),
}
"""By the edge and how many of the faces that meet there are clad; the wall over a headwall is another
building's, as is one of those at an inside corner. A gutter stands in an eave trim's place, where one is
asked for."""


def clad_at(named: Mapping[str, Face], face: Face, side: Side) -> int:
    """How many of the faces at an edge are clad there."""
    faces = [(face, side)]
    if side.other in named:
        other = named[side.other]
        faces += [
            (other, back) for back in other.sides if back.other == face.name and back.kind is side.kind
        ][:1]
    return sum(_clad(one, at) for one, at in faces)


def _clad(face: Face, side: Side) -> bool:
    if face.sloped:
        return True
    if side.kind is Edge.BASE:
        return not (face.open or face.hung)
    for hand in ("left", "right"):
        if side is face.beside(hand):
            return not face.bare_at(hand)
    return not face.open_above


def closing(named: Mapping[str, Face], face: Face, side: Side) -> Closing | None:
    """What closes an edge; None where no row says it: `unclosed` objects to that."""
    return CLOSINGS.get((side.kind, clad_at(named, face, side)))


def unclosed(named: Mapping[str, Face]) -> Iterator[Objection]:
    """Edges that nothing is known to close."""
    for face in named.values():
        for side in face.sides:
            if closing(named, face, side) is None:
                yield ("roof", "shape"), f"a shape without a {side.kind}: what closes one is not yet possible"
