"""Lines that are no TOML: said without TOML's words, all at once, and with the rest of the file judged."""

from __future__ import annotations

import pytest
from ribwright.intake import parse
from support.refused import refusal, refusals

HEAD = 'width = "30 ft"\nlength = "40 ft"\neave_height = "10 ft"\n'


@pytest.mark.parametrize(
    ("line", "key", "column", "remedy"),
    [
        ("pitch = 3/12", "pitch", 10, 'quotes around it: pitch = "3/12"'),
        ("pitch = steep # very", "pitch", 9, 'quotes around it: pitch = "steep"'),
        ("pitch = 3'", "pitch", 10, 'quotes around it: pitch = "3\'"'),
        ("pitch = 9' 2\"", "pitch", 10, 'quotes around it: pitch = "9\' 2 in"'),
        (
            'pitch = "9\' 2""',
            "pitch",
            15,
            'an inch mark inside the quotes ends the text there; write pitch = "9\' 2 in"',
        ),
        (
            "pitch = '3' 2 in'",
            "pitch",
            13,
            'a foot mark inside the quotes ends the text there; write pitch = "3\' 2 in"',
        ),
        ('pitch = "3/12', "pitch", 14, 'the closing quote: pitch = "3/12"'),
        ("pitch = '3/12", "pitch", 14, 'the closing quote: pitch = "3/12"'),
        ('pitch = "3\\12"', "pitch", 13, "no backslash, or two of them"),
        ("pitch =", "pitch", 8, "a value after the sign: pitch = ..."),
        ("pitch = # later", "pitch", 9, "a value after the sign: pitch = ..."),
        ('pitch = "3/12"\npitch = "4/12"', "pitch", 15, "this key stands twice; keep one of them"),
        ("pitch = [1, 2", "pitch", 14, "every bracket closed again"),
        ('pitch "3/12"', "", 7, "the sign = between key and value: pitch = "),
        ('pitch: "3/12"', "", 6, "the sign = between key and value: pitch = "),
        ("[sheets", "", 8, "a table's name in brackets on a line of its own: [sheets]"),
        ("[[opening]", "", 10, "or [[opening]] for each opening"),
        ('pitch = "3/12"\n[slab]\n[slab]', "", 6, "this table stands twice; keep one of them"),
        ('= "3/12"', "", 1, 'a line such as width = "30\'"'),
        ("pitch = 1" + "0" * 5000, "pitch", 9, "quotes around it"),
    ],
)
def test_a_line_that_is_no_toml(line: str, key: str, column: int, remedy: str) -> None:
    problem = refusal(HEAD + line)
    assert (problem.key, problem.line, problem.column) == (key, 3 + line.count("\n") + 1, column)
    assert problem.read
    assert remedy in problem.remedy


def test_the_table_that_a_broken_line_stands_in() -> None:
    opening = '[[opening]]\nkind = "window"\n'
    found = refusals(f"{HEAD}[slab]\nledge_depth = 1'\n{opening}sill = 3'\n{opening}sill = 4'\n")
    assert [p.key for p in found if "quotes around" in p.remedy] == [
        "slab.ledge_depth",
        "opening[1].sill",
        "opening[2].sill",
    ]


def test_text_of_many_lines_that_is_never_closed() -> None:
    problem = refusal(HEAD + 'pitch = """3/12\n\n')
    assert (problem.key, problem.line) == ("", 6)
    assert "everything closed that was opened" in problem.remedy


def test_five_typing_mistakes_are_found_in_one_go() -> None:
    text = """width = 30'
lenght = "40 ft"
eave_height = "9' 2""
pitch = "3/12"
[sheets]
gauge = "29 ga
overhang = 2
"""
    assert [(p.line, p.key) for p in refusals(text)] == [
        (1, "width"),
        (2, "lenght"),
        (3, "eave_height"),
        (6, "sheets.gauge"),
        (7, "sheets.overhang"),
        (0, "length"),
    ]


def test_nothing_after_a_broken_header_is_judged() -> None:
    """The keys below it would seem to stand in another table."""
    problem = refusal(HEAD + 'pitch = 3\n[sheets\ngauge = 1\ncolour = "red"\n')
    assert problem.line == 5


def test_twenty_mistakes_are_enough() -> None:
    assert len(refusals("".join(f"k{n} = 3'\n" for n in range(50)))) == 20


def test_a_mistake_may_not_hide_behind_its_own_repair() -> None:
    """The same line twice: reading stops instead of going round."""
    found = refusals("a = 3'\n\"b = 1\n" + HEAD)
    assert [p.line for p in found] == [1, 2]


@pytest.mark.parametrize(
    "text",
    [
        "[" * 14,
        "x = " + "[" * 5000 + "]" * 5000,
        "x = " + "{a=" * 20,
        "a." * 13 + "b = 1",
        "[" + "a." * 40 + "b]",
    ],
)
def test_deep_nesting(text: str) -> None:
    problem = refusal(text)
    assert (problem.read, problem.line) == ("deeper nesting", 1)
    assert "at most 12 deep" in problem.remedy


def test_brackets_and_dots_in_text_and_comments_are_not_nesting() -> None:
    quiet = f'name = "{"[" * 20}{"." * 20}x"  # {"[" * 50}\n'
    assert parse(quiet + HEAD + 'pitch = "3/12"  # [[[[[[[[[[[[[[', "x").width == 9144


def test_a_nul_character() -> None:
    problem = refusal(HEAD + 'pi\x00tch = "3/12"')
    assert (problem.line, problem.column, problem.read, problem.remedy) == (
        4,
        3,
        "a NUL character",
        "plain text",
    )
