"""What meets on paper, and what leaves it: by the ink of letters, read back from a PDF."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import shapely
from ribwright.drawing.values import Page
from support.read_pdf import Read

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


def crowded(pages: Sequence[Page], reads: Sequence[Read]) -> dict[str, list[str]]:
    """What meets or leaves each of some pages, as they were read back, by its title."""
    found: dict[str, list[str]] = {}
    for page, read in zip(pages, reads, strict=True):
        if hits := [*met(read), *outside(read, page.paper.margin)]:
            found.setdefault(page.title, []).extend(hits)
    return found
