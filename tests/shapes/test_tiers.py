"""Walls of two tiers: hand calculations held against the schedule, and every judge there is.

In inches. A wall sheet stands a lap's room over the slab (2.1 trim thicknesses of 0.0217 in). At a seam
40 in up the trim's shelf falls 1/8 in outward: the lower sheets end 1/8 in under that, the upper ones hang
a lap's room and 1/4 in over the bend. Sheets come in half inches: both go down to one.
"""

from __future__ import annotations

from math import floor

import pytest
from ribwright.envelope.steel_lines import SteelLines
from ribwright.intake import parse, starter_text
from ribwright.pieces import Model
from ribwright.units import INCH
from support.judged import judged
from support.refused import refusal, refusals
from support.starter_buildings import starter, starter_model, starter_schedule

ROOM = 2.1 * 0.0217
SEAM = 40
CROWN = 0.0217 + 3 / 4 + 2 * 0.0172


def raised() -> Model:
    return starter_model("wainscot")


def test_sheets_of_both_tiers_are_as_long_as_worked_by_hand() -> None:
    """The side walls of the starter: 10 ft to the eave under a roof of 4 in 12."""
    rows = [row for row in starter_schedule("wainscot").rows if set(row.faces) & {"right"}]
    lower = [row.length for row in rows if row.gauge == "26 ga"]
    upper = [row.length for row in rows if row.gauge == "29 ga"]
    assert max(lower) / INCH == pytest.approx(floor(2 * (SEAM - 1 / 8 - 1 / 8 - ROOM)) / 2, abs=1e-6)
    head = 120 - CROWN * 4 / 12 - 1 / 8
    assert max(upper) / INCH == pytest.approx(floor(2 * (head - (SEAM + ROOM + 1 / 4))) / 2, abs=1e-6)


def test_rows_stand_three_quarters_of_an_inch_in_from_both_ends_each_on_a_girt_of_its_own() -> None:
    """Two cees of 2 in: a row behind the middle of each."""
    lines = SteelLines(starter("wainscot"))
    rows = (ROOM + 39.5 - 3 / 4, SEAM + ROOM + 1 / 4 + 3 / 4)
    seam = lines.seam
    assert seam is not None
    assert [v / INCH for v in seam.rows] == pytest.approx(rows, abs=1e-3)
    assert [v / INCH for v in lines.seam_girts] == pytest.approx(rows, abs=1e-3)
    wide = parse(f'{starter_text("w", "wainscot")}[framing]\ngirt = "cee 4x4x0.07"\n', "wide")
    assert [v / INCH for v in SteelLines(wide).seam_girts] == pytest.approx([sum(rows) / 2], abs=1e-3)


def test_ribs_of_one_profile_line_up() -> None:
    for face in ("left", "front"):
        sheets = [p for p in raised().pieces if p.role == "wall sheet" and p.label("face") == face]
        ribs = {
            tier: {
                round(max(p.place.origin[axis] for axis in ((1,) if face == "left" else (0,))), 3)
                for p in sheets
                if (p.label("gauge") == tier)
            }
            for tier in ("26 ga", "29 ga")
        }
        assert ribs["26 ga"] <= ribs["29 ga"] and len(ribs["26 ga"]) > 4


def test_the_trim_is_listed_around_the_building_less_the_doors_and_the_window_it_meets() -> None:
    """Of each run the pieces less their laps, between corners and the edges of what it meets."""
    pieces = [piece for piece in raised().pieces if piece.role == "tier trim"]
    runs = {piece.name.rsplit(" tier trim ", 1)[0] + piece.name.split()[3] for piece in pieces}
    assert runs == {"left1", "back1", "back2", "front1", "front2", "right1", "right2"}


def test_the_starter_is_sound() -> None:
    assert judged(starter("wainscot")).faults == {}


SHED = """width = "16 ft"
length = "20 ft"
eave_height = "8 ft"
pitch = "3/12"
[[opening]]
kind = "walk door"
wall = "right"
width = "3 ft"
height = "6 ft 8 in"
from_left = "4 ft 8 in"
[[opening]]
kind = "window"
wall = "left"
width = "3 ft"
height = "3 ft"
from_left = "4 ft 4 in"
sill = "30 in"
[wainscot]
height = "42 in"
"""
OTHERS = {
    "the gables alone": 'walls = "gables"\n',
    "one side": 'walls = "left"\n',
    "deeper ribs below": 'profile = "36 x 12 x 1-1/4"\n',
    "shallower ribs below": 'profile = "36 x 9 x 3/4"\n[sheets]\nprofile = "36 x 12 x 1-1/4"\n',
    "flush girts": '[framing]\ngirts = "flush"\n',
    "wide girts": '[framing]\ngirt = "cee 6x4x0.07"\n',
    "zees": '[framing]\ngirt = "zee 6x2.5x0.07"\n',
    "girts where they were asked": '[framing]\ngirt_heights = ["42 in", "6 ft"]\n',
    "sheets that hang": '[slab]\nhang = "1-1/2 in"\n',
    "an open end": '[walls]\nback = "open"\n',
    "an open bay": '[walls]\nright = "open in bay 2"\n[frame]\nbays = ["10 ft", "10 ft"]\n',
    "an open bay at the corner": '[walls]\nleft = "open in bay 1"\n[frame]\nbays = ["10 ft", "10 ft"]\n',
    "open on two sides": 'walls = "gables"\n[walls]\nback = "open"\n[sheets]\ngauge = "26"\n',
    "a single slope": '[roof]\nshape = "single slope"\n',
}


@pytest.mark.parametrize("keys", OTHERS.values(), ids=OTHERS)
def test_a_seam_closes_whatever_is_about_it(keys: str) -> None:
    assert judged(parse(SHED + keys, "shed")).faults == {}


@pytest.mark.parametrize(
    ("old", "new", "key", "remedy"),
    [
        ('height = "42 in"', 'height = "30 in"', "wainscot.height", "at least 3'"),
        ('height = "42 in"', 'height = "50 in"', "wainscot.height", "at most 4'"),
        ('height = "42 in"', 'colour = "red"', "wainscot.height", "no wainscot at all"),
        ('sill = "30 in"', 'sill = "38 in"', "opening[2].sill", "at most 3' or at least 4'"),
        ("[wainscot]", '[framing]\ngirt = "hat 2x2x0.06"\n[wainscot]', "framing.girt", "a wider flange"),
    ],
)
def test_a_seam_that_cannot_be_is_refused_by_its_key(old: str, new: str, key: str, remedy: str) -> None:
    assert old in SHED
    problems = refusals(SHED.replace(old, new))
    assert key in [problem.key for problem in problems]
    assert any(remedy in problem.remedy for problem in problems)


def test_a_seam_leaves_two_feet_of_wall_under_the_lowest_eave() -> None:
    walls = SHED.split("[[opening]]", maxsplit=1)[0].replace("8 ft", "5 ft")
    problem = refusal(f'{walls}[wainscot]\nheight = "42 in"\n')
    assert (problem.key, problem.line) == ("wainscot.height", 6)
    assert "at most 3'" in problem.remedy


def test_what_has_a_whole_wall_may_stand_at_any_height() -> None:
    """A window on a wall without a seam."""
    text = SHED.replace('sill = "30 in"', 'sill = "38 in"') + 'walls = "gables"\n'
    assert parse(text, "shed").openings[1].sill == pytest.approx(38 * INCH)
