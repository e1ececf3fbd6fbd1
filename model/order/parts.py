"""The lists of a schedule by name, and the choice of some of them."""

from __future__ import annotations

from collections.abc import Sequence

from .items import LISTS

SHEETS = "sheets"
PARTS = (SHEETS, *LISTS)


def chosen(parts: Sequence[str]) -> tuple[str, ...]:
    """The lists asked for, in the schedule's order; all when none is named."""
    return tuple(name for name in PARTS if not parts or name in parts)
