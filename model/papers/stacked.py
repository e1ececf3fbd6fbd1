"""Drawings under each other on a page, as many as go on it; what holds for all is said once a page."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace

from ..drawing.values import Scale
from .frame import Content, room_of
from .job import Job
from .single import Subject, height_of, page_of

APART = 4.0
"""mm on paper between two drawings."""
PART = ", part "


def stacked(one: Job, drawings: Iterable[tuple[Subject, Scale]]) -> Iterator[Content]:
    """The pages of drawings in their order. The notes and the table of one stand again at the head of a page,
    not between drawings that have the same."""
    page: list[Content] = []
    told: Subject | None = None
    for subject, scale in drawings:
        under = _under(one, _without(subject, told), scale, page[-1].low - APART) if page else None
        if under:
            page.append(under)
            continue
        if page:
            yield _merged(page)
        drawn, *lists = page_of(one, subject, scale)
        page, told = [drawn], subject
        if lists:  # what had no room stands on the next page, and the next drawing under it
            yield drawn
            page, told = lists, None
    if page:
        yield _merged(page)


def _under(one: Job, subject: Subject, scale: Scale, top: float) -> Content | None:
    """A drawing from a height down; None where it does not go there."""
    low = room_of(one).low
    if height_of(one, subject, scale) > top - low:
        return None
    drawn, *lists = page_of(one, subject, scale, top)
    return None if lists or drawn.low < low - 2.0 else drawn


def _without(subject: Subject, told: Subject | None) -> Subject:
    """A subject without what the head of the page says already."""
    if told is None:
        return subject
    notes = "" if subject.notes == told.notes else subject.notes
    return replace(subject, notes=notes, cells=() if subject.cells == told.cells else subject.cells)


def _merged(page: Sequence[Content]) -> Content:
    views = tuple(view for content in page for view in content.views)
    shapes = tuple(shape for content in page for shape in content.shapes)
    return Content(_title([content.title for content in page]), views, shapes, page[-1].low)


def _title(titles: Sequence[str]) -> str:
    """`framing: left, right`; `left: sheets, parts 1 to 2 of 5`."""
    first, last = titles[0], titles[-1]
    if len(titles) == 1:
        return first
    if PART in last and first.partition(PART)[0] == last.partition(PART)[0]:
        whole, _, number = first.partition(PART)
        return f"{whole}, parts {number.split()[0]} to {last.partition(PART)[2]}"
    what = first.partition(": ")[0]
    return f"{what}: {', '.join(title.removeprefix(f'{what}: ') for title in titles)}"
