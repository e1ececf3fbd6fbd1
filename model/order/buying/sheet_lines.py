"""Sheets to buy: whole ones by kind and length."""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Iterator, Sequence
from math import ceil

from ...measure.snap import snapped
from ...roles import LIGHTS
from ..lists.schedule import Row, Schedule, Units
from .blanks import Pair
from .buying import Buying
from .line import EACH, Line
from .words import gauge_text, long_text

Kind = tuple[str, str, str, float, str]


def sheet_lines(schedule: Schedule, pairs: Sequence[Pair], buying: Buying) -> Iterator[Line]:
    """A line for each kind and length as ordered, longest first; a pair counts one blank."""
    wanted = _wanted(schedule, pairs, buying)
    longest: dict[Kind, float] = {}
    for kind, length in wanted:
        longest[kind] = max(length, longest.get(kind, 0.0))
    whole = {kind: _whole(row for row in schedule.rows if _kind(row) == kind) for kind in longest}
    for (kind, length), marks in sorted(wanted.items(), key=lambda one: (_text(one[0][0]), -one[0][1])):
        spare = buying.spare_sheets if length == longest[kind] else 0
        yield _line(whole[kind], length, sum(marks.values()) + spare, tuple(marks), schedule.units)


def _wanted(
    schedule: Schedule, pairs: Sequence[Pair], buying: Buying
) -> dict[tuple[Kind, float], Counter[str]]:
    """How many blanks of each kind and length, by the marks they make."""
    rows = {row.mark: row for row in schedule.rows}
    left = {row.mark: row.count for row in schedule.rows}
    wanted: dict[tuple[Kind, float], Counter[str]] = defaultdict(Counter)
    for pair in pairs:
        left[pair.first] -= pair.count
        left[pair.second] -= pair.count
        key = (_kind(rows[pair.first]), _rounded_up(pair.length, buying.step))
        wanted[key][f"{pair.first}+{pair.second}"] += pair.count
    for mark, count in left.items():
        if count:
            wanted[_kind(rows[mark]), _rounded_up(rows[mark].length, buying.step)][mark] += count
    return wanted


def _line(whole: Row, length: float, count: int, marks: tuple[str, ...], units: Units) -> Line:
    """Bought whole: its weight and cover go by the widest sheet of the kind that the building has. How thick
    a light sheet is its maker says, and no price of steel sheets is meant for it."""
    light = whole.role in LIGHTS
    weight = whole.weight / whole.area * whole.width * length
    return Line(
        "sheets",
        f"{whole.role} {whole.profile}".strip(),
        EACH,
        count,
        marks,
        "" if light else gauge_text(whole.gauge, whole.thickness, units),
        whole.colour,
        long_text(length, units),
        (whole.role, "light sheet" if light else "sheet"),
        count=count,
        length=count * length,
        area=count * length * (whole.cover or whole.width),
        weight=count * weight,
    )


def _whole(rows: Iterator[Row]) -> Row:
    """The widest, and of those the one that cuts have left most of."""
    return max(rows, key=lambda row: (snapped(row.width, 0.1), row.area / (row.width * row.length)))


def _kind(row: Row) -> Kind:
    return (row.role, row.profile, row.gauge, snapped(row.thickness, 0.001), row.colour)


def _text(kind: Kind) -> str:
    role, profile, gauge, thickness, colour = kind
    return f"{role} {profile}, {gauge} {thickness:.3f}, {colour}"


def _rounded_up(length: float, step: float) -> float:
    return ceil(snapped(length, 0.01) / step - 1e-6) * step if step else snapped(length, 0.01)
