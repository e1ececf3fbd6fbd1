"""What to order: every quantity counted off the schedule, which is read off the solids."""

from __future__ import annotations

from dataclasses import dataclass, field

from ...terms import Terms
from ..lists.schedule import Schedule
from .blanket_lines import blanket_lines
from .blanks import SAME, Pair, blank_pairs
from .buying import Buying, buying_on
from .clip_lines import clip_lines
from .fittings import (
    anchor_lines,
    brace_end_lines,
    closure_lines,
    concrete_lines,
    mesh_lines,
    opening_lines,
    paint_lines,
    tape_lines,
)
from .line import Line
from .screw_lines import screw_lines
from .sheet_lines import sheet_lines
from .short_sheets import Longer, from_longer, wanted
from .spout_lines import spout_lines
from .steel_lines import as_cut_lines, steel_plans
from .stock import StockPlan
from .stock_line import StockLine
from .trim_lines import trim_plans

__all__ = ["LISTS", "Buying", "Order", "buying_on", "order"]

LISTS = (
    *("sheets", "trims", "screws", "closures", "tape", "insulation"),
    *("paint", "openings", "members", "clips", "anchors", "slab"),
)
"""The lists of an order, in order."""


@dataclass(frozen=True, slots=True)
class Order:
    """The lines, list by list; trims and members with their stock plans; blanks that give two sheets, and
    those that sheets shorter than a mill makes are cut from.

    unpriced: the items that no price was found for. unused: the rows of the price file that priced
    nothing, and why. braced: whether bracing is drawn.
    """

    name: str
    units: str
    lines: tuple[Line, ...]
    trims: tuple[StockLine, ...]
    members: tuple[StockLine, ...]
    pairs: tuple[Pair, ...]
    longer: tuple[Longer, ...]
    unpriced: tuple[str, ...] = field(default=())
    unused: tuple[str, ...] = field(default=())
    terms: Terms = field(default=Terms())
    braced: bool = False

    @property
    def plans(self) -> tuple[tuple[str, StockPlan], ...]:
        """The stock plans of trims and members, by item."""
        return tuple((bought.line.item, bought.plan) for bought in (*self.trims, *self.members))


def order(schedule: Schedule, buying: Buying | None = None) -> Order:
    """The order of a building. buying: how things are bought; as its terms ask unless given."""
    buying = buying or buying_on(schedule.terms)
    pairs = tuple(blank_pairs(schedule.rows, buying.kerf)) if buying.pairs else ()
    sheets = list(wanted(schedule, pairs))
    short = [one for one in sheets if buying.to_step(one.length) < buying.shortest - SAME]
    longer = tuple(from_longer(short, buying))
    made = [one for one in sheets if one not in short]
    trims, members = tuple(trim_plans(schedule, buying)), tuple(steel_plans(schedule, buying))
    lines = (
        *sheet_lines(schedule, made, longer, buying),
        *(trim.line for trim in trims),
        *spout_lines(schedule),
        *screw_lines(schedule, buying),
        *closure_lines(schedule),
        *tape_lines(schedule),
        *blanket_lines(schedule),
        *paint_lines(schedule),
        *opening_lines(schedule),
        *(bought.line for bought in members),
        *as_cut_lines(schedule),
        *brace_end_lines(schedule),
        *clip_lines(schedule),
        *anchor_lines(schedule),
        *concrete_lines(schedule, buying),
        *mesh_lines(schedule),
    )
    return Order(
        schedule.name,
        schedule.units,
        lines,
        trims,
        members,
        pairs,
        longer,
        terms=schedule.terms,
        braced=schedule.braced,
    )
