"""Trims to buy: stock lengths by kind, gauge and colour, as the cutting plan has them."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator

from ...measure.snap import snapped
from ..lists.items import Item
from ..lists.schedule import Schedule, Units
from .buying import Buying
from .line import EACH, Line
from .stock import StockPlan, stock_plan
from .stock_line import StockLine
from .words import gauge_text, long_text

FULL = 0.5  # mm by which a leaning full stick may measure longer than its stock length
GIRTHS = 1.0  # mm; trims of one kind whose girths differ by less are cut from one stick


def trim_plans(schedule: Schedule, buying: Buying) -> Iterator[StockLine]:
    """The stock plan and the line of each kind of trim; one of another girth is another kind."""
    kinds: dict[tuple[object, ...], list[Item]] = defaultdict(list)
    for item in schedule.listed("trims"):
        girth = snapped(item.bends.girth, GIRTHS) if item.bends else 0.0
        kinds[item.role, item.gauge, snapped(item.thickness, 0.001), item.colour, girth].append(item)
    for items in kinds.values():
        pieces = [(item.mark, _length(item, buying.stock)) for item in items for _ in range(item.count)]
        longest = max(length for _, length in pieces)
        # Pieces cut for a longer stock than is bought are ordered at their own length.
        plan = stock_plan(pieces, max(buying.stock, longest), buying.kerf)
        yield StockLine(tuple(items), plan, _line(items, plan, schedule.units))


def _length(item: Item, stock: float) -> float:
    return min(item.length, stock) if item.length <= stock + FULL else item.length


def _line(items: list[Item], plan: StockPlan, units: Units) -> Line:
    """Weight and girth go by the piece that cuts have left most of."""
    first, count, stock = items[0], len(plan.sticks), plan.sticks[0].stock
    heaviest = max(item.weight / item.length for item in items)
    girth = first.bends.girth if first.bends else 0.0
    return Line(
        "trims",
        first.role,
        EACH,
        count,
        tuple(item.mark for item in items),
        gauge_text(first.gauge, first.thickness, units),
        first.colour,
        long_text(stock, units),
        ("trim",),
        count=count,
        length=count * stock,
        area=count * stock * girth,
        weight=count * stock * heaviest,
    )
