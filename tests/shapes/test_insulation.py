"""Blanket insulation between steel and sheets: where its strips lie, what is bought, what is said, by hand.

Lengths in inches. That it is drawn pressed to 1/4 in is common practice, no source.
"""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from functools import cache
from math import ceil, floor, hypot

import pytest
from ribwright.audit import audit
from ribwright.findings import Code
from ribwright.intake import parse
from ribwright.measure.clad_planes import clad_planes
from ribwright.measure.standing import standing_box
from ribwright.order.buying.order_list import Order, buying_on, order
from ribwright.order.lists.handling import Carried
from ribwright.order.lists.schedule import schedule
from ribwright.order.written.order_text import order_table
from ribwright.pieces import Model, Piece
from ribwright.raising import raise_building
from ribwright.roles import Role
from ribwright.solids.properties import volume
from ribwright.steps import steps
from ribwright.units import INCH
from support.judged import judged
from support.refused import refusals

PLAIN = """width = "24 ft"
length = "40 ft"
eave_height = "10 ft"
pitch = "4/12"
"""
BLANKETS = """[insulation]
walls = "3 in"
roof = "4 in"
"""
DOORS = """[[opening]]
kind = "overhead door"
wall = "front"
width = "10 ft"
height = "8 ft"
from_left = "7 ft"
[[opening]]
kind = "window"
wall = "left"
width = "3 ft"
height = "3 ft"
from_left = "4 ft 3 in"
"""
FLANGE, PRESSED, RIB, SHEET = 0.0217, 0.25, 0.75, 0.0172
SLOPE = hypot(144, 48)
FOOT = 2.1 * FLANGE
"""Of the walls' sheets: two thicknesses of base trim, and a little, lie under them."""


def raised(more: str) -> Model:
    return raise_building(parse(PLAIN + more, "shed")).model


@cache
def warm() -> Model:
    return raised(BLANKETS + DOORS)


@cache
def bought() -> Order:
    listed = schedule(warm())
    return order(listed, buying_on(listed.terms))


def strips(model: Model, face: str) -> list[Piece]:
    return [p for p in model.pieces if "blanket" in p.role and p.label("face") == face]


def test_strips_of_four_feet_from_where_the_sheets_start() -> None:
    """40 ft make ten, 24 ft six; the left wall's sheets start at the back."""
    counts = Counter(piece.label("face") for piece in warm().pieces if "blanket" in piece.role)
    assert counts == {"left slope": 10, "right slope": 10, "left": 10, "right": 10, "back": 6, "front": 6}
    for number, piece in enumerate(strips(warm(), "left")):
        low, high = standing_box(piece)[:, 1] / INCH
        assert (low, high) == pytest.approx((480 - 48 * (number + 1), 480 - 48 * number))


def test_a_strip_fills_what_is_between_the_flanges_and_the_sheets() -> None:
    """Of a side wall, in x: from the flanges' outer face to the undersides of the pans."""
    for piece in strips(warm(), "left"):
        low, high = standing_box(piece)[:, 0] / INCH
        assert (low, high) == pytest.approx((-FLANGE - PRESSED, -FLANGE), abs=1e-4)
    planes = {plane.name: plane.frame.origin[0] for plane in clad_planes(warm()) if plane.name == "left"}
    assert planes["left"] / INCH == pytest.approx(-FLANGE - PRESSED, abs=1e-4)
    bare = {plane.name: plane.frame.origin[0] for plane in clad_planes(raised(DOORS)) if plane.name == "left"}
    assert bare["left"] / INCH == pytest.approx(-FLANGE, abs=1e-4)


def test_it_is_cut_out_around_openings_as_the_sheets_are() -> None:
    """A window of 3 x 3 ft stands in the ninth strip from the back alone; the sheets clear it by 1/8 in and
    the flange, and over its head by what lies between a shelf and their feet. 1/4 in thick."""
    whole = max(volume(piece.solid) for piece in strips(warm(), "left"))
    less = Counter(round((whole - volume(piece.solid)) / INCH**3, 3) for piece in strips(warm(), "left"))
    assert less[0.0] == 9
    clear = 1 / 8 + FLANGE
    least, most = (36 + clear) * 36 * PRESSED, (36 + 2 * clear) * (36 + 3 * clear + 0.25) * PRESSED
    (window,) = (size for size in less if size)
    assert least < window < most + 3 * PRESSED  # and the slots for the ends of the drip, of an inch each


