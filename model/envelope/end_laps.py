"""End laps: where a sheet up a slope or a wall is not long enough, the next one lies over its head, on a
purlin or a girt.

Common practice throughout, no source; the lap's own length is the person's, or follows the pitch.
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from math import inf

from ..description.skin import Sheets
from ..place import Point2
from .face import Face
from .lengths import ROUNDING, SHORTEST, stepped_down, stepped_up
from .tiers import Seam

PAST_ROW = 38.1
"""mm; an upper sheet's foot lies so far (1-1/2 in) downhill of its row of screws, or up to a step more."""

STEEP = 3 / 12
"""Rise in one of run from which on the shorter lap does."""

ON_STEEP, ON_FLAT, ON_WALL = 152.4, 304.8, 101.6
"""mm; end laps of roofs (6 in, 12 in) and of walls (4 in)."""


BESIDE_EDGE = 152.4
"""mm; past a lap's own length, how far sheets lap from an opening's head or sill (6 in). Ours."""


@dataclass(frozen=True, slots=True)
class EndLap:
    """Heights on a face (mm). row: of the screws through both sheets. foot: where the upper sheets begin;
    head: where the lower ones end."""

    row: float
    foot: float
    head: float


def least_lap(sheets: Sheets, rise: float) -> float:
    """How far sheets of a slope lie over each other at the least: as asked, or by its rise in one of run."""
    return sheets.end_lap or (ON_STEEP if rise >= STEEP - 1e-9 else ON_FLAT)


def barred_by(wall: Face, lap: float) -> Iterator[Point2]:
    """Heights between which a wall's openings let no sheets lap: at their edges; one that takes a whole sheet
    all along it, since the sheet over it would lie on none."""
    profile, clear = wall.upper.skin.profile, lap + BESIDE_EDGE
    for opening in wall.openings:
        sill, head = opening.sill, opening.sill + opening.height
        if opening.width > profile.cover - 4 * profile.leg:
            yield sill - clear, head + clear
            continue
        yield from ((v - clear, v + clear) for v in (sill, head) if v > 0.0)


def barred_at(seam: Seam, lap: float) -> Point2:
    """Heights between which no sheets lap near a seam."""
    return seam.head - lap - BESIDE_EDGE, seam.foot + lap + BESIDE_EDGE


@dataclass(frozen=True)
class UpSlope:
    """What the sheets of a slope reach over, and where they may lap (mm). foot, head: heights of their ends.
    rows: of the screws on each line of steel, ascending. lap: the least. lowest: of the heads, where they are
    raked; None where they are level. most: how many laps there is room for; None for any."""

    foot: float
    head: float
    rows: tuple[float, ...]
    lap: float
    lowest: float | None = None
    most: int | None = None

    @cached_property
    def usable(self) -> list[float]:
        """The rows that leave the lowest and the uppermost sheet as long as a mill makes them."""
        head = self.head if self.lowest is None else self.lowest
        low, high = self.foot + SHORTEST, head - SHORTEST
        return [row for row in self.rows if low < row - PAST_ROW < high]

    @cached_property
    def lengths(self) -> list[float]:
        """Every length that a sheet between usable rows or ends can have, ascending."""
        feet = (self.foot, *(row - PAST_ROW for row in self.usable))
        heads = (self.head, *(row - PAST_ROW + self.lap for row in self.usable))
        return sorted({head - foot for foot in feet for head in heads if head > foot})

    def lapped(self, longest: float) -> list[float] | None:
        """On which rows sheets lap that are as long as they may be, from the foot up; None where none will
        do."""
        start, most = self.foot, longest + ROUNDING
        found: list[float] = []
        while self.head - start > most:
            within = [row for row in self.usable if SHORTEST <= row - PAST_ROW + self.lap - start <= most]
            if not within or (found and within[-1] <= found[-1]):
                return None
            found.append(within[-1])
            start = within[-1] - PAST_ROW
        return found if self.most is None or len(found) <= self.most else None

    def count(self, longest: float) -> float:
        """How many laps such sheets make; infinitely many where none will do."""
        found = self.lapped(longest)
        return inf if found is None else len(found)


def end_laps(slope: UpSlope, sheets: Sheets) -> tuple[EndLap, ...] | None:
    """The end laps of a slope, from its foot up: fewest sheets, then the most even lengths, the shorter ones
    on top. None where the rows let no sheet be short enough."""
    longest = stepped_down(sheets.longest, sheets.step)
    lengths = [length for length in slope.lengths if length <= longest]
    while (fewest := slope.lapped(longest)) is None and lengths:
        longest = lengths.pop()  # where the longest leave a stub on top, shorter ones may not
    if not fewest:
        return None if fewest is None else ()
    lengths = [length for length in slope.lengths if length <= longest]
    even = bisect_left(lengths, True, key=lambda most: slope.count(most) <= len(fewest))
    return _fitted(slope, slope.lapped(lengths[even]) or fewest, sheets.step)


def least_longest(slope: UpSlope, sheets: Sheets) -> float:
    """The shortest length (mm, whole steps) that would do where sheets come in no longer ones."""
    return stepped_up(next(most for most in slope.lengths if slope.lapped(most) is not None), sheets.step)


def _fitted(slope: UpSlope, rows: Sequence[float], step: float) -> tuple[EndLap, ...]:
    """Laps on rows, each sheet whole steps long: feet reach farther down from the rows, the lowest sheets'
    heads farther up."""
    end, found = slope.head, []
    for row in reversed(rows):
        foot = end - stepped_up(end - (row - PAST_ROW), step)
        end = foot + slope.lap
        if row == rows[0]:
            end = slope.foot + stepped_up(end - slope.foot, step)
        found.append(EndLap(row, foot, end))
    return tuple(reversed(found))
