"""One kind of what is bought in one stock length: its line in the order, and what is cut from each stick."""

from __future__ import annotations

from dataclasses import dataclass

from ..lists.items import Item
from .line import Line
from .stock import StockPlan


@dataclass(frozen=True, slots=True)
class StockLine:
    """items: all that is cut from it. plan: how. line: what stands in the order. first: of all items of the
    kind, by which its section is told."""

    items: tuple[Item, ...]
    plan: StockPlan
    line: Line
    first: Item
