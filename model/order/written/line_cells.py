"""The cells of an order's lines, the same in every kind of output."""

from __future__ import annotations

from ...measure.snap import snapped
from ...units import FOOT, Units, area_unit, format_area, format_weight, weight_unit
from ..buying.line import Line

FIGURES = ("length", "area", "weight")


def units_of(units: Units) -> dict[str, str]:
    """The units of FIGURES."""
    return {
        "length": "m" if units == "mm" else "ft",
        "area": area_unit(units),
        "weight": weight_unit(units),
    }


def amounts(line: Line, units: Units) -> dict[str, str]:
    """Lineal length to 0.1 ft or 0.01 m, area, weight of all of a line; "" where it has none."""
    return {
        "length": length_text(line.length, units) if line.length else "",
        "area": format_area(line.area, units) if line.area else "",
        "weight": format_weight(line.weight, units) if line.weight else "",
    }


def length_text(mm: float, units: Units) -> str:
    """A lineal length, without its unit."""
    return f"{snapped(mm / 1000, 0.01):.2f}" if units == "mm" else f"{snapped(mm / FOOT, 0.1):.1f}"


def number(quantity: float) -> str:
    """A quantity without needless decimals."""
    return f"{quantity:g}" if quantity == int(quantity) else f"{quantity:.2f}"


def money(value: float | None) -> str:
    """Two decimals; blank for what has no price."""
    return "" if value is None else f"{value:.2f}"
