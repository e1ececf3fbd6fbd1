"""Vents over slots in the ridge cap: where they stand, what is cut, what is bought. Lengths in inches."""

from __future__ import annotations

from functools import cache

import numpy as np
import pytest
from ribwright.audit import audit
from ribwright.findings import Code
from ribwright.intake import parse
from ribwright.order.buying.order_list import order
from ribwright.order.lists.schedule import schedule
from ribwright.pieces import Model, Piece
from ribwright.raising import raise_building
from ribwright.roles import Role
from ribwright.solids.placed import placed_triangles
from ribwright.solids.properties import volume
from ribwright.steps import steps
from ribwright.units import INCH
from support.judged import judged
from support.plants import Plant, drop, move
from support.refused import refusals

SHED = 'width = "24 ft"\nlength = "40 ft"\neave_height = "10 ft"\npitch = "3/12"\n'
VENTED = SHED + '[ridge_vent]\nplaces = ["24 ft", "6 ft"]\n'
STEEP = """width = "24 ft"
length = "30 ft"
eave_height = "10 ft"
pitch = "8/12"
[roof]
ridge = "9 ft"
[sheets]
flange = "1/16 in"
ridge_gap = "2 in"
[trim]
wind = "back"
stock = ["6 ft"]
[ridge_vent]
places = ["2 ft", "18 ft"]
length = "9 ft"
"""


@cache
def vented() -> Model:
    return raise_building(parse(VENTED, "vented")).model


def spread(piece: Piece) -> np.ndarray:
    """(3, 2): least and greatest, across, along and up."""
    points = np.vstack([points for points, _ in placed_triangles([piece])]) / INCH
    return np.array([points.min(axis=0), points.max(axis=0)]).T


def test_two_of_ten_feet_stand_astride_the_ridge_where_they_were_asked_for() -> None:
    vents = [spread(piece) for piece in vented().pieces if piece.role == Role.RIDGE_VENT]
    assert [one[1].tolist() for one in vents] == [pytest.approx([72, 192]), pytest.approx([288, 408])]
    for one in vents:
        assert one[0].mean() == pytest.approx(144, abs=1e-6)  # the ridge is 12 ft in


def test_the_cap_under_them_is_slit_as_wide_as_the_heads_leave_free() -> None:
    """Heads are 1 in of slope off the ridge, 12/12.369 of that in plan; the slot's edges 1/8 in within. The
    cap loses that twice, on its slope, along 240 in, a thickness thick."""
    plain = raise_building(parse(SHED, "plain")).model
    whole, slit = (
        sum(volume(piece.solid) for piece in model.pieces if piece.role == Role.RIDGE_CAP) / INCH**3
        for model in (plain, vented())
    )
    thick = next(piece for piece in schedule(plain).listed("trims") if piece.role == Role.RIDGE_CAP).thickness
    slope = np.hypot(12, 3) / 12
    heads = [spread(piece)[0] for piece in plain.pieces if piece.role == Role.ROOF_SHEET]
    free = 144 - max(one[1] for one in heads if one[1] < 144.5)
    lost = 2 * (free - 0.125) * slope * 240 * thick / INCH
    assert free == pytest.approx(12 / np.hypot(12, 3), abs=0.26)  # whole half inches of sheet
    assert whole - slit == pytest.approx(lost, rel=0.06)


def test_they_are_bought_by_each_with_their_length_and_go_up_with_the_cap() -> None:
    (line,) = (line for line in order(schedule(vented())).lines if line.kind == "ridge vent")
    assert (line.count, line.size, line.colour) == (2, "10' long", "slategray")
    (last,) = (step for step in steps(vented()) if any(p.role == Role.RIDGE_VENT for p in step.pieces))
    assert last.name == "closures and ridge cap"


@pytest.mark.parametrize("text", [VENTED, STEEP], ids=["vented", "steep"])
def test_every_judge_passes_them(text: str) -> None:
    assert judged(parse(text, "vented")).faults == {}


@pytest.mark.parametrize(
    ("text", "said"),
    [
        (VENTED + '[roof]\nshape = "single slope"\n', "none: this roof has no ridge"),
        (VENTED + '[sheets]\nridge_gap = "0 in"\n', 'at least 15/16": a vent airs through the gap'),
        (VENTED.replace("24 ft", "30 ft"), "each from 2' to 28': vents stand 2 ft clear of both gables"),
        (VENTED.replace('"24 ft", ', '"10 ft", '), "16' or more after the one at 6': vents stand apart"),
        (VENTED.replace('length = "40 ft"', 'length = "12 ft"'), "at most 8', 2 ft clear of both gables"),
    ],
)
def test_a_vent_without_its_room_is_refused_with_what_would_do(text: str, said: str) -> None:
    problems = refusals(text)
    assert any(problem.remedy.startswith(said) for problem in problems), problems


def test_the_gap_that_a_message_names_will_do() -> None:
    assert parse(VENTED + '[sheets]\nridge_gap = "15/16 in"\n', "shed")


@pytest.mark.parametrize(
    ("plant", "code"),
    [
        (drop("ridge vent 1"), Code.OPEN_TO_SKY),
        (move("ridge vent 2", (0.0, 0.0, -3.0)), Code.CLASH),
        (move("ridge vent 2", (0.0, 0.0, 60.0)), Code.FLOATING),
    ],
)
def test_a_fault_planted_at_a_vent_shows_its_code_and_no_other(plant: Plant, code: Code) -> None:
    assert {one.code for one in audit(plant(vented()), (code.check,)).findings} == {code}
