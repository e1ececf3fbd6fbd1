"""Sizes as an order says them."""

from __future__ import annotations

from ...measure.snap import snapped
from ...units import Units, format_length
from ..lists.items import format_thickness


def long_text(mm: float, units: str) -> str:
    """A length with its unit."""
    return f"{snapped(mm, 1):.0f} mm" if units == "mm" else format_length(mm, "ft-in")


def gauge_text(gauge: str, thickness: float, units: Units) -> str:
    """A gauge as labelled with the thickness as measured: `29 ga 0.0172"`; once, where both are one text."""
    thick = format_thickness(thickness, units) + (" mm" if units == "mm" else "")
    return thick if gauge in ("", thick) else f"{gauge} {thick}"


def inches_text(mm: float) -> str:
    """Inches to 1/16, without the mark: 1-1/4."""
    return format_length(mm, "ft-in").rstrip('"')
