"""Measured values against limits, in one place: noise decides nothing, every margin can be read."""

from __future__ import annotations

FINEST = 3
"""Decimals of a millimetre that measured values keep before they are compared with a limit."""


GRAIN = 10.0**-FINEST
"""mm; values farther apart than this are told apart without being rounded."""


def settled(value: float) -> float:
    """A measured value (mm) without the noise behind FINEST decimals; never -0.0."""
    return round(value, FINEST) + 0.0


def over(value: float, limit: float) -> bool:
    """Whether a measured value is more than there may be."""
    return value - limit > -GRAIN and (value - limit > GRAIN or settled(value) > settled(limit))


def under(value: float, limit: float) -> bool:
    """Whether a measured value is less than there must be."""
    return over(limit, value)
