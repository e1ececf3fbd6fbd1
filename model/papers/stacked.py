"""Drawings under or beside each other on a page, as many as go on it; what holds for all is said once."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from itertools import zip_longest

from .frame import Content, room_of
from .job import Job
from .scales import smaller
from .single import Drawing, Subject, goes_across, height_of, page_of

APART = 4.0
"""mm on paper between two drawings."""
SHRUNK = 3.0
"""A drawing is drawn no more than so many times smaller than it could be, so that another goes under it."""
PART = ", part "


def stacked(one: Job, drawings: Iterable[Drawing]) -> Iterator[Content]:
    """The pages of drawings in their order. The notes and the table of one stand again at the head of a page,
    not between drawings that have the same. Two go on a page, under or beside each other, to smaller scales
    too where no text loses its room by that."""
    page: list[Content] = []
    put: list[Drawing] = []
    for drawing in drawings:
        more = _under(one, drawing, put[-1:], page[-1].low - APART) if page else None
        if more:
            page, put = [*page, more], [*put, drawing]
            continue
        drawn, *lists = page_of(one, drawing)
        pair = None if len(put) != 1 else _pair(one, put[0], drawing, page[0].listed + drawn.listed)
        if pair:
            page, put = pair, [*put, drawing]
            continue
        if page:
            yield _merged(page)
        page, put = [drawn], [drawing]
        if lists:  # what had no room stands on the next page, and the next drawing under it
            yield drawn
            page, put = lists, []
    if page:
        yield _merged(page)


def _pair(one: Job, first: Drawing, second: Drawing, most: int) -> list[Content] | None:
    """Two drawings on one page, to the largest scales at which they fit and no more texts than `most` are
    without room; None where there are none."""
    tried = [[scale, *smaller(scale, one.units, SHRUNK)] for _, scale in (first, second)]
    for scales in zip_longest(*tried):
        upper, lower = (
            (subject, scale or ways[-1])
            for (subject, _), scale, ways in zip((first, second), scales, tried, strict=True)
        )
        over, *lists = page_of(one, upper)
        under = None if lists else _under(one, lower, [upper], over.low - APART)
        if under and over.listed + under.listed <= most:
            return [over, under]
        beside = _beside(one, upper, lower)
        if beside and beside.listed <= most:
            return [beside]
    return None


def _beside(one: Job, *drawings: Drawing) -> Content | None:
    """Drawings beside each other; None where they do not go so."""
    if not all(goes_across(one, drawing, len(drawings)) for drawing in drawings):
        return None
    drawn, *lists = page_of(one, *drawings)
    title = _title([subject.title for subject, _ in drawings])
    return None if lists or drawn.low < room_of(one).low - 2.0 else replace(drawn, title=title)


def _under(one: Job, drawing: Drawing, before: Sequence[Drawing], top: float) -> Content | None:
    """A drawing from a height down, under the last of others; None where it does not go there."""
    low = room_of(one).low
    subject = _without(drawing[0], before[-1][0] if before else None)
    if height_of(one, subject, drawing[1]) > top - low:
        return None
    drawn, *lists = page_of(one, (subject, drawing[1]), top=top)
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
