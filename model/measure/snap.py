"""Rounding that noise in the ninth decimal cannot turn."""

from __future__ import annotations

from math import floor, log10

ASIDE = 1e-6 / 3
"""mm. Recipes lie on a grid of 1e-6 mm (`ribwright.recipe.GRID`), so the places where a rounding tips
over are set a third of that aside: a measured figure with its noise never straddles one."""


def snapped(value: float, step: float) -> float:
    """value to the nearest multiple of step (mm), halves up; the same for value +- 1e-8. Never -0.0."""
    return round(floor((value + ASIDE) / step + 0.5) * step, 9) + 0.0


def snapped_weight(value: float) -> float:
    """Weight in kg to the nearest gram, of less than 1 kg to four figures; the same with noise of 1e-8."""
    step = 10.0 ** max(floor(log10(value)) - 3, -9) if 0 < value < 1 else 1e-3
    return round(floor(value / step + 0.5 + 1e-4 / 3) * step, 12) + 0.0


def snapped_area(value: float) -> int:
    """Area to the nearest mm2, halves up; the same for value +- 0.01 (noise of a girth times a stick)."""
    return floor(value + 0.1 / 3 + 0.5)


def snapped_volume(value: float) -> int:
    """Volume to the nearest 100 mm3, halves up; the same for value +- 0.1 (length noise times areas)."""
    return floor((value + 1 / 3) / 100 + 0.5) * 100
