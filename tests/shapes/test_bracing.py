"""Bracing as solids: rods by Pythagoras, where they lie, what every list says of them, the same from STEP."""

from __future__ import annotations

from functools import cache
from math import atan2, cos, hypot, sin, sqrt
from pathlib import Path

import numpy as np
import pytest
from ribwright.audit import audit
from ribwright.audit.reach import reach
from ribwright.exchange.ifc_classes import class_of
from ribwright.exchange.step import read_step, write_step
from ribwright.heading import is_braced, note
from ribwright.intake import parse, starter_text
from ribwright.measure.round_bar import round_bar
from ribwright.measure.standing import standing_box
from ribwright.order.buying.order_list import order
from ribwright.order.lists.items import Item
from ribwright.order.lists.schedule import Schedule, schedule
from ribwright.order.written.csv import csv_text
from ribwright.order.written.json import json_text
from ribwright.papers.framing import framing
from ribwright.papers.job import job_of
from ribwright.pieces import Model
from ribwright.raising import raise_building
from ribwright.roles import Role
from ribwright.steps import steps
from support.second_witness import faults

INCH, FOOT = 25.4, 304.8
SHOP = 'width = "24 ft"\nlength = "30 ft"\neave_height = "10 ft"\npitch = "4/12"\n'
ROD = 0.625
ACROSS = 110.0
"""in: between columns, or rafters, of 4 in: of the end one, 4 in behind the gable, and one at 10 ft."""
SLOPE = sqrt(12**2 + 4**2) / 12
"""Length up the slope of one in plan."""


@cache
def shop(more: str = "[bracing]\nbays = [1]\n") -> Model:
    return raise_building(parse(SHOP + more, "shop")).model


@pytest.fixture(scope="module")
def listed(tmp_path_factory: pytest.TempPathFactory) -> Schedule:
    """Read back from STEP."""
    path: Path = tmp_path_factory.mktemp("shop") / "model.step"
    write_step(shop(), path)
    again = schedule(read_step(path))
    assert json_text(again) == json_text(schedule(shop()))
    return again


def braces(of: Schedule) -> dict[str, Item]:
    """By the first face that they are on."""
    return {item.faces[0]: item for item in of.items if item.role == Role.BRACE}


def cut_square(across: float, up: float) -> float:
    """The diagonal of what the slanting ends of a rod leave of a box, across and up it."""
    lean = atan2(up, across)
    for _ in range(40):
        lean = atan2(up - ROD * cos(lean), across - ROD * sin(lean))
    return hypot(across - ROD * sin(lean), up - ROD * cos(lean))


def test_rods_are_as_long_as_pythagoras_says(listed: Schedule) -> None:
    """Of a wall: 6 in over the slab to 1 in under the rafter, whose underside is purlin and rafter, 8 in,
    under the roof's steel, 8 in in from the wall's. Of a slope: 1 in past the column's inner face, 4 in under
    the steel, to 1 in short of the other slope, 8 in under it. Cut square a rod is a little shorter."""
    up_wall = 120 + 8 * 4 / 12 - 8 * SLOPE - 1 - 6
    up_slope = (144 * SLOPE - 8 * 4 / 12 - 1) - (8 * SLOPE - 4 * 4 / 12 + 1)
    found = braces(listed)
    assert {face: item.count for face, item in found.items()} == {"left": 4, "left slope": 4}
    for face, up in (("left", up_wall), ("left slope", up_slope)):
        diagonal = hypot(ACROSS, up)
        assert diagonal - ROD < found[face].length / INCH < diagonal
        assert found[face].length / INCH == pytest.approx(cut_square(ACROSS, up), abs=1e-6)
        assert found[face].section == "rod 0.625"
        assert found[face].ends == (0.0, 0.0)
        by_hand = np.pi / 4 * ROD**2 * found[face].length / INCH * 490 / 12**3  # lb
        assert found[face].weight / 0.45359237 == pytest.approx(by_hand, rel=0.002)


