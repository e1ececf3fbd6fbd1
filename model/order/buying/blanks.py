"""Two sheets from one blank: where their cuts are one cut, and the edges they need are both there."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from ...measure.snap import snapped
from ..lists.schedule import Row

SAME = 0.05  # mm; cuts that differ by less are one cut
LONGEST = 12192.0
"""mm; no blank is ordered longer than 40 ft: common practice, no source."""


@dataclass(frozen=True, slots=True)
class Pair:
    """One blank that gives a sheet of each of two marks. length: of the blank (mm). how: in words."""

    first: str
    second: str
    count: int
    length: float
    how: str


def rake_pairs(rows: Sequence[Row]) -> list[Pair]:
    """Pairs whose rakes are the two sides of one cut across a blank.

    One sheet keeps the blank's foot and is raked at its head, the other keeps its head and is raked at
    its foot, both at the same slope. Both keep both lap ribs. Such two stand with opposite hands: on
    one gable all sheets have one hand, so pairs come from two gables that start with opposite halves.
    """
    left = {row.mark: row.count for row in rows}
    pairs = []
    for one, other in _complements(rows):
        count = min(left[one.mark], left[other.mark])
        if count:
            left[one.mark] -= count
            left[other.mark] -= count
            length = one.length + other.length - one.head.drop
            how = "one rake cut across the blank"
            pairs.append(Pair(one.mark, other.mark, count, length, how))
    return pairs


def rip_pairs(rows: Sequence[Row]) -> list[Pair]:
    """Pairs of ripped sheets as long as each other that lie side by side in one blank.

    One keeps the blank's overlap rib, the other its underlap leg; a rip that needs the same edge as its
    mate comes from a blank of its own.
    """
    widest: dict[tuple[object, ...], Row] = {}
    for row in rows:
        if _kind(row) not in widest or row.width > widest[_kind(row)].width:
            widest[_kind(row)] = row
    ripped = [row for row in rows if row.width < widest[_kind(row)].width - SAME]
    left = {row.mark: row.count for row in ripped}
    pairs = []
    for one in ripped:
        for other in ripped:
            count = min(left[one.mark], left[other.mark])
            if count and _kind(one) == _kind(other) and _side_by_side(one, other, widest[_kind(one)]):
                left[one.mark] -= count
                left[other.mark] -= count
                pairs.append(Pair(one.mark, other.mark, count, one.length, "one rip along the blank"))
    return pairs


def _kind(row: Row) -> tuple[object, ...]:
    return (row.role, row.profile, row.gauge, row.colour, snapped(row.thickness, SAME))


def _side_by_side(one: Row, other: Row, whole: Row) -> bool:
    """Whether one is the left part and the other the right part of a whole sheet as long as they are."""
    if not (one.ribs and other.ribs and whole.ribs and one.overlap and whole.overlap) or other.overlap:
        return False
    square = {end.kind for row in (one, other) for end in (row.foot, row.head)} == {"square"}
    keeps_leg = abs((other.width - other.ribs[-1]) - (whole.width - whole.ribs[-1])) < SAME
    fits = one.width + other.width <= whole.width + SAME
    return square and keeps_leg and fits and abs(one.length - other.length) < SAME


def _complements(rows: Sequence[Row]) -> Iterator[tuple[Row, Row]]:
    for one in rows:
        for other in rows:
            alike = _kind(one) == _kind(other)
            ends = one.foot.kind == other.head.kind == "square" and one.head.kind == other.foot.kind == "rake"
            cut = abs(one.head.left - other.foot.right) + abs(one.head.right - other.foot.left) < SAME
            wide = abs(one.width - other.width) < SAME and abs(one.cover - other.cover) < SAME
            if alike and ends and cut and wide and one.length + other.length - one.head.drop <= LONGEST:
                yield one, other
