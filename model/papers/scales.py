"""Standard scales: those of an architect's rule; those of ISO 5455, and of a scale rule between them."""

from __future__ import annotations

from ..drawing.values import Scale
from ..units import Units

_RULE = (
    *(("1/64", 768), ("1/32", 384), ("1/16", 192), ("3/32", 128), ("1/8", 96), ("3/16", 64)),
    *(("1/4", 48), ("3/8", 32), ("1/2", 24), ("3/4", 16), ("1", 12), ("1-1/2", 8)),
    *(("3", 4), ("6", 2), ("12", 1)),
)
METRIC = (1000, 500, 200, 150, 125, 100, 75, 50, 25, 20, 10, 5, 2, 1)
SCALES: dict[Units, tuple[Scale, ...]] = {
    "ft-in": tuple(Scale(f"{inches}\" = 1'", float(ratio)) for inches, ratio in _RULE),
    "mm": tuple(Scale(f"1:{ratio}", float(ratio)) for ratio in METRIC),
}
"""From the smallest to the full size."""


def fitting(
    size: tuple[float, float], room: tuple[float, float], units: Units, most: float = 1000.0
) -> Scale:
    """The largest standard scale in which a size (mm) fits a room on paper (mm); the smallest if none.

    most: the ratio of the smallest that is taken.
    """
    scales = [scale for scale in SCALES[units] if scale.ratio <= most]
    found = scales[0]
    for scale in scales:
        if size[0] <= room[0] * scale.ratio and size[1] <= room[1] * scale.ratio:
            found = scale
    return found


def between(large: float, small: float, units: Units) -> list[Scale]:
    """The standard scales from 1 : small to 1 : large, the smallest first."""
    return [scale for scale in SCALES[units] if large <= scale.ratio <= small]


def smaller(scale: Scale, units: Units, least: float) -> list[Scale]:
    """The standard scales from the next smaller one down to `least` times as small, the largest first."""
    found = [one for one in SCALES[units] if scale.ratio < one.ratio <= scale.ratio * least]
    return found[::-1]


BAR: dict[Units, tuple[float, ...]] = {
    "ft-in": tuple(304.8 * feet for feet in (1 / 12, 1 / 4, 1 / 2, 1, 2, 5, 10, 20)),
    "mm": (20.0, 50.0, 100.0, 200.0, 500.0, 1000.0, 2000.0, 5000.0),
}
"""Lengths that a bar scale may have."""


def bar_length(scale: Scale, units: Units, about: float = 30.0) -> float:
    """How much a bar of about so many mm on paper stands for."""
    return min(BAR[units], key=lambda length: abs(length / scale.ratio - about))
