"""Every message of validation, seen alone: its key, its line, what was read and what would do."""

from __future__ import annotations

import pytest
from ribwright.description.keys.not_yet import NOT_YET, OTHER_SHAPES
from ribwright.errors import DescriptionError
from ribwright.intake import parse
from support.refused import refusal, refusals
from support.spoilt import GOOD


def test_the_description_that_is_spoilt_below_is_good() -> None:
    assert len(parse(GOOD, "shop").openings) == 2


# What is replaced, by what; the key, line and column; what was read; what the remedy says.
SPOILT = [
    # names
    ("overhang", "overhung", "sheets.overhung", 9, 1, "'overhung'", "no such key; the nearest is 'overhang'"),
    (
        "units",
        "wall_colur",
        "wall_colur",
        2,
        1,
        "'wall_colur'",
        "the nearest is 'wall_colour' under [sheets]",
    ),
    ("gauge = 29", "qqq = 29", "sheets.qqq", 8, 1, "'qqq'", "no such key; the keys here are profile, gauge"),
    (
        "gauge = 29",
        'ledge_depth = "1 in"',
        "sheets.ledge_depth",
        8,
        1,
        "'ledge_depth'",
        "belongs under [slab]",
    ),
    (
        "gauge = 29",
        'from_left = "1 in"',
        "sheets.from_left",
        8,
        1,
        "'from_left'",
        "belongs under [[opening]]",
    ),
    (
        "gauge = 29",
        'units = "mm"',
        "sheets.units",
        8,
        1,
        "'units'",
        "belongs at the top, above the first [table]",
    ),
    ("[slab]\nledge_depth", "[slob]\nledge_depth", "slob", 10, 1, "'slob'", "the nearest is 'slab'"),
    # what is missing
    ('width = "30 ft"\n', "", "width", 0, 0, "", 'missing; such as width = "30 ft"'),
    ('kind = "window"\n', "", "opening[2].kind", 21, 1, "", 'missing; such as kind = "walk door"'),
    # types
    (
        '[slab]\nledge_depth = "1 in"',
        "[[slab]]",
        "slab",
        10,
        1,
        "[[slab]]",
        "a table: [slab] on a line of its own",
    ),
    ('"30 ft"', "true", "width", 3, 9, "true", "a length such as"),
    ('"30 ft"', '["30 ft"]', "width", 3, 9, '["30 ft"]', "a length such as"),
    ('"30 ft"', "1979-05-27", "width", 3, 9, "1979-05-27", "a length such as"),
    ('"3/12"', "3", "pitch", 6, 9, "3", "a pitch such as 3/12"),
    ('"shop"', "7", "name", 1, 8, "7", "a name in quotes"),
    ('"shop"', '"  "', "name", 1, 8, '" "', "a name in quotes"),
    ('"shop"', f'"{"a" * 61}"', "name", 1, 8, '"' + "a" * 36 + "...", "a name of at most 60"),
    ('"shop"', '"../up"', "name", 1, 8, '"../up"', "a name that a folder can have"),
    ('"shop"', '"a\\u0007b"', "name", 1, 8, '"a\\u0007b"', "a name that a folder can have"),
    # numbers
    ('"30 ft"', "30", "width", 3, 9, "30", "a unit after the number: 30', 30 in, 30 m or 30 mm"),
    ('"30 ft"', '"30"', "width", 3, 9, '"30"', "a unit after the number"),
    ('"30 ft"', "nan", "width", 3, 9, "nan", "a length such as"),
    ('"30 ft"', "-inf", "width", 3, 9, "-inf", "a length such as"),
    ('"30 ft"', f"1{'0' * 400}", "width", 3, 9, "1" + "0" * 36 + "...", "a length such as"),
    ('"30 ft"', '"-30 ft"', "width", 3, 9, '"-30 ft"', "at least 6' and at most 200'"),
    ('"30 ft"', "0", "width", 3, 9, "0", "at least 6' and at most 200'"),
    ('"30 ft"', '"30 in"', "width", 3, 9, '"30 in"', "at least 6' and at most 200'"),
    ('"40 ft"', '"40 m 3"', "length", 4, 10, '"40 m 3"', "a length such as"),
    ('"40 ft"', '"4000 ft"', "length", 4, 10, '"4000 ft"', "at least 6' and at most 1000'"),
    ('"3/12"', '"30/12"', "pitch", 6, 9, '"30/12"', "at least 0.5/12 and at most 18/12"),
    ('"3/12"', '"-3/12"', "pitch", 6, 9, '"-3/12"', "at least 0.5/12"),
    ('"3/12"', '"89 deg"', "pitch", 6, 9, '"89 deg"', "at most 18/12"),
    # words
    ('"ft-in"', '"feet"', "units", 2, 9, '"feet"', "'ft-in' or 'mm'"),
    ('"ft-in"', "3", "units", 2, 9, "3", "'ft-in' or 'mm'"),
    (
        '"overhead door"',
        '"overhed dor"',
        "opening[1].kind",
        16,
        8,
        '"overhed dor"',
        "the nearest is 'overhead door'",
    ),
    (
        'wall = "front"',
        'wall = "north"',
        "opening[1].wall",
        17,
        8,
        '"north"',
        "'front', 'back', 'left' or 'right'",
    ),
    (
        'front = "left"',
        'front = "back"',
        "runs.front",
        13,
        9,
        '"back"',
        "'left', 'right', 'centre, left first'",
    ),
    ('left = "back"', 'left = "left"', "runs.left", 14, 8, '"left"', "'back' or 'front'"),
    # catalogues
    (
        "gauge = 29",
        'profile = "36 x 9 x 7/8"',
        "sheets.profile",
        8,
        11,
        '"36 x 9 x 7/8"',
        "the nearest is '36 x 9 x 3/4'",
    ),
    (
        "gauge = 29",
        "profile = 36",
        "sheets.profile",
        8,
        11,
        "36",
        "a profile of the catalogue: '36 x 9 x 3/4'",
    ),
    ("gauge = 29", "gauge = 27", "sheets.gauge", 8, 9, "27", "22, 24, 26, 28, 29, 30"),
    ("gauge = 29", "gauge = 29.0", "sheets.gauge", 8, 9, "29.0", "a gauge of the catalogue"),
    ("gauge = 29", 'gauge = "thin"', "sheets.gauge", 8, 9, '"thin"', "a gauge of the catalogue"),
    (
        "gauge = 29",
        'wall_colour = "gray brown"',
        "sheets.wall_colour",
        8,
        15,
        '"gray brown"',
        "a CSS colour name",
    ),
    (
        "gauge = 29",
        'wall_colour = "firebrik"',
        "sheets.wall_colour",
        8,
        15,
        '"firebrik"',
        "the nearest is 'firebrick'",
    ),
    ("gauge = 29", 'roof_colour = "#12345"', "sheets.roof_colour", 8, 15, '"#12345"', "'#rrggbb'"),
]


