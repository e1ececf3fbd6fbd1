"""Which members are cut from which stick: the plan that the steel is bought by, equal sticks in one row."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from ..order.buying.stock import Stick
from ..order.buying.stock_line import StockLine
from ..order.lists.item_cells import cells
from ..order.lists.items import Item
from .checklists import TICK, Section
from .job import Job
from .sheet_notes import said

LEAST = 1.0
"""mm; less that is left of a stick is nothing."""


def cut_from_sticks(one: Job) -> Section:
    """A row for each stick, or for several that are cut alike, kind by kind."""
    rows = tuple(row for bought in one.ordered.members for row in _rows(one, bought))
    head = ("", "sticks of", "number", "cut from each: how many, mark, length, ends, holes", "left")
    return Section("Cut from sticks", head, (0.03, 0.27, 0.1, 0.49, 0.11), rows)


def _rows(one: Job, bought: StockLine) -> Iterator[tuple[str, ...]]:
    items = {item.mark: item for item in bought.items}
    number = 1
    for stick, count in _alike(bought):
        pieces = Counter(mark for mark, _ in stick.cuts)
        cut = " + ".join(f"{of_mark} {_piece(one, items[mark])}" for mark, of_mark in pieces.items())
        numbers = str(number) if count == 1 else f"{number} to {number + count - 1}"
        left = said(one, stick.left) if stick.left > LEAST else ""
        yield TICK, bought.line.item, numbers, cut, left
        number += count


def _alike(bought: StockLine) -> Iterator[tuple[Stick, int]]:
    """Sticks that are cut alike, and how many."""
    found: dict[tuple[str, ...], list[Stick]] = {}
    for stick in bought.plan.sticks:
        found.setdefault(tuple(mark for mark, _ in stick.cuts), []).append(stick)
    return ((sticks[0], len(sticks)) for sticks in found.values())


def _piece(one: Job, item: Item) -> str:
    """`G2 30' (45.0 deg both, holes 2 of 9/16")`: a piece as it is cut and drilled."""
    of = cells(item, one.units)
    told = [of["ends"] if of["ends"] != "square" else "", f"holes {of['holes']}" if of["holes"] else ""]
    more = ", ".join(filter(None, told))
    return f"{item.mark} {said(one, item.length)}{f' ({more})' if more else ''}"
