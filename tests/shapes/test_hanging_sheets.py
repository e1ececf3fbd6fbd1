"""No ledge: sheets that hang past the edge of a slab that ends on the steel line."""

from __future__ import annotations

import pytest
from ribwright.intake import parse
from ribwright.order.lists.schedule import schedule
from ribwright.raising import raise_building
from ribwright.units import INCH
from support.judged import judged
from support.refused import refusals

SHED = """width = "16 ft"
length = "20 ft"
eave_height = "8 ft"
pitch = "3/12"
[slab]
hang = "1-1/2 in"
[[opening]]
kind = "overhead door"
wall = "front"
width = "7 ft"
height = "6 ft 6 in"
from_left = "4 ft 5 in"
[[opening]]
kind = "walk door"
wall = "right"
width = "3 ft"
height = "6 ft 8 in"
from_left = "4 ft 2 in"
"""


def test_sheets_hang_past_the_slab_that_ends_on_the_steel_line() -> None:
    """Side sheets are 1-1/2 in longer than those that stand on the slab: their heads stay where they were."""
    lengths = {}
    for hang in ("0 in", "1-1/2 in"):
        model = raise_building(parse(SHED.replace("1-1/2 in", hang), "shed")).model
        rows = [row for row in schedule(model).rows if "left" in row.faces]
        lengths[hang] = max(row.length for row in rows)
        slab = next(piece for piece in model.pieces if piece.role == "slab")
        assert (slab.place.origin[0] == 0.0) is (hang != "0 in")
    assert (lengths["1-1/2 in"] - lengths["0 in"]) / INCH == pytest.approx(1.5, abs=1e-6)


@pytest.mark.parametrize("hang", ["1 in", "1-1/2 in", "4 in"])
def test_hanging_sheets_close(hang: str) -> None:
    assert judged(parse(SHED.replace("1-1/2 in", hang), "shed")).faults == {}


@pytest.mark.parametrize(
    ("slab", "remedy"),
    [
        ('hang = "1/2 in"', 'at least 1"'),
        ('hang = "1-1/2 in"\nledge_depth = "1 in"', "either a ledge or sheets that hang"),
    ],
)
def test_what_does_not_hang_is_refused(slab: str, remedy: str) -> None:
    problems = refusals(SHED.replace('hang = "1-1/2 in"', slab))
    assert [problem.key for problem in problems] == ["slab.hang"]
    assert remedy in problems[0].remedy


def test_a_gable_whose_sheets_end_a_leg_past_its_corners_closes() -> None:
    """24 ft: eight sheets end to end, and the edge rib's outer foot stands past the base trims' mitre."""
    text = SHED[: SHED.index("[[opening]]")].replace('"16 ft"', '"24 ft"')
    assert judged(parse(text, "shed")).faults == {}
