"""A lean-to at each side wall: hand calculations held against the parts, and what two heights ask of girts.

In inches: 9 ft wide under 2 in 12, so that a steel plane meets the main wall 18 over its own eave. Purlins
are 4 deep, sheets come in half inches, 2.1 thicknesses of trim are the room that pieces of a run lap in.
"""

from __future__ import annotations

from functools import cache

import pytest
from ribwright.description.building import Building
from ribwright.intake import parse
from ribwright.pieces import Model, Piece
from ribwright.raising import raise_building
from ribwright.units import INCH
from support.judged import judged
from support.lean_tos import SHED as ONE
from support.lean_tos import spread
from support.refused import refusal, refusals

SHED = (
    ONE
    + """[[lean_to]]
wall = "right"
width = "9 ft"
pitch = "2/12"
eave_height = "7 ft"
"""
)
ROOM = 2.1 * 0.0217


def built(text: str = SHED) -> Building:
    return parse(text, "shed")


def mended(eave: str) -> str:
    return SHED.replace('"7 ft"', f'"{eave}"')


@cache
def raised() -> Model:
    return raise_building(built()).model


def reach(name: str) -> tuple[list[float], list[float]]:
    return spread(raised(), name)


def test_each_has_the_name_of_its_wall_and_ends_at_its_own_height() -> None:
    for hand, eave, x in (("left", 96, (-108, 0)), ("right", 84, (216, 324))):
        low, high = reach(f"{hand} lean-to frame 1 {hand} column")
        assert x[0] <= low[0] and high[0] <= x[1]
        head = (eave + 18 - 4 - 1 / 8 - ROOM) // 0.5 * 0.5
        low, high = reach(f"{hand} lower 1")
        assert (low[2], high[2]) == pytest.approx((ROOM, ROOM + head), abs=0.002)
        assert reach(f"{hand} lean-to ledger")[0][2] == pytest.approx(eave + 18 - 4, abs=0.002)


def test_the_girts_of_both_run_around_the_building() -> None:
    """Two of each pair on every wall: they meet at the corners, whichever wall has the ends of sheets."""
    heights = {
        wall: {
            round(float(piece.place.origin[2] / INCH), 2) for piece in raised().pieces if _girt(piece, wall)
        }
        for wall in ("front", "left", "right")
    }
    assert heights["left"] == heights["right"] <= heights["front"]
    assert len(heights["left"]) >= 4


def _girt(piece: Piece, wall: str) -> bool:
    return piece.role == "girt" and piece.name.startswith(f"{wall} girt")


OTHERS = {
    "two heights": SHED,
    "one height": mended("8 ft"),
    "a wainscot": SHED + '[wainscot]\nheight = "42 in"\n',
    "flush girts, one clad": SHED + 'walls = "outer"\n[framing]\ngirts = "flush"\n',
    "a single slope": SHED + '[roof]\nshape = "single slope"\nfalls_to = "right"\n',
    "braced": SHED + '[bracing]\nbrace = "rod 5/8"\n',
    "in millimetres": """
units = "mm"
width = "9 m"
length = "12 m"
eave_height = "4.5 m"
pitch = "10 deg"
[[lean_to]]
wall = "right"
width = "3 m"
pitch = "8 deg"
eave_height = "2.8 m"
walls = "outer"
[[lean_to]]
wall = "left"
width = "4 m"
pitch = "2/12"
eave_height = "2.1 m"
""",
}


@pytest.mark.parametrize("text", OTHERS.values(), ids=OTHERS)
def test_two_close_whatever_is_about_them(text: str) -> None:
    assert judged(built(text)).faults == {}


def test_near_one_height_the_heights_that_work_are_said_and_do() -> None:
    problem = refusal(mended("7 ft 8 in"))
    assert problem.key == "lean_to[2].eave_height"
    said = problem.remedy.split(": ")[0].split(" or ")
    assert [one.rstrip("0123456789-/' \"") for one in said] == ["", "at least", "at most"]
    for one in said:
        height = one.removeprefix("at least ").removeprefix("at most ").replace("'", " ft")
        built(mended(height.replace('"', " in")))


def test_two_at_one_wall_are_refused() -> None:
    problems = refusals(SHED.replace('wall = "right"', 'wall = "left"'))
    assert [(one.key, one.remedy) for one in problems] == [
        ("lean_to[2].wall", '"right": one lean-to stands at that wall already')
    ]
