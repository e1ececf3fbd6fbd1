"""An elevation and a cut sheet of every starter, worked by hand: all that a crew takes off them.

The figures and their arithmetic stand in support/by_hand; here they are held against the texts of the PDF,
which are joined to their drawing by where they stand.
"""

from __future__ import annotations

import pytest
import shapely
from ribwright.intake import starters
from support.by_hand.even_roofs import EVEN_ROOFS
from support.by_hand.figures import ByHand, Sheet
from support.by_hand.more_roofs import MORE_ROOFS
from support.by_hand.other_shapes import OTHER_SHAPES
from support.drawn import page_called, starter_pages, starter_read
from support.read_elevation import Laid, heights, is_length, length, listed, rebuilt, rows
from support.read_pdf import Read
from support.rebuilt import card, outline

TABLE = EVEN_ROOFS | OTHER_SHAPES | MORE_ROOFS


def shown(one: ByHand, figure: float) -> float:
    """A figure by hand as the papers of a building show it: to their step, in mm."""
    unit = 25.4 if one.step < 1 else 1.0
    return int(abs(figure) / one.step + 0.5) * one.step * unit


def near(places: list[float]) -> list[object]:
    """Numbers that were read off texts are exact, but for what floats lose."""
    return [pytest.approx(place, abs=1e-6) for place in places]


def card_of(name: str, mark: str) -> Read:
    """The cut sheet of a mark."""
    pages = zip(starter_pages(name), starter_read(name), strict=True)
    (page,) = [
        read
        for page, read in pages
        if page.title.startswith("cut sheets") and any(text.text == mark for text in read.texts)
    ]
    return card(page, mark)


def test_every_starter_is_worked() -> None:
    assert sorted(TABLE) == sorted(starters())


@pytest.mark.parametrize("name", starters())
def test_an_elevation(name: str) -> None:
    """Both rows of running distances, the heights of the screw lines, and of each sheet its number, its marks
    and, where they have room on the drawing, the places that they stand at."""
    one, (_, read) = TABLE[name], page_called(name, TABLE[name].elevation.title)
    by_hand = one.elevation
    below, above = rows(read)
    ribs = sorted({*by_hand.ends, 0.0, *(sheet.rib for sheet in by_hand.sheets if sheet.rib is not None)})
    assert [length(text.text) for text in below] == near([shown(one, rib) for rib in ribs])
    edges = sorted({0.0, *(sheet.edge for sheet in by_hand.sheets)})
    assert [length(text.text) for text in above] == near([shown(one, edge) for edge in edges])
    assert heights(read) == near([0.0, *(shown(one, height) for height in by_hand.heights)])
    assert by_hand.says in " ".join(text.text for text in read.texts)
    start = "left" if min(by_hand.ends) == 0 else "right" if max(by_hand.ends) == 0 else "centre"
    found = [(number, f"{mark}{'↓' * turned}") for number, mark, turned in listed(read)]
    for laid in rebuilt(read, start):
        (number,) = [sheet.number for sheet in by_hand.sheets if stands(one, sheet, laid)]
        found.append((number, said(laid)))
    marks = [(sheet.number, mark) for sheet in by_hand.sheets for mark in sheet.marks.split("+")]
    assert sorted(found) == sorted(marks)


def said(laid: Laid) -> str:
    """A mark as papers say it."""
    return f"{laid.mark}{'↓' * laid.turned}"


def stands(one: ByHand, sheet: Sheet, laid: Laid) -> bool:
    """Whether a sheet that was read off the drawing is one by hand, in all that is told of it there."""
    return (
        laid.number in (None, sheet.number)
        and said(laid) in sheet.marks.split("+")
        and abs(laid.edge - shown(one, sheet.edge)) < 1e-6
        and (sheet.rib is None or abs(laid.rib - shown(one, sheet.rib)) < 1e-6)
    )


@pytest.mark.parametrize("name", starters())
def test_a_cut_sheet(name: str) -> None:
    """Every corner of its outline and every rib, by the numbers that lead to them; its notes word by word."""
    one = TABLE[name]
    by_hand, read = one.cut_sheet, card_of(name, one.cut_sheet.mark)
    (ring,), _ = outline(read)
    expected = [(shown(one, across), shown(one, along)) for across, along in by_hand.corners]
    assert shapely.equals_exact(
        shapely.normalize(shapely.Polygon(ring)), shapely.normalize(shapely.Polygon(expected)), 1e-6
    ), (ring, expected)
    numbers = [length(text.text) for text in read.texts if is_length(text.text)]
    across = {shown(one, place) for place in (*by_hand.ribs, *(place for place, _ in by_hand.corners))}
    assert [place for place in across if min(abs(place - number) for number in numbers) > 1e-6] == []
    words = " ".join(text.text for text in read.texts)
    assert [words_of for words_of in by_hand.says if words_of not in words] == []
