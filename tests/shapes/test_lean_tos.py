"""Lean-tos: hand calculations held against the schedule, what meets at the headwall, every judge there is.

In inches. The starter's lean-to is 10 ft wide under 2 in 12 from an eave of 7 ft: its steel plane meets the
main wall at 104. Its purlins are 4 deep, so the ledger's underside is at 100. Two thicknesses of trim and a
little, 2.1 of 0.0217, are the room that pieces of a run lap in; sheets come in half inches.
"""

from __future__ import annotations

from collections import Counter
from math import floor, hypot

import numpy as np
import pytest
from ribwright.audit import audit
from ribwright.description.building import Building
from ribwright.findings import Code
from ribwright.intake import parse, starter_text
from ribwright.measure.clad_planes import clad_planes
from ribwright.measure.placing import FacePlan, face_plans
from ribwright.pieces import Model
from ribwright.raising import raise_building
from ribwright.solids.placed import placed_triangles
from ribwright.units import INCH
from support.judged import judged
from support.lean_tos import SHED
from support.refused import refusal, refusals
from support.starter_buildings import starter, starter_model, starter_schedule

ROOM = 2.1 * 0.0217
CROWN = 0.0217 + 3 / 4 + 2 * 0.0172
SLOPE = hypot(12, 2) / 12
ROOF, LEDGE = 84 + 120 * 2 / 12, 84 + 120 * 2 / 12 - 4
BEND = ROOF + (CROWN + ROOM) * SLOPE
"""Height of the flashing's bend, inside: its lower leg lies over the rake trims."""


def halves(length: float) -> float:
    """A length in whole half inches."""
    return floor(2 * length) / 2


def raised() -> Model:
    return starter_model("lean-to")


def lengths(face: str) -> set[float]:
    return {round(row.length / INCH, 3) for row in starter_schedule("lean-to").rows if face in row.faces}


def reach(name: str) -> tuple[list[float], list[float]]:
    """Least and greatest x, y, z of the pieces whose names begin so, in inches, their screws left out."""
    told = [p for p in raised().pieces if p.name.startswith(name) and not p.name.endswith("screws")]
    points = np.vstack([points for points, _ in placed_triangles(told)]) / INCH
    return points.min(axis=0).tolist(), points.max(axis=0).tolist()


def test_its_roof_sheets_run_from_past_its_eave_to_half_an_inch_off_the_wall() -> None:
    sheets = [p for p in raised().pieces if p.role == "roof sheet" and p.name.startswith("lean-to")]
    assert {piece.label("face") for piece in sheets} == {"lean-to left slope"}
    assert halves((2 + 120 - 1 / 2) * SLOPE) == 123
    assert 123 in lengths("lean-to left slope")


def test_the_walls_sheets_stop_under_the_ledger_and_begin_again_over_the_bend() -> None:
    lower, upper = halves(LEDGE - 1 / 8 - ROOM), halves(120 - CROWN * 4 / 12 - 1 / 8 - BEND - ROOM - 1 / 2)
    assert (lower, upper) == (99.5, 14)
    assert {lower, upper} <= lengths("left")
    low, high = reach("left lower 1")
    assert (low[2], high[2]) == pytest.approx((ROOM, ROOM + lower), abs=0.002)
    assert reach("left 1")[0][2] == pytest.approx(BEND + ROOM + 1 / 2, abs=0.002)


def test_the_flashing_reaches_up_behind_the_sheets_and_down_over_the_roof() -> None:
    low, high = reach("lean-to headwall flashing 1")
    # The first piece lies under the next at its far end, a thickness high at its start.
    assert (high[0], high[2]) == pytest.approx((0, BEND + 4), abs=0.03)
    along = (5.5 / SLOPE, 5.5 / SLOPE * 2 / 12)
    assert (low[0], low[2]) == pytest.approx((-along[0], BEND - along[1]), abs=0.05)


def test_it_has_frames_in_the_main_ones_planes_that_end_on_their_columns() -> None:
    own = Counter(piece.role for piece in raised().pieces if piece.name.startswith("lean-to"))
    assert (own["column"], own["base plate"], own["rafter"], own["ledger"]) == (4, 4, 4, 1)
    assert (own["wall sheet"], own["girt"], own["slab"]) == (0, 0, 0)
    for number in range(1, 5):
        rafter, column = reach(f"lean-to frame {number} left rafter"), reach(f"frame {number} left column")
        assert rafter[1][0] == pytest.approx(column[0][0], abs=1e-6)
        assert (rafter[0][1], rafter[1][1]) == pytest.approx((column[0][1], column[1][1]), abs=1e-6)


