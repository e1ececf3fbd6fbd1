"""What does not go with the steel: each message alone, with what would do, and what would do does."""

from __future__ import annotations

import pytest
from ribwright.description import parse
from ribwright.errors import DescriptionError, Problem

SIZES = {"width": "30 ft", "length": "40 ft", "eave_height": "10 ft", "pitch": "3/12"}


def described(more: str = "", **sizes: str) -> str:
    return "".join(f'{key} = "{value}"\n' for key, value in (SIZES | sizes).items()) + more


def opening(wall: str, size: str, from_left: str, sill: str = "3 ft") -> str:
    width, height = size.split(" x ")
    return (
        f'[[opening]]\nkind = "window"\nwall = "{wall}"\nwidth = "{width}"\nheight = "{height}"\n'
        f'from_left = "{from_left}"\nsill = "{sill}"\n'
    )


def problem(text: str) -> Problem:
    with pytest.raises(DescriptionError) as caught:
        parse(text, "x")
    (one,) = caught.value.problems
    return one


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
    ('[framing]\nrake_angle = "angle 3x2x0.075"', "framing.rake_angle", 'at least 4-1/16" up'),
    ('[framing]\nrake_angle = "angle 5x5x0.075"', "framing.rake_angle", 'at most 4" across'),
    ('[framing]\ngirts = "flush"\ngirt = "cee 6x2x0.059"', "framing.girt", 'at most 4" deep'),
    ('[framing]\ngirts = "flush"\njamb = "cee 6x2x0.059"', "framing.jamb", 'at most 4" deep'),
    ('[framing]\ngirts = "flush"\nheader = "cee 6x2x0.059"', "framing.header", 'at most 4" deep'),
]


@pytest.mark.parametrize(("more", "key", "remedy"), STEEL)
def test_steel_that_does_not_go_together(more: str, key: str, remedy: str) -> None:
    found = problem(described(more))
    assert found.key == key
    assert remedy in found.remedy
    assert found.line > 4


def test_an_eave_too_low_for_its_strut() -> None:
    found = problem(described('[framing]\neave_strut = "cee 40x2x0.075"', eave_height="4 ft"))
    assert (found.key, found.remedy) == ("eave_height", "at least 4' 6\" over this steel")


def test_a_building_too_narrow_for_its_knees() -> None:
    found = problem(described('[frame]\nback_posts = "none"\nknee_reach = "4 ft"', width="8 ft"))
    assert (found.key, found.remedy) == ("width", "at least 9' 4\" over this steel")


def test_a_building_too_narrow_for_a_post() -> None:
    found = problem(described('[frame]\nback_posts = "centre"', width="6 ft"))
    assert found.key == "frame.back_posts"
    assert found.line > 0
    assert '"none" on a gable this narrow' in found.remedy
    assert parse(described(width="6 ft"), "x").frame.back_posts == ()  # unasked, it is left out
    assert parse(described(width="30 ft"), "x").frame.back_posts == (15 * 304.8,)


COLUMN = "an opening clear of the column from 9' 10\" to 10' 2\": "
OPENINGS = [
    (opening("left", "3 ft x 4 ft", "9 ft"), "from_left", COLUMN + "at most 6' 10\" or at least 10' 2\""),
    (opening("left", "12 ft x 4 ft", "9 ft"), "from_left", COLUMN + "at least 10' 2\""),
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
    found = problem(described(more))
    assert found.key == f"opening[1].{key}"
    assert remedy in found.remedy


def test_openings_above_each_other() -> None:
    low, high = (opening("left", "3 ft x 2 ft", "4 ft", sill) for sill in ("2 ft", "6 ft"))
    found = problem(described(low + high))
    assert found.key == "opening[2].from_left"
    assert 'with room for two jambs: at most 8" or at least 7\' 4"' in found.remedy


@pytest.mark.parametrize("from_left", ["6 ft 10 in", "10 ft 2 in"])
def test_what_was_said_to_do_does(from_left: str) -> None:
    assert parse(described(opening("left", "3 ft x 4 ft", from_left)), "x")
