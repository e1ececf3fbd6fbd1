"""Nothing on paper meets anything else: measured from the PDF, by the ink of its letters."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

import pytest
import shapely
from ribwright.drawing.pdf import pdf
from ribwright.drawing.values import Text
from ribwright.intake import starters
from support.drawn import starter_pages, starter_read
from support.read_pdf import Read, read_pdf

SHRUNK = 0.2  # mm of ink that may touch
THIN = 0.13  # mm; a line no wider may be crossed


def met(page: Read) -> Iterator[str]:
    """Texts that meet another text, or a line unless they stand on a patch of paper."""
    inks = [one.ink.buffer(-SHRUNK) for one in page.texts]
    tree = shapely.STRtree(inks)
    for i, j in zip(*tree.query(inks, predicate="intersects"), strict=True):
        if i < j:
            yield f"{page.texts[i].text} / {page.texts[j].text}"
    lines = shapely.STRtree([line for line, width in page.lines if width > THIN])
    for one, ink in zip(page.texts, inks, strict=True):
        if not one.patched and len(lines.query(ink, predicate="intersects")):
            yield f"{one.text} / a line"


def outside(page: Read, margin: float) -> Iterator[str]:
    """What leaves the frame."""
    wide, high = page.size
    frame = shapely.box(margin, margin, wide - margin, high - margin)
    yield from (one.text for one in page.texts if not frame.contains(one.ink))
    yield from (f"line {line.bounds}" for line, _ in page.lines if not frame.buffer(0.1).covers(line))


@pytest.mark.parametrize("name", starters())
def test_nothing_meets_another_or_leaves_the_frame(name: str) -> None:
    pages = zip(starter_pages(name), starter_read(name), strict=True)
    found = {
        page.title: hits for page, read in pages if (hits := [*met(read), *outside(read, page.paper.margin)])
    }
    assert found == {}


def test_the_check_finds_what_meets() -> None:
    """A text over the last line of the title block, or out of the frame, is found."""
    page = starter_pages("garage")[-1]
    texts = (Text((14.0, 12.0), "over the last line"), Text((2.0, 100.0), "out"))
    (read,) = read_pdf(pdf([replace(page, shapes=(*page.shapes, *texts))], "spoilt"))
    assert any("over the last line" in hit for hit in met(read))
    assert "out" in list(outside(read, page.paper.margin))