def test_one_slab_lies_under_both() -> None:
    (slab,) = (piece for piece in raised().pieces if piece.role == "slab")
    out = CROWN + 1
    low, high = reach(slab.name)
    assert (low[0], high[0]) == pytest.approx((-120 - out, 288 + out), abs=0.002)


def plans(building: Building) -> dict[str, FacePlan]:
    model = raise_building(building).model
    return {plan.face: plan for plan in face_plans(model, clad_planes(model), {})}


def test_the_main_faces_are_placed_as_without_it() -> None:
    """Distances on a gable are read from its own corners, though the lean-to's steel stands in its plane."""
    text = starter_text("lean-to", "lean-to")
    start, end = text.index("[[lean_to]]"), text.index("[[opening]]")
    alone, beside = plans(parse(text[:start] + text[end:], "alone")), plans(starter("lean-to"))
    for face in ("front", "back", "right", "right slope"):
        one, other = ([(s.number, s.rib, s.edge) for s in found[face].sheets] for found in (alone, beside))
        assert np.array(one) == pytest.approx(np.array(other), abs=1e-6)


OTHERS = {
    "the starter": starter_text("lean-to", "lean-to"),
    "at the right wall": SHED.replace('"left"', '"right"').replace("2/12", "3/12"),
    "its outer wall clad": SHED + 'walls = "outer"\n',
    "flush girts": SHED + '[framing]\ngirts = "flush"\n',
    "a steep roof": SHED.replace("2/12", "6/12").replace("9 ft", "6 ft").replace('"8 ft"', '"7 ft"'),
    "deeper ribs on the roof": SHED + '[roof_sheets]\nprofile = "36 x 12 x 1-1/4"\n',
    "a wainscot": SHED + '[wainscot]\nheight = "42 in"\n',
    "under a high eave": SHED + '[roof]\nshape = "single slope"\nfalls_to = "right"\n',
    "wide rafters on zees": SHED
    + '[frame]\nrafter = "tube 6x6x0.12"\n[framing]\ngirt = "zee 6x2.5x0.07"\npurlin = "zee 8x2.5x0.07"\n',
    "an open gable": SHED + '[walls]\nfront = "open"\n',
    "lap screws close to each other": SHED + '[screws]\nstitch = "4-1/4 in"\n',
    "any length": SHED + '[sheets]\nstep = "0 in"\n',
}


@pytest.mark.parametrize("text", OTHERS.values(), ids=OTHERS)
def test_a_lean_to_closes_whatever_is_about_it(text: str) -> None:
    assert judged(parse(text, "shed")).faults == {}


TALL = """
width = "24 ft"
length = "36 ft"
eave_height = "12 ft"
pitch = "3/12"
{more}
[[lean_to]]
wall = "left"
width = "{width}"
pitch = "{pitch}"
eave_height = "{eave}"
"""


def test_with_flush_girts_no_screw_is_wanted_where_a_rafter_comes_through() -> None:
    """Nor in a corner's leg between the sheets under its roof and those over it."""
    flush = TALL.format(more='[framing]\ngirts = "flush"', width="10 ft", pitch="2/12", eave="8 ft")
    found = judged(parse(flush, "shed"))
    assert (found.faults, found.said[Code.SCREW_LEFT_OUT.text]) == ({}, 0)


def test_up_a_corners_upright_screws_stand_as_asked_right_under_its_roof_and_over_it() -> None:
    """24 in apart at most, give or take the inch by which each may leave its row, past the flashing too."""
    flush = TALL.format(more='[framing]\ngirts = "flush"', width="10 ft", pitch="2/12", eave="8 ft")
    model = raise_building(parse(flush, "shed")).model
    row = next(piece for piece in model.pieces if piece.name == "left corner trim left screws")
    heights = sorted(row.place.point(point)[2] / INCH for point in row.row)
    assert heights[0] == pytest.approx(3, abs=1) and heights[-1] > 12 * 12 - 9
    assert max(np.diff(heights)) <= 24 + 2