def test_two_cross_in_the_same_bay_of_each_face_inside_girts_and_under_purlins() -> None:
    found = [piece for piece in shop("[bracing]\nbays = [1, 3]\n").pieces if piece.role == Role.BRACE]
    names = [f"{face} bay {bay}" for bay in (1, 3) for face in ("left", "right", "left slope", "right slope")]
    assert sorted(piece.name for piece in found) == sorted(
        f"{name} brace {k}" for name in names for k in (1, 2)
    )
    for piece in found:
        low, high = standing_box(piece) / INCH
        start, end = (8, 118) if "bay 1" in piece.name else (242, 352)
        assert (low[1], high[1]) == pytest.approx((start, end), abs=1e-6)
        if "slope" not in piece.name:
            across = (low[0], high[0]) if piece.name.startswith("left") else (288 - high[0], 288 - low[0])
            assert across[0] >= 4.25 - 1e-6 and across[1] <= 8 - 0.25 + 1e-6
            assert low[2] == pytest.approx(6)


def test_every_end_stands_against_a_frame_and_nothing_is_in_the_way() -> None:
    assert audit(shop()).findings == ()
    assert list(faults(shop())) == []


@pytest.mark.parametrize("name", ["single-slope", "lean-to", "machine-shed", "carport"])
def test_other_buildings_are_braced_clear_of_all_else(name: str) -> None:
    text = starter_text(name, name) + '\n[bracing]\nbays = "ends"\n'
    building = parse(text, name)
    assert building.bracing is not None
    raised = raise_building(building)
    assert not any(finding.fault for finding in raised.findings)
    assert audit(raised.model, ("clash", "bodies")).findings == ()
    faces = {piece.label("face") for piece in raised.model.pieces if piece.role == Role.BRACE}
    slopes = {"left slope"} if name == "single-slope" else {"left slope", "right slope"}
    beside = {"lean-to left", "lean-to left slope"} if name == "lean-to" else set()
    assert faces == {"left", "right"} | slopes | beside


JAMBS = 'jamb = "cee 2x1.5x0.059"\nheader = "cee 2x1.5x0.059"\n'
STEEL = {
    "cees, girts between them": (
        'column = "cee 8x2.5x0.1"\nrafter = "cee 8x2.5x0.1"\nknee = "none"\n'
        '[framing]\ngirts = "flush"\ngirt = "cee 2x1.5x0.059"\n'
    ),
    "shallow girts, deep struts and knees": (
        'column = "tube 4x2x0.12"\nrafter = "tube 6x6x0.12"\nknee = "tube 4x4x0.12"\n'
        '[framing]\ngirt = "hat 1.5x1.25x0.0346"\npurlin = "hat 1.5x1.25x0.0346"\n'
    ),
}


@pytest.mark.parametrize("steel", STEEL)
@pytest.mark.parametrize("brace", ["cable 3/8", "strap 2x1/8"])
def test_open_members_deep_knees_and_girts_between_columns(steel: str, brace: str) -> None:
    """A cee is open on one side: there a brace goes in up to its web."""
    more = f'[frame]\n{STEEL[steel]}{JAMBS}[bracing]\nbrace = "{brace}"\n'
    model = raise_building(parse(SHOP + more, "shop")).model
    assert audit(model, ("clash", "bodies")).findings == ()


def test_a_long_slope_has_more_than_one_x_divided_at_a_purlin() -> None:
    wide = parse(SHOP.replace("24 ft", "60 ft").replace("4/12", "2/12") + "[bracing]\nbays = [2]\n", "wide")
    model = raise_building(wide).model
    left = [
        piece for piece in model.pieces if piece.role == Role.BRACE and piece.label("face") == "left slope"
    ]
    assert len(left) == 4  # 30 ft of slope in bays of under 10 ft: two of no more than 60 degrees
    heads = sorted(float(standing_box(piece)[1, 0]) for piece in left)
    purlins = [
        standing_box(piece)[:, 0] for piece in model.pieces if piece.name.startswith("left slope purlin")
    ]
    divided = heads[0] + INCH
    assert min(abs(divided - box.mean()) for box in purlins) < 2 * INCH
    assert audit(model, ("clash", "bodies")).findings == ()