@pytest.mark.parametrize(
    ("colour", "nearest"),
    [
        ("charcoal", ""),
        ("firebrik", "firebrick"),
        ("Slate Gray", "slategray"),
        ("dark-slate-grey", "darkslategray"),
        ("gray brown", "brown"),
        ("dull red", "red"),
        ("light oak", ""),
        ("midnight", ""),
        ("", ""),
    ],
)
def test_the_nearest_colour_is_near_or_none(colour: str, nearest: str) -> None:
    problem = refusal(GOOD.replace("gauge = 29", f'wall_colour = "{colour}"'))
    _, _, said = problem.remedy.partition("; the nearest is ")
    assert said == (repr(nearest) if nearest else "")


@pytest.mark.parametrize(
    ("name", "remedy"),
    [
        ("a\\ud800", "the letter itself in the place of that code"),
        ("a\\U00110000", "the letter itself in the place of that code"),
        ("a\x1b[31m", "only letters that can be printed"),
        ("a\\q", "no backslash"),
        ("9' 2\"", "an inch mark inside the quotes ends the text there"),
    ],
)
def test_a_text_that_is_none_is_told_by_what_is_wrong_in_it(name: str, remedy: str) -> None:
    problem = refusal(GOOD.replace('"shop"', f'"{name}"'))
    assert (problem.key, problem.line) == ("name", 1)
    assert problem.remedy.startswith(remedy)


