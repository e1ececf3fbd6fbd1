"""Sheets that let light through: where, on which list, how they look, and what is said of them, by hand.

Lengths in inches.
"""

from __future__ import annotations

import json
from functools import cache
from math import ceil, hypot

import pytest
from ribwright.intake import parse
from ribwright.measure.clad_planes import clad_planes
from ribwright.order.buying.order_list import Order, buying_on, order
from ribwright.order.lists.handling import Carried
from ribwright.order.lists.schedule import schedule
from ribwright.order.written.csv import csv_text
from ribwright.order.written.json import json_text
from ribwright.order.written.order_text import order_table
from ribwright.order.written.table import table
from ribwright.pieces import Model
from ribwright.raising import raise_building
from ribwright.roles import Role
from ribwright.show.page.paints import GLASS, paints, shown
from ribwright.steps import steps
from ribwright.units import INCH
from support.csv_rows import rows_of
from support.judged import judged
from support.refused import refusal, refusals

SHED = """width = "24 ft"
length = "40 ft"
eave_height = "10 ft"
pitch = "4/12"
"""
LIT = f"""{SHED}[[light_sheet]]
face = "left slope"
every = 3
[[light_sheet]]
face = "left slope"
sheets = [1, 3]
colour = "lightskyblue"
[[light_sheet]]
face = "back"
sheets = "2"
[[opening]]
kind = "walk door"
wall = "back"
width = "3 ft 4 in"
height = "6 ft 10 in"
from_left = "4 ft"
"""


@cache
def lit() -> Model:
    return raise_building(parse(LIT, "lit")).model


@cache
def bought() -> Order:
    listed = schedule(lit())
    return order(listed, buying_on(listed.terms))


def lights(role: Role) -> list[str]:
    return [piece.name for piece in lit().pieces if piece.role == role]


def test_every_third_of_fourteen_sheets_but_not_the_last_and_those_that_are_named() -> None:
    assert ceil((40 * 12 - 2) / 36) == 14
    named, counted = {1, 3}, {3, 6, 9, 12}
    assert set(lights(Role.ROOF_LIGHT)) == {f"left slope {number}" for number in named | counted}
    colours = {p.name.split()[-1]: p.label("colour") for p in lit().pieces if p.role == Role.ROOF_LIGHT}
    assert {number for number, colour in colours.items() if colour == "white"} == set(map(str, counted))
    assert colours["1"] == "lightskyblue"  # of 3 the first that names it said otherwise


def test_a_light_sheet_stands_where_the_steel_one_would_and_as_that_is_cut() -> None:
    """Laid from the back, seen from outside on the left of the left slope: ribs 1, 37, 73 in from there."""
    plane = next(plane for plane in clad_planes(lit()) if plane.name == "left slope")
    sheets = {one.piece.name: one.outline.bounds for one in plane.sheets if one.piece.role == Role.ROOF_LIGHT}
    for name, (left, low, right, high) in sheets.items():
        assert left - min(one.outline.bounds[0] for one in plane.sheets) == pytest.approx(
            (int(name.split()[-1]) - 1) * 36 * INCH, abs=1e-3
        )
        assert right - left == pytest.approx(38 * INCH, abs=1e-3)
        whole = hypot(144, 48) + 2 * hypot(12, 4) / 12 - 1
        assert high - low == pytest.approx(round(2 * whole) / 2 * INCH, abs=1e-3)
    plain = raise_building(parse(LIT.split("[[light_sheet]]", maxsplit=1)[0], "plain")).model
    bodies = {piece.name: piece.solid for piece in plain.pieces}
    assert all(bodies[name] is piece.solid for piece in lit().pieces if (name := piece.name) in sheets)


def test_an_opening_leaves_light_sheets_in_pieces_too() -> None:
    """The back gable is laid from its centre, left half first: its second sheet is the last of that half."""
    assert lights(Role.WALL_LIGHT) and all(name.startswith("back 2") for name in lights(Role.WALL_LIGHT))


def test_a_light_sheet_has_no_weight_and_no_thickness_of_steel() -> None:
    """None is written as none, not as 0.0, nor as the thickness that its body is drawn with."""
    listed = schedule(lit())
    rows = [row for row in rows_of(csv_text(listed, ["sheets"])) if "light" in row["what"]]
    assert {row["mark"][:2] for row in rows} == {"RL", "WL"}
    for row in rows:
        assert {row[name] for name in ("weight lb", "weight kg", "thickness", "thickness mm")} == {""}
        line = next(line for line in table(listed, 250).splitlines() if line.split()[:1] == [row["mark"]])
        assert " 0.0 " not in line
    told = [one for one in json.loads(json_text(listed))["sheets"] if "light" in one["role"]]
    assert [(one["weight"], one["thickness"]) for one in told] == [(None, None)] * len(rows)


def test_they_are_bought_on_lines_of_their_own_without_gauge_weight_paint_or_the_price_of_steel() -> None:
    """Twelve feet of slope at 4 in 12, its overhang and ridge gap, to the half inch: 153 in, 36 in cover."""
    lines = {line.item: line for line in bought().lines if "light sheet" in line.item}
    white = lines["roof light sheet 36 x 9 x 3/4, white, 12' 9\""]
    assert (white.quantity, white.weight) == (4, 0.0)
    assert white.area == pytest.approx(4 * 153 * 36 * INCH**2)
    assert lines["roof light sheet 36 x 9 x 3/4, lightskyblue, 12' 9\""].quantity == 2 - 1
    steel = next(line for line in bought().lines if line.kind.startswith("roof sheet"))
    assert steel.quantity == 2 * 14 - 5
    assert all("sheet" not in line.names for line in lines.values())
    assert not any(line.kind == "touch-up pen" and line.colour == "lightskyblue" for line in bought().lines)
    screws = {p.label("colour") for p in lit().pieces if p.role == Role.SHEET_SCREW}
    assert screws == {"gainsboro", "slategray"}


