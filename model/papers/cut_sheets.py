"""Cut sheets: every mark of sheet as it lies on the bench, ready to be marked out with a tape."""

from __future__ import annotations

from collections.abc import Iterator

from ..measure.sheet import MeasuredSheet
from ..measure.snap import snapped
from ..order.lists.schedule import Row
from .cards import card_pages
from .frame import Content
from .job import Job
from .sheet_card import Bench, sheet_card

NOTES = (
    "Face up, foot at the left, overlap edge at the top; distances are read from both, hooked once. #: order "
    "of laying. Hatched: waste. Face up, first across the ribs by snips, then along them by snips or a "
    "scored line bent until it parts."
)


def cut_sheets(one: Job) -> Iterator[Content]:
    """Pages of cards, a card a mark, in the order of the schedule."""
    measured = sheets_by_mark(one)
    benches = [Bench(row, measured[row.mark], _whole(one, row)) for row in one.listed.rows]
    yield from card_pages(one, "cut sheets", NOTES, (sheet_card(one, bench) for bench in benches))


def sheets_by_mark(one: Job) -> dict[str, MeasuredSheet]:
    """The measured sheet that stands for each mark."""
    found: dict[str, MeasuredSheet] = {}
    for plane, _ in one.faces:
        for sheet in plane.sheets:
            found.setdefault(one.marks[sheet.piece.name], sheet.measured)
    return found


def _whole(one: Job, row: Row) -> float:
    """The width of the sheet that a row's is cut from: the widest with its profile (mm)."""

    def kind(other: Row) -> tuple[str, str, float]:
        return other.profile, other.gauge, snapped(other.thickness, 0.05)

    return max(other.width for other in one.listed.rows if kind(other) == kind(row))
