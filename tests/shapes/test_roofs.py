"""Roofs that are no even gable: hand calculations held against the schedule, and every judge there is.

Lengths by Pythagoras, in inches. A wall sheet stands a lap's room over the slab (2.1 trim thicknesses of
0.0217 in), and ends 1/8 in under the roof; under a low eave it loses the crown's distance times the pitch
too. Sheets come in half inches: walls go down to one, roofs to the nearest under a ridge and up to one
under a high eave.
"""

from __future__ import annotations

from math import ceil, floor, sqrt

import pytest
from ribwright.intake import parse
from ribwright.units import INCH
from support.judged import judged
from support.refused import refusals
from support.starter_buildings import starter_schedule

FOOT, HEAD = 2.1 * 0.0217, 1 / 8
CROWN = 0.0217 + 3 / 4 + 2 * 0.0172
"""From the steel line to the crown of an overlap rib, 29 gauge on a rib of 3/4 in."""


def down(length: float) -> float:
    return floor(2 * length) / 2


def up(length: float) -> float:
    return ceil(2 * length) / 2


def nearest(length: float) -> float:
    return round(2 * length) / 2


BY_HAND = {
    # 20 ft wide at 2 in 12 from 9 ft: the high wall is 9 ft + 40 in. The roof runs 2 in past both eaves.
    ("single-slope", "left"): down(108 - CROWN * 2 / 12 - HEAD - FOOT),
    ("single-slope", "right"): down(148 - HEAD - FOOT),
    ("single-slope", "left slope"): up((240 + 2 + 2) * sqrt(12**2 + 2**2) / 12),
    # 24 ft wide: 15 ft at 4 in 12 from 9 ft is a ridge of 14 ft; down to 11 ft over 9 ft is 4 in 12 again.
    ("offset-ridge", "left"): down(108 - CROWN * 4 / 12 - HEAD - FOOT),
    ("offset-ridge", "right"): down(132 - CROWN * 4 / 12 - HEAD - FOOT),
    ("offset-ridge", "left slope"): nearest((180 + 2) * sqrt(12**2 + 4**2) / 12 - 1),
    ("offset-ridge", "right slope"): nearest((108 + 2) * sqrt(12**2 + 4**2) / 12 - 1),
}


@pytest.mark.parametrize(("starter", "face"), BY_HAND)
def test_sheets_are_as_long_as_worked_by_hand(starter: str, face: str) -> None:
    rows = [row for row in starter_schedule(starter).rows if row.faces == (face,)]
    assert max(row.length for row in rows) / INCH == pytest.approx(BY_HAND[starter, face], abs=1e-6)


SMALL = 'width = "16 ft"\nlength = "14 ft"\neave_height = "8 ft"\n'
SHAPES = {
    "a single slope to the right": SMALL
    + 'pitch = "3/12"\n[roof]\nshape = "single slope"\nfalls_to = "right"\n',
    "a steep single slope with flush girts": SMALL
    + 'pitch = "5/12"\n[roof]\nshape = "single slope"\n[framing]\ngirts = "flush"\n',
    "a low right eave": SMALL + 'pitch = "4/12"\n[roof]\nright_eave_height = "6 ft 6 in"\n',
    "a ridge near the left wall": SMALL + 'pitch = "9/12"\n[roof]\nridge = "5 ft"\n',
    "slopes of two pitches under a cap laid the other way": SMALL
    + 'pitch = "3/12"\n[roof]\nridge = "9 ft"\nright_eave_height = "7 ft"\n[trim]\nwind = "back"\n',
}


@pytest.mark.parametrize("text", SHAPES.values(), ids=SHAPES)
def test_a_roof_of_another_shape_is_sound(text: str) -> None:
    assert judged(parse(text, "shape")).faults == {}


@pytest.mark.parametrize(
    ("keys", "said"),
    [
        ('ridge = "1 ft"', "roof.ridge"),
        ('ridge = "15 ft"', "roof.ridge"),
        ('right_eave_height = "60 ft"', "roof.right_eave_height"),
        ('shape = "single slope"\nridge = "9 ft"', "roof.ridge"),
        ('shape = "single slope"\nright_eave_height = "9 ft"', "roof.right_eave_height"),
    ],
)
def test_a_line_that_makes_no_roof_is_refused_by_its_key(keys: str, said: str) -> None:
    problems = refusals(f'{SMALL}pitch = "3/12"\n[roof]\n{keys}\n')
    assert [problem.key for problem in problems] == [said]
