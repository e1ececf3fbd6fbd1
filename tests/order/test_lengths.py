"""Lengths that fit: what is ordered is as long as what is laid, and goes under the roof."""

from __future__ import annotations

from collections import Counter

import pytest
from ribwright.intake import parse, starters
from ribwright.order.buying.buying import Buying
from ribwright.order.buying.order_list import order
from ribwright.order.buying.short_sheets import Wanted, from_longer
from ribwright.order.buying.words import long_text
from ribwright.order.lists.schedule import Schedule, schedule
from ribwright.raising import raise_building
from ribwright.units import FOOT, INCH
from support.judged import judged
from support.starter_buildings import starter_schedule

SHED = 'width = "16 ft"\nlength = "14 ft"\neave_height = "8 ft"\npitch = "3/12"\n'


def listed(text: str) -> Schedule:
    return schedule(raise_building(parse(text, "x")).model)


@pytest.mark.parametrize("name", starters())
def test_square_sheets_are_ordered_as_long_as_they_are_laid(name: str) -> None:
    """The longest sheet of each side wall and each slope: whole steps, and ordered by that size, unless no
    mill makes one so short."""
    lists = starter_schedule(name)
    sizes = {line.size for line in order(lists).lines if line.list == "sheets"}
    step = 5.0 if lists.units == "mm" else INCH / 2
    longest: dict[str, float] = {}
    for row in lists.rows:
        longest |= {face: max(row.length, longest.get(face, 0.0)) for face in row.faces}
    lengths = [length for face, length in longest.items() if not face.endswith(("front", "back"))]
    assert lengths
    for length in lengths:
        assert length / step == pytest.approx(round(length / step), abs=1e-4)
        assert long_text(length, lists.units) in sizes or length < 4 * FOOT


@pytest.mark.parametrize(
    ("step", "wall", "slope"),
    [("1/8 in", 95.625, 100.0), ("1 in", 95.0, 100.0), ("0 in", 95.628, 100.015), ("0.9 in", 95.4, 99.9)],
)
def test_a_wall_goes_down_to_a_step_and_a_roof_to_the_nearest(step: str, wall: float, slope: float) -> None:
    """Eave 96 in: 96 - 0.8061 / 4 - 0.125 - 0.0456 = 95.628. Slopes: (96 + 2) sqrt(1 + 1/16) - 1, 100.015."""
    rows = listed(f'{SHED}[sheets]\nstep = "{step}"\n').rows
    for face, length in (("left", wall), ("right slope", slope)):
        for found in {row.length / INCH for row in rows if face in row.faces}:
            assert found == pytest.approx(length, abs=2e-3)


@pytest.mark.parametrize(
    "keys",
    [
        'step = "1 in"\nridge_gap = "0 in"\n[roof]\nshape = "single slope"\n',
        'step = "1 in"\n[wainscot]\nheight = "40 in"\n',
        'step = "1 in"\nridge_gap = "0 in"\n[roof]\nright_eave_height = "7 ft"\n',
    ],
)
def test_the_longest_steps_close_up_too(keys: str) -> None:
    assert judged(parse(f"{SHED}[sheets]\n{keys}", "x")).faults == {}


KIND = ("wall sheet", "36 x 9 x 3/4", "29 ga", 0.0172, "linen")


@pytest.mark.parametrize(
    ("inches", "kerf", "blanks"),
    [
        ((47.25,), 0.0, {("a",): 48.0}),
        ((47.25, 47.25), 0.0, {("a", "b"): 94.5}),
        ((47.25, 38.25), 0.125, {("a", "b"): 86.0}),
        ((30, 30, 30), 0.0, {("a", "b"): 60.0, ("c",): 48.0}),
        ((15.75, 15.75, 15.75, 15.75), 0.25, {("a", "b", "c"): 48.0, ("d",): 48.0}),
    ],
)
def test_sheets_shorter_than_a_mill_makes_are_cut_from_longer_ones(
    inches: tuple[float, ...], kerf: float, blanks: dict[tuple[str, ...], float]
) -> None:
    """As many as the least, 4 ft, holds with the saw between them; two at least, where there are two."""
    short = [Wanted(KIND, name, long * INCH, 1) for name, long in zip("abcd", inches, strict=False)]
    found = from_longer(short, Buying(kerf=kerf * INCH))
    assert {blank.cuts: pytest.approx(blank.length / INCH) for blank in found} == blanks


def test_an_order_asks_for_no_sheet_that_no_mill_makes() -> None:
    """A wainscot of 40 in: its pieces come two from one blank, and what they are cut from is told by mark."""
    lists = listed(f'{SHED}[wainscot]\nheight = "40 in"\n')
    found = order(lists)
    sheets = [line for line in found.lines if line.list == "sheets"]
    assert all(line.length / line.count > 4 * FOOT - 0.1 for line in sheets)
    counted = Counter(mark for blank in found.longer for mark in blank.cuts for _ in range(blank.count))
    assert counted == {row.mark: row.count for row in lists.rows if row.length < 4 * FOOT - INCH / 2}
    least = order(listed(f'{SHED}[wainscot]\nheight = "40 in"\n[limits]\nshortest_sheet = "2 ft"\n'))
    assert least.longer == ()
