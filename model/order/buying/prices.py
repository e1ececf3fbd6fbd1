"""Prices from a file of the user's own; none is invented."""

from __future__ import annotations

import csv
import io
import re
from collections.abc import Mapping
from dataclasses import replace
from pathlib import Path

from ...errors import FileError
from ...files import read_whole
from .order_list import Order

COLUMNS = ("item", "unit", "price")
LARGEST = 5_000_000  # bytes
PRICE = re.compile(r"[0-9]{1,9}(\.[0-9]{1,6})?")

Prices = Mapping[tuple[str, str], float]


def read_prices(path: Path) -> Prices:
    """Prices by (item, unit) of a CSV file with the columns item, unit, price.

    Items and units are compared without regard to case and spaces. Raises FileError with the line for
    a file that is none.
    """
    try:
        text = read_whole(path, LARGEST).decode("utf-8-sig")
    except UnicodeDecodeError:
        raise FileError(f"{path}: cannot be read: not UTF-8") from None
    rows = csv.reader(io.StringIO(text, newline=""))
    prices: dict[tuple[str, str], float] = {}
    try:
        if tuple(next(rows, ())) != COLUMNS:
            raise FileError(f"{path}: line 1: columns would do: {', '.join(COLUMNS)}")
        for row in filter(None, rows):
            key, price = _priced(f"{path}: line {rows.line_num}", row)
            if prices.setdefault(key, price) != price:
                raise FileError(f"{path}: line {rows.line_num}: {row[0]!r} has another price above")
    except csv.Error as error:
        raise FileError(f"{path}: line {rows.line_num}: {error}") from None
    return prices


def _priced(where: str, row: list[str]) -> tuple[tuple[str, str], float]:
    if len(row) != len(COLUMNS):
        said = f"{len(row)} cell{'' if len(row) == 1 else 's'}"
        raise FileError(f"{where}: read {said}; would do: {', '.join(COLUMNS)}, quoted where one has a comma")
    item, unit, text = row
    if not PRICE.fullmatch(text.strip()):
        raise FileError(f"{where}: price: read {text.strip()[:40]!r}; a number such as 12.50 would do")
    return (_plain(item), _plain(unit)), float(text)


def priced(order: Order, prices: Prices) -> Order:
    """The order with the prices on its lines; the items without one named in `unpriced`."""
    lines = tuple(
        replace(line, price=prices.get((_plain(line.item), _plain(line.unit)))) for line in order.lines
    )
    return replace(order, lines=lines, unpriced=tuple(line.item for line in lines if line.price is None))


def total(order: Order) -> float:
    """Of all priced lines."""
    return round(sum(line.cost for line in order.lines if line.cost is not None), 2)


def _plain(text: str) -> str:
    return " ".join(text.lower().split())
