"""Nothing on paper meets anything else: measured from the PDF, by the ink of its letters. More buildings are
looked at by `papers_run.py`."""

from __future__ import annotations

from dataclasses import replace

import pytest
from ribwright.drawing.pdf import pdf
from ribwright.drawing.values import Text
from ribwright.intake import parse, starters
from ribwright.papers.cards import card_pages
from ribwright.papers.cut_sheets import sheet_deck
from ribwright.papers.details import details
from ribwright.papers.frame import framed
from ribwright.papers.job import job_of
from ribwright.raising import raise_building
from support.drawn import starter_pages, starter_read
from support.read_pdf import read_pdf
from support.room import crowded, met, outside


@pytest.mark.parametrize("name", starters())
def test_nothing_meets_another_or_leaves_the_frame(name: str) -> None:
    assert crowded(starter_pages(name), starter_read(name)) == {}


SMALL = 'length = "10 ft"\neave_height = "{1}"\nwidth = "{0}"\npitch = "{2}"\n'
FOUND = {
    "edges of steep rakes, drawn broken": SMALL.format("16 ft", "13 ft", "6/12"),
    "edges of rakes as steep as their sheets are wide": SMALL.format("12 ft", "9 ft", "12/12"),
    "edges of short raked sheets": SMALL.format("12 ft", "8 ft", "6/12") + '[wainscot]\nheight = "48 in"\n',
    "more names than a detail is high": SMALL.format("9 ft", "104 in", "6/12")
    + '[insulation]\nroof = "3 in"\n',
}


@pytest.mark.parametrize("text", FOUND.values(), ids=FOUND)
def test_what_a_long_run_found_has_room(text: str) -> None:
    one = job_of(raise_building(parse(text, "found")).model)
    pages = framed(one, [*card_pages(one, [sheet_deck(one)]), *details(one)])
    assert crowded(pages, read_pdf(pdf(pages, "found"))) == {}


def test_the_check_finds_what_meets() -> None:
    """A text over the last line of the title block, or out of the frame, is found."""
    page = starter_pages("garage")[-1]
    texts = (Text((14.0, 12.0), "over the last line"), Text((2.0, 100.0), "out"))
    (read,) = read_pdf(pdf([replace(page, shapes=(*page.shapes, *texts))], "spoilt"))
    assert any("over the last line" in hit for hit in met(read))
    assert "out" in list(outside(read, page.paper.margin))
