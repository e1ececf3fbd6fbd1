"""Cut sheets: every mark of sheet as it lies on the bench, ready to be marked out with a tape."""

from __future__ import annotations

import shapely

from ..measure.congruent import groups
from ..measure.sheet import MeasuredSheet
from ..measure.snap import snapped
from ..order.lists.schedule import Row
from .cards import Card, Deck
from .flat import Flat
from .flat_card import flat_card
from .job import Job
from .scales import between
from .sheet_notes import sheet_notes

NOTES = (
    "Face up, foot at the left, overlap edge at the top: distances are hooked there. #: order of laying; "
    "foot up: ↓ on elevations. Hatched: waste, cut across the ribs by snips, then along them by snips or a "
    "scored line bent until it parts."
)
RATIOS = {"ft-in": (48.0, 192.0), "mm": (50.0, 200.0)}
"""Sheets are drawn to 1/4 in a foot, or 1:50, where they fit, and never smaller than the second."""


def sheet_deck(one: Job) -> Deck:
    """A card a mark, in the order of the schedule."""
    measured = sheets_by_mark(one)
    cards = (_card(one, row, measured[row.mark]) for row in one.listed.rows)
    return Deck("cut sheets", NOTES, cards)


def sheets_by_mark(one: Job) -> dict[str, MeasuredSheet]:
    """The measured sheet that stands for each mark."""
    found = ((group.mark, group.measured) for group in groups(one.model))
    return {mark: measured for mark, measured in found if isinstance(measured, MeasuredSheet)}


def _card(one: Job, row: Row, measured: MeasuredSheet) -> Card:
    whole = _whole(one, row)
    scales = between(*RATIOS[one.units], one.units)
    return flat_card(one, sheet_flat(row, measured, whole), sheet_notes(one, row, whole), scales)


def sheet_flat(row: Row, measured: MeasuredSheet, whole: float) -> Flat:
    """A sheet as it is cut. whole: the width of the sheet it is cut from (mm), ripped at the right where its
    overlap rib is left on it."""
    left = 0.0 if row.overlap else measured.width - whole
    head, foot, length = row.head, row.foot, measured.length
    simple = not row.cutouts and foot.kind == "square" and head.kind in ("square", "rake")
    ends = [(length - max(head.left, head.right), length), (0.0, max(foot.left, foot.right))]
    return Flat(
        row.mark,
        measured.outline,
        shapely.box(left, 0.0, left + whole, length),
        tuple((rib.centre, rib.crown) for rib in measured.majors),
        (*((cut.y, cut.y + cut.height) for cut in row.cutouts), *ends),
        (head.left, head.right) if simple else None,
        tuple((cut.x + cut.width / 2, cut.y + cut.height / 2) for cut in row.cutouts),
        "foot",
        "head",
        "overlap edge" if row.overlap else "",
    )


def _whole(one: Job, row: Row) -> float:
    """The width of the sheet that a row's is cut from: the widest with its profile (mm)."""

    def kind(other: Row) -> tuple[str, str, float]:
        return other.profile, other.gauge, snapped(other.thickness, 0.05)

    return max(other.width for other in one.listed.rows if kind(other) == kind(row))
