"""Members: a list of their lengths, ends and holes, the sticks they are cut from, and a drawing of each mark
that is not cut square."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Sequence
from dataclasses import replace

from ..measure.member import measure_member
from ..order.lists.item_cells import cells
from ..order.lists.items import Item
from ..units import weight_unit
from .cards import Card, Deck
from .checklists import Section, checklist
from .flat import Flat, ends_cut
from .flat_card import flat_card
from .frame import Content
from .job import Job
from .member_flats import member_flat
from .scales import between
from .sheet_notes import likewise, said
from .sticks import cut_from_sticks
from .trim_sheets import pieces_by_mark

NOTES = (
    "Members whose ends are not square, from each side that shows it (turned: a quarter turn on); distances "
    "from the upper edge and from one end, hooked once. Hatched: cut off."
)
RATIOS = {"ft-in": (16.0, 64.0), "mm": (20.0, 100.0)}
"""Members are drawn to 3/4 in a foot, or 1:20, where they fit, and never smaller than the second."""
HEAD = ("mark", "count", "what", "length", "ends", "holes", "section")
SHARES = (0.07, 0.06, 0.14, 0.12, 0.17, 0.12, 0.32)


def member_lists(one: Job) -> Iterator[Content]:
    """The list of all members and of the sticks they are cut from."""
    items = one.listed.listed("members")
    if items:
        yield from checklist(one, "members", [_list(one, items), cut_from_sticks(one)])


def member_deck(one: Job) -> Deck:
    """Cards of the members that are cut otherwise than square."""
    items = one.listed.listed("members")
    first = pieces_by_mark(one)
    alike: dict[object, list[tuple[Item, list[Flat]]]] = defaultdict(list)
    for item in items:
        sides = [member_flat(item.mark, first[item.mark].solid, turned) for turned in (False, True)]
        ways = measure_member(first[item.mark].solid).ways  # turned, never mirrored: hands stay apart
        alike[item.section, min(ends_cut(way.points) for way in ways)].append((item, sides))
    cards = (card for found in alike.values() for card in _cards(one, found))
    return Deck("members", NOTES, cards)


def _list(one: Job, items: Sequence[Item]) -> Section:
    of = [cells(item, one.units) for item in items]
    return Section("Members", HEAD, SHARES, tuple(tuple(row[name] for name in HEAD) for row in of))


def _cards(one: Job, found: Sequence[tuple[Item, list[Flat]]]) -> Iterator[Card]:
    """A card for each of two sides, a quarter turn apart, from which a cut is seen, of members that differ in
    length alone."""
    (item, sides), *others = found
    scales = between(*RATIOS[one.units], one.units)
    notes = [*_notes(one, item), *likewise(one, [other for other, _ in others])]
    cut = [flat for flat in sides if flat.fall is None]
    for number, flat in enumerate(cut):
        mark = f"{item.mark} turned" if number else item.mark
        told = [f"{item.mark}, a quarter turn on"] if number else notes
        card = flat_card(one, replace(flat, mark=mark), told, scales)
        yield replace(card, more=bool(number))


def _notes(one: Job, item: Item) -> Iterator[str]:
    of = cells(item, one.units)
    pieces = "piece" if item.count == 1 else "pieces"
    faces = f" on {of['faces']}" if of["faces"] else ""
    yield f"{item.count} {pieces}: {item.role}{faces}"
    yield of["section"]
    holes = f"; holes {of['holes']}" if of["holes"] else ""
    yield f"{said(one, item.length)} long, ends {of['ends']}{holes}"
    yield f"{of['weight']} {weight_unit(one.units)} each"
