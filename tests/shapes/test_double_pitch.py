"""Roofs whose slopes change their pitch: hand calculations held against the schedule, and every judge.

Lengths in inches, of the starter: 32 ft wide, 10 ft to its eaves; 9 in 12 for 8 ft, then 4 in 12.
"""

from __future__ import annotations

from math import atan, floor, sin, sqrt, tan

import pytest
from ribwright.intake import parse
from ribwright.order.lists.schedule import schedule
from ribwright.raising import raise_building
from ribwright.roles import Role
from ribwright.steps.raising_order import steps
from ribwright.units import INCH
from support.judged import judged
from support.refused import refusals
from support.starter_buildings import starter_schedule

TRIM = 0.0217
FOOT, HEAD, HANG = 2.1 * TRIM, 1 / 8, 3 / 4
CROWN = TRIM + 3 / 4 + 2 * 0.0172
OVER = CROWN + 2.1 * TRIM
"""From the lower steel plane to the trim's lower leg: over the crowns of ribs, and the room of a lap."""
TURN = atan(9 / 12) - atan(4 / 12)


def down(length: float) -> float:
    return floor(2 * length) / 2


def nearest(length: float) -> float:
    return round(2 * length) / 2


def test_the_starters_sheets_are_as_many_and_as_long_as_worked_by_hand() -> None:
    """Below, from 2 in past the eave to 1/8 in before the bend, which is where the upper plane is OVER above
    the lower one; above, from 3/4 in past it to 1 in before the ridge. Twelve sheets cover 36 ft, the last
    one ripped."""
    lower = down((96 + 2) * sqrt(12**2 + 9**2) / 12 - OVER / tan(TURN) - HEAD)
    upper = nearest((192 - 96) * sqrt(12**2 + 4**2) / 12 + OVER / sin(TURN) + HANG - 1)
    walls = down(120 - CROWN * 9 / 12 - HEAD - FOOT)
    rows = starter_schedule("double-pitch").rows
    roof = [(row.mark, row.count, row.length / INCH, row.faces) for row in rows if row.mark.startswith("R")]
    low, high = ("left slope", "right slope"), ("left upper slope", "right upper slope")
    assert roof == [
        ("R1", 22, pytest.approx(lower, abs=1e-6), low),
        ("R2", 2, pytest.approx(lower, abs=1e-6), low),
        ("R3", 22, pytest.approx(upper, abs=1e-6), high),
        ("R4", 2, pytest.approx(upper, abs=1e-6), high),
    ]
    sides = [row.length / INCH for row in rows if set(row.faces) <= {"left", "right"}]
    assert sides == pytest.approx([walls] * len(sides), abs=1e-6)


def test_a_gable_sheet_over_the_break_is_cut_along_both_rakes() -> None:
    """The fourth from the centre line reaches from 71 to 109 in out, the break is at 96."""
    inner, at, outer = 120 + 9 * 8 + (96 - 71) / 3, 120 + 9 * 8, 120 + 9 * 8 - (109 - 96) * 9 / 12
    area = (96 - 71) * (inner + at) / 2 + (109 - 96) * (at + outer) / 2 - 38 * (HEAD + FOOT)
    rows = [row for row in starter_schedule("double-pitch").rows if row.faces == ("front",)]
    found = [row for row in rows if row.length / INCH == pytest.approx(inner - HEAD - FOOT, abs=1e-3)]
    assert [row.area / INCH**2 for row in found] == pytest.approx([area] * 2, rel=1e-6)


CONVEX, HOLLOW = (
    f'width = "{width}"\nlength = "16 ft"\neave_height = "8 ft"\npitch = "{pitch}"\n'
    f'[roof]\nbreak_at = "{at}"\nlower_pitch = "{lower}"\n'
    for width, at, lower, pitch in (("20 ft", "5 ft", "8/12", "3/12"), ("24 ft", "6 ft", "2/12", "7/12"))
)


