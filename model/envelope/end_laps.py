"""End laps: where a sheet up a slope is not long enough, the next one lies over its head, on a purlin.

Common practice throughout, no source; the lap's own length is the person's, or follows the pitch.
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil

from ..description.building import Sheets
from ..place import Point2
from .lengths import ROUNDING, SHORTEST, stepped_down

PAST_ROW = 38.1
"""mm; an upper sheet's foot lies so far (1-1/2 in) downhill of its row of screws, or up to a step more."""

STEEP = 3 / 12
"""Rise in one of run from which on the shorter lap does."""

ON_STEEP, ON_FLAT = 152.4, 304.8
"""mm; end laps of roofs (6 in, 12 in)."""


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


def end_laps(span: Point2, rows: Sequence[float], sheets: Sheets, lap: float) -> tuple[EndLap, ...] | None:
    """The end laps between a foot and a head, from the foot up: fewest sheets, then the most even lengths,
    the shorter ones on top. None where the rows let no sheet be short enough.

    rows: heights of the screws on each line of steel, ascending. lap: the least, mm.
    """
    longest, usable = stepped_down(sheets.longest, sheets.step), _usable(span, rows)
    fewest = _rows(span, usable, longest, lap)
    if not fewest:
        return None if fewest is None else ()
    lengths = [length for length in _lengths(span, usable, lap) if length <= longest]
    even = bisect_left(lengths, True, key=lambda most: _count(span, usable, most, lap) <= len(fewest))
    return _fitted(span, _rows(span, usable, lengths[even], lap) or fewest, sheets.step, lap)


def least_longest(span: Point2, rows: Sequence[float], sheets: Sheets, lap: float) -> float:
    """The shortest length (mm, whole steps) that would do where sheets come in no longer ones."""
    usable = _usable(span, rows)
    fits = (most for most in _lengths(span, usable, lap) if _rows(span, usable, most, lap) is not None)
    return _stepped_up(next(fits), sheets.step)


def _usable(span: Point2, rows: Sequence[float]) -> list[float]:
    """The rows that leave the lowest and the uppermost sheet as long as a mill makes them."""
    foot, head = span
    return [row for row in rows if foot + SHORTEST < row - PAST_ROW < head - SHORTEST]


def _lengths(span: Point2, rows: Sequence[float], lap: float) -> list[float]:
    """Every length that a sheet between rows or ends can have, ascending."""
    feet = (span[0], *(row - PAST_ROW for row in rows))
    heads = (span[1], *(row - PAST_ROW + lap for row in rows))
    return sorted({head - foot for foot in feet for head in heads if head > foot})


def _rows(span: Point2, rows: Sequence[float], longest: float, lap: float) -> list[float] | None:
    """On which rows sheets lap that are as long as they may be, from the foot up; None where none will do."""
    start, head = span
    found: list[float] = []
    while head - start > longest + ROUNDING:
        within = [row for row in rows if SHORTEST <= row - PAST_ROW + lap - start <= longest + ROUNDING]
        if not within or (found and within[-1] <= found[-1]):
            return None
        found.append(within[-1])
        start = within[-1] - PAST_ROW
    return found


def _count(span: Point2, rows: Sequence[float], longest: float, lap: float) -> float:
    found = _rows(span, rows, longest, lap)
    return float("inf") if found is None else len(found)


def _fitted(span: Point2, rows: Sequence[float], step: float, lap: float) -> tuple[EndLap, ...]:
    """Laps on rows, each sheet whole steps long: feet reach farther down from the rows, the lowest sheets'
    heads farther up."""
    low, end = span
    found: list[EndLap] = []
    for row in reversed(rows):
        foot = end - _stepped_up(end - (row - PAST_ROW), step)
        end = foot + lap if row != rows[0] else low + _stepped_up(foot + lap - low, step)
        found.append(EndLap(row, foot, end))
    return tuple(reversed(found))


def _stepped_up(length: float, step: float) -> float:
    """The least whole steps that hold a length; with a step of 0 the length."""
    return ceil(length / step - ROUNDING) * step if step else length
