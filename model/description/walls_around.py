"""Walls by the way they lie around a building, also of one that stands turned beside another."""

from __future__ import annotations

from .building import Building, Wall

AROUND: tuple[Wall, ...] = ("front", "right", "back", "left")
"""Counter-clockwise from above."""
TURNS: dict[Wall | None, int] = {"back": 1, "front": 3}
"""Quarter turns, counter-clockwise, that a building stands turned by whose wall of that name is joined: one
at a gable has its slope's fall along the other building's length."""


def around(building: Building) -> tuple[Wall, ...]:
    """The names of a building's own walls, counter-clockwise from the one at its y = 0."""
    turns = TURNS.get(building.joined, 0)
    return AROUND[turns:] + AROUND[:turns]


def opposite(wall: Wall) -> Wall:
    """The wall across the building."""
    return AROUND[(AROUND.index(wall) + 2) % len(AROUND)]


def is_gable(wall: Wall) -> bool:
    """Whether a wall of a building that is not turned is a gable."""
    return wall in ("front", "back")