def test_a_sheet_under_a_hollow_break_is_one_cut_at_its_head() -> None:
    """The break is 72 from the centre line, 7 in 12 before it and 2 in 12 behind it. With no post the second
    sheet each way reaches from 35 to 73, the third from 71 to 109; where a post 4 wide stands all are 1 in
    farther to one side, so that they end at the break or reach from 36 to 74 and from 70 to 108."""
    rows = schedule(raise_building(parse(HOLLOW, "hollow")).model).rows
    gables = [row for row in rows if set(row.faces) <= {"front", "back"}]
    bent = [row.head for row in gables if row.head.kind == "bent"]
    before = {72 - inner: outer - 72 for inner, outer in ((35, 73), (71, 109), (36, 74), (70, 108))}
    by_hand = [(run * 7 / 12, run * 7 / 12 + rest * 2 / 12) for run, rest in sorted(before.items())]
    found = sorted({(round(end.bend / INCH, 3), round(end.drop / INCH, 3)) for end in bent})
    assert found == [pytest.approx(falls, abs=1e-3) for falls in by_hand]
    assert all(row.cutouts == () for row in gables)


SHAPES = {
    "hollow, its trim laid the other way": HOLLOW + '[trim]\nwind = "back"\n',
    "hollow, with flush girts": HOLLOW + '[framing]\ngirts = "flush"\n',
    "hollow, under blankets": HOLLOW + '[insulation]\nwalls = "3 in"\nroof = "3 in"\n',
    "hollow and steep": HOLLOW.replace("7/12", "18/12").replace("2/12", "0.5/12"),
    "convex and high in the rib": CONVEX + '[sheets]\nprofile = "36 x 12 x 1-1/4"\n',
    "convex, with light sheets": CONVEX + '[[light_sheet]]\nface = "left upper slope"\nsheets = [2]\n',
    "convex and open": CONVEX + '[walls]\nfront = "open"\nleft = "open"\n',
    "convex, as near to one pitch as may be": CONVEX.replace("8/12", "5.5/12"),
    "in metric sizes": 'units = "mm"\nwidth = "7 m"\nlength = "6 m"\neave_height = "2.5 m"\n'
    'pitch = "10 deg"\n[roof]\nbreak_at = "1.8 m"\nlower_pitch = "35 deg"\n',
}


@pytest.mark.parametrize("text", SHAPES.values(), ids=SHAPES)
def test_a_roof_that_changes_its_pitch_is_sound(text: str) -> None:
    assert judged(parse(text, "shape")).faults == {}


@pytest.mark.parametrize(
    ("keys", "key", "would"),
    [
        ('break_at = "5 ft"', "roof.break_at", "with it [roof] lower_pitch"),
        ('lower_pitch = "8/12"', "roof.lower_pitch", "with it [roof] break_at"),
        ('break_at = "9 ft"\nlower_pitch = "8/12"', "roof.break_at", "at most 6'"),
        ('break_at = "5 ft"\nlower_pitch = "4/12"', "roof.lower_pitch", "at least 4.9"),
        ('break_at = "5 ft"\nlower_pitch = "8/12"\nridge = "9 ft"', "roof.ridge", "not yet possible"),
        ('break_at = "5 ft"\nlower_pitch = "8/12"\nshape = "single slope"', "roof.shape", "not yet possible"),
        ('break_at = "5 ft"\nlower_pitch = "8/12"\ngable_overhang = "1 ft"', "roof.gable_overhang", "0"),
        ('break_at = "5 ft"\nlower_pitch = "8/12"\n[bracing]\nbays = [1]', "bracing", "not yet possible"),
        (
            'break_at = "6 ft"\nlower_pitch = "18/12"\n[sheets]\nlongest = "8 ft"',
            "sheets.longest",
            "one length",
        ),
    ],
)
def test_what_makes_no_roof_of_two_pitches_is_refused_by_its_key(keys: str, key: str, would: str) -> None:
    problems = refusals(f"{CONVEX[: CONVEX.index('[roof]')]}[roof]\n{keys}\n")
    assert [problem.key for problem in problems] == [key]
    assert would in problems[0].remedy


def test_a_roof_goes_up_from_below_the_break() -> None:
    """The trim there lies over the lower sheets and rake trims, and the upper ones over it."""
    found = steps(raise_building(parse(CONVEX, "shape")).model)
    names = [step.name for step in found]
    first = names.index("sheets of the left slope")
    assert names[first : first + 8] == [
        "sheets of the left slope",
        "sheets of the right slope",
        "rake trim of the lower slopes",
        "closures and trim at the pitch breaks",
        "sheets of the left upper slope",
        "sheets of the right upper slope",
        "rake trim",
        "closures and ridge cap",
    ]
    at_break = found[first + 3].pieces
    assert {piece.role for piece in at_break} == {Role.OUTSIDE_CLOSURE, Role.BREAK_TRIM, Role.TRIM_SCREW}
    assert len(found[first + 2].pieces) == len(found[first + 6].pieces)
