"""Limits that are said of what does not fit: each works when it is typed."""

from __future__ import annotations

import pytest
from ribwright.intake import parse
from support.fitting import described, opening
from support.refused import refusal

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
