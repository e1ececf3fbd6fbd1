"""Which bays are braced, where a description leaves it open. Common practice throughout, no source."""

from __future__ import annotations

from itertools import pairwise

from ..place import Point2
from .building import Building
from .opening import Opening
from .said_limits import over, under

LONG = 4
"""A building of more bays than this is braced at both ends."""


def bay_spans(building: Building) -> tuple[Point2, ...]:
    """From which y to which each bay runs, from the front: frames' centre planes, and the ends."""
    return tuple(pairwise((0.0, *building.frame.stations, building.length)))


def in_bay(building: Building, bay: int) -> list[Opening]:
    """The openings of the side walls that stand in a bay, counted from one: no brace crosses one."""
    low, high = bay_spans(building)[bay - 1]
    found = []
    for opening in building.openings:
        if opening.wall in ("left", "right"):
            start, end = _along(building, opening)
            found += [opening] if under(start, high) and over(end, low) else []
    return found


def _along(building: Building, opening: Opening) -> Point2:
    """y from and to which an opening of a side wall runs: the left wall is read from the back."""
    start = opening.from_left
    if opening.wall == "left":
        start = building.length - opening.from_left - opening.width
    return start, start + opening.width


def free_bays(building: Building) -> tuple[int, ...]:
    """The bays with no opening in either side wall, from the front."""
    return tuple(bay for bay in range(1, len(bay_spans(building)) + 1) if not in_bay(building, bay))


def at_ends(building: Building) -> tuple[int, ...]:
    """An end bay, or the next to it, without an opening: the front's, else the back's; in a long building one
    at each end. Of the two a clad one comes before one that stands open. Empty where there is none."""
    count, free = len(bay_spans(building)), free_bays(building)
    front, back = (
        [bay for bay in sorted(bays, key=lambda one: _stands_open(building, one)) if bay in free][:1]
        for bays in ((1, 2), (count, count - 1))
    )
    chosen = (*front, *back) if count > LONG else front or back
    return tuple(sorted(set(chosen)))


def _stands_open(building: Building, bay: int) -> bool:
    if not 1 <= bay <= len(bay_spans(building)):
        return False
    low, high = bay_spans(building)[bay - 1]
    stretches = [(start, end) for _, start, end in building.open_bays]
    stretches += [(0.0, building.length)] if building.open_walls & {"left", "right"} else []
    return any(under(start, high) and over(end, low) for start, end in stretches)
