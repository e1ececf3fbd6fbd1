"""What papers must say of a building, worked with a pencil: rows of plain numbers, in inches unless the
building is metric.

Every figure stands as its arithmetic, from the words of the starter, what the description says of keys that
are not given, and the rules of the trade (common practice, no source); nothing of the program is called.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

Place = tuple[float, float]

FLANGE = 0.0217
"""Trim between steel and sheets, 26 ga."""
FOOT = 2.1 * FLANGE
"""Sheets stand on base trim where its pieces lap: so far over the slab, or over the bottom of a ledge."""
THIN, THICK = 0.0172, 0.0217
"""Sheets of 29 and of 26 ga."""
CROWN = FLANGE + 0.75 + 2 * THIN
"""From the steel line out to an overlap rib's crown, two sheets of 29 ga and a rib of 3/4 in."""
CLEAR = 1 / 8
"""Heads stop so far short of what is over them; a window's cap falls as much."""
LEVEL = CLEAR + FOOT
"""What a raked sheet is shorter than the roof's line is over the slab: clear of it, and off the slab."""
POCKET = 1 / 8 + FLANGE
"""From an opening to the sheet's edge beside it and under it: the edge sits in the trim's pocket."""
HAIR = 0.8 / 25.4
"""About a drip, 1/32 in; round where four sheets meet as well."""
PAST = 1 + HAIR
"""From an opening to the end of the slot that its drip passes through: it runs 1 in past each side."""
DRIP = CLEAR + FOOT + HAIR
"""How far under its bend a drip's slot begins, where pieces of it lap."""
SHELF = FOOT + 1 / 4
"""From a drip's bend up to the sheets' feet over it."""
ANGLE = 3 / 4 + FOOT
"""From an overhead door's head up to the bend of its drip: the head angle's flange."""
RAIL = 1.0
"""Row of the base rail, in the middle of its 2 in."""
EAVE = 2.5
"""From the eave down to the row in a side wall's strut."""
EDGE = 1.5 * 0.216 + 0.0024
"""From a screw to the edge of its sheet: 1.5 diameters and a hair."""
BEND = 3 / 16 + 0.059
"""Outer radius of a cee's bends."""
ON_LEFT = 'Side laps 2": the left sheet is on top.'
ON_RIGHT = 'Side laps 2": the right sheet is on top.'
"""What the head of an elevation says of its sheets' hand."""


def strut(rise: float, slope: float) -> float:
    """From the eave up the slope to the row in its strut: the middle of the flat in a flange of 2 in. At the
    lip a bend takes its radius; at the eave, opened by the pitch, its radius times slope less rise. rise: in
    one of run; slope: the length of that."""
    return (2 + BEND * (slope - rise) - BEND) / 2


@dataclass(frozen=True)
class Sheet:
    """A sheet's place in its run: order of laying, marks (of all that stand over each other there; ↓: head
    down), where its overlap rib and its leading edge are, to the left of the zero below nought. rib: None
    where it was ripped off."""

    number: int
    marks: str
    rib: float | None
    edge: float


def laid(first: int, rib: float, edge: float, marks: str, every: float = 36) -> list[Sheet]:
    """Sheets that follow each other as far apart as they cover; every: below nought leftwards."""
    return [Sheet(first + n, mark, rib + n * every, edge + n * every) for n, mark in enumerate(marks.split())]


@dataclass(frozen=True)
class Elevation:
    """What a page of an elevation says. ends: the first and the last of its row of overlap ribs, as a rule
    the steel corners. heights: of the screw lines over the feet, from below. says: words of its head."""

    title: str
    ends: Place
    sheets: Sequence[Sheet]
    heights: Sequence[float]
    says: str


@dataclass(frozen=True)
class CutSheet:
    """What the card of a mark says. corners: of its outline, across from the overlap edge and along from the
    end that lies on the left of the bench. ribs: across. says: words of its notes."""

    mark: str
    corners: Sequence[Place]
    says: Sequence[str]
    ribs: Sequence[float] = (1, 10, 19, 28, 37)


@dataclass(frozen=True)
class ByHand:
    """An elevation and a cut sheet of a building. step: that its papers show lengths in."""

    elevation: Elevation
    cut_sheet: CutSheet
    step: float = 1 / 16
