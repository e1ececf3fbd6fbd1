"""Whether openings of a wall stand clear of each other's jambs: side by side, or one over the other."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations

from ..description.said_limits import at_least, at_most, over, under
from .opening_lines import OpeningLines
from .steel_checks import Objection

Placed = tuple[int, float, float]
"""An opening: its number in the description, its sill, its head (mm)."""


def crowded(lines: OpeningLines) -> Iterator[Objection]:
    """Openings whose jambs would meet. Beside each other there is room for two jambs; above each other a girt
    between them, at which the jambs of both end. Common practice, no source."""
    for (first, one), (second, other) in combinations(enumerate(lines.building.openings), 2):
        if one.wall != other.wall or one.wall not in lines.named:
            continue
        (a, b), (c, d) = lines.jamb_span(one), lines.jamb_span(other)
        if not (under(a, d) and under(c, b)):
            continue
        if one.sill > other.sill + other.height:
            yield from _beneath(lines, second, first)
        elif other.sill > one.sill + one.height:
            yield from _beneath(lines, first, second)
        else:
            yield (
                ("opening", second, "from_left"),
                f"beside the wall's other opening {_beside(lines, first, second)}",
            )


def _beneath(lines: OpeningLines, lower: int, upper: int) -> Iterator[Objection]:
    """The jambs of an opening end under those of the one over it."""
    under_it, over_it = lines.building.openings[lower], lines.building.openings[upper]
    framing, units = lines.building.framing, lines.building.units
    foot, (_, head) = lines.jamb_reach(over_it)[0], lines.jamb_reach(under_it)
    if head is not None and not over(head, foot):
        return
    tops = [v + framing.girt.width / 2 for v in lines.girts(lines.named[over_it.wall])]
    above = min((top for top in tops if head is not None and over(top, head)), default=None)
    least = 0.0 if above is None else above + framing.sill.width
    higher = f"at least {at_least(least, units)}, over a girt between them; or " if least else ""
    yield (
        ("opening", upper, "sill"),
        f"{higher}with a girt between it and the opening under it, by [framing] girt_heights; or beside that "
        f"one {_beside(lines, lower, upper)}",
    )


def _beside(lines: OpeningLines, one: int, other: int) -> str:
    """Where the other opening would stand beside the one."""
    a, b = lines.jamb_span(lines.building.openings[one])
    jamb, units = lines.building.framing.jamb.width, lines.building.units
    right, left = b + jamb, a - jamb - lines.building.openings[other].width
    before = f"at most {at_most(left, units)} or " if left > 0 else ""
    return f"with room for two jambs: {before}at least {at_least(right, units)}"
