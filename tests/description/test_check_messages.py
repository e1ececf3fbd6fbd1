"""Messages of what does not go together though each key is sound: proportions, openings in their walls."""

from __future__ import annotations

import pytest
from ribwright.intake import parse
from support.refused import refusal, refusals
from support.spoilt import GOOD

# What is replaced, by what; the key, line and column; what was read; what the remedy says.
SPOILT = [
    # between keys
    (
        "gauge = 29",
        'gauge = 29\nthickness = "0.5 mm"',
        "sheets.thickness",
        9,
        1,
        '"0.5 mm"',
        "either gauge or thickness",
    ),
    ('length = "40 ft"', 'length = "20 in"', "length", 4, 10, '"20 in"', "at least 6'"),
    # openings in their walls
    (
        '"5 ft"',
        '"3 in"',
        "opening[1].from_left",
        20,
        13,
        '"3 in"',
        'at least 6" and at most 19\' 6", to stand in the front',
    ),
    ('"20 ft"', '"26 ft 9 in"', "opening[2].from_left", 26, 13, '"26 ft 9 in"', "at most 26' 6\""),
    ('"20 ft"', '"33 ft"', "opening[2].from_left", 26, 13, '"33 ft"', "clear of its corners"),
    (
        'width = "3 ft"',
        'width = "29 ft 5 in"',
        "opening[2].width",
        24,
        9,
        '"29 ft 5 in"',
        "at most 29', since the front wall is 30' long",
    ),
    (
        'height = "3 ft"',
        'height = "7 ft 9 in"',
        "opening[2].height",
        25,
        10,
        '"7 ft 9 in"',
        'to end 2-3/16" under the rake',
    ),
    ('sill = "4 ft"', 'sill = "1 in"', "opening[2].sill", 27, 8, '"1 in"', '0, or at least 2"'),
    (
        '"20 ft"',
        '"15 ft 3 in"',
        "opening[2]",
        21,
        1,
        "window at 15' 3\"",
        'at least 4" from opening[1]; this one is 3" away',
    ),
    (
        '"20 ft"',
        '"12 ft"',
        "opening[2]",
        21,
        1,
        "window at 12'",
        "from opening[1]; this one overlaps it",
    ),
]


@pytest.mark.parametrize(("old", "new", "key", "line", "column", "read", "remedy"), SPOILT)
def test_keys_at_odds_get_one_message(
    old: str, new: str, key: str, line: int, column: int, read: str, remedy: str
) -> None:
    assert old in GOOD
    found = refusals(GOOD.replace(old, new, 1))
    assert len(found) == 1, found
    problem = found[0]
    assert (problem.key, problem.line, problem.column) == (key, line, column)
    assert problem.read.startswith(read)
    assert bool(problem.read) == bool(read)
    assert remedy in problem.remedy


BARE = """width = "{width}"
length = "{length}"
eave_height = "{eave}"
pitch = "{pitch}"
[sheets]
overhang = "{overhang}"
ridge_gap = "{gap}"
"""
SIZES = {
    "width": "20 ft",
    "length": "30 ft",
    "eave": "10 ft",
    "pitch": "3/12",
    "overhang": "2 in",
    "gap": "1 in",
}


@pytest.mark.parametrize(
    ("sizes", "key", "remedy"),
    [
        (
            {"width": "10 ft", "eave": "31 ft"},
            "eave_height",
            "at most 30', 3 times the lesser of width and length",
        ),
        ({"length": "8 ft", "eave": "25 ft"}, "eave_height", "at most 24'"),
        ({"width": "150 ft", "pitch": "18/12"}, "pitch", "no higher than 100'; this one is at 122' 6\""),
        ({"width": "8 ft", "gap": "6 in"}, "sheets.ridge_gap", 'at most 4-15/16", a tenth of the rafter'),
    ],
)
def test_proportions(sizes: dict[str, str], key: str, remedy: str) -> None:
    parse(BARE.format(**SIZES), "x")
    found = refusals(BARE.format(**SIZES | sizes))
    assert [problem.key for problem in found] == [key]
    assert remedy in found[0].remedy


def test_an_opening_too_near_the_eave_for_any_sheet_over_it() -> None:
    """10 ft less 2 in of sheet and the rib's 3/4 in times the pitch: 9 ft 9-13/16 in."""
    text = (
        GOOD.replace('wall = "front"', 'wall = "left"', 1)
        .replace('"5 ft"', '"11 ft"')
        .replace('"10 ft"\nheight', '"8 ft"\nheight')
    )
    problem = refusal(text.replace('"8 ft"\nfrom', '"9 ft 9-7/8 in"\nfrom'))
    assert problem.key == "opening[1].height"
    assert problem.remedy == 'at most 9\' 9-13/16", to end 2-3/16" under the eave'


def test_openings_of_two_walls_do_not_meet() -> None:
    assert parse(GOOD.replace('wall = "front"', 'wall = "back"', 1).replace('"20 ft"', '"25 ft"'), "x")


def test_one_opening_above_the_other() -> None:
    above = (
        GOOD.replace('"20 ft"', '"8 ft"')
        .replace('"4 ft"', '"8 ft 3 in"')
        .replace('"3 ft"\nfrom', '"1 ft"\nfrom')
    )
    problem = refusal(above)
    assert 'this one is 3" away' in problem.remedy
