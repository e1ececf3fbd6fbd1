"""An order as text: for a terminal, as CSV, as JSON."""

from __future__ import annotations

import csv
import io
import json
from collections.abc import Iterator
from typing import Any

from ...measure.snap import snapped
from ...printable import cell
from ...units import format_length, format_weight, weight_unit
from ..buying.order_list import LISTS, Line, Order
from ..buying.prices import total
from ..buying.stock import StockPlan
from ..lists.handling import CAUTION, Carried, lifts
from ..lists.schedule import Schedule, Units

NOTE = (
    "Counted off the solids. Geometry, not engineering: member sizes are placeholders until a licensed "
    "engineer's drawings replace them; local code governs."
)


def order_csv(order: Order) -> str:
    """One row a line of the order (RFC 4180)."""
    text = io.StringIO()
    writer = csv.writer(text)
    writer.writerow(["list", "item", "unit", "quantity", "price", "cost", "marks"])
    for line in order.lines:
        price = ["" if value is None else f"{value:.2f}" for value in (line.price, line.cost)]
        row = [line.list, line.item, line.unit, _number(line.quantity), *price, " ".join(line.marks)]
        writer.writerow(map(cell, row))
    return text.getvalue()


def order_json(order: Order, schedule: Schedule, carried: Carried) -> str:
    """Lines, stock plans, pairs, weights."""
    content = {
        "name": order.name,
        "units": order.units,
        "lines": [_line(line) for line in order.lines],
        "total": total(order),
        "unpriced": list(order.unpriced),
        "stock plans": {item: _plan(plan) for item, plan in order.plans},
        "two from one blank": [
            {"marks": [pair.first, pair.second], "count": pair.count, "how": pair.how} for pair in order.pairs
        ],
        "weight": {"kg": snapped(schedule.steel, 0.1)},
        "heavy": [
            {"mark": lift.mark, "kg": snapped(lift.weight, 0.01), "people": lift.people}
            for lift in lifts(schedule, carried)
        ],
        "unknown": sum(item.count for item in schedule.listed("unknown")),
        "note": NOTE,
    }
    return json.dumps(content, indent=2, ensure_ascii=False) + "\n"


def order_table(order: Order, schedule: Schedule, carried: Carried, width: int = 80) -> str:
    """The order list by list, then the stock plans, the pairs and what is heavy."""
    lines = [f"Order: {order.name}", NOTE if width > len(NOTE) else NOTE.replace(": member", ":\nmember"), ""]
    for name in LISTS:
        found = [line for line in order.lines if line.list == name]
        if found:
            lines += [name.capitalize(), *_aligned(found), ""]
    lines += ["Stock plans", *(text for item, plan in order.plans for text in _plan_text(item, plan, order))]
    if order.pairs:
        lines += ["", "Two sheets from one blank"]
        lines += [f"  {pair.count} of {pair.first} + {pair.second}: {pair.how}" for pair in order.pairs]
    lines += ["", *_weights(schedule, carried)]
    if any(line.price is not None for line in order.lines):
        lines += ["", f"Total of priced lines: {total(order):.2f}"]
        lines += [f"No price: {item}" for item in order.unpriced]
    return "\n".join(line.rstrip() for line in lines) + "\n"


def _aligned(lines: list[Line]) -> Iterator[str]:
    size = max(len(_number(line.quantity)) for line in lines)
    unit = max(len(line.unit) for line in lines)
    for line in lines:
        cost = f"  {line.cost:.2f}" if line.cost is not None else ""
        yield f"  {_number(line.quantity).rjust(size)} {line.unit.ljust(unit)}  {line.item}{cost}"


def _plan_text(item: str, plan: StockPlan, order: Order) -> Iterator[str]:
    units: Units = "mm" if order.units == "mm" else "ft-in"
    proof = "proven least" if plan.proven else f"at least {plan.bound} are needed"
    yield f"  {item}: {len(plan.sticks)} ({proof})"
    for number, stick in enumerate(plan.sticks, 1):
        if len(stick.cuts) > 1 or stick.left > 1:
            cuts = " + ".join(f"{name} {format_length(length, units)}" for name, length in stick.cuts)
            left = f", {format_length(stick.left, units)} left" if stick.left > 1 else ""
            yield f"    {number}: {cuts}{left}"


def _weights(schedule: Schedule, carried: Carried) -> Iterator[str]:
    units, unit = schedule.units, weight_unit(schedule.units)
    yield f"Steel, all together: {format_weight(schedule.steel, units)} {unit}"
    heavy = lifts(schedule, carried)
    if heavy:
        yield f"Heaviest piece: {heavy[0].mark}, {format_weight(heavy[0].weight, units)} {unit}"
        two = [lift.mark for lift in heavy if lift.people]
        more = [lift.mark for lift in heavy if not lift.people]
        yield from ([f"For two people: {' '.join(two)}"] if two else [])
        yield from ([f"For more, or a lift: {' '.join(more)}"] if more else [])
    yield CAUTION


def _line(line: Line) -> dict[str, Any]:
    price = {} if line.price is None else {"price": line.price, "cost": line.cost}
    return {
        "list": line.list,
        "item": line.item,
        "unit": line.unit,
        "quantity": line.quantity,
        **price,
        "marks": list(line.marks),
    }


def _plan(plan: StockPlan) -> dict[str, Any]:
    return {
        "sticks": len(plan.sticks),
        "at least": plan.bound,
        "cuts": [
            {
                "pieces": [[name, snapped(length, 0.1)] for name, length in stick.cuts],
                "left": snapped(stick.left, 0.1),
            }
            for stick in plan.sticks
        ],
    }


def _number(quantity: float) -> str:
    return f"{quantity:g}" if quantity == int(quantity) else f"{quantity:.2f}"
