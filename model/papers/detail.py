"""A detail: where it is cut, what of it is shown, what is dimensioned in it."""

from __future__ import annotations

from dataclasses import dataclass

from ..place import Place

Measured = tuple[str, tuple[str, ...], tuple[str, ...], int]
"""What is dimensioned: "lap" (how far two lie over each other), "gap" (between their nearer ends), "low" or
"high" (between the low, or the high, ends of both), the roles of the one, of the other, and the axis
(0: across the paper, 1: up)."""


@dataclass(frozen=True, slots=True)
class Detail:
    """A cut: its name, plane, window about the plane's origin (left, low, right, high) and dimensions."""

    name: str
    frame: Place
    window: tuple[float, float, float, float]
    measured: tuple[Measured, ...]
