"""The room that an overhead door's tracks and opener need behind the wall, and what stands in it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import numpy as np
from numpy.typing import NDArray

from ...description.building import Building
from ...description.opening import Opening
from ...envelope.face import Face
from ...findings import Code, Finding
from ...recipe import Part, Prism
from ...roles import Role

Floats = NDArray[np.float64]
TOUCH = 1.0  # mm
COIL = 457.2
"""mm; how far behind the jambs a roll-up door's coil reaches (18 in). Common practice, no source."""


def in_the_doors_way(building: Building, face: Face, steel: Sequence[Part]) -> Iterator[Finding]:
    """A finding for every member that stands in the room of one of the face's overhead doors."""
    for number, opening in enumerate(face.openings, 1):
        if not opening.overhead:
            continue
        low, high = _room(building, opening)
        for part in steel:
            if part.role is Role.LEAF or not isinstance(part.recipe, Prism):
                continue
            if _meets(_corners(face, part), low, high):
                door = f"{face.name} overhead door {number}"
                yield Finding(Code.DOOR_ROOM, (part.name, door))


def _room(building: Building, opening: Opening) -> tuple[Floats, Floats]:
    """Lowest and highest (u, v, w) of the room, behind the jambs."""
    door, back = building.door_room, building.framing.jamb.depth
    depth = door.depth_back if door.depth_back is not None else opening.height + door.headroom
    foot, head = opening.sill, opening.sill + opening.height + door.headroom
    if opening.kind == "roll-up door":  # it is wound up over its head, and its tracks are in the jambs' plane
        foot, depth = opening.sill + opening.height, COIL
    low = (opening.from_left - door.side_room, foot, -back - depth)
    high = (opening.from_left + opening.width + door.side_room, head, -back)
    return np.array(low) + TOUCH, np.array(high) - TOUCH


def _corners(face: Face, part: Part) -> tuple[Floats, Floats]:
    """A member's section corners at both ends in the face's frame, (2n, 3), and its axes, (3, 3)."""
    recipe = part.recipe
    assert isinstance(recipe, Prism)
    points = [
        face.frame.seen(part.place.point((x, y, a * x + b * y + c)))
        for x, y, _ in recipe.section.outer
        for a, b, c in (recipe.start, recipe.end)
    ]
    origin = np.array(face.frame.seen(part.place.origin))
    axes = [
        np.array(face.frame.seen(part.place.point(axis))) - origin
        for axis in ((1.0, 0.0, 0.0), (0.0, 1.0, 0.0), (0.0, 0.0, 1.0))
    ]
    return np.array(points), np.array(axes)


def _meets(member: tuple[Floats, Floats], low: Floats, high: Floats) -> bool:
    """Whether a member's hull and an upright box share room: no axis separates them (boxes' 15 axes)."""
    points, axes = member
    if (points.max(0) <= low).any() or (points.min(0) >= high).any():
        return False  # most members stand clear by the box's own axes
    box = np.array(
        [[x, y, z] for x in (low[0], high[0]) for y in (low[1], high[1]) for z in (low[2], high[2])]
    )
    crosses = np.cross(axes[:, None], np.eye(3)).reshape(-1, 3)
    for axis in [*axes, *crosses]:
        if axis @ axis < 1e-12:
            continue
        a, b = points @ axis, box @ axis
        if a.max() <= b.min() or b.max() <= a.min():
            return False
    return True
