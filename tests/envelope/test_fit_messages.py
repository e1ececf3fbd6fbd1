"""What does not go with the steel: each message alone, with what would do, and what would do does."""

from __future__ import annotations

import pytest
from ribwright.envelope.steel_lines import SteelLines
from ribwright.intake import parse
from support.refused import refusal

SIZES = {"width": "30 ft", "length": "40 ft", "eave_height": "10 ft", "pitch": "3/12"}


def described(more: str = "", **sizes: str) -> str:
    return "".join(f'{key} = "{value}"\n' for key, value in (SIZES | sizes).items()) + more


def opening(wall: str, size: str, from_left: str, sill: str = "3 ft") -> str:
    width, height = size.split(" x ")
    return (
        f'[[opening]]\nkind = "window"\nwall = "{wall}"\nwidth = "{width}"\nheight = "{height}"\n'
        f'from_left = "{from_left}"\nsill = "{sill}"\n'
    )


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


SMALL = {"width": "12 ft", "length": "12 ft", "eave_height": "8 ft"}
DOOR = (
    '[[opening]]\nkind = "walk door"\nwall = "{}"\nwidth = "3 ft"\nheight = "6 ft 8 in"\nfrom_left = "{}"\n'
)
OVERHEAD = (
    '[[opening]]\nkind = "overhead door"\nwall = "front"\nwidth = "40 in"\nheight = "5 ft"\n'
    'from_left = "50 in"\nsill = "{} in"\n'
)
# What is typed, the key, what was wrong, what is said, and the limit said, typed.
LIMITS = [
    ('[sheets]\nflange = "{}"', "sheets.flange", "0 in", "at least 0.012 in", "0.012 in"),
    ('[sheets]\nflange = "{}"', "sheets.flange", "1 in", 'at most 1/16"', "1/16 in"),
    ('[sheets]\nthickness = "{}"', "sheets.thickness", "0 in", "at least 0.0075 in", "0.0075 in"),
    ('[sheets]\nthickness = "{}"', "sheets.thickness", "2 mm", "at most 0.06 in", "0.06 in"),
    ('[sheets]\noverhang = "{}"', "sheets.overhang", "0 in", 'at least 1-1/8"', "1-1/8 in"),
    ('[sheets]\noverhang = "{}"', "sheets.overhang", "4 ft", 'at most 4"', "4 in"),
    (
        '[sheets]\nprofile = "1000 x 250 x 35"\noverhang = "{}"',
        "sheets.overhang",
        "1-1/2 in",
        'at least 1-9/16", to reach past the eave trim',
        "1-9/16 in",
    ),
    ('[sheets]\nfoot_gap = "{}"', "sheets.foot_gap", "6 in", 'at most 5/8"', "5/8 in"),
    ('[sheets]\ncut_clearance = "{}"', "sheets.cut_clearance", "0 in", 'at least 1/16"', "1/16 in"),
    (
        '[framing]\nheader = "{}"\n' + OVERHEAD.replace("{}", "0"),
        "framing.header",
        "tube 2x1.5x0.120",
        'at least 1-13/16" wide: the sheets over an opening are screwed to it',
        "tube 2x1.8125x0.120",
    ),
    (OVERHEAD, "opening[1].sill", "10", "0: an overhead door stands on the slab", "0"),
    (
        '[slab]\nledge_depth = "{}"',
        "slab.ledge_depth",
        "12 in",
        'at most 2": 2" of the slab are left under its ledge',
        "2 in",
    ),
    (
        '[sheets]\nprofile = "1000 x 250 x 35"\n[slab]\nledge_depth = "1 in"\nledge_width = "{}"',
        "slab.ledge_width",
        "1-1/4 in",
        'at least 1-9/16": corner trim stands on the ledge',
        "1-9/16 in",
    ),
    (
        '[framing]\ngirts = "flush"\n[frame]\npost = "{}"',
        "frame.post",
        "cee 3.45x1.278x0.0713",
        'a section at least 2-1/16" wide: two anchor holes of 11/16" go side by side',
        "cee 3.45x2.0625x0.0713",
    ),
    (
        '[framing]\ngirt_heights = ["4 ft", "{}"]',
        "framing.girt_heights",
        "4 ft 1 in",
        'girts at least 2" apart',
        "4 ft 2 in",
    ),
    (
        '[framing]\ngirt_heights = ["{}"]',
        "framing.girt_heights",
        "2 in",
        "at least 6",
        "6 in",
    ),
    (
        '[framing]\nbase_rail = "angle 6x2x0.125"\ngirt_heights = ["{}"]',
        "framing.girt_heights",
        "6 in",
        'the lowest at 7" or more, over the base rail',
        "7 in",
    ),
    (
        '[framing]\ngirt_heights = ["{}"]',
        "framing.girt_heights",
        "20 ft",
        "girts no higher than 7' 5\", under the eave strut, or from 7' 5\" to 8' 11-1/4\" on",
        "7 ft 5 in",
    ),
    (
        '[framing]\ngirt = "tube 4x14x0.25"\ngirt_spacing = "{}"',
        "framing.girt_spacing",
        "1 ft",
        "at least 1' 3-7/8\" with girts this wide",
        "1 ft 3-7/8 in",
    ),
    (
        '[framing]\npurlin = "tube 4x14x0.25"\npurlin_spacing = "{}"',
        "framing.purlin_spacing",
        "1 ft",
        "at least 1' 4-3/16\" with purlins this wide",
        "1 ft 4-3/16 in",
    ),
    (
        '[frame]\nspacing = "{}"\nplate_reach = "8 in"',
        "frame.spacing",
        "2 ft",
        "at least 3' with these columns",
        "3 ft",
    ),
    (
        '[framing]\ngirt = "cee 2x2x0.0346"\nbase_rail = "angle 4x{}x0.1875"',
        "framing.base_rail",
        "4",
        "at most 2\" across, the girts' depth",
        "2",
    ),
    (
        '[framing]\ngirts = "flush"\nbase_rail = "angle 4x{}x0.1875"',
        "framing.base_rail",
        "4.5",
        'at most 4" across',
        "4",
    ),
    (
        '[framing]\njamb = "cee {}x2x0.059"',
        "framing.jamb",
        "9",
        'inside the columns a section of at most 8"',
        "8",
    ),
    (
        '[frame]\ncolumn = "600S162-54"\n' + DOOR.format("right", "{}"),
        "opening[1].from_left",
        "5.75 in",
        'at least 6" and at most 8\' 6", to stand in the right wall clear of its corners',
        "6 in",
    ),
    (
        '[framing]\njamb = "cee 6x2x0.059"\n' + DOOR.format("front", "{}"),
        "opening[1].from_left",
        "1 ft 6 in",
        'clear of the knee from 0" to 2\' 11-1/4": at least 3\' 1-1/4"',
        "3 ft 1-1/4 in",
    ),
]


