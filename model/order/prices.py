"""Prices from a file of the user's own; none is invented."""

from __future__ import annotations

import csv
import io
from collections.abc import Mapping
from dataclasses import replace
from pathlib import Path

from ..errors import FileError
from .order_list import Order

COLUMNS = ("item", "unit", "price")
LARGEST = 5_000_000  # bytes

Prices = Mapping[tuple[str, str], float]


def read_prices(path: Path) -> Prices:
    """Prices by (item, unit) of a CSV file with the columns item, unit, price.

    Items and units are compared without regard to case and spaces. Raises FileError with the line for
    a file that is none.
    """
    try:
        if path.stat().st_size > LARGEST:
            raise FileError(f"{path}: is too large for a price file")
        text = path.read_text(encoding="utf-8-sig")
    except (OSError, UnicodeDecodeError) as error:
        raise FileError(
            f"{path}: cannot be read: {getattr(error, 'strerror', None) or 'not UTF-8'}"
        ) from None
    rows = csv.DictReader(io.StringIO(text))
    try:
        if tuple(rows.fieldnames or ()) != COLUMNS:
            raise FileError(f"{path}: line 1: columns would do: {', '.join(COLUMNS)}")
        return {key: price for row in rows for key, price in [_priced(path, rows.line_num, row)]}
    except csv.Error as error:
        raise FileError(f"{path}: line {rows.line_num}: {error}") from None


def _priced(path: Path, line: int, row: dict[str, str]) -> tuple[tuple[str, str], float]:
    text = (row["price"] or "").strip()
    try:
        price = float(text)
    except ValueError:
        price = -1.0
    if not 0 <= price < 1e9:
        raise FileError(f"{path}: line {line}: price: read {text!r}; a number such as 12.50 would do")
    return (_plain(row["item"]), _plain(row["unit"])), price


def priced(order: Order, prices: Prices) -> Order:
    """The order with the prices on its lines; the items without one named in `unpriced`."""
    lines = tuple(
        replace(line, price=prices.get((_plain(line.item), _plain(line.unit)))) for line in order.lines
    )
    return replace(order, lines=lines, unpriced=tuple(line.item for line in lines if line.price is None))


def total(order: Order) -> float:
    """Of all priced lines."""
    return round(sum(line.cost for line in order.lines if line.cost is not None), 2)


def _plain(text: str | None) -> str:
    return " ".join((text or "").lower().split())
