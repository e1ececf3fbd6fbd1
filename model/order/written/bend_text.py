"""How a trim is bent, in words and as a drawing."""

from __future__ import annotations

import textwrap
from collections.abc import Iterator

from ...heading import heading
from ...measure.bends import Bends
from ...units import Units, format_length, format_pitch
from ..buying.order_list import Order
from ..buying.stock_line import StockLine
from ..lists.items import Item
from ..lists.schedule import Schedule
from .fitted import fitted

ANGLES = "outside legs, inside angles (back: against the first)"
BENDS = ("item", ANGLES, "girth", "painted side of the bend at the longer end")
CLOSED = 10.0
"""Degrees; a narrower inside angle is a hem."""


def bend_text(item: Item, units: Units) -> str:
    """`legs 3" | 104 deg | 3-1/8"; girth 6-1/8"`: legs outside, the inside angle between two. A Z bends
    back, a U does not.

    Painted outside is outside of the bend beside the longer end leg.
    """
    bends = item.bends
    if bends is None:
        return ""
    paint = f"; painted {item.painted}" if item.painted else ""
    return f"legs {_legs(bends, units)}; girth {format_length(bends.girth, units)}{paint}"


def bend_rows(trims: tuple[StockLine, ...], units: Units) -> Iterator[tuple[str, ...]]:
    """The cells of BENDS, a row a kind of trim; one that is not bent has none."""
    for trim in trims:
        if bends := trim.first.bends:
            yield trim.line.item, _legs(bends, units), format_length(bends.girth, units), trim.first.painted


def _legs(bends: Bends, units: Units) -> str:
    words = [format_length(bends.legs[0], units)]
    for angle, turn, leg in zip(bends.angles, bends.turns, bends.legs[1:], strict=True):
        bent = "hem" if angle < CLOSED else f"{angle:.1f}".removesuffix(".0") + " deg"
        words += [bent + " back" * (turn * bends.turns[0] < 0), format_length(leg, units)]
    return " | ".join(words)


def folds_text(item: Item, units: Units) -> str:
    """`2 tabs folded, 1-1/8", 3/4"; cut 10' 1-7/8"`: at its ends, how far they reach from their legs' inner
    faces, and what is cut from the stick; "" without them."""
    if item.bends is None or not item.bends.folds:
        return ""
    reaches = dict.fromkeys(format_length(fold.reach, units) for fold in item.bends.folds)
    tabs = len(item.bends.folds)
    said = f"{tabs} {'tab' if tabs == 1 else 'tabs'} folded at the ends, {', '.join(reaches)}"
    return f"{said}; cut {format_length(item.cut, units)}"


def bend_lines(trims: tuple[StockLine, ...], units: Units, pitch: float) -> list[str]:
    """A line a kind of trim, under the pitch that bends follow."""
    head = f"{ANGLES}; painted side of the bend at the longer end"
    bent = (trim for trim in trims if trim.first.bends)
    return [
        f"Bends: {head}; roof {format_pitch(pitch, units)}",
        *(f"  {trim.line.item}: {bend_text(trim.first, units)}" for trim in bent),
    ]


def bends_page(order: Order, schedule: Schedule, width: int = 80) -> str:
    """The bends alone, under what stands over every list."""
    said = heading(order.name, order.terms, schedule.units, braced=order.braced)
    lines = [line for text in said for line in textwrap.wrap(text, width)]
    bends = fitted(bend_lines(order.trims, schedule.units, schedule.pitch), width)
    return "\n".join([*lines, "", *bends]) + "\n"
