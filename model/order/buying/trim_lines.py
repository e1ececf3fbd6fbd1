"""Trims to buy: sticks by kind, gauge, colour and length, as the cutting plans have them."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from functools import cache
from itertools import combinations

from ...measure.snap import snapped
from ..lists.items import Item
from ..lists.schedule import Schedule, Units
from .buying import Buying
from .line import EACH, Line
from .stock import StockPlan, stock_plan
from .stock_line import StockLine
from .words import gauge_text, long_text

FULL = 0.5  # mm by which a leaning full stick may measure longer than its stock length
GIRTH = 0.01  # mm to which a girth is taken: what noise does to its last digits, a long stick multiplies
GIRTHS = 1.0  # mm; trims of one kind whose girths differ by less are cut from one stick


def trim_plans(schedule: Schedule, buying: Buying) -> Iterator[StockLine]:
    """The stock plan and the line of each kind of trim and each length of stick that it is cut from, shortest
    first; one of another girth is another kind."""
    kinds: dict[tuple[object, ...], list[Item]] = defaultdict(list)
    for item in schedule.listed("trims"):
        girth = snapped(item.bends.girth, GIRTHS) if item.bends else 0.0
        kinds[item.role, item.gauge, snapped(item.thickness, 0.001), item.colour, girth].append(item)
    for items in kinds.values():
        for plan in _least(items, buying.sticks(items[0].role), buying.kerf).values():
            marks = {mark for stick in plan.sticks for mark, _ in stick.cuts}
            cut = [item for item in items if item.mark in marks]
            yield StockLine(tuple(cut), plan, _line(cut, plan, schedule.units), items[0])


def _least(items: Sequence[Item], stock: Sequence[float], kerf: float) -> dict[float, StockPlan]:
    """The plans that together buy least, by length of stick: whole sticks as they are, of the other pieces
    each from the shortest of the lengths bought that holds it; of equal ones those with fewer sticks, of
    fewer lengths.

    Pieces longer than any stick are ordered at the longest one's own length.
    """
    pieces = {item.mark: (_length(item, stock), item.count) for item in items}
    longest = max(length for length, _ in pieces.values())
    lengths = stock if stock[-1] >= longest else (*stock, longest)

    @cache
    def planned(stick: float, marks: tuple[str, ...]) -> StockPlan:
        cut = [(mark, pieces[mark][0]) for mark in marks for _ in range(pieces[mark][1])]
        return stock_plan(cut, stick, kerf)

    def plans(bought: Sequence[float]) -> dict[float, StockPlan]:
        marks: dict[float, list[str]] = defaultdict(list)
        for mark, (length, _) in pieces.items():
            whole = length in lengths
            marks[length if whole else min(one for one in bought if one >= length)].append(mark)
        return {stick: planned(stick, tuple(marks[stick])) for stick in sorted(marks)}

    some = (few for size in range(1, len(lengths) + 1) for few in combinations(lengths, size))
    return min((plans(bought) for bought in some if bought[-1] >= longest), key=_bought)


def _bought(plans: Mapping[float, StockPlan]) -> tuple[float, int, int]:
    """How much is bought, in how many sticks, of how many lengths."""
    counts = {stick: len(plan.sticks) for stick, plan in plans.items()}
    return round(sum(stick * count for stick, count in counts.items()), 3), sum(counts.values()), len(counts)


def _length(item: Item, stock: Sequence[float]) -> float:
    """What a piece is cut to; a stick's length for a whole one, which leans and may measure longer."""
    return next((one for one in stock if one < item.cut <= one + FULL), item.cut)


def _line(items: list[Item], plan: StockPlan, units: Units) -> Line:
    """Weight and girth go by the piece that cuts have left most of."""
    first, count, stock = items[0], len(plan.sticks), plan.sticks[0].stock
    heaviest = max(item.weight / item.cut for item in items)
    girth = snapped(first.bends.girth, GIRTH) if first.bends else 0.0
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
