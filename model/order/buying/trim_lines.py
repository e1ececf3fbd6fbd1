"""Trims to buy: sticks by kind, gauge, colour and length, as the cutting plans have them."""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Iterator, Mapping, Sequence
from functools import cache
from itertools import combinations

from ...measure.snap import snapped
from ...units import format_length
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
ANGLES = 1.0  # degrees; and whose bends do


def trim_plans(schedule: Schedule, buying: Buying) -> Iterator[StockLine]:
    """The stock plan and the line of each kind of trim and each length of stick that it is cut from, shortest
    first; one of another girth or bent otherwise is another kind, and told by its girth."""
    kinds: dict[tuple[object, ...], list[Item]] = defaultdict(list)
    for item in schedule.listed("trims"):
        shape = snapped(_girth(item), GIRTHS), _angles(item)
        kinds[item.role, item.gauge, snapped(item.thickness, 0.001), item.colour, *shape].append(item)
    alike = Counter(key[:4] for key in kinds)
    for key, items in kinds.items():
        words = _girth_text(items[0], schedule.units) if alike[key[:4]] > 1 else ""
        for plan in _least(items, buying.sticks(items[0].role), buying.kerf).values():
            marks = {mark for stick in plan.sticks for mark, _ in stick.cuts}
            cut = [item for item in items if item.mark in marks]
            yield StockLine(tuple(cut), plan, _line(cut, plan, schedule.units, words), items[0])


def _girth(item: Item) -> float:
    """Width of the strip that it is bent from (mm), or of one that stays flat; 0 of what is no strip."""
    flat = item.depth if item.width < 2 * item.thickness else 0.0
    return item.bends.girth if item.bends else flat


def _angles(item: Item) -> tuple[float, ...]:
    """Inside angles of its bends, from whichever end comes first."""
    found = tuple(snapped(angle, ANGLES) for angle in item.bends.angles) if item.bends else ()
    return min(found, found[::-1])


def _girth_text(item: Item, units: Units) -> str:
    told = format_length(_girth(item), units)
    unit = " mm" if units == "mm" else ""
    bent = item.bends.angles if item.bends else ()
    bends = " and ".join(f"{angle:.0f} deg" for angle in bent if abs(angle - 90.0) > ANGLES)
    said = f"girth {told}{unit}{f', bent {bends}' if bends else ''}" if bent else f"flat, {told}{unit} wide"
    return said if _girth(item) else ""


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


def _line(items: list[Item], plan: StockPlan, units: Units, words: str) -> Line:
    """Weight and girth go by the piece that cuts have left most of. words: what tells it from others of its
    kind."""
    first, count, stock = items[0], len(plan.sticks), plan.sticks[0].stock
    heaviest = max(item.weight / item.cut for item in items)
    girth = snapped(_girth(first), GIRTH)
    return Line(
        "trims",
        first.role,
        EACH,
        count,
        tuple(item.mark for item in items),
        gauge_text(first.gauge, first.thickness, units),
        first.colour,
        ", ".join(filter(None, (long_text(stock, units), words))),
        ("trim",),
        count=count,
        length=count * stock,
        area=count * stock * girth,
        weight=count * stock * heaviest,
    )
