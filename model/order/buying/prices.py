"""Prices from a file of the user's own; none is invented."""

from __future__ import annotations

import csv
import io
import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from ...errors import FileError
from ...files import read_whole
from .line import BY_ENGINEER, MEASURES, Line, Price
from .order_list import Order

COLUMNS = ("item", "unit", "price")
MORE = ("gauge", "colour")
LARGEST = 5_000_000  # bytes
PRICE = re.compile(r"[0-9]{1,9}(\.[0-9]{1,6})?")
BAG = re.compile(r"bag of [0-9]{1,6}")
SPELLED = {
    **dict.fromkeys(("ea", "piece", "pieces", "pcs"), "each"),
    **dict.fromkeys(("hundred pieces", "100 pieces", "100", "per hundred"), "hundred"),
    **dict.fromkeys(("foot", "feet", "lineal foot", "lineal feet", "lf"), "ft"),
    **dict.fromkeys(("sq ft", "sf", "square foot", "square feet"), "ft2"),
    **dict.fromkeys(("sq", "squares"), "square"),
    **dict.fromkeys(("lbs", "pound", "pounds"), "lb"),
    **dict.fromkeys(("yd", "yard", "cubic yard", "cubic yards", "cy"), "yd3"),
}
"""Other spellings of units."""


@dataclass(frozen=True, slots=True)
class PriceRow:
    """One row of a price file: what it is for, in plain lower case, and what one unit costs.

    item: the whole of an item of an order, or its kind, or a wider name ("base trim", "trim"). gauge,
    colour: "" for any. line: where it stands in the file.
    """

    item: str
    unit: str
    price: float
    gauge: str
    colour: str
    line: int

    def __str__(self) -> str:
        said = ", ".join(filter(None, (self.item, self.gauge, self.colour)))
        return f"line {self.line}: {said}, per {self.unit}"


Prices = Sequence[PriceRow]


def read_prices(path: Path) -> tuple[PriceRow, ...]:
    """The rows of a CSV file with the columns item, unit, price and, if wanted, gauge, colour.

    Items, units and colours are compared without regard to case and spaces. Raises FileError with the
    line for a file that is none.
    """
    try:
        text = read_whole(path, LARGEST).decode("utf-8-sig")
    except UnicodeDecodeError:
        raise FileError(f"{path}: cannot be read: not UTF-8") from None
    rows = csv.reader(io.StringIO(text, newline=""))
    found: dict[tuple[str, str, str], PriceRow] = {}
    try:
        columns = tuple(_plain(name).replace("color", "colour") for name in next(rows, ()))
        if columns[:3] != COLUMNS or not set(columns[3:]) <= set(MORE) or len(set(columns)) < len(columns):
            raise FileError(f"{path}: line 1: columns would do: {', '.join(COLUMNS)} (and {', '.join(MORE)})")
        for row in filter(None, rows):
            where = f"{path}: line {rows.line_num}"
            one = _row(where, columns, row, rows.line_num)
            before = found.setdefault((one.item, one.gauge, one.colour), one)
            if (before.price, before.unit) != (one.price, one.unit):
                raise FileError(f"{where}: {row[0]!r} has another price above")
    except csv.Error as error:
        raise FileError(f"{path}: line {rows.line_num}: {error}") from None
    return tuple(found.values())


def _row(where: str, columns: tuple[str, ...], row: list[str], line: int) -> PriceRow:
    if len(row) != len(columns):
        said = f"{len(row)} cell{'' if len(row) == 1 else 's'}"
        raise FileError(f"{where}: read {said}; would do: {', '.join(columns)}, quoted where one has a comma")
    cells = dict(zip(columns, row, strict=True))
    price = cells["price"].strip()
    if not PRICE.fullmatch(price):
        raise FileError(f"{where}: price: read {price[:40]!r}; a number such as 12.50 would do")
    unit = _plain(cells["unit"])
    unit = SPELLED.get(unit, unit)
    if unit not in MEASURES and not BAG.fullmatch(unit):
        raise FileError(f"{where}: unit: read {unit[:40]!r}; would do: {', '.join(MEASURES)} or bag of 250")
    gauge, colour = (_plain(cells.get(name, "")) for name in MORE)
    gauge = f"{gauge} ga" if gauge.isdigit() else gauge
    return PriceRow(_plain(cells["item"]), unit, float(price), gauge, colour, line)


def priced(order: Order, prices: Prices) -> Order:
    """The order with prices on its lines, the items without one, and the rows that priced nothing.

    Of the rows that mean a line and whose unit it is measured in, the one that says it closest counts.
    """
    used: set[int] = set()
    lines = []
    for line in order.lines:
        row = min(_claims(line, prices), key=lambda claim: claim[0], default=(None, None))[1]
        lines.append(replace(line, price=Price(row.price, row.unit) if row else None))
        used |= {row.line} if row else set()
    return replace(
        order,
        lines=tuple(lines),
        unpriced=tuple(line.item for line in lines if line.price is None),
        unused=tuple(f"{row} ({_why(row, order)})" for row in prices if row.line not in used),
    )


def _claims(line: Line, prices: Prices) -> Iterator[tuple[tuple[int, bool, bool], PriceRow]]:
    """The rows that mean a line, each with how far it is from saying just that line."""
    for row in prices:
        near = _near(line, row)
        if near is not None and line.amount(row.unit) is not None:
            yield near, row


def _near(line: Line, row: PriceRow) -> tuple[int, bool, bool] | None:
    names = _names(line)
    gauge, colour = _plain(line.gauge), _plain(line.colour)
    if row.item not in names:
        return None
    if row.gauge and row.gauge != gauge and not gauge.startswith(f"{row.gauge} "):
        return None
    if row.colour and row.colour != colour and not colour.startswith(f"{row.colour} ("):
        return None
    return names.index(row.item), not row.gauge, not row.colour


def _names(line: Line) -> list[str]:
    """What a row may call a line, the narrowest first; what is the engineer's to choose, without that too."""
    kinds = (line.kind, line.kind.removesuffix(BY_ENGINEER))
    return [_plain(name) for name in (line.item, *kinds, *line.names)]


def _why(row: PriceRow, order: Order) -> str:
    meant = [line for line in order.lines if _near(line, row) is not None]
    if not meant:
        called = any(row.item in _names(line) for line in order.lines)
        return "none so called has that gauge or colour" if called else "no line is called so"
    if all(line.amount(row.unit) is None for line in meant):
        return f"what it means is not measured by {row.unit}"
    return "other rows say it closer"


def unaccounted(order: Order) -> Iterator[str]:
    """A line for each item without a price, and for each row of the file that priced nothing."""
    yield from (f"No price: {item}" for item in order.unpriced)
    yield from (f"Not used: {row}" for row in order.unused)


def total(order: Order) -> float | None:
    """Of all priced lines; None where there is none."""
    costs = [line.cost for line in order.lines if line.cost is not None]
    return round(sum(costs), 2) if costs else None


def counted(order: Order) -> str:
    """How many lines have a price."""
    return f"{sum(line.cost is not None for line in order.lines)} of {len(order.lines)} lines priced"


def _plain(text: str) -> str:
    return " ".join(text.lower().split())
