"""Cut sheets: each mark rebuilt from the numbers on its drawing alone, and read by hand beside a window."""

from __future__ import annotations

from dataclasses import replace

import pytest
import shapely
from ribwright.drawing.pdf import pdf
from ribwright.drawing.values import Dimension, Page, RunningDimension
from ribwright.intake import starters
from ribwright.papers.cards import card_pages
from ribwright.papers.cut_sheets import sheet_deck, sheets_by_mark
from ribwright.papers.frame import framed
from ribwright.papers.job import Job, job_of
from support.read_pdf import Read, read_pdf
from support.rebuilt import NotSaid, card, outline
from support.starter_buildings import starter_model

STEP = {"ft-in": 25.4 / 16, "mm": 1.0}
FOOT, INCH = 304.8, 25.4


def drawn(name: str) -> tuple[Job, tuple[Page, ...], list[Read]]:
    one = job_of(starter_model(name))
    pages = framed(one, list(card_pages(one, [sheet_deck(one)])))
    return one, pages, read_pdf(pdf(pages, name))


def card_of(reads: list[Read], mark: str) -> Read:
    (page,) = [page for page in reads if any(text.text == mark for text in page.texts)]
    return card(page, mark)


@pytest.mark.parametrize("name", starters())
def test_every_sheet_is_rebuilt_from_its_printed_numbers(name: str) -> None:
    """Every corner to half the step that lengths are shown in, both ways."""
    one, _, reads = drawn(name)
    half = STEP[one.units] / 2 + 1e-6
    for mark, measured in sheets_by_mark(one).items():
        rings, _ = outline(card_of(reads, mark))
        flat = measured.outline
        corners = [
            [shapely.Point(p) for p in list(ring.coords)[:-1]] for ring in (flat.exterior, *flat.interiors)
        ]
        assert sorted(map(len, rings)) == sorted(map(len, corners)), mark
        true = shapely.MultiPoint([p for ring in corners for p in ring])
        for u, v in (point for ring in rings for point in ring):
            near = min(true.geoms, key=lambda p: max(abs(p.x - u), abs(p.y - v)))
            assert max(abs(near.x - u), abs(near.y - v)) <= half, (mark, u, v)
        said = shapely.Polygon(max(rings, key=lambda ring: shapely.Polygon(ring).area))
        assert said.symmetric_difference(shapely.Polygon(flat.exterior)).area < flat.length * half, mark


@pytest.mark.parametrize(("name", "mark"), [("workshop", "W5"), ("workshop", "W19"), ("machine-shed", "W10")])
def test_without_one_of_its_numbers_a_sheet_is_not_rebuilt(name: str, mark: str) -> None:
    """A raked gable sheet, and sheets with a notch, whole and broken."""
    _, _, reads = drawn(name)
    sheet = card_of(reads, mark)
    rings, used = outline(sheet)
    assert len(rings) == 1
    for number in dict.fromkeys(used):
        without = replace(sheet, texts=tuple(text for text in sheet.texts if text is not number))
        with pytest.raises(NotSaid):
            outline(without)


def test_a_sheet_beside_a_window_of_the_sample_by_hand() -> None:
    """W19: its notch is a window's of 3 ft with the pocket of its trim under the sill, ripped into the
    underlap side; over it a slot an inch longer, where the drip passes."""
    one, _, reads = drawn("workshop")
    said = " ".join(text.text for text in card_of(reads, "W19").texts)
    (row,) = [row for row in one.listed.rows if row.mark == "W19"]
    under, over = row.cutouts
    assert under.height + over.height == pytest.approx(
        (36 + 1 / 8 + 0.0217 + 1 / 4 + 2.1 * 0.0217) * INCH, abs=0.01
    )
    assert over.width - under.width == pytest.approx((1 - 1 / 8 - 0.0217) * INCH + 0.8, abs=0.01)
    assert (
        "1: notch 1' 7-1/8\" wide from the right edge; 3' 11-3/4\" below the head, 2' 11-15/16\" high" in said
    )
    assert '2: notch 1\' 8-1/16" wide from the right edge; 3\' 11-1/4" below the head, 1/2" high' in said


@pytest.mark.parametrize("name", ["studio", "workshop"])
def test_dimensions_measure_what_they_say_and_broken_ones_are_none(name: str) -> None:
    """A program that measures a dimension of a drawing gets its text; where a sheet is drawn broken it
    finds only lines and words."""
    one, pages, _ = drawn(name)
    seen = broken = 0
    for page in pages:
        for view in page.views:
            scaled = [s for s in view.shapes if isinstance(s, Dimension | RunningDimension)]
            broken += not scaled
            for shape in scaled:
                if isinstance(shape, Dimension):
                    seen += 1
                    assert shape.text == one.length(abs(shape.end[0] - shape.start[0]))
                    continue
                axis = 1 if abs(shape.turn) == 90 else 0
                sizes = [abs(point[axis] - shape.zero[axis]) for point in shape.points]
                assert list(shape.texts) == [one.length(size) for size in sizes]
                seen += len(sizes)
    assert seen and broken