def test_they_look_like_glass_in_their_colour_and_cannot_be_painted() -> None:
    one = next(piece for piece in lit().pieces if piece.name == "left slope 6")
    mixed = tuple((255 + int(GLASS[k : k + 2], 16)) // 2 for k in (1, 3, 5))
    assert shown(one) == "#{:02x}{:02x}{:02x}".format(*mixed)
    assert {paint.colour for paint in paints(lit().pieces)} == {"gainsboro", "slategray"}


def test_whoever_is_on_the_roof_is_told_that_each_is_a_hole() -> None:
    warned = [step.name for step in steps(lit()) if any("501(b)(4)" in one.source for one in step.cautions)]
    assert warned == [
        "sheets of the left slope",
        "sheets of the right slope",
        "rake trim",
        "closures and ridge cap",
    ]
    assert "501(b)(4)" in order_table(bought(), schedule(lit()), Carried())
    plain = raise_building(parse(SHED, "plain")).model
    assert not any("501(b)(4)" in one.source for step in steps(plain) for one in step.cautions)


def test_every_judge_passes_them() -> None:
    assert judged(parse(LIT, "lit")).faults == {}


@pytest.mark.parametrize(
    ("keys", "said"),
    [
        ("sheets = [15]", "numbers from 1 to 14: the left slope has no more sheets"),
        ("every = 20", "at most 13: the left slope has 14 sheets, and its last stays steel"),
        ("every = 1", "a whole number, at least 2 and at most 50"),
        ("sheets = [0]", "numbers from 1 to 999, such as [3, 6]"),
        ('sheets = "first"', "numbers from 1 to 999, such as [3, 6]"),
        ("", "missing; which sheets by their numbers, or every so many"),
    ],
)
def test_what_is_no_sheet_of_a_face_is_refused_with_what_would_do(keys: str, said: str) -> None:
    problems = refusals(f'{SHED}[[light_sheet]]\nface = "left slope"\n{keys}\n')
    assert [problem.remedy for problem in problems] == [said]


def test_an_open_wall_has_none() -> None:
    problems = refusals(f'{SHED}[walls]\nleft = "open"\n[[light_sheet]]\nface = "left"\nevery = 2\n')
    faces = "right, back, front, left slope, right slope"
    assert [problem.remedy for problem in problems] == [f"a face with sheets: {faces}"]


LEAN_TO = '[[lean_to]]\nwall = "{}"\nwidth = "8 ft"\npitch = "2/12"\neave_height = "6 ft"\n'
ONE = SHED + LEAN_TO.format("left") + '[[light_sheet]]\nface = "lean-to slope"\nevery = 4\n'
TWO = (
    SHED
    + LEAN_TO.format("left")
    + LEAN_TO.format("right")
    + '[[light_sheet]]\nface = "right lean-to slope"\nsheets = [2]\n'
    + '[[light_sheet]]\nface = "left slope"\nsheets = [5]\n'
)


def test_a_lean_to_has_light_sheets_of_its_own() -> None:
    """Of its fourteen every fourth: three. Each is a hole to a foot there too, where the main has none, and
    of two lean-tos the one has them that is named."""
    assert judged(parse(ONE, "one")).faults == {}
    model = raise_building(parse(ONE, "one")).model
    named = [piece.name for piece in model.pieces if piece.role == Role.ROOF_LIGHT]
    assert sorted(named) == ["lean-to left slope 12", "lean-to left slope 4", "lean-to left slope 8"]
    warned = [step.name for step in steps(model) if any("501(b)(4)" in one.source for one in step.cautions)]
    assert "sheets of the lean-to left slope" in warned
    named = [p.name for p in raise_building(parse(TWO, "two")).model.pieces if p.role == Role.ROOF_LIGHT]
    assert sorted(named) == ["left slope 5", "right lean-to right slope 2"]
    at_gables = parse(TWO.replace('"left"', '"front"').replace('"right', '"back'), "three")
    faces = [[light.face for light in one.light_sheets] for one in at_gables.lean_tos]
    assert faces == [
        ["other back lean-to back slope", "other left slope"],
        ["back slope", "other left slope"],
    ]


@pytest.mark.parametrize(
    ("text", "said"),
    [
        (
            ONE.replace("every = 4", "every = 14"),
            "at most 13: the lean-to left slope has 14 sheets, and its last",
        ),
        (
            ONE.replace("every = 4", "sheets = [15]"),
            "numbers from 1 to 14: the lean-to left slope has no more",
        ),
        (TWO.replace('"right lean-to', '"lean-to'), "left lean-to slope or right lean-to slope"),
        (ONE.replace('"lean-to slope', '"right lean-to slope'), "lean-to slope"),
        (
            SHED + '[[light_sheet]]\nface = "lean-to slope"\nevery = 2\n',
            "a face of the building, which has no lean",
        ),
    ],
)
def test_a_lean_to_that_is_not_meant_is_said(text: str, said: str) -> None:
    remedy = refusal(text).remedy
    assert remedy.startswith(said)
