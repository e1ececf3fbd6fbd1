"""One opening above another: a girt between them, jambs that end at it, sheets between. Lengths in inches."""

from __future__ import annotations

from functools import cache

import numpy as np
import pytest
from ribwright.intake import parse
from ribwright.measure.clad_planes import clad_planes
from ribwright.measure.placing import face_plans
from ribwright.pieces import Model
from ribwright.raising import raise_building
from ribwright.solids.placed import placed_triangles
from ribwright.units import INCH
from support.judged import judged
from support.refused import refusal

pytestmark = pytest.mark.broad

HALL = """width = "30 ft"
length = "30 ft"
eave_height = "12 ft"
pitch = "4/12"
[framing]
girt = "cee 4x2x0.059"
sill = "cee 4x2x0.059"
jamb = "cee 4x2x0.059"
"""
DOOR = """[[opening]]
kind = "overhead door"
wall = "front"
width = "117 in"
height = "8 ft"
from_left = "121.5 in"
"""
WINDOW = """[[opening]]
kind = "window"
wall = "front"
width = "81 in"
height = "24 in"
from_left = "139.5 in"
sill = "{sill}"
"""


def text(sill: str = "147 in") -> str:
    return HALL + WINDOW.format(sill=sill) + DOOR


@cache
def hall() -> Model:
    return raise_building(parse(text(), "hall")).model


def reach(name: str, axis: int) -> tuple[float, float]:
    """Where a piece begins and ends along an axis of the building."""
    piece = next(piece for piece in hall().pieces if piece.name == name)
    along = np.vstack([points for points, _ in placed_triangles([piece])])[:, axis] / INCH
    return float(along.min()), float(along.max())


def test_jambs_of_both_end_at_the_girt_between_them_which_runs_on() -> None:
    """The gable's girt at the eave, 144 in up, has flanges of 2 in: 143 to 145. A sill of 2 in is on it."""
    for side in ("left", "right"):
        assert reach(f"front overhead door 2 jamb {side}", 2) == pytest.approx((0.0, 143.0), abs=1e-4)
        low, high = reach(f"front window 1 jamb {side}", 2)
        assert low == pytest.approx(145.0, abs=1e-4) and high > 147 + 24
    assert reach("front window 1 sill", 2) == pytest.approx((145.0, 147.0), abs=1e-4)
    at_eave = [
        reach(piece.name, 0)
        for piece in hall().pieces
        if piece.role == "girt" and piece.label("face") == "front"
        if reach(piece.name, 2) == pytest.approx((143.0, 145.0), abs=1e-4)
    ]
    assert len(at_eave) == 1
    assert at_eave[0][0] < 121.5 - 2 and at_eave[0][1] > 121.5 + 117 + 2


def test_the_sheets_between_them_are_pieces_of_their_own() -> None:
    """Laid from the centre line, 180 in, the left half first: sheets cover 144 to 180, 108 to 144, then
    180 to 216 and so on. Door and window, from 139.5 to 220.5 in, take the first of each half in whole."""
    places = {id(piece): (piece.mark, True) for piece in hall().pieces}
    plan = next(plan for plan in face_plans(hall(), clad_planes(hall()), places) if plan.face == "front")
    found = [(one.number, one.part) for one in plan.sheets if one.part]
    first, halves = 1, 5
    taken = (first, first + halves)
    assert found == [(number, part) for number in taken for part in ("between", "header")]
    heads = {one.name for one in plan.sheets if one.part == "header"}
    spans = [reach(name, 2) for name in sorted(heads)]
    assert all(low > 147 + 24 for low, _ in spans)


def test_every_judge_passes_them() -> None:
    found = judged(parse(text(), "hall"))
    assert (found.faults, dict(found.said)) == ({}, {})


def test_without_a_girt_between_it_is_refused_with_the_sill_that_would_do() -> None:
    problem = refusal(text("11 ft"))
    assert problem.key == "opening[1].sill"
    assert problem.remedy == (
        "at least 12' 3\", over a girt between them; or with a girt between it and the opening under it, by "
        "[framing] girt_heights; or beside that one with room for two jambs: at most 3' 0-1/2\" or at least "
        "20' 2-1/2\""
    )
    assert 12 * 12 + 2 / 2 + 2 == 12 * 12 + 3


def test_a_girt_that_is_asked_for_lets_it_stand_lower() -> None:
    lower = text("9 ft 6 in").replace("[framing]", '[framing]\ngirt_heights = ["4 ft", "110 in", "12 ft"]')
    assert len(parse(lower, "hall").openings) == 2
