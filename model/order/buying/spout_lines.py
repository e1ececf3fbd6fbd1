"""What goes with downspouts: outlets, elbows, straps. Counted by the downspouts there are, not drawn."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator
from math import ceil

from ...roles import Role
from ...units import FOOT
from ..lists.items import Item
from ..lists.schedule import Schedule
from .line import EACH, Line
from .words import long_text

END, APART = {"ft-in": FOOT, "mm": 300.0}, {"ft-in": 8 * FOOT, "mm": 2400.0}
"""mm from a downspout's ends to the strap beside each, and the most from one strap to the next. Common
practice, no source."""


def spout_lines(schedule: Schedule) -> Iterator[Line]:
    """An outlet for every downspout, in the hole that its gutter has there; since it goes straight down from
    that, one elbow, at its foot; straps to the wall."""
    units, kinds = schedule.units, defaultdict[tuple[str, str], list[Item]](list)
    for item in schedule.listed("trims"):
        if item.role == Role.DOWNSPOUT:
            square = " x ".join(long_text(size, units) for size in (item.depth, item.width))
            kinds[item.colour, square].append(item)
    rule = f"{long_text(END[units], units)} from each end, at most {long_text(APART[units], units)} apart"
    for (colour, square), items in kinds.items():
        count = sum(item.count for item in items)
        held = sum(item.count * straps(item.length, units) for item in items)
        for kind, many, size in (
            ("gutter outlet", count, square),
            ("downspout elbow", count, f"{square}, one at each foot"),
            ("downspout strap", held, f"{square}, {rule}"),
        ):
            names = (kind.split()[1],)
            yield Line("trims", kind, EACH, many, colour=colour, size=size, names=names, count=many)


def straps(length: float, units: str) -> int:
    """How many hold a downspout of that length (mm): one beside each end, and others evenly between."""
    return 1 + max(0, ceil((length - 2 * END[units]) / APART[units] - 1e-6))
