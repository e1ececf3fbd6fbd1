"""What a detailer would change before metal is ordered: notes with what would do, none of them a fault.

Limits are those of the description; what it does not say is common practice, no source.
"""

from __future__ import annotations

from ...description.building import Building
from ...findings import Finding, in_order
from ..trim.trim_lines import TrimLines
from .beside_openings import beside_openings, clear_places
from .run_ends import run_ends
from .sizes import sizes
from .spans import spans

__all__ = ["clear_places", "detailed"]


def detailed(building: Building) -> tuple[Finding, ...]:
    """A detailer's notes on a building, by kind."""
    lines = TrimLines(building)
    return in_order((*beside_openings(lines), *run_ends(lines), *sizes(lines), *spans(lines)))
