"""Two sheets from one blank: where their cuts are one cut, and the edges they need are both there.

Both lie in it as they come: face up, overlap rib on the left, so that each has the ribs that it was to have.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from math import hypot

from ...measure.snap import snapped
from ..lists.schedule import Row

SAME = 0.05  # mm; cuts that differ by less are one cut
LONGEST = 12192.0
"""mm; no blank is ordered longer than 40 ft: common practice, no source."""


@dataclass(frozen=True, slots=True)
class Pair:
    """One blank that gives a sheet of each of two marks. length: of the blank (mm). how: in words.

    The first lies at the blank's left and foot; the second at its right, or at its head.
    """

    first: str
    second: str
    count: int
    length: float
    how: str


def blank_pairs(rows: Sequence[Row], kerf: float = 0.0) -> list[Pair]:
    """All of them: whole sheets end to end, then rips side by side. kerf: lost at the cut between (mm)."""
    return [*rake_pairs(rows, kerf), *rip_pairs(rows, kerf)]


def rake_pairs(rows: Sequence[Row], kerf: float = 0.0) -> list[Pair]:
    """Pairs of whole sheets whose rakes are the two sides of one cut across a blank.

    One sheet keeps the blank's foot and is raked at its head, the other keeps its head and is raked at
    its foot, both at the same slope. Such two stand with opposite hands: on one gable all sheets have one
    hand, so pairs come from two gables that start with opposite halves.
    """
    widest = _widest(rows)
    whole = [row for row in rows if not _ripped(row, widest)]

    def length(one: Row, other: Row) -> float:
        along = kerf * hypot(one.width, one.head.drop) / one.width  # the saw goes aslant
        return one.length + other.length - one.head.drop + along

    def fits(one: Row, other: Row) -> bool:
        return _complements(one, other) and length(one, other) <= LONGEST

    return list(_paired(whole, fits, length, "one rake cut across the blank"))


def rip_pairs(rows: Sequence[Row], kerf: float = 0.0) -> list[Pair]:
    """Pairs of ripped sheets that lie side by side in one blank, as long as the longer: those of the two ends
    of a gable, raked or not.

    One keeps the blank's overlap rib, the other its underlap leg; a rip that needs the same edge as its
    mate comes from a blank of its own.
    """
    widest = _widest(rows)
    ripped = sorted((row for row in rows if _ripped(row, widest)), key=lambda row: -row.length)

    def length(one: Row, other: Row) -> float:
        return max(one.length, other.length)

    def fits(one: Row, other: Row) -> bool:
        return _side_by_side(one, other, widest[_kind(one)], kerf)

    return list(_paired(ripped, fits, length, "side by side, one rip along the blank"))


def _paired(
    rows: Sequence[Row],
    fits: Callable[[Row, Row], bool],
    length: Callable[[Row, Row], float],
    how: str,
) -> Iterator[Pair]:
    """Each sheet with the first that fits it and is left."""
    left = {row.mark: row.count for row in rows}
    for one in rows:
        for other in rows:
            count = min(left[one.mark], left[other.mark])
            if count and _kind(one) == _kind(other) and fits(one, other):
                left[one.mark] -= count
                left[other.mark] -= count
                yield Pair(one.mark, other.mark, count, length(one, other), how)


def _kind(row: Row) -> tuple[object, ...]:
    return (row.role, row.profile, row.gauge, row.colour, snapped(row.thickness, SAME))


def _widest(rows: Sequence[Row]) -> dict[tuple[object, ...], Row]:
    """Of each kind a sheet as wide as it comes."""
    widest: dict[tuple[object, ...], Row] = {}
    for row in rows:
        if _kind(row) not in widest or row.width > widest[_kind(row)].width:
            widest[_kind(row)] = row
    return widest


def _ripped(row: Row, widest: dict[tuple[object, ...], Row]) -> bool:
    return row.width < widest[_kind(row)].width - SAME


def _side_by_side(one: Row, other: Row, whole: Row, kerf: float) -> bool:
    """Whether one is the left part and the other the right part of a whole sheet."""
    if not (one.ribs and other.ribs and whole.ribs and one.overlap and whole.overlap) or other.overlap:
        return False
    left = abs(one.ribs[0] - whole.ribs[0]) < SAME
    right = abs((other.width - other.ribs[-1]) - (whole.width - whole.ribs[-1])) < SAME
    return left and right and one.width + other.width + kerf <= whole.width + SAME


def _complements(one: Row, other: Row) -> bool:
    """Whether the head of one and the foot of the other are the two sides of one rake."""
    ends = one.foot.kind == other.head.kind == "square" and one.head.kind == other.foot.kind == "rake"
    cut = abs(one.head.left - other.foot.right) + abs(one.head.right - other.foot.left) < SAME
    wide = abs(one.width - other.width) < SAME and abs(one.cover - other.cover) < SAME
    return ends and cut and wide
