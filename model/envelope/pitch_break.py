"""Where a slope changes its pitch: how its two planes meet under the trim there, and where sheets end at it.

The trim has one bend, along the line in which the upper slope's steel plane meets a plane over the crowns of
the lower slope's sheets: below the break where the roof is convex, above it where it is hollow. Its upper leg
lies on the purlins under the upper sheets, its lower leg over the heads of the lower ones. Common practice,
no source, unless one is named.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import atan, radians, sin, tan

from ..description.building import Building
from .edges import Edge
from .face import Face, Side
from .skin_lines import HEAD_CLEARANCE, lap_room, outermost

BREAKS = (Edge.BREAK, Edge.HOLLOW)
"""What a slope's head or foot is where its pitch changes."""

HANG = 19.05
"""mm; the upper sheets' feet end so far (3/4 in) past the trim's bend where the roof is convex, where it is
hollow so far before it."""


@dataclass(frozen=True, slots=True)
class PitchBreak:
    """A break, distances along the two slopes (mm) from where their steel planes meet, upward.

    turn: by how much the upper slope is flatter, radians; below nought in a hollow. pitch: of the lower
    slope, radians. over: from the lower steel plane to the inner face of the trim's lower leg, square to it.
    """

    turn: float
    pitch: float
    over: float

    @property
    def upper(self) -> float:
        """Pitch of the upper slope, radians."""
        return self.pitch - self.turn

    @property
    def bend(self) -> float:
        """Of the trim's bend, up the upper slope."""
        return -self.over / sin(self.turn)

    @property
    def foot(self) -> float:
        """Of the upper sheets' feet, up the upper slope."""
        return self.bend - HANG if self.turn > 0.0 else self.bend + HANG

    @property
    def below_foot(self) -> float:
        """From the upper steel plane, square to it, down to the lower one under the upper sheets' feet; 0 in
        a hollow, where that lies over it."""
        return max(0.0, -self.foot * tan(self.turn))

    def head(self, gap: float) -> float:
        """Of the lower sheets' heads, up the lower slope: they end under the bend, or in a hollow so far
        before the break."""
        return -self.over / tan(self.turn) - HEAD_CLEARANCE if self.turn > 0.0 else -gap

    def beside(self, depth: float) -> float:
        """What a member so deep, square to a slope, leans towards the other slope's at the break."""
        return max(0.0, depth * tan(self.turn / 2))


def break_at(building: Building, side: Side) -> PitchBreak:
    """The break at a slope's head or at its foot."""
    turn = radians(180.0 - side.angle)
    below = atan(-side.rise) if side.rise < 0.0 else atan(side.rise) + turn
    return PitchBreak(turn, below, over_crowns(building))


def over_crowns(building: Building) -> float:
    """Steel plane of a slope to the inner face of the trim over its sheets' heads."""
    return outermost(building.sheets, building.sheets.roof) + lap_room(building)


def break_over(building: Building, slope: Face) -> PitchBreak | None:
    """The break at a slope's head; None where it ends at something else."""
    head = slope.sides[2]
    return break_at(building, head) if head.kind in BREAKS else None


def break_under(building: Building, slope: Face) -> PitchBreak | None:
    """The break at a slope's foot; None over an eave."""
    foot = slope.sides[0]
    return break_at(building, foot) if foot.kind in BREAKS else None
