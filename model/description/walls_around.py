"""Walls by the way they lie around a building, also of one that stands turned beside another."""

from __future__ import annotations

from dataclasses import replace

from .opening import Wall
from .skin import Sheets

AROUND: tuple[Wall, ...] = ("front", "right", "back", "left")
"""Counter-clockwise from above."""
TURNS: dict[Wall | None, int] = {"back": 1, "front": 3}
"""Quarter turns, counter-clockwise, that a building stands turned by whose wall of that name is joined: at a
gable of the other one, away from which its roof falls."""


def around(joined: Wall | None) -> tuple[Wall, ...]:
    """The names of a building's own walls, counter-clockwise from the one at its y = 0. joined: of them, the
    one at another building."""
    turns = TURNS.get(joined, 0)
    return AROUND[turns:] + AROUND[:turns]


def opposite(wall: Wall) -> Wall:
    """The wall across the building."""
    return AROUND[(AROUND.index(wall) + 2) % len(AROUND)]


def is_gable(wall: Wall) -> bool:
    """Whether a wall of a building that is not turned is a gable."""
    return wall in ("front", "back")


def sheets_beside(sheets: Sheets, wall: Wall) -> Sheets:
    """What covers a building at a wall of another one, whose sheets are given: at a gable its raked ends are
    in line with side walls, and its other walls look the way gables do."""
    return replace(sheets, sides=sheets.gables, gables=sheets.sides) if is_gable(wall) else sheets
