"""Plain blocks."""

from __future__ import annotations

from ...recipe import Prism, Section, grid


def block(width: float, height: float, depth: float) -> Prism:
    """A block from its local origin to (width, height, depth), mm."""
    corners = ((0.0, 0.0), (width, 0.0), (width, height), (0.0, height))
    outline = Section(tuple((grid(x), grid(y), 0.0) for x, y in corners))
    return Prism(outline, (0.0, 0.0, 0.0), (0.0, 0.0, grid(depth)))
