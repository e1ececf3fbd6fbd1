"""Lean-tos along some of a building's bays: what stands where, by hand, off the solids, every judge there is,
and what cannot be.

In inches. The shed is 18 by 40 ft, its frames' columns 4 by 4 behind girts 4 deep, so that a lean-to's end
lies 4 + 2 = 6 past the centre of the frame that it ends at. Its roof meets the wall at 96 + 18 = 114.
"""

from __future__ import annotations

from functools import cache
from math import ceil, floor, hypot

import pytest
from ribwright.audit import audit
from ribwright.audit.reach import reach as reached
from ribwright.findings import Code, words
from ribwright.intake import parse
from ribwright.pieces import Model
from ribwright.raising import raise_building
from ribwright.steps.raising_order import steps
from support.judged import judged
from support.lean_tos import spread
from support.plants import Plant, drop, move
from support.refused import refusals

SHED = """
width = "18 ft"
length = "40 ft"
eave_height = "12 ft"
pitch = "4/12"
[frame]
spacing = "10 ft"
[[lean_to]]
wall = "left"
width = "9 ft"
pitch = "2/12"
eave_height = "8 ft"
bays = [2, 3]
"""
TRIM = 0.0217
ROOM = 2.1 * TRIM
CROWN = TRIM + 3 / 4 + 2 * 0.0172
BEND = 114 + (CROWN + ROOM) * hypot(12, 2) / 12
START, END = 10 * 12 - 6, 30 * 12 + 6
PAST = ROOM + TRIM + 3 / 4
"""How far the flashing runs past the roof: over its rake trim, and 3/4."""


@cache
def raised(text: str = SHED) -> Model:
    return raise_building(parse(text, "shed")).model


def reach(name: str, text: str = SHED) -> tuple[list[float], list[float]]:
    return spread(raised(text), name)


def test_it_ends_past_the_frames_that_its_rafters_stand_on() -> None:
    low, high = reach("lean-to left slope")
    assert (low[1], high[1]) == pytest.approx((START, END), abs=1e-6)
    for own, main in ((1, 2), (2, 3), (3, 4)):
        rafter, column = reach(f"lean-to frame {own} left rafter"), reach(f"frame {main} left column")
        assert (rafter[0][1], rafter[1][1]) == pytest.approx((column[0][1], column[1][1]), abs=1e-6)


def test_its_flashing_runs_past_its_ends_and_on_behind_the_sheets() -> None:
    """Half an inch, its leg alone."""
    low, high = reach("lean-to headwall flashing")
    assert (low[1], high[1]) == pytest.approx((START - PAST - 1 / 2, END + PAST + 1 / 2), abs=1e-6)


def test_sheets_are_cut_round_the_roof_and_whole_beside_it() -> None:
    """Under it up to 1/8 under the ledger, from 1/2 over the flashing's bend and what pieces of it lap in,
    in whole half inches off the feet; beside it from the slab to the eave, in whole half inches too."""
    pieces = [piece for piece in raised().pieces if piece.role == "wall sheet" and piece.name[:5] == "left "]
    spans = {piece.name: reach(piece.name) for piece in pieces}
    under = [s for s in spans.values() if s[1][2] < 114]
    over = [s for s in spans.values() if s[0][2] > 114]
    whole = [s for s in spans.values() if s[0][2] < 1 and s[1][2] > 114]
    head = ROOM + floor(2 * (114 - 4 - 1 / 8 - ROOM)) / 2
    foot = ROOM + ceil(2 * (BEND + ROOM + 1 / 2 - ROOM)) / 2
    assert {round(s[1][2], 3) for s in under} == {round(head, 3)}
    assert {round(s[0][2], 3) for s in over} == {round(foot, 3)}
    assert {round(2 * (s[1][2] - s[0][2]), 3) % 1 for s in [*over, *whole]} == {0.0}
    # Of 14 sheets from the back corner six stand before the roof alone: those from 4 x 36 = 144 to 360 along.
    assert len(under) == len(over) == 6
    assert len(whole) == 14 - 6


def test_its_flashing_goes_up_before_the_sheets_that_are_cut_round_it() -> None:
    """They go up with those over the roof, on its upper leg."""
    order = [piece.name for step in steps(raised()) for piece in (*step.pieces, *step.folded)]
    trapped = {finding.pieces[0] for finding in reached(raised(), order)}
    assert not any("flashing" in name for name in trapped)
    first = order.index("lean-to headwall flashing 1")
    pieces = (p for p in raised().pieces if (p.role, p.label("face")) == ("wall sheet", "left"))
    for name in (piece.name for piece in pieces):
        assert (order.index(name) > first) == (reach(name)[1][2] > 114 + 12), name


def test_its_rake_trim_ends_at_the_wall_turned_out() -> None:
    low, high = reach("lean-to front left rake trim")
    assert low[1] == pytest.approx(START - ROOM - TRIM / 2 - 3 / 4, abs=1e-6)
    assert high[0] < -CROWN


