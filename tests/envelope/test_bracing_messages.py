"""Which bays are braced, and what is said of bays that cannot be."""

from __future__ import annotations

from math import cos, radians, sin

import pytest
from ribwright.description.building import Building
from ribwright.envelope.bracing import leaning
from ribwright.errors import DescriptionError, Problem
from ribwright.intake import parse

SIZES = 'width = "24 ft"\nlength = "{length} ft"\neave_height = "10 ft"\npitch = "4/12"\n'


def described(more: str, length: int = 40) -> str:
    return SIZES.format(length=length) + more


def window(wall: str, from_left: int) -> str:
    sizes = f'width = "3 ft"\nheight = "3 ft"\nfrom_left = "{from_left} ft"\n'
    return f'[[opening]]\nkind = "window"\nwall = "{wall}"\n{sizes}'


def braced(more: str, length: int = 40) -> Building:
    return parse(described(more, length), "x")


def bays(more: str, length: int = 40) -> tuple[int, ...]:
    bracing = braced(more, length).bracing
    assert bracing is not None
    return bracing.bays


def problem(more: str, length: int = 40) -> Problem:
    with pytest.raises(DescriptionError) as caught:
        braced(more, length)
    (one,) = caught.value.problems
    return one


@pytest.mark.parametrize("more", ["", "[bracing]\n", '[bracing]\nbays = "none"\nbrace = "rod 1/2"\n'])
def test_none_is_drawn_unless_asked_for(more: str) -> None:
    assert braced(more).bracing is None


@pytest.mark.parametrize(
    ("typed", "read"),
    [('"2, 4"', (2, 4)), ("[4, 2, 2]", (2, 4)), ("3", (3,)), ('"ends"', (1,))],
)
def test_bays_as_people_type_them(typed: str, read: tuple[int, ...]) -> None:
    assert bays(f"[bracing]\nbays = {typed}\n") == read


def test_a_brace_alone_asks_for_the_ends() -> None:
    found = braced('[bracing]\nbrace = "strap 2x1/8"\n').bracing
    assert found is not None
    assert (found.bays, found.brace.shape, found.brace.depth) == ((1,), "plate", 50.8)


ENDS = '[bracing]\nbays = "ends"\n'


@pytest.mark.parametrize(
    ("more", "length", "chosen"),
    [
        ("", 40, (1,)),
        ("", 50, (1, 5)),  # of more than four bays
        (window("right", 3), 40, (2,)),
        (window("left", 33), 40, (2,)),  # read from the back: in the first bay
        (window("left", 3), 40, (1,)),
        (window("right", 3) + window("right", 13), 40, (4,)),
        (window("right", 3) + window("right", 13) + window("left", 3), 40, (3,)),
        (window("right", 3) + window("right", 43), 50, (2, 4)),
        (window("front", 8), 40, (1,)),
        ('[walls]\nright = "open in bay 1"\n', 40, (2,)),
        ('[walls]\nright = "open"\n', 40, (1,)),
    ],
)
def test_an_end_bay_or_the_next_one_that_has_no_opening(
    more: str, length: int, chosen: tuple[int, ...]
) -> None:
    assert bays(ENDS + more, length) == chosen


def test_a_bay_that_stands_open_is_braced_where_it_is_asked_for() -> None:
    assert bays('[walls]\nright = "open in bay 1"\n[bracing]\nbays = [1]\n') == (1,)


REFUSED = [
    ("bays = [1]", window("right", 3), "in bay 1 the right wall has a window; 2, 3 or 4 would do"),
    ("bays = [1, 5]", "", "bays from 1 to 4, counted from the front"),
    ('bays = "all"', "", '"ends", "none", or bays counted from the front, such as [1, 4]'),
    ("bays = []", "", "bays counted from the front"),
    ("bays = [0]", "", "bays counted from the front"),
    ('bays = "ends"', "".join(window("left", 3 + 10 * k) for k in range(4)), "ask the engineer for a portal"),
    ('strut = "tube 4x4x0.12"\nbays = [1, 2]', "", 'a tube at most 3-1/2" deep'),
    ('brace = "tube 2x2x0.1"', "", "a rod or a plate"),
    ('brace = "rod"', "", 'rod as diameter, such as "rod 5/8"'),
    ('brace = "rod 2"', "", 'at most 1-3/4" thick, or a column at least 4-1/2" deep'),
]


@pytest.mark.parametrize(("key", "more", "remedy"), REFUSED)
def test_what_would_do_instead(key: str, more: str, remedy: str) -> None:
    with pytest.raises(DescriptionError) as caught:
        braced(f"[bracing]\n{key}\n{more}")
    found = caught.value.problems[0]
    assert remedy in found.remedy
    assert (found.key, found.line) == (f"bracing.{key.partition(' ')[0]}", 6)


def test_a_brace_as_thick_as_it_may_be_can_be_built() -> None:
    braced('[bracing]\nbrace = "rod 1-3/4"\n')


def test_girts_between_the_columns_want_deeper_columns() -> None:
    flush = '[framing]\ngirts = "flush"\n' + ENDS
    assert problem(flush).remedy == (
        'a column at least 5-3/4" deep, for braces: so that two pass each other inside girts that are flush'
    )
    assert bays(flush + '[frame]\ncolumn = "tube 5.75x4x0.120"\n') == (1,)


def test_a_bay_too_narrow_for_an_x() -> None:
    found = problem('[frame]\nspacing = "27 in"\n[bracing]\nbays = [2]\n')
    assert found.remedy.startswith("bays with room for an X of 2'")


def test_a_lean_to_too_low_for_an_x() -> None:
    """Its wall is braced in the bays of the main building's."""
    lean_to = '[[lean_to]]\nwall = "left"\nwidth = "8 ft"\npitch = "1/12"\neave_height = "4 ft"\n'
    deep = '[frame]\nrafter = "tube 15x4x0.25"\nknee = "none"\n[bracing]\nbays = [1]\n'
    assert "on the lean-to's left" in problem(deep + lean_to).remedy


def test_braces_are_no_longer_than_steel_comes_in() -> None:
    found = problem('[frame]\nspacing = "20 ft"\n[framing]\nstock = ["20 ft"]\n[bracing]\nbays = [1]\n')
    assert "as long as the braces" in found.remedy


@pytest.mark.parametrize("box", [(110.0, 107.0), (30.0, 300.0), (400.0, 20.0), (50.0, 50.0)])
@pytest.mark.parametrize("breadth", [0.625, 6.0])
def test_a_bar_set_in_a_box_touches_all_its_sides(box: tuple[float, float], breadth: float) -> None:
    """Its length worked out across the box and up it is the same."""
    turn = leaning(box, breadth)
    across = (box[0] - breadth * sin(turn)) / cos(turn)
    up = (box[1] - breadth * cos(turn)) / sin(turn)
    assert 0 < turn < radians(90)
    assert across == pytest.approx(up, abs=1e-6)