@pytest.mark.parametrize(("more", "key", "wrong", "remedy", "limit"), LIMITS)
def test_a_limit_said_works_when_typed(more: str, key: str, wrong: str, remedy: str, limit: str) -> None:
    found = refusal(described(more.format(wrong), **SMALL))
    assert found.key == key
    assert found.line > 4
    assert remedy in found.remedy
    assert parse(described(more.format(limit), **SMALL), "x")


def test_limits_are_rounded_to_the_side_that_works() -> None:
    """Under the rake at 3.6 in 12: header 2 in, rake leg 4.075 / cos = 4.2544 in at u = 94 in, over a sill
    at 60: 120 + 28.2 - 4.2544 - 2 - 60 = 81.9456 in, said as 6 ft 9-15/16 in (81.9375)."""
    text = described(opening("front", "3 ft x {}", "8 ft", "5 ft"), pitch="3.6/12")
    assert refusal(text.format("7 ft")).remedy.startswith("at most 6' 9-15/16\"")
    assert parse(text.format("6 ft 9-15/16 in"), "x")
    assert refusal(text.format("82 in")).key == "opening[1].height"


def test_no_room_between_two_limits_is_not_offered() -> None:
    """A window as wide as a bay stands in none: its width is what has to give."""
    found = refusal(described(opening("left", "9 ft 9 in x 4 ft", "4 ft")))
    assert (found.key, found.read) == ("opening[1].width", '"9 ft 9 in"')
    assert found.remedy.startswith("at most 9' 8\"")
    assert parse(described(opening("left", "9 ft 8 in x 4 ft", "10 ft 2 in")), "x")
