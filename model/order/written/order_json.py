"""An order as JSON: lines, stock plans, pairs, bundles, bends, weights."""

from __future__ import annotations

import json
from typing import Any

from ...heading import note
from ...measure.snap import snapped, snapped_area, snapped_weight
from ..buying.bundles import Bundle, bundles
from ..buying.line import Line
from ..buying.order_list import Order
from ..buying.prices import counted, total
from ..buying.stock import StockPlan
from ..buying.stock_line import StockLine
from ..lists.handling import Carried, lifts
from ..lists.schedule import Schedule


def order_json(order: Order, schedule: Schedule, carried: Carried) -> str:
    """Everything that an order says, in plain values; lengths in mm, areas in mm2, weights in kg."""
    terms, sum_of = order.terms, total(order)
    content = {
        "name": order.name,
        **{key: text for key, text in (("address", terms.address), ("date", terms.date)) if text},
        "units": order.units,
        "note": note(braced=order.braced),
        "lines": [_line(line) for line in order.lines],
        "priced": counted(order),
        **({} if sum_of is None else {"total": sum_of}),
        "unpriced": list(order.unpriced),
        "unused prices": list(order.unused),
        "stock plans": {item: _plan(plan) for item, plan in order.plans},
        "bends": [_bends(trim) for trim in order.trims if trim.first.bends],
        "two from one blank": [
            {"marks": [pair.first, pair.second], "count": pair.count, "how": pair.how} for pair in order.pairs
        ],
        "cut from longer sheets": [
            {"marks": blank.cuts, "count": blank.count, "length mm": snapped(blank.length, 0.1)}
            for blank in order.longer
        ],
        "bundles": [_bundle(one) for one in bundles(order.lines)],
        "weight": {
            "kg": snapped(schedule.steel, 0.1),
            "as bought kg": snapped(sum(line.weight for line in order.lines), 0.1),
        },
        "heavy": [
            {"mark": lift.mark, "kg": snapped(lift.weight, 0.01), "people": lift.people}
            for lift in lifts(schedule, carried)
        ],
        "unknown": sum(item.count for item in schedule.listed("unknown")),
    }
    return json.dumps(content, indent=2, ensure_ascii=False) + "\n"


def _line(line: Line) -> dict[str, Any]:
    words = {"kind": line.kind, "gauge": line.gauge, "colour": line.colour, "size": line.size}
    sizes = {
        "count": line.count,
        "length mm": snapped(line.length, 0.1),
        "area mm2": snapped_area(line.area),
        "weight kg": snapped_weight(line.weight),
    }
    price = {"price": line.price.amount, "per": line.price.unit, "cost": line.cost} if line.price else {}
    return {
        "list": line.list,
        "item": line.item,
        **{key: text for key, text in words.items() if text},
        "unit": line.unit,
        "quantity": line.quantity,
        **{key: size for key, size in sizes.items() if size},
        **price,
        "marks": list(line.marks),
    }


def _bundle(one: Bundle) -> dict[str, Any]:
    sheets = [{"length": size, "count": count} for size, count in one.sheets]
    return {"what": one.what, "from the bottom": sheets, "kg": snapped(one.weight, 0.1)}


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


def _bends(trim: StockLine) -> dict[str, Any]:
    bends = trim.first.bends
    if bends is None:
        return {}
    return {
        "item": trim.line.item,
        "legs mm": [snapped(leg, 0.01) for leg in bends.legs],
        "inside angles": [snapped(angle, 0.01) for angle in bends.angles],
        "inside radius mm": snapped(bends.inside, 0.01),
        "thickness mm": snapped(bends.thickness, 0.001),
        "girth mm": snapped(bends.girth, 0.01),
        **({"painted": trim.first.painted} if trim.first.painted else {}),
    }
