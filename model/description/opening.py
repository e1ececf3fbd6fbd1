"""Openings in a wall, as a description states them."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

Wall = Literal["front", "back", "left", "right"]
WALLS: tuple[Wall, ...] = ("front", "back", "left", "right")
OpeningKind = Literal[
    "walk door",
    "double door",
    "overhead door",
    "roll-up door",
    "sliding door",
    "window",
    "framed opening",
    "vent",
]
OVERHEAD: tuple[OpeningKind, ...] = ("overhead door", "roll-up door")
"""Doors that go up behind their opening."""
SLIDING: OpeningKind = "sliding door"
"""Hangs before its wall, on a rail."""


@dataclass(frozen=True, slots=True)
class Opening:
    """A rectangular opening in a wall (mm).

    wall: the name of its face, as the building calls it in whose list it stands; a building and its lean-tos
    have all openings in their lists, those of their own walls and the others. from_left: from the wall's left
    corner of the steel line, seen from outside, to the opening's left edge. sill: from the top of the slab to
    the opening's lower edge. colour: of the leaf, sash or louvre; None: white. swing: the side of the
    hinges seen from outside, and the way a door opens; "" where nobody said. slides: the way a sliding
    door's leaf goes, seen from outside, or "apart" of two; "" of others.
    """

    kind: OpeningKind
    wall: str
    width: float
    height: float
    from_left: float
    sill: float
    colour: str | None = None
    swing: str = ""
    slides: str = ""

    @property
    def overhead(self) -> bool:
        """Whether its leaf goes up behind the jambs, which end on the slab under a head angle."""
        return self.kind in OVERHEAD
