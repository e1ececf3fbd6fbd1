"""One line of an order: what, how much, and how much of it by every measure that it may be priced by."""

from __future__ import annotations

from dataclasses import dataclass

from ...units import FOOT, POUND

YARD = 914.4
"""mm"""
EACH = "each"
BY_ENGINEER = ", by the engineer"
"""What a kind says that is the engineer's to choose."""
MEASURES: dict[str, tuple[str, float]] = {
    EACH: ("count", 1.0),
    "hundred": ("count", 100.0),
    "ft": ("length", FOOT),
    "m": ("length", 1000.0),
    "ft2": ("area", FOOT**2),
    "m2": ("area", 1e6),
    "square": ("area", 100 * FOOT**2),
    "lb": ("weight", POUND),
    "kg": ("weight", 1.0),
    "cwt": ("weight", 100 * POUND),
    "yd3": ("volume", YARD**3),
    "m3": ("volume", 1e9),
}
"""Every unit that a price may be for: what of a line it measures, and how much of that is one.

hundred: pieces. square: 100 ft2. cwt: 100 lb, as in the United States.
"""


@dataclass(frozen=True, slots=True)
class Price:
    """A price as a row of a file has it: of one `unit`."""

    amount: float
    unit: str


@dataclass(frozen=True, slots=True)
class Line:
    """One line of an order.

    kind: what it is ("wall sheet 36 x 9 x 3/4"), then its gauge and thickness, colour and size, each ""
    where there is none. unit, quantity: as it is bought ("each", "ft", "bag of 250"). names: by which a
    price may mean it besides its kind, the narrower first. marks: what it makes.
    count, length, area, weight, volume: of all of it as bought (pieces, mm, mm2, kg, mm3), 0 for what it
    is not measured by. Area of sheets is what they cover, laps off; of trims it is girth times length.
    """

    list: str
    kind: str
    unit: str
    quantity: float
    marks: tuple[str, ...] = ()
    gauge: str = ""
    colour: str = ""
    size: str = ""
    names: tuple[str, ...] = ()
    count: float = 0.0
    length: float = 0.0
    area: float = 0.0
    weight: float = 0.0
    volume: float = 0.0
    price: Price | None = None

    @property
    def item(self) -> str:
        """The whole of what it is, in words."""
        return ", ".join(filter(None, (self.kind, self.gauge, self.colour, self.size)))

    def amount(self, unit: str) -> float | None:
        """How much of it there is in a unit of MEASURES or its own; None where it has no such measure."""
        if unit == self.unit:
            return self.quantity
        what, size = MEASURES.get(unit, ("", 1.0))
        found: float = getattr(self, what) if what else 0.0
        return found / size if found else None

    @property
    def cost(self) -> float | None:
        """What it costs, where there is a price and it has that measure."""
        amount = self.amount(self.price.unit) if self.price else None
        return None if self.price is None or amount is None else round(amount * self.price.amount, 2)