def test_lines_of_struts_run_from_one_braced_bay_to_the_other() -> None:
    """At the eave and under the ridge of both slopes, in four bays of five; none where one is braced."""
    model = raise_building(parse(SHOP.replace("30 ft", "50 ft") + "[bracing]\nbays = [1, 4]\n", "long")).model
    struts = [piece for piece in model.pieces if piece.role == Role.STRUT]
    assert len(struts) == 2 * 2 * 4
    ends = sorted({round(float(y) / INCH, 3) for piece in struts for y in standing_box(piece)[:, 1]})
    assert ends == [8, 118, 122, 238, 242, 358, 362, 478]
    assert audit(model, ("clash", "bodies")).findings == ()
    assert not any(piece.role == Role.STRUT for piece in shop().pieces)
    none = parse(SHOP + '[bracing]\nbays = [1, 3]\nstrut = "none"\n', "none")
    assert not any(piece.role == Role.STRUT for piece in raise_building(none).model.pieces)


def test_what_this_is_not_is_said_as_it_is_drawn(listed: Schedule) -> None:
    assert note(braced=True) in csv_text(listed)
    assert "No bracing" not in csv_text(listed)
    bare = schedule(shop(""))
    assert not bare.braced and not is_braced(item.role for item in bare.items)
    assert "No bracing is drawn: a frame without it does not stand." in csv_text(bare)


def test_braces_are_bought_as_cut_with_what_holds_their_ends(listed: Schedule) -> None:
    bought = order(listed)
    rods = [line for line in bought.lines if line.kind == "rod 0.625 in"]
    assert sorted(line.count for line in rods) == [4, 4]
    (ends,) = [line for line in bought.lines if "brace's end" in line.kind]
    assert ends.quantity == 2 * sum(line.count for line in rods)
    assert not any("rod" in plan for plan, _ in bought.plans)


def test_framing_pages_show_the_x() -> None:
    marks = {item.mark for item in braces(schedule(shop())).values()}
    pages = [page for page in framing(job_of(shop())) if "left" in page.title]
    for page in pages:
        said = {text for view in page.views for shape in view.shapes if (text := getattr(shape, "text", ""))}
        assert marks & said, page.title
    assert len(pages) == 2


def test_the_braced_bay_goes_up_first() -> None:
    names = [
        (step.name, {piece.role for piece in step.pieces}) for step in steps(shop("[bracing]\nbays = [2]\n"))
    ]
    (first, roles), (then, others) = names[2:4]
    assert (first, then) == ("frames 2 and 3", "frame 4, then frame 1")
    assert Role.BRACE in roles and Role.BRACE not in others
    said = [caution.text for caution in steps(shop())[2].cautions]
    assert any("placeholder" in text and "something else" in text for text in said)


def test_in_that_order_every_piece_can_be_put_where_it_belongs() -> None:
    model = shop("[bracing]\nbays = [2]\n")
    assert reach(model, [piece.name for step in steps(model) for piece in step.pieces]) == ()


def test_a_brace_is_a_brace_in_ifc() -> None:
    assert (class_of(Role.BRACE).name, class_of(Role.BRACE).kind) == ("IfcMember", "BRACE")


def test_a_round_bar_is_told_by_its_faces() -> None:
    (solid, *_) = [piece.solid for piece in shop().pieces if piece.role == Role.BRACE]
    bar = round_bar(solid)
    assert bar is not None
    assert bar.diameter / INCH == pytest.approx(ROD)
    assert all(round_bar(piece.solid) is None for piece in shop().pieces if piece.role != Role.BRACE)
