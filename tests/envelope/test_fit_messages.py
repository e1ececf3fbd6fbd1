"""What does not go with the steel: each message alone, with what would do, and what would do does."""

from __future__ import annotations

import pytest
from ribwright.envelope.steel_lines import SteelLines
from ribwright.intake import parse
from support.fitting import described, opening
from support.refused import refusal

STEEL = [
    ('[frame]\nbays = ["10 ft", "12 ft"]', "frame.bays", "add up to the length, 40'; these make 22'"),
    (
        '[frame]\ncolumn = "tube 12x12x0.25"\nbays = ["38 ft", "2 ft"]',
        "frame.bays",
        "bays that add up to the length, 40', none under 2' 8\"",
    ),
    ('[frame]\nknee_reach = "9 ft"', "frame.knee_reach", "at most 8' 11-3/8\" on these columns"),
    ('[frame]\nfront_posts = ["2 ft"]', "frame.front_posts", "posts between 3' 3\" and 26' 9\""),
    ('[frame]\nback_posts = ["10 ft", "10 ft 6 in"]', "frame.back_posts", 'posts at least 10" apart'),
    ('[framing]\nrake_angle = "angle 3x2x0.075"', "framing.rake_angle", 'at least 4-1/8" up'),
    ('[framing]\nrake_angle = "angle 5x5x0.075"', "framing.rake_angle", 'at most 4" across'),
    ('[framing]\ngirts = "flush"\ngirt = "cee 6x2x0.059"', "framing.girt", 'at most 4" deep'),
    ('[framing]\ngirts = "flush"\njamb = "cee 6x2x0.059"', "framing.jamb", 'at most 4" deep'),
    ('[framing]\ngirts = "flush"\nheader = "cee 6x2x0.059"', "framing.header", 'at most 4" deep'),
]


@pytest.mark.parametrize(("more", "key", "remedy"), STEEL)
def test_steel_that_does_not_go_together(more: str, key: str, remedy: str) -> None:
    found = refusal(described(more))
    assert found.key == key
    assert remedy in found.remedy
    assert found.line > 4


def test_an_eave_too_low_for_its_strut() -> None:
    found = refusal(described('[framing]\neave_strut = "cee 40x2x0.075"', eave_height="4 ft"))
    assert (found.key, found.remedy) == ("eave_height", "at least 4' 6\" over this steel")


def test_a_building_too_narrow_for_its_knees() -> None:
    found = refusal(described('[frame]\nback_posts = "none"\nknee_reach = "4 ft"', width="8 ft"))
    assert (found.key, found.remedy) == ("width", "at least 9' 8\" over this steel")


def test_knees_that_come_down_to_flush_girts_at_a_seam() -> None:
    steel = '[wainscot]\nheight = "42 in"\n[framing]\ngirts = "flush"\n[frame]\nknee_reach = '
    low = {"width": "21 ft", "eave_height": "89 in", "pitch": "12/12"}
    found = refusal(described(f'{steel}"3 ft"', **low))
    assert found.key == "frame.knee_reach"
    assert found.remedy == "at most 2' 9-5/8\", to end over the girts at the seam"
    assert parse(described(f'{steel}"33.625 in"', **low), "x")
    assert parse(described(f'{steel}"3 ft"'.replace("flush", "by-pass"), **low), "x")
    deep = '"6 in"\nrafter = "tube 8x4x0.120"\nknee = "tube 4x4x0.120"'
    found = refusal(described(steel + deep, **(low | {"eave_height": "72 in", "pitch": "18/12"})))
    assert (found.key, found.remedy) == ("frame.knee", '"none" over a seam so high')


def test_a_building_too_narrow_for_a_post() -> None:
    found = refusal(described('[frame]\nback_posts = "centre"', width="6 ft"))
    assert found.key == "frame.back_posts"
    assert found.line > 0
    assert '"none" on a gable this narrow' in found.remedy
    for width, posts in (("6 ft", ()), ("30 ft", (15 * 304.8,))):  # unasked, it stands where there is room
        lines = SteelLines(parse(described(width=width), "x"))
        assert lines.wanted_posts(lines.named["back"]) == posts


COLUMN = "an opening clear of the column from 9' 10\" to 10' 2\": "
OPENINGS = [
    (opening("left", "3 ft x 4 ft", "9 ft"), "from_left", COLUMN + "at most 6' 10\" or at least 10' 2\""),
    (
        opening("left", "12 ft x 4 ft", "9 ft"),
        "width",
        "at most 9' 8\", clear of the column from 9' 10\" to 10' 2\"",
    ),
    (
        opening("left", "3 ft x 4 ft", "4 ft", "5 ft 6 in"),
        "height",
        "at most 3' 10\": its header must pass under the eave",
    ),
    (
        opening("front", "3 ft x 4 ft", "1 ft 6 in", "6 ft"),
        "height",
        "its header must pass under the rake angle",
    ),
    (
        opening("left", "3 ft x 4 ft", "4 ft", "3 in"),
        "sill",
        '0, or at least 4": its sill stands on the base rail',
    ),
]


@pytest.mark.parametrize(("more", "key", "remedy"), OPENINGS)
def test_an_opening_that_the_steel_is_in_the_way_of(more: str, key: str, remedy: str) -> None:
    found = refusal(described(more))
    assert found.key == f"opening[1].{key}"
    assert remedy in found.remedy


def test_an_opening_whose_jamb_a_lean_tos_rafter_comes_through() -> None:
    lean_to = '[[lean_to]]\nwall = "left"\nwidth = "8 ft"\neave_height = "7 ft"\npitch = "0.5/12"\n'
    shed = {"width": "20 ft", "length": "20 ft", "eave_height": "13 ft"}
    vent = opening("left", "8 ft x 3 ft", "{} in", "2 ft")
    found = refusal(described(lean_to + vent.format("9"), **shed))
    assert found.key == "opening[1].from_left"
    assert 'clear of the lean-to\'s rafter from 4" to 8": at least 10"' in found.remedy
    assert parse(described(lean_to + vent.format("10"), **shed), "x")


def test_openings_above_each_other() -> None:
    low, high = (opening("left", "3 ft x 2 ft", "4 ft", sill) for sill in ("2 ft", "6 ft"))
    found = refusal(described(low + high))
    assert found.key == "opening[2].sill"
    assert "a girt between" in found.remedy
    assert 'with room for two jambs: at most 8" or at least 7\' 4"' in found.remedy
    assert parse(described(low + opening("left", "3 ft x 1 ft", "4 ft", "7 ft")), "x")


@pytest.mark.parametrize("from_left", ["6 ft 10 in", "10 ft 2 in"])
def test_what_was_said_to_do_does(from_left: str) -> None:
    assert parse(described(opening("left", "3 ft x 4 ft", from_left)), "x")
