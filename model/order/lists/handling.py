"""What people lift: how many each mark takes, by its weight and its length."""

from __future__ import annotations

from dataclasses import dataclass
from math import atan2, degrees
from typing import TYPE_CHECKING

from ...roles import ROOF_SHEETS, list_of
from ...units import FOOT, POUND

if TYPE_CHECKING:
    from .items import Item
    from .schedule import Row, Schedule

CAUTION = (
    "What one or two people carry is common practice, not a rule: wind, wet and heights lower it. "
    "At least two lay a roof sheet. Nobody carries a load on a ladder that could make them fall."
)
STEEP = "A roof over 4/12 has a paragraph of its own: 29 CFR 1926.501(b)(11), fall protection (from memory)."
LIGHTS = (
    "A light sheet in a roof is a hole to a foot: nobody steps, sits or leans on one, and it is covered or "
    "railed off while people are on the roof: 29 CFR 1926.501(b)(4) (from memory)."
)
STEEP_FROM = degrees(atan2(4, 12)) + 1e-6
FOR_THREE, FOR_MACHINES = 20 * FOOT, 30 * FOOT
"""mm; longer sheets take three people, or equipment. Common practice, no source."""
STICKS = ("members", "trims")
STICK_FOR_TWO, STICK_FOR_THREE = 20 * FOOT, 30 * FOOT
"""mm; longer members and trims take two people, or three, however light. Common practice, no source."""


@dataclass(frozen=True, slots=True)
class Carried:
    """kg that one person, or two, carry: common practice, no source. Wind and ladders lower them."""

    one: float = 50 * POUND
    two: float = 100 * POUND


@dataclass(frozen=True, slots=True)
class Lift:
    """A mark that takes more than one person. weight: of one piece (kg). people: how many; 0: a machine."""

    mark: str
    what: str
    count: int
    weight: float
    people: int


def people(piece: Row | Item, carried: Carried) -> int:
    """How many it takes to handle a piece: by its weight and its length, a sheet also by where it lies.

    0: more than two, or a machine.
    """
    by_weight = 1 if piece.weight <= carried.one else 2 if piece.weight <= carried.two else 0
    by_length = _by_length(piece.role, piece.length)
    return 0 if 0 in (by_weight, by_length) else max(by_weight, by_length)


def _by_length(role: str, length: float) -> int:
    """How many a piece takes that weighs nothing: sheets buckle, sticks of steel and trim swing."""
    if (kind := list_of(role)) == "sheets":
        least = 2 if role in ROOF_SHEETS else 1
        return 0 if length > FOR_MACHINES else 3 if length > FOR_THREE else least
    if kind in STICKS:
        return 3 if length > STICK_FOR_THREE else 2 if length > STICK_FOR_TWO else 1
    return 1


def people_text(piece: Row | Item, carried: Carried | None = None) -> str:
    """The same in words; "" for what one person handles."""
    count = people(piece, carried or Carried())
    return {0: "machine", 1: ""}.get(count, f"{count} people")


def cautions(schedule: Schedule) -> tuple[str, ...]:
    """What is said wherever pieces are told by who carries them, where it holds of the building."""
    steep, lit = schedule.pitch > STEEP_FROM, schedule.lit
    return (CAUTION, *([STEEP] if steep else []), *([LIGHTS] if lit else []))


def lifts(schedule: Schedule, carried: Carried) -> list[Lift]:
    """Marks that take more than one person, heaviest first."""
    pieces: tuple[Row | Item, ...] = (*schedule.rows, *schedule.items)
    found = [
        Lift(piece.mark, piece.role, piece.count, piece.weight, count)
        for piece in pieces
        if (count := people(piece, carried)) != 1
    ]
    return sorted(found, key=lambda lift: (-round(lift.weight, 3), lift.mark))
