"""Lengths that fit: sheets square at both ends come in steps of length, and are laid as long as they come.

Rounding stands here and nowhere else, so that the solid is the sheet that arrives. Common practice, no
source.
"""

from __future__ import annotations

from collections.abc import Callable
from math import ceil, floor

from ..place import Point2
from .edges import Edge
from .face import HAIR, Side

SHORTEST = 1219.2
"""mm; the least that a mill makes (4 ft). Common practice, no source."""

ROUNDING = 1e-6
"""Share of a step that a length may be off by and still be one."""


def stepped_down(length: float, step: float) -> float:
    """The most whole steps within a length; with a step of 0 the length."""
    return floor(length / step + ROUNDING) * step if step else length


def stepped_up(length: float, step: float) -> float:
    """The least whole steps that hold a length; with a step of 0 the length."""
    return ceil(length / step - ROUNDING) * step if step else length


def fitted_wall(outline: tuple[Point2, ...], step: float) -> tuple[Point2, ...]:
    """A wall's outline whose sheets are whole steps long, so that they go under what lies over their heads;
    one that is raked as it was: such sheets come longer and are cut on site."""
    return _as_long(outline, lambda length: stepped_down(length, step))


def fitted_slope(outline: tuple[Point2, ...], step: float, head: Side) -> tuple[Point2, ...]:
    """A slope's outline likewise, the overhang at its low eave kept. Towards a ridge its sheets take the
    nearer length that leaves a gap, and the gap the difference; towards a high eave the longer one, and its
    overhang the difference; towards a wall, or a break of the pitch, the shorter one."""

    def length_of(length: float) -> float:
        if not step:
            return length
        if head.kind in (Edge.HEADWALL, Edge.BREAK, Edge.HOLLOW):
            return stepped_down(length, step)
        if head.kind is not Edge.RIDGE:
            return stepped_up(length, step)
        nearest = floor(length / step + 0.5) * step
        return nearest if outline[0][1] + nearest <= head.start[1] + HAIR else stepped_down(length, step)

    return _as_long(outline, length_of)


def _as_long(outline: tuple[Point2, ...], length_of: Callable[[float], float]) -> tuple[Point2, ...]:
    """An outline with its head moved to another length from its foot; as it was where either is not level."""
    if len(outline) != 4:
        return outline
    (left, foot), (right, other_foot), (top_right, head), (top_left, other_head) = outline
    if max(abs(foot - other_foot), abs(head - other_head)) > HAIR:
        return outline
    head = foot + length_of(head - foot)
    return ((left, foot), (right, foot), (top_right, head), (top_left, head))
