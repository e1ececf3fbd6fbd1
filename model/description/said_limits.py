"""Limits said to people, rounded to the side that works: whoever types what was said is right."""

from __future__ import annotations

from collections.abc import Callable
from math import ceil, floor

from ..units import INCH, Units, format_length

NOISE = 1e-5
"""mm; what two ways of working out one length may differ by. Far below what two bodies may share."""


def at_most(mm: float, units: Units) -> str:
    """A greatest length, rounded down to 1/16 in or 1 mm; never below nought."""
    return _said(mm, units, floor)


def at_least(mm: float, units: Units) -> str:
    """A least length, rounded up to 1/16 in or 1 mm."""
    return _said(mm, units, ceil)


def exactly(mm: float, units: Units) -> str:
    """A length that is no limit, to the nearest 1/16 in or 1 mm, with its unit."""
    return format_length(mm, units) + (" mm" if units == "mm" else "")


def over(mm: float, most: float) -> bool:
    """Whether a length is greater than a limit, by more than noise."""
    return mm > most + NOISE


def under(mm: float, least: float) -> bool:
    """Whether a length is less than a limit, by more than noise."""
    return mm < least - NOISE


def _said(mm: float, units: Units, whole: Callable[[float], int]) -> str:
    step = 1.0 if units == "mm" else INCH / 16
    return exactly(max(0.0, whole(round(mm / step, 6)) * step), units)
