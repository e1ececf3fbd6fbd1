"""Stretches along a line, and what is left of one."""

from __future__ import annotations

from collections.abc import Sequence

SHORTEST = 25.4
"""mm; nothing shorter than an inch is cut."""

Span = tuple[float, float]


def remaining(span: Span, taken: Sequence[Span]) -> list[Span]:
    """What is left of a span when the taken ones are cut out of it; nothing shorter than an inch."""
    left, found = span[0], []
    for a, b in sorted(taken):
        if a - left > SHORTEST:
            found.append((left, min(a, span[1])))
        left = max(left, b)
        if left >= span[1]:
            return found
    if span[1] - left > SHORTEST:
        found.append((left, span[1]))
    return found
