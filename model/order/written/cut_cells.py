"""The cut list: what is cut from each stick of trim, in order."""

from __future__ import annotations

from collections.abc import Iterator

from ...units import Units, format_length
from ..buying.order_list import Order

CUTS = ("item", "stick", "cut", "mark", "length", "left of stick")


def cut_rows(order: Order) -> Iterator[tuple[str, ...]]:
    """The cells of CUTS, a row a cut; what is left stands at a stick's last cut."""
    units: Units = "mm" if order.units == "mm" else "ft-in"
    for item, plan in order.plans:
        for number, stick in enumerate(plan.sticks, 1):
            for cut, (mark, length) in enumerate(stick.cuts, 1):
                last = cut == len(stick.cuts)
                left = format_length(stick.left, units) if last and stick.left > 1 else ""
                yield item, str(number), str(cut), mark, format_length(length, units), left
