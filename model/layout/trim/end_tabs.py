"""Ends of trims that are folded over: a tab of a leg, bent square to it across the end of the trim, so that
nothing stands open there. It is of the stick itself, which is cut so much longer."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import shapely

from ...place import Place, Point2, Point3
from ...recipe import Prism, Recipe, Section, grid

CLEAR = 0.8
"""mm; between a tab and what it is folded in front of, or beside (1/32 in). Ours."""

LEAST = 3.0
"""mm; a tab that would reach less far is not folded. Ours."""


@dataclass(frozen=True, slots=True)
class Tab:
    """One of them.

    ring: (n, 2) its outline in a run's (x, y), the leg it hangs on included. takes: mm of stick that it is
    folded from. at: where along the run it stands, away from the piece's middle; None at the piece's own end.
    """

    ring: tuple[Point2, ...]
    takes: float
    at: float | None = None


def tab(
    corners: Sequence[Point2], reach: float, thickness: float, at: float | None = None
) -> tuple[Tab, ...]:
    """A tab with these corners, in any order round, that reaches so far from its leg's outer face; none where
    that is next to nothing."""
    if reach - thickness < LEAST:
        return ()
    ring = shapely.geometry.polygon.orient(shapely.Polygon(corners)).exterior.coords[:-1]
    return (Tab(tuple((x, y) for x, y in ring), 0.0 if at is not None else reach, at),)


def folded(one: Tab, thickness: float, end: Point3, away: float) -> tuple[Recipe, Place]:
    """A tab as a plate in a piece's own frame. end: the plane (a, b, c) z = a*x + b*y + c that it lies on.
    away: 1 where it lies past it, -1 before it."""
    a, b, c = end
    far = c + away * thickness
    section = Section(tuple((grid(x), grid(y), 0.0) for x, y in one.ring))
    return Prism(section, (a, b, 0.0), (a, b, grid(thickness))), Place((0.0, 0.0, grid(min(c, far))))
