"""Members to buy: stock lengths by section, as the cutting plan has them; plates and braces as cut."""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Iterator, Sequence
from dataclasses import replace

from ...roles import Role
from ..lists.items import Item
from ..lists.schedule import Schedule, Units
from .buying import Buying
from .line import EACH, Line
from .stock import SAME, StockPlan, stock_plan
from .stock_line import StockLine
from .words import long_text

AS_CUT = (Role.BASE_PLATE, Role.BRACE)
"""Plates come with their holes, braces with their threads or fittings: both to the length that they have."""


def steel_plans(schedule: Schedule, buying: Buying) -> Iterator[StockLine]:
    """The stock plan and the line of each section, of members that come in the same lengths."""
    sections: dict[tuple[str, tuple[float, ...]], list[Item]] = defaultdict(list)
    for item in schedule.listed("members"):
        if item.role not in AS_CUT:
            sections[item.section, buying.sticks(item.role)].append(item)
    for (_, sticks), items in sections.items():
        plan = _least(items, sticks, buying.steel_kerf)
        first, count, stock = items[0], len(plan.sticks), plan.sticks[0].stock
        weight = count * stock * max(item.weight / item.length for item in items)
        line = _line(first, items, (count, stock, weight), schedule.units)
        yield StockLine(tuple(items), plan, line, first)


def as_cut_lines(schedule: Schedule) -> Iterator[Line]:
    """What comes cut to length, by mark; told by it where nothing else tells two apart."""
    lines = []
    for item in schedule.listed("members"):
        if item.role in AS_CUT:
            bought = (item.count, item.length, item.count * item.weight)
            lines.append(_line(item, [item], bought, schedule.units))
    alike = Counter(line.item for line in lines)
    for line in lines:
        yield line if alike[line.item] == 1 else replace(line, size=f"{line.size}, {line.marks[0]}")


def _least(items: Sequence[Item], stocks: Sequence[float], kerf: float) -> StockPlan:
    """The plan that buys least, of those that keep to one stock length; of equal ones the fewest sticks.

    A piece longer than any stock is bought at its own length, and the others with it.
    """
    pieces = [(item.mark, item.length) for item in items for _ in range(item.count)]
    longest = max(length for _, length in pieces)
    fitting = [stock for stock in stocks if longest <= stock + SAME] or [longest]
    plans = [stock_plan(pieces, stock, kerf) for stock in fitting]
    return min(plans, key=lambda plan: (len(plan.sticks) * plan.sticks[0].stock, len(plan.sticks)))


def _line(first: Item, items: Sequence[Item], bought: tuple[int, float, float], units: Units) -> Line:
    """bought: how many, how long each (mm), what they weigh together (kg)."""
    count, length, weight = bought
    section = first.section
    sizes, at, pitch = section.partition(" at ")
    unit = "" if units == "mm" else " in"  # mm are said by the section itself
    return Line(
        "members",
        f"{sizes}{unit}{at}{pitch}",
        EACH,
        count,
        tuple(item.mark for item in items),
        size=long_text(length, units),
        names=(*dict.fromkeys(item.role for item in items), section, section.split(" ")[0], "member"),
        count=count,
        length=count * length,
        weight=weight,
    )