FLUSH = SHED.replace("[2, 3]", "[1, 2]")
AT_GABLE = SHED.replace('"left"', '"front"').replace("[2, 3]", "2").replace('"18 ft"', '"24 ft"')
AT_GABLE = AT_GABLE.replace("spacing", 'front_posts = ["8 ft", "16 ft"]\nspacing').replace(
    '"40 ft"', '"20 ft"'
)
WINDOW = '[[opening]]\nkind = "window"\nwidth = "3 ft"\nheight = "3 ft"\nfrom_left = "13 ft"\n'
SHAPES = {
    "within its wall": SHED,
    "from a corner": FLUSH,
    "from a corner, that end and its outer wall clad": FLUSH + 'walls = ["front", "outer"]\n',
    "at a gable's middle bay": AT_GABLE,
    "at a gable's first bay": AT_GABLE.replace("bays = 2", "bays = 1"),
    "flush girts": SHED + '[framing]\ngirts = "flush"\n',
    "steep, zees": SHED.replace("2/12", "4/12").replace("9 ft", "7 ft") + '[framing]\ngirt = "8ZS2.25x059"\n',
    "a door taller than its roof beside it": SHED
    + '[[opening]]\nkind = "overhead door"\nwall = "left"\nwidth = "80 in"\nheight = "10 ft"\n'
    'from_left = "24 in"\n',
    "insulated, metric": 'units = "mm"\nwidth = "5 m"\nlength = "7 m"\neave_height = "3.8 m"\n'
    'pitch = "12 deg"\n[frame]\nspacing = "2.5 m"\n[insulation]\nwalls = "80 mm"\n[[lean_to]]\n'
    'wall = "right"\nwidth = "2.5 m"\npitch = "8 deg"\neave_height = "2.4 m"\nbays = "2"\n',
    "braced, one opposite": SHED
    + '[[lean_to]]\nwall = "right"\nwidth = "9 ft"\npitch = "2/12"\neave_height = "8 ft"\nbays = "4"\n'
    '[bracing]\nbays = [1, 3]\nbrace = "rod 5/8"\n',
}


@pytest.mark.parametrize("text", SHAPES.values(), ids=SHAPES)
def test_it_closes_whatever_is_about_it(text: str) -> None:
    assert judged(parse(text, "shed")).faults == {}


@pytest.mark.parametrize(
    ("old", "new", "key", "remedy"),
    [
        ("[2, 3]", "[2, 4]", "lean_to[1].bays", "side by side, from 1 to 4"),
        ("[2, 3]", "[4, 5]", "lean_to[1].bays", "side by side, from 1 to 4"),
        ("bays", 'between = "open"\nbays', "lean_to[1].between", "not yet possible along some"),
        ("[frame]", '[wainscot]\nheight = "42 in"\n[frame]', "wainscot.height", "not yet possible"),
        ("[frame]", '[sheets]\nlongest = "10 ft"\n[frame]', "sheets.longest", "in one length"),
        (
            "bays = [2, 3]",
            f'bays = [1, 2]\nwalls = "outer"\n{WINDOW}wall = "lean-to outer"\n'.replace("13 ft", "30 ft"),
            "opening[1].from_left",
            "in that wall",
        ),
        (
            "bays = [2, 3]",
            f'bays = [2, 3]\n{WINDOW}wall = "left"\nsill = "7 ft"\n',
            "lean_to[1].eave_height",
            "across the window",
        ),
    ],
)
def test_what_cannot_be_is_refused_by_its_key(old: str, new: str, key: str, remedy: str) -> None:
    assert old in SHED
    problems = refusals(SHED.replace(old, new))
    said = {problem.key: problem.remedy for problem in problems}
    assert key in said and remedy in said[key], said


def test_a_slope_across_a_window_is_none_beside_the_roof() -> None:
    """The same window past the roof's end, 40 ft less 3 and less 13 from the back."""
    parse(SHED + WINDOW.replace("13 ft", "3 ft") + 'wall = "left"\nsill = "7 ft"\n', "shed")


PLANTS: dict[Code, list[Plant]] = {
    Code.HEADWALL_OPEN: [drop("lean-to headwall flashing 1"), drop("lean-to headwall flashing 2")],
    Code.HOLE: [drop("lean-to ledger 1")],
    Code.HEADWALL_HANG: [
        move("lean-to headwall flashing 1", (0.0, 0.0, 14.0)),
        move("lean-to headwall flashing 2", (0.0, 0.0, 14.0)),
    ],
}
CASES = [(code, number) for code, plants in PLANTS.items() for number in range(len(plants))]


@pytest.mark.parametrize(("code", "number"), CASES, ids=[f"{code.text} {n + 1}" for code, n in CASES])
def test_a_fault_planted_round_a_roof_within_a_wall_shows_its_code(code: Code, number: int) -> None:
    assert audit(raised(), (code.check,)).findings == ()
    found = audit(PLANTS[code][number](raised()), (code.check,)).findings
    assert code in {finding.code for finding in found}
    assert all(finding.at is not None and words(finding, "ft-in") for finding in found)
