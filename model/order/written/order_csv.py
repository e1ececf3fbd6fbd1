"""An order, and the lists that go with it, as CSV."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterable, Sequence

from ...heading import heading
from ...measure.snap import snapped, snapped_area, snapped_weight
from ...printable import cell
from ...units import Units
from ..buying.line import Line
from ..buying.order_list import Order
from ..lists.schedule import Schedule
from .cut_cells import CUTS, cut_rows
from .line_cells import FIGURES, amounts, money, number, units_of
from .place_cells import PLACES, place_rows

HEAD = (
    *("list", "item", "unit", "quantity", "price", "per", "cost", "marks"),
    *("kind", "gauge", "colour", "size"),
)
PLAIN = ("length mm", "area mm2", "weight kg")


def order_csv(order: Order) -> str:
    """One row a line of the order (RFC 4180), after those of the list "job"."""
    units: Units = "mm" if order.units == "mm" else "ft-in"
    shown = [f"{name} {unit}" for name, unit in units_of(units).items()]
    return _text(
        [*HEAD, *shown, *PLAIN], [*_job(order, units), *(_line(line, units) for line in order.lines)]
    )


def _line(line: Line, units: Units) -> list[object]:
    price = (money(line.price.amount), line.price.unit) if line.price else ("", "")
    sizes = (snapped(line.length, 0.1), snapped_area(line.area), snapped_weight(line.weight))
    return [
        *(line.list, line.item, line.unit, number(line.quantity), *price, money(line.cost)),
        *(" ".join(line.marks), line.kind, line.gauge, line.colour, line.size),
        *(amounts(line, units)[name] for name in FIGURES),
        *(size or "" for size in sizes),
    ]


def placing_csv(schedule: Schedule) -> str:
    """One row a sheet as it is laid, after those of the list "job"."""
    job = heading(schedule.name, schedule.terms, schedule.units, braced=schedule.braced)
    rows = (["placing", *row] for row in place_rows(schedule))
    return _text(["list", *PLACES], [*(["job", line] for line in job), *rows])


def cuts_csv(order: Order) -> str:
    """One row a cut, stick by stick, after those of the list "job"."""
    units: Units = "mm" if order.units == "mm" else "ft-in"
    return _text(["list", *CUTS], [*_job(order, units), *(["cuts", *row] for row in cut_rows(order))])


def _job(order: Order, units: Units) -> Iterable[list[str]]:
    return (["job", line] for line in heading(order.name, order.terms, units, braced=order.braced))


def _text(head: Sequence[str], rows: Iterable[Sequence[object]]) -> str:
    text = io.StringIO()
    writer = csv.writer(text)
    writer.writerow(head)
    for row in rows:
        writer.writerow([cell(value) for value in (*row, *[""] * (len(head) - len(row)))])
    return text.getvalue()