@pytest.mark.parametrize(("old", "new", "key", "line", "column", "read", "remedy"), SPOILT)
def test_a_spoilt_key_gets_one_message(
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


def test_one_bracket_for_openings() -> None:
    problem = refusal(GOOD.partition("[[opening]]")[0] + '[opening]\nkind = "window"\n')
    assert (problem.key, problem.line) == ("opening", 15)
    assert "[[opening]], in two pairs of brackets" in problem.remedy


def test_a_table_that_is_a_value() -> None:
    problem = refusal(
        "slab = 3\n" + GOOD.replace("[slab]\nledge_depth", "[runs]\n#").replace("[runs]\nfront", "front")
    )
    assert (problem.key, problem.line, problem.read) == ("slab", 1, "3")


def test_too_many_openings() -> None:
    one = '[[opening]]\nkind = "window"\nwall = "{}"\nwidth = "1 ft"\nheight = "1 ft"\nfrom_left = "{} ft"\n'
    walls = "".join(one.format(wall, 2 * n + 1) for wall in ("left", "right") for n in range(251))
    head = GOOD.partition("[[opening]]")[0].replace('"40 ft"', '"600 ft"')
    problem = refusal(head + walls)
    assert (problem.key, problem.remedy) == ("opening[501]", "at most 500 openings")


def test_limits_are_said_in_the_buildings_units() -> None:
    problem = refusal(GOOD.replace("ft-in", "mm").replace('"30 ft"', '"1 m"'))
    assert problem.remedy == "at least 1828.8 mm and at most 60960 mm"


def test_every_problem_at_once_in_the_order_of_the_file() -> None:
    text = GOOD.replace("overhang", "overhung").replace('"30 ft"', "true").replace('"shop"', "7")
    text = text.replace('"3/12"', '"3"').replace('sill = "4 ft"', 'sill = "four"')
    found = refusals(text)
    assert [p.line for p in found] == sorted(p.line for p in found)
    assert [p.key for p in found] == ["name", "width", "pitch", "sheets.overhung", "opening[2].sill"]


def test_hundreds_of_problems_are_cut_short() -> None:
    found = refusals(GOOD + "".join(f"x{n} = 1\n" for n in range(5000)))
    assert len(found) == 101
    assert found[-1].remedy == "and 4900 problems more"


def test_the_error_says_it_all_with_the_files_name() -> None:
    with pytest.raises(DescriptionError) as caught:
        parse(GOOD.replace('"3/12"', "3"), "shop.toml")
    assert str(caught.value).startswith("shop.toml: line 6, column 9: pitch: read 3; a pitch such as 3/12")


SIZES = 'width = "30 ft"\nlength = "40 ft"\neave_height = "10 ft"\npitch = "3/12"\n'


@pytest.mark.parametrize("word", [*NOT_YET, "upper-pitch", "Cupolas", "hips"])
def test_what_cannot_be_described_yet_is_said_not_spelled(word: str) -> None:
    """A hip is no misspelt pitch: the message says what comes nearest."""
    with pytest.raises(DescriptionError) as refused:
        parse(
            f'width = "30 ft"\nlength = "40 ft"\neave_height = "10 ft"\npitch = "3/12"\n{word} = "x"\n', "x"
        )
    (problem,) = refused.value.problems
    assert (problem.line, problem.remedy.partition(":")[0]) == (5, "not yet possible; what comes nearest")


@pytest.mark.parametrize(("word", "remedy"), OTHER_SHAPES)
def test_another_word_for_a_roof_is_told_what_would_do(word: str, remedy: str) -> None:
    problem = refusal(f'{SIZES}[roof]\nshape = "{word.upper()}"\n')
    assert (problem.line, problem.remedy) == (6, remedy)
