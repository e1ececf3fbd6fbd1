"""Sheets to buy: whole ones by kind and length."""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Iterator, Sequence

from ...measure.snap import snapped
from ...roles import LIGHTS
from ..lists.schedule import Row, Schedule, Units
from .buying import Buying
from .line import EACH, Line
from .short_sheets import Kind, Longer, Wanted, kind_of
from .words import gauge_text, long_text

SHORTER = ", cut to shorter ones"
"""What a size says of sheets that are bought longer than any that is laid, since no mill makes those."""


def sheet_lines(
    schedule: Schedule, sheets: Sequence[Wanted], longer: Sequence[Longer], buying: Buying
) -> Iterator[Line]:
    """A line for each kind and length as ordered, longest first; one that gives two sheets counts once.
    longer: what those shorter than a mill makes are cut from."""
    found: dict[tuple[Kind, float, bool], Counter[str]] = defaultdict(Counter)
    for one in sheets:
        found[one.kind, buying.to_step(one.length), False][one.name] += one.count
    for blank in longer:
        found[blank.kind, blank.length, True]["+".join(blank.cuts)] += blank.count
    kinds = {kind for kind, _, _ in found}
    whole = {kind: _whole(row for row in schedule.rows if kind_of(row) == kind) for kind in kinds}
    spared: set[Kind] = set()
    for (kind, length, cut), marks in sorted(found.items(), key=lambda one: (_text(one[0][0]), -one[0][1])):
        spare = 0 if kind in spared else buying.spare_sheets
        spared.add(kind)
        yield _line(whole[kind], length, sum(marks.values()) + spare, tuple(marks), (cut, schedule.units))


def _line(whole: Row, length: float, count: int, marks: tuple[str, ...], said: tuple[bool, Units]) -> Line:
    """Bought whole: its weight and cover go by the widest sheet of the kind that the building has. How thick
    a light sheet is its maker says, and no price of steel sheets is meant for it. said: whether shorter ones
    are cut from it, and its units."""
    cut, units = said
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
        f"{long_text(length, units)}{SHORTER if cut else ''}",
        (whole.role, "light sheet" if light else "sheet"),
        count=count,
        length=count * length,
        area=count * length * (whole.cover or whole.width),
        weight=count * weight,
    )


def _whole(rows: Iterator[Row]) -> Row:
    """The widest, and of those the one that cuts have left most of."""
    return max(rows, key=lambda row: (snapped(row.width, 0.1), row.area / (row.width * row.length)))


def _text(kind: Kind) -> str:
    role, profile, gauge, thickness, colour = kind
    return f"{role} {profile}, {gauge} {thickness:.3f}, {colour}"
