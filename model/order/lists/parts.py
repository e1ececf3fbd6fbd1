"""The lists of a schedule by name, and the choice of some of them."""

from __future__ import annotations

from collections.abc import Sequence

from ...roles import LISTS

SHEETS = LISTS[0]
REST = LISTS[1:]
"""The lists after the sheets."""


def chosen(parts: Sequence[str]) -> tuple[str, ...]:
    """The lists asked for, in the schedule's order; all when none is named."""
    return tuple(name for name in LISTS if not parts or name in parts)