def test_the_greatest_eave_under_a_strut_deeper_than_its_girts_does() -> None:
    """The uppermost girt stays under the corner trim's head, wherever the strut's foot is."""
    zees = '[framing]\ngirt = "8ZS2.25x059"\npurlin = "8ZS2.25x059"'
    problem = refusal(TALL.format(more=zees, width="7 ft", pitch="5/12", eave="8 ft"))
    assert problem.remedy.startswith("at most 7' 11-1/16\"")
    most = TALL.format(more=zees, width="7 ft", pitch="5/12", eave="7 ft 11-1/16 in")
    assert judged(parse(most, "shed")).faults == {}


OPEN_BEHIND = (
    'width = "16 ft"\nlength = "20 ft"\neave_height = "13 ft"\npitch = "9/12"\n[walls]\nback = "open"\n'
    '[[lean_to]]\nwall = "left"\nwidth = "7 ft"\npitch = "2/12"\neave_height = "7 ft"\n'
    '[framing]\ngirt = "cee 3.5x2x0.059"\n'
)


def test_the_deepest_upright_beside_a_rafter_at_an_open_wall_does() -> None:
    """It stands before the corner's column, that girts of 3 1/2 in hold off the open wall."""
    problem = refusal(OPEN_BEHIND)
    assert problem.key == "framing.jamb"
    assert problem.remedy.startswith("a section at most 3-1/2\" deep: it stands beside a lean-to's rafter")
    assert judged(parse(f'{OPEN_BEHIND}jamb = "cee 3.5x2x0.059"\n', "shed")).faults == {}


WINDOW = '[[opening]]\nkind = "window"\nwall = "left"\nwidth = "3 ft"\nheight = "3 ft"\nfrom_left = "3 ft"\n'


@pytest.mark.parametrize(
    ("old", "new", "key", "remedy"),
    [
        ('eave_height = "8 ft"', 'eave_height = "10 ft"', "lean_to[1].eave_height", "at most 9' 5"),
        (
            'width = "9 ft"',
            'width = "30 ft"',
            "lean_to[1].eave_height",
            "8 in under the left wall's eave trim",
        ),
        ('width = "9 ft"', 'width = "60 ft"', "lean_to[1].width", "at this pitch"),
        ("[[lean_to]]", f'{WINDOW}sill = "7 ft"\n[[lean_to]]', "lean_to[1].eave_height", "across the window"),
        ("[[lean_to]]", '[slab]\nledge_depth = "1 in"\n[[lean_to]]', "slab.ledge_depth", "not yet possible"),
        ("[[lean_to]]", '[slab]\nhang = "1-1/2 in"\n[[lean_to]]', "slab.hang", "not yet possible"),
        ("[[lean_to]]", '[walls]\nleft = "open"\n[[lean_to]]', "walls.left", 'between = "open"'),
        ("[[lean_to]]", '[walls]\nleft = "open in bay 1"\n[[lean_to]]', "walls.left", "a framed opening"),
        ("[[lean_to]]", '[[lean_to]]\nwalls = "all"', "lean_to[1].walls", "'left', 'right' or 'outer'"),
        ("[[lean_to]]", '[[lean_to]]\nbetween = "none"', "lean_to[1].between", "'clad' or 'open'"),
        ('width = "9 ft"', 'width = "4 ft"', "lean_to[1].width", "over this steel"),
        (SHED[-20:], SHED[-20:] + 2 * "[[lean_to]]\n", "lean_to[3]", "at most 2 lean-tos"),
    ],
)
def test_a_lean_to_that_cannot_be_is_refused_by_its_key(old: str, new: str, key: str, remedy: str) -> None:
    assert old in SHED
    problems = refusals(SHED.replace(old, new))
    said = {problem.key: problem.remedy for problem in problems}
    assert key in said and remedy in said[key], said


@pytest.mark.parametrize(
    ("sill", "typed"),
    [('"7 ft"', "at most "), ('"6 ft 6 in"', "at least ")],
)
def test_the_height_that_passes_an_opening_is_said_and_does(sill: str, typed: str) -> None:
    """With the height that was said the same building is built, and sound."""
    text = SHED.replace("[[lean_to]]", f"{WINDOW}sill = {sill}\n[[lean_to]]")
    problem = refusal(text)
    said = next(part for part in problem.remedy.split(": ")[0].split(" or ") if part.startswith(typed))
    height = said.split(" ", 2)[2].replace("'", " ft").replace('"', " in")
    mended = parse(text.replace('eave_height = "8 ft"', f'eave_height = "{height}"'), "shed")
    assert not [f for f in audit(raise_building(mended).model, ("cover", "clash")).findings if f.fault]
