"""What a description means: defaults, sizes, runs as seen from outside, labels."""

from __future__ import annotations

from dataclasses import fields, replace

import pytest
from ribwright.catalog.profiles import profiles
from ribwright.description.opening import Opening
from ribwright.description.skin import Run, Sheets
from ribwright.envelope.roof_lines import RoofLines
from ribwright.intake import parse
from ribwright.units import INCH

DOZEN = """
width = "30'"
length = "40 ft"
eave_height = "10'"
pitch = "3/12"
[[opening]]
kind = "walk door"
wall = "left"
width = "3'"
height = "6' 8"
from_left = "4'"
"""


def with_sheets(lines: str) -> Sheets:
    return parse(DOZEN + "[sheets]\n" + lines, "x").sheets


def test_a_dozen_lines_are_enough() -> None:
    building = parse(DOZEN, "my-shop")
    assert (building.name, building.units) == ("my-shop", "ft-in")
    assert (building.width, building.length, building.eave_height) == (9144.0, 12192.0, 3048.0)
    assert building.pitch == pytest.approx(14.036243467926479, abs=1e-12)
    assert building.slab.ledge_depth == 0
    assert building.openings == (Opening("walk door", "left", 914.4, 2032.0, 1219.2, 0.0),)


def test_the_usual_sheets() -> None:
    sheets = parse(DOZEN, "x").sheets
    lengths = {f.name: getattr(sheets, f.name) / INCH for f in fields(sheets) if f.type == "float"}
    expected = {
        "overhang": 2,
        "ridge_gap": 1,
        "step": 0.5,
        "tolerance": 0,
        "longest": 480,
        "foot_gap": 0,
        "cut_clearance": 0.125 + 0.0217,
        "flange": 0.0217,
    }
    assert lengths == pytest.approx(expected, abs=1e-12)
    assert sheets.sides.thickness / INCH == pytest.approx(0.0172, abs=1e-12)
    assert (sheets.gables, replace(sheets.roof, colour="gainsboro")) == (sheets.sides, sheets.sides)
    assert sheets.sides.profile is profiles()["36 x 9 x 3/4"]
    assert (sheets.roof.gauge, sheets.gables.colour, sheets.roof.colour) == (
        "29 ga",
        "gainsboro",
        "slategray",
    )


def test_the_pocket_follows_the_flange_unless_the_clearance_is_given() -> None:
    assert with_sheets('flange = "1 mm"').cut_clearance == pytest.approx(25.4 / 8 + 1, abs=1e-12)
    assert with_sheets('flange = "1 mm"\ncut_clearance = "5 mm"').cut_clearance == 5


@pytest.mark.parametrize("typed", ["26", '"26"', '"26 ga"', '"26 GA."', '"26 gauge"'])
def test_a_gauge_is_galvanised_thickness(typed: str) -> None:
    sheets = with_sheets(f"gauge = {typed}")
    assert (sheets.sides.gauge, sheets.sides.thickness) == ("26 ga", pytest.approx(0.0217 * INCH, abs=1e-12))


def test_a_thickness_stands_for_itself_and_is_labelled_as_typed() -> None:
    sheets = with_sheets("""thickness = ' 0.02"'""")
    assert (sheets.sides.gauge, sheets.sides.thickness) == ('0.02"', pytest.approx(0.508, abs=1e-12))


def test_colours_keep_what_was_typed_in_lower_case() -> None:
    sheets = with_sheets('wall_colour = "#A0b0C0"\nroof_colour = "SlateGrey"')
    assert (sheets.sides.colour, sheets.roof.colour) == ("#a0b0c0", "slategrey")


@pytest.mark.parametrize(
    ("kind", "sill"), [("walk door", 0), ("overhead door", 0), ("framed opening", 0), ("window", 914.4)]
)
def test_a_window_has_a_sill_of_three_feet_and_the_others_none(kind: str, sill: float) -> None:
    text = DOZEN.replace("walk door", kind).replace("6' 8", "3'")
    assert parse(text, "x").openings[0].sill == pytest.approx(sill, abs=1e-9)


# Seen from outside: whoever faces the left wall has the building's back on the left hand and whoever
# faces the right wall has it on the right hand. The same holds for the slopes above them.
FROM_BACK: dict[str, Run] = {
    **dict.fromkeys(("left", "left slope", "left upper slope"), Run("left", "left")),
    **dict.fromkeys(("right", "right slope", "right upper slope"), Run("right", "right")),
}
FROM_FRONT: dict[str, Run] = {
    **dict.fromkeys(("left", "left slope", "left upper slope"), Run("right", "right")),
    **dict.fromkeys(("right", "right slope", "right upper slope"), Run("left", "left")),
}


def test_runs_start_from_the_back_and_on_gables_from_the_centre() -> None:
    centre = Run("centre", "left")
    building = parse(DOZEN, "x")
    assert building.runs == {"front": None, "back": None, **FROM_BACK}
    lines = RoofLines(building)
    assert {lines.run(lines.named[gable]) for gable in ("front", "back")} == {centre}


def test_runs_from_the_front_corners() -> None:
    keys = "".join(f'{face} = "front"\n' for face in ("left", "right", "left_slope", "right_slope"))
    runs = parse(f"{DOZEN}[runs]\n{keys}", "x").runs
    assert {face: runs[face] for face in FROM_FRONT} == FROM_FRONT


@pytest.mark.parametrize(
    ("typed", "run"),
    [
        ("left", Run("left", "left")),
        ("right", Run("right", "right")),
        ("centre, left first", Run("centre", "left")),
        ("Centre,  right first", Run("centre", "right")),
        ("center, left first", Run("centre", "left")),
        ("center, right first", Run("centre", "right")),
    ],
)
def test_runs_of_gables(typed: str, run: Run) -> None:
    runs = parse(f'{DOZEN}[runs]\nfront = "{typed}"\nback = "right"', "x").runs
    assert (runs["front"], runs["back"]) == (run, Run("right", "right"))


@pytest.mark.parametrize(
    ("given", "name"),
    [("my-shop", "my-shop"), ("../../etc", "etc"), ("...", "building"), ("a" * 90, "a" * 60)],
)
def test_the_file_names_a_building_that_has_no_name(given: str, name: str) -> None:
    assert parse(DOZEN, given).name == name


def test_a_name_of_its_own() -> None:
    assert parse('name = " Ada\'s barn "\n' + DOZEN, "x").name == "Ada's barn"


def test_line_ends_and_a_byte_order_mark_make_no_difference() -> None:
    assert parse("\ufeff" + DOZEN.replace("\n", "\r\n"), "x") == parse(DOZEN, "x")


def test_the_order_of_keys_makes_no_difference() -> None:
    head, opening = DOZEN.split("[[opening]]")
    inline = ", ".join(line for line in opening.strip().splitlines())
    assert parse(f"opening = [{{{inline}}}]\n{head}", "x") == parse(DOZEN, "x")
