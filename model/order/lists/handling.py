"""What people lift: the weight of each mark, and the marks that are more than one or two should carry."""

from __future__ import annotations

from dataclasses import dataclass

from .schedule import Schedule

POUND = 0.45359237
CAUTION = (
    "What one or two people carry is common practice, not a rule: wind, wet and heights lower it. "
    "At least two lay a roof sheet. Nobody carries a load on a ladder that could make them fall."
)


@dataclass(frozen=True, slots=True)
class Carried:
    """kg that one person, or two, carry: common practice, no source. Wind and ladders lower them."""

    one: float = 50 * POUND
    two: float = 100 * POUND


@dataclass(frozen=True, slots=True)
class Lift:
    """A mark that is heavy. weight: of one piece (kg). people: how many carry it; 0: a machine does."""

    mark: str
    what: str
    count: int
    weight: float
    people: int


def lifts(schedule: Schedule, carried: Carried) -> list[Lift]:
    """Marks heavier than one person carries, heaviest first."""
    pieces = [(row.mark, row.role, row.count, row.weight) for row in schedule.rows]
    pieces += [(item.mark, item.role, item.count, item.weight) for item in schedule.items]
    heavy = [
        Lift(mark, what, count, weight, 2 if weight <= carried.two else 0)
        for mark, what, count, weight in pieces
        if weight > carried.one
    ]
    return sorted(heavy, key=lambda lift: (-round(lift.weight, 3), lift.mark))
