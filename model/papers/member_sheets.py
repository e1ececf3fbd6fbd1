"""Members: a list of their lengths, ends and holes, and a drawing of each mark that is not cut square."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import TYPE_CHECKING

import numpy as np
import shapely

from ..measure.member import measure_member
from ..order.lists.item_cells import cells
from ..order.lists.items import Item
from ..units import weight_unit
from .cards import FIRST, Card, card_pages
from .flat import Flat, likeness, steady
from .flat_card import flat_card
from .frame import ROW, Content, room_of, table
from .job import Job
from .scales import between
from .sheet_notes import said
from .trim_sheets import pieces_by_mark

if TYPE_CHECKING:
    from OCP.TopoDS import TopoDS_Solid

NOTES = (
    "Members whose ends are not square, from each side that shows it (turned: a quarter turn on); distances "
    "from the upper edge and from one end, hooked once. Hatched: cut off."
)
RATIOS = {"ft-in": (16.0, 64.0), "mm": (20.0, 100.0)}
"""Members are drawn to 3/4 in a foot, or 1:20, where they fit, and never smaller than the second."""
SLIVER = 0.5
"""mm; waste that is narrower is none: the round of a corner."""
HEAD = ("mark", "count", "what", "length", "ends", "holes", "section")


def member_sheets(one: Job) -> Iterator[Content]:
    """The list of all members, then cards of those that are cut otherwise than square."""
    items = one.listed.listed("members")
    yield from _list(one, items)
    first = pieces_by_mark(one)
    cards = (card for item in items for card in _cards(one, item, first[item.mark].solid))
    yield from card_pages(one, "members", NOTES, cards)


def _list(one: Job, items: Sequence[Item]) -> Iterator[Content]:
    room = room_of(one)
    rows = []
    for item in items:
        of = cells(item, one.units)
        rows.append([of[name] for name in HEAD])
    most = int((room.height - FIRST) / ROW) - 2
    for start in range(0, len(rows), most):
        found, _ = table(one, HEAD, rows[start : start + most], (room.left, room.high), room.width)
        part = "" if len(rows) <= most else f", part {start // most + 1}"
        yield Content(f"members{part}", (), tuple(found))


def _cards(one: Job, item: Item, solid: TopoDS_Solid) -> Iterator[Card]:
    """A card for each of two sides, a quarter turn apart, from which a cut is seen."""
    scales = between(*RATIOS[one.units], one.units)
    sides = (member_flat(item.mark, solid, False), member_flat(f"{item.mark} turned", solid, True))
    cut = [flat for flat in sides if flat.fall is None]
    for flat in cut:
        yield flat_card(
            one, replace(flat, mark=item.mark) if len(cut) == 1 else flat, _notes(one, item), scales
        )


def member_flat(mark: str, solid: TopoDS_Solid, turned: bool) -> Flat:
    """A member as it is seen from the side (mm): v along it, u down across it; turned: a quarter turn on.

    Its outline is the hull of its corners: end cuts show, notches in its legs do not.
    """
    points = measure_member(solid).ways[0].points[:, [2 if turned else 0, 1]]
    points = points - points.min(axis=0)
    size = points.max(axis=0)
    ways = (np.abs(points - size * far) for far in ((0, 0), (1, 0), (0, 1), (1, 1)))
    hulls = [steady(shapely.MultiPoint(way).convex_hull.simplify(0.02)) for way in ways]
    outline = min(hulls, key=likeness)
    blank = shapely.box(*outline.bounds)
    parts = shapely.get_parts(blank.difference(outline))
    cut = [part for part in parts if not part.buffer(-SLIVER / 2).is_empty]
    busy = tuple((float(part.bounds[1]), float(part.bounds[3])) for part in cut)
    return Flat(mark, outline, blank, (), busy, None if cut else (0.0, 0.0))


def _notes(one: Job, item: Item) -> Iterator[str]:
    of = cells(item, one.units)
    pieces = "piece" if item.count == 1 else "pieces"
    faces = f" on {of['faces']}" if of["faces"] else ""
    yield f"{item.count} {pieces}: {item.role}{faces}"
    yield of["section"]
    holes = f"; holes {of['holes']}" if of["holes"] else ""
    yield f"{said(one, item.length)} long, ends {of['ends']}{holes}"
    yield f"{of['weight']} {weight_unit(one.units)} each"
