"""The cut list: what is cut from each stick of trim and each stock length of steel, in order."""

from __future__ import annotations

import textwrap
from collections.abc import Iterator

from ...heading import heading
from ...units import Units, format_length
from ..buying.order_list import Order
from .columns import in_columns

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


def cuts_text(order: Order, width: int = 80) -> str:
    """The cut list for a terminal, a table an item."""
    units: Units = "mm" if order.units == "mm" else "ft-in"
    job, *notes = heading(order.name, order.terms, units, braced=order.braced)
    said = [f"Cuts: {job}", *(line for note in notes for line in textwrap.wrap(note, width))]
    rows = list(cut_rows(order))
    pages = [
        "\n".join([item, "", *in_columns(CUTS[1:], [row[1:] for row in rows if row[0] == item])])
        for item, _ in order.plans
    ]
    return "\n\n".join(["\n".join(said), *pages]) + "\n"
