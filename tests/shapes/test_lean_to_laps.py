"""End laps of a lean-to's roof: on its purlins, under a flashing that stands clear of all its courses.

In inches. The lean-to is 18 ft wide under 2 in 12 from an eave of 8 ft: its sheets reach from 2 past its eave
to half an inch off the wall, 217.5 in plan, 220.5 up the slope. Under 3 in 12 they lap by 12.
"""

from __future__ import annotations

from functools import cache
from math import hypot

import pytest
from ribwright.envelope.headwall import headwalls
from ribwright.envelope.opening_lines import OpeningLines
from ribwright.intake import parse
from ribwright.order.lists.schedule import Schedule, schedule
from ribwright.pieces import Model
from ribwright.raising import raise_building
from ribwright.units import INCH
from support.judged import judged
from support.refused import refusal

SLOPE = hypot(12, 2) / 12
SHED = """width = "20 ft"
length = "24 ft"
eave_height = "16 ft"
pitch = "3/12"
sheets.longest = "14 ft"
framing.girt_spacing = "3 ft"
[[lean_to]]
wall = "left"
width = "18 ft"
pitch = "2/12"
eave_height = "8 ft"
"""
OUTER = '[[lean_to]]\nwalls = "outer"'
AT_GABLE = SHED.replace('wall = "left"', 'wall = "back"\nwalls = ["left", "right"]').replace("2/12", "4/12")
AT_GABLE = AT_GABLE.replace('"8 ft"', '"7 ft"')
THRICE = SHED.replace("18 ft", "24 ft").replace("2/12", "1/12").replace("16 ft", "15 ft")
THRICE = THRICE.replace("14 ft", "10 ft 6 in").replace("3 ft", "18 in").replace("[[lean_to]]", OUTER)
THRICE = THRICE.replace("framing.", 'framing.purlin_spacing = "3 ft"\nframing.', 1)


@cache
def model() -> Model:
    return raise_building(parse(SHED, "shed")).model


@cache
def lists() -> Schedule:
    return schedule(model())


def roof_sheets() -> dict[str, float]:
    """How long the sheets of the lean-to's roof are, by mark."""
    return {
        row.mark: row.length / INCH
        for row in lists().rows
        if any(face.startswith("lean-to") and face.endswith("slope") for face in row.faces)
    }


def test_two_sheets_of_whole_half_inches_lap_a_foot() -> None:
    found = sorted(set(roof_sheets().values()))
    assert len(found) == 2 and max(found) <= 168
    assert sum(found) == pytest.approx(220.5 + 12, abs=1e-6)
    assert all(length * 2 % 1 == pytest.approx(0.0, abs=1e-6) for length in found)


def test_the_flashing_stands_clear_of_one_course_more_than_full_lengths_make() -> None:
    """Each stands a thickness of 0.0172 square to the steepest flank over the one below, 1.28 of one."""
    (lapped,) = headwalls(parse(SHED, "x"))
    (whole,) = headwalls(parse(SHED.replace("14 ft", "20 ft"), "x"))
    assert (lapped.bend - whole.bend) / INCH == pytest.approx(2 * 1.28 * 0.0172 * SLOPE, rel=0.01)
    assert lapped.foot - lapped.bend == whole.foot - whole.bend


UNDER = """width = "20 ft"
length = "24 ft"
eave_height = "22 ft"
pitch = "3/12"
sheets.longest = "12 ft"
framing.girt_spacing = "18 in"
[[lean_to]]
walls = "outer"
wall = "left"
width = "10 ft"
pitch = "2/12"
eave_height = "14 ft"
"""


def test_sheets_under_a_lean_tos_roof_lap_too_and_clear_of_its_rafters() -> None:
    """Its steel meets the wall at 168 + 120 x 2 / 12 = 188, and its purlins are 4 deep: the main wall's lower
    sheets end under 184. Its rafters of 4 are under those, down to 180 and a little more, by the wall."""
    lines = OpeningLines(parse(UNDER, "x"))
    wall = lines.named["left"]
    lower, upper = wall.regions
    assert lines.laps_of(wall, upper) == ()
    (lap,) = lines.laps_of(wall, lower)
    assert lower.head / INCH == pytest.approx(183.5, abs=0.5)
    assert (lap.head - lap.foot) / INCH == pytest.approx(4.0)
    assert lap.head / INCH < 180 - 6
    assert max(lap.head - lower.foot, lower.head - lap.foot) / INCH <= 144


@pytest.mark.parametrize(
    "text", [THRICE, AT_GABLE, UNDER], ids=["thrice, its ends clad", "at a gable", "and the wall under it"]
)
def test_every_judge_passes_a_lean_to_whose_sheets_lap(text: str) -> None:
    assert judged(parse(text, "shed")).faults == {}


def test_one_whose_purlins_let_no_sheet_be_short_enough_is_refused_with_what_would_do() -> None:
    """Of 20 ft, with one purlin between eave and wall, 120 in up a slope of 240."""
    far = THRICE.replace('width = "24 ft"', 'width = "20 ft"').replace('"3 ft"', '"10 ft"')
    problem = refusal(far.replace("10 ft 6 in", "11 ft"))
    assert problem.key == "sheets.longest"
    assert problem.remedy.startswith("at least 11' 1\", or purlins closer together")
    parse(far.replace("10 ft 6 in", "11 ft 1 in"), "x")
