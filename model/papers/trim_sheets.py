"""Trims: how each mark is bent and cut, its legs opened out beside its section."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Sequence
from dataclasses import replace

import shapely

from ..measure.congruent import groups
from ..order.lists.items import Item
from ..order.written.bend_text import bend_text, folds_text
from ..pieces import Piece
from ..units import format_weight, weight_unit
from .cards import Card, Deck
from .flat import Flat, ends_cut
from .flat_card import ALONE, flat_card
from .job import Job
from .member_flats import member_flat
from .scales import between
from .sheet_notes import likewise, said
from .sketches import sketch
from .trim_flats import trim_flat

NOTES = (
    "Left: as it is bent, legs outside, inside angles; dashed: painted side. Right: legs opened out, each "
    "seen square to it, distances from a free edge and one end, hooked once; thin: bends; hatched: waste."
)
RATIOS = {"ft-in": (12.0, 48.0), "mm": (10.0, 50.0)}
"""Trims are drawn to 1 in a foot, or 1:10, where they fit, and never smaller than the second."""


def trim_deck(one: Job) -> Deck:
    """A card a mark of folded trim; of marks that differ in length alone one."""
    first = pieces_by_mark(one)
    painted: dict[tuple[str, str, int], str] = {}
    for item in one.listed.listed("trims"):
        if item.painted:
            painted[_kind(item)] = item.painted
    alike: dict[object, list[tuple[Item, Flat]]] = defaultdict(list)
    for item in one.listed.listed("trims"):
        if item.bends:
            flat, bends = trim_flat(item.mark, first[item.mark].solid, item.bends)
            shown = replace(item, painted=painted.get(_kind(item), ""), bends=bends)
        else:  # a strip that is not bent: drawn from the side that is broad
            sides = (member_flat(item.mark, first[item.mark].solid, turned) for turned in (False, True))
            flat, shown = max(sides, key=lambda side: side.width), item
        alike[_cut_alike(one, shown, flat)].append((shown, flat))
    return Deck("trims", NOTES, (_card(one, found) for found in alike.values()))


def _cut_alike(one: Job, item: Item, flat: Flat) -> object:
    """What trims have in common that differ in length alone: as they are seen opened out they are cut alike,
    and every bend and every tab turns to the same side, so that none is the other hand of another."""
    bent = bend_text(item, one.units), folds_text(item, one.units)
    return (
        item.role,
        item.colour,
        item.gauge,
        bent,
        _hand(item),
        ends_cut(shapely.get_coordinates(flat.outline)),
    )


def _hand(item: Item) -> object:
    """The sides to which its bends and its tabs turn."""
    if item.bends is None:
        return ()
    tabs = sorted((fold.side, round(fold.reach)) for fold in item.bends.folds)
    return tuple(turn > 0 for turn in item.bends.turns), tuple(tabs)


def pieces_by_mark(one: Job) -> dict[str, Piece]:
    """The first piece of each mark."""
    return {group.mark: group.members[0].piece for group in groups(one.model)}


def _kind(item: Item) -> tuple[str, str, int]:
    return item.role, item.colour, round(item.bends.girth) if item.bends else 0


def _card(one: Job, found: Sequence[tuple[Item, Flat]]) -> Card:
    """The card of trims that differ in length alone: the first is drawn, the others are listed."""
    (item, flat), *others = found
    scales = between(*RATIOS[one.units], one.units)
    aside = sketch(one, item.bends, item.painted) if item.bends else ALONE
    notes = [*_notes(one, item), *likewise(one, [other for other, _ in others])]
    return flat_card(one, flat, notes, scales, aside)


def _notes(one: Job, item: Item) -> Iterator[str]:
    pieces = "piece" if item.count == 1 else "pieces"
    faces = f" on {', '.join(item.faces)}" if item.faces else ""
    yield f"{item.count} {pieces}: {item.role}{faces}"
    yield f"{said(one, item.length)} long; {bend_text(item, one.units) or 'flat'}"
    if tabs := folds_text(item, one.units):
        yield tabs
    weight = f"{format_weight(item.weight, one.units)} {weight_unit(one.units)} each"
    yield ", ".join(filter(None, (item.colour, item.gauge, weight)))
