"""Sheets shorter than a mill makes: the longer ones that they are cut from.

As many lie end to end in one blank as the least that a mill makes holds, and two at least: those are cut from
one that is as long as both. All come face up, overlap rib on the left, so that each has its own ribs.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from ...measure.snap import snapped
from ..lists.schedule import Row, Schedule
from .blanks import Pair
from .buying import Buying

Kind = tuple[str, str, str, float, str]
"""What a sheet is, but for its size: role, profile, gauge, thickness (mm), colour."""


@dataclass(frozen=True, slots=True)
class Wanted:
    """Sheets that the building needs, or blanks that give two of them. name: their mark, or both marks of a
    pair. length: of one (mm)."""

    kind: Kind
    name: str
    length: float
    count: int


@dataclass(frozen=True, slots=True)
class Longer:
    """Blanks from which shorter sheets are cut. cuts: the names of what lies in one, from its foot. length:
    as ordered (mm)."""

    kind: Kind
    cuts: tuple[str, ...]
    length: float
    count: int


def wanted(schedule: Schedule, pairs: Sequence[Pair]) -> Iterator[Wanted]:
    """All sheets of a building, pairs first; a pair counts one blank."""
    rows = {row.mark: row for row in schedule.rows}
    left = {row.mark: row.count for row in schedule.rows}
    for pair in pairs:
        left[pair.first] -= pair.count
        left[pair.second] -= pair.count
        yield Wanted(kind_of(rows[pair.first]), f"{pair.first}+{pair.second}", pair.length, pair.count)
    for mark, count in left.items():
        if count:
            yield Wanted(kind_of(rows[mark]), mark, rows[mark].length, count)


def kind_of(row: Row) -> Kind:
    """What the sheets of a row are."""
    return (row.role, row.profile, row.gauge, snapped(row.thickness, 0.001), row.colour)


def from_longer(short: Iterable[Wanted], buying: Buying) -> Iterator[Longer]:
    """The blanks for sheets shorter than a mill makes, kind by kind."""
    kinds: dict[Kind, list[tuple[float, str]]] = {}
    for one in short:
        kinds.setdefault(one.kind, []).extend([(one.length, one.name)] * one.count)
    for kind, sheets in kinds.items():
        blanks = Counter(_blanks(sorted(sheets, key=lambda sheet: -sheet[0]), buying))
        for (length, cuts), count in blanks.items():
            yield Longer(kind, cuts, max(buying.shortest, buying.to_step(length)), count)


def _blanks(sheets: list[tuple[float, str]], buying: Buying) -> Iterator[tuple[float, tuple[str, ...]]]:
    """Least length and cuts of each blank, the longest sheets first."""
    kerf = buying.kerf
    while sheets:
        length, name = sheets.pop(0)
        cuts = [name]
        for sheet in tuple(sheets):
            if length + kerf + sheet[0] <= buying.shortest:
                sheets.remove(sheet)
                length, cuts = length + kerf + sheet[0], [*cuts, sheet[1]]
        if len(cuts) == 1 and sheets:
            longer, second = sheets.pop(0)
            length, cuts = length + kerf + longer, [*cuts, second]
        yield length, tuple(cuts)
