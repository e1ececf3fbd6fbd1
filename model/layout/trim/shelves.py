"""Trims that shed water over what ends under them: a back leg up behind sheets, a shelf that falls outward, a
lip turned down. Over openings they are drips, at the seam of two tiers the trim there."""

from __future__ import annotations

from dataclasses import dataclass
from math import hypot

from ...envelope.skin_lines import SHELF_FALL
from ...place import Point2
from .trim_run import Box


def nest_of_shelf(thickness: float, deep: float) -> float:
    """How far a trim stands off another one, measured up, whose shelves lie on each other."""
    return thickness * hypot(SHELF_FALL, deep) / deep


@dataclass(frozen=True, slots=True)
class Shelf:
    """Its section, x up and y out of the wall (mm). leg, lip: from bend to edge. deep: from the steel line to
    the lip's inner face. thickness: of the trim."""

    leg: float
    lip: float
    deep: float
    thickness: float

    @property
    def edge(self) -> float:
        """x of the lip's lower edge."""
        return -SHELF_FALL - self.lip

    @property
    def line(self) -> tuple[Point2, ...]:
        """Its inner faces, from the leg's upper edge to the lip's lower one."""
        return ((self.leg, 0.0), (0.0, 0.0), (-SHELF_FALL, self.deep), (self.edge, self.deep))

    @property
    def nest(self) -> float:
        """How far a piece stands off the one it laps: only the shelves nest."""
        return nest_of_shelf(self.thickness, self.deep)

    @property
    def flange(self) -> Box:
        """What takes away the back leg."""
        return (-3 * self.thickness, -1.0, self.leg + 1, self.thickness)

    @property
    def snips(self) -> tuple[Box, Box]:
        """What the under one of two lapped pieces loses: leg and lip."""
        t = self.thickness
        return self.flange, (self.edge - 3 * t, self.deep, 3 * t, self.deep + t + 1)