def test_lengths_are_bought_half_a_foot_longer_to_the_next_half_foot() -> None:
    """Roof: the sheets' whole half inches from 2 in past the eave, less that. Side walls: square sheets under
    the roof's steel, which falls by a third of what lies before the steel line. Gables: the inner edge of
    each strip is the longer one."""
    rise = hypot(12, 4) / 12
    roof = round(2 * (SLOPE - 1 + 2 * rise)) / 2 - 2 * rise
    under = 120 - (FLANGE + PRESSED + RIB + 2 * SHEET) / 3 - 1 / 8
    side = floor(2 * (under - FOOT)) / 2
    gable = [120 + at / 3 - 1 / 8 - FOOT for at in (48, 96, 144)]
    over_door = 120 + 144 / 3 - 1 / 8 - 96  # its strips at the middle hang from over the drip
    lengths = {("roof blanket", "4 in"): Counter({roof: 20}), ("wall blanket", "3 in"): Counter()}
    lengths["wall blanket", "3 in"] += Counter(
        {side: 20, gable[0]: 4, gable[1]: 4, gable[2]: 2, over_door: 2}
    )
    wanted = Counter[tuple[str, str, str]]()
    for (role, thick), counted in lengths.items():
        for length, count in counted.items():
            halves = ceil((length + 6) / 6)
            size = f"4' x {halves // 2}'" + (' 6"' if halves % 2 else "")
            wanted[role, thick, size] += count
    lines = [line for line in bought().lines if line.list == "insulation"]
    assert Counter({(line.kind, line.gauge, line.size): line.quantity for line in lines}) == wanted
    (on_roof,) = (line for line in lines if line.kind == "roof blanket")
    assert on_roof.amount("ft") == pytest.approx(20 * 13.5)
    assert on_roof.amount("ft2") == pytest.approx(20 * 13.5 * 4)
    assert all("insulation" in line.names for line in lines)


def test_wider_rolls_and_no_length_more() -> None:
    """Six feet wide: seven strips on 40 ft, the last of 4 ft bought as wide as the others."""
    model = raised(f'{BLANKETS}roll = "6 ft"\nlonger = "0 in"\n')
    listed = schedule(model)
    (roof,) = (x for x in order(listed, buying_on(listed.terms)).lines if x.kind == "roof blanket")
    assert (roof.quantity, roof.size) == (14, "6' x 13'")
    assert sorted(round(strip.wide / INCH, 3) for strip in listed.blankets if strip.face == "left slope") == [
        48.0,
        *[72.0] * 6,
    ]


def test_screws_are_as_much_longer_as_it_is_pressed_to() -> None:
    """1-1/4 in through sheets on steel; 1-1/2 in through a blanket on top of that, on the roof alone here."""
    model = raised('[insulation]\nroof = "4 in"\n')
    listed = schedule(model)
    sizes = {x.colour: x.section for x in listed.listed("screws") if x.role == Role.SHEET_SCREW}
    assert {colour: text.split(" x ")[1] for colour, text in sizes.items()} == {
        "gainsboro": "1.25",
        "slategray": "1.5",
    }
    assert not [piece for piece in model.pieces if piece.role == Role.WALL_BLANKET]


def test_it_hangs_before_the_sheets_that_press_it_and_who_walks_there_is_told() -> None:
    for step in steps(warm()):
        roles = [piece.role for piece in step.pieces]
        hangs = [n for n, role in enumerate(roles) if "blanket" in role]
        warned = any("A blanket over purlins hides them" in one.text for one in step.cautions)
        assert warned is bool(hangs)
        if hangs:
            assert step.name.startswith("blanket and sheets of the ")
            assert max(hangs) < min(n for n, role in enumerate(roles) if role.endswith("sheet"))
    assert sum("blanket" in step.name for step in steps(warm())) == 6


def test_what_is_not_drawn_says_insulation_only_without() -> None:
    absent = order_table(bought(), schedule(warm()), Carried()).split("\n\n")[0]
    assert "insulation" not in absent
    listed = schedule(raised(""))
    assert "insulation" in order_table(order(listed), listed, Carried()).split("\n\n")[0]


def test_the_audit_finds_the_air_that_a_missing_strip_leaves() -> None:
    gone = strips(warm(), "right")[3]
    less = replace(warm(), pieces=tuple(piece for piece in warm().pieces if piece is not gone))
    found = [finding for finding in audit(less).findings if finding.fault]
    assert {finding.code for finding in found} == {Code.SCREW_GAP, Code.EDGE_LOOSE}
    airs = {round((one.measured or 0) / INCH, 3) for one in found if one.code is Code.SCREW_GAP}
    assert airs == {round(PRESSED, 3), round(FLANGE + PRESSED, 3)}  # where a trim's flange is, and where not


@pytest.mark.parametrize(
    ("more", "top"),
    [
        (DOORS, PLAIN),
        ('[wainscot]\nheight = "42 in"\n[slab]\nledge_depth = "1-1/2 in"\n', PLAIN),
        (
            '[[lean_to]]\nwall = "right"\nwidth = "8 ft"\npitch = "2/12"\neave_height = "7 ft"\n'
            'walls = ["front", "outer"]\n',
            PLAIN,
        ),
        ('[roof]\nshape = "single slope"\n[slab]\nhang = "1-1/2 in"\n[sheets]\nlongest = "19 ft"\n', PLAIN),
        (
            "",
            'units = "mm"\nwidth = "6 m"\nlength = "6 m"\neave_height = "2700 mm"\npitch = "10 deg"\n',
        ),
    ],
    ids=["doors", "two tiers, a ledge", "a lean-to", "one slope, end laps", "metric"],
)
def test_every_judge_passes_it(more: str, top: str) -> None:
    assert judged(parse(f"{top}{BLANKETS}{more}", "shed")).faults == {}


def test_no_light_comes_through_it() -> None:
    lit = '[[light_sheet]]\nface = "left slope"\nevery = 3\n'
    problems = refusals(f"{PLAIN}{BLANKETS}{lit}")
    said = "a face without a blanket, which lets no light through; or leave out [insulation] roof"
    assert [problem.remedy for problem in problems] == [said]
    parse(f'{PLAIN}[insulation]\nwalls = "3 in"\n{lit}', "shed")
