"""Sheets that lap up a slope: where, how far, cut and screwed how, by hand, off the solids, and every judge.

Lengths in inches. What laps how far is common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace
from math import ceil, hypot

import pytest
from ribwright.audit import audit
from ribwright.envelope.end_laps import UpSlope, end_laps
from ribwright.errors import DescriptionError
from ribwright.intake import parse, starter_text
from ribwright.measure.clad_planes import CladPlane, clad_planes
from ribwright.measure.placing import FacePlan
from ribwright.order.buying.order_list import order
from ribwright.order.lists.schedule import Schedule, schedule
from ribwright.pieces import Model
from ribwright.raising import raise_building
from ribwright.solids.properties import volume
from ribwright.units import FOOT, INCH
from support.judged import judged
from support.starter_buildings import starter_model, starter_schedule

SLOPE = hypot(240, 60)
"""Of the hay barn, 40 ft wide at 3 in 12: half of it along the slope."""
RISE = hypot(12, 3) / 12
STEP, LAP, PAST_ROW = 0.5, 6, 1.5


def barn() -> Model:
    """40 x 24 ft, 3 in 12, open all round, no sheet over 12 ft."""
    return starter_model("hay-barn")


def listed() -> Schedule:
    return starter_schedule("hay-barn")


def slopes(model: Model) -> list[CladPlane]:
    return [plane for plane in clad_planes(model) if plane.sloped]


def test_two_sheets_of_whole_half_inches_lap_on_the_middle_purlin() -> None:
    """The strut's flange is 2 in wide, the uppermost purlin stands 3 in under the heads, and five divide what
    is between them; the third takes the lap."""
    foot, head = -2 * RISE, SLOPE - 1.0
    whole = round((head - foot) / STEP) * STEP  # the ridge gap takes the difference
    head = foot + whole
    row = 1 + (head - 3 - 1) * 3 / 6
    upper = ceil((head - (row - PAST_ROW)) / STEP) * STEP
    lower = ceil((head - upper + LAP - foot) / STEP) * STEP
    assert (lower, upper) == (128.5, 126.0)
    for plane in slopes(barn()):
        lengths = {round(one.outline.bounds[3] - one.outline.bounds[1], 6) / INCH for one in plane.sheets}
        assert sorted(lengths) == pytest.approx([upper, lower], abs=1e-6)
        assert [lap.length / INCH for lap in plane.end_laps] == pytest.approx(
            [lower + upper - whole] * 8, abs=1e-6
        )
        assert len(plane.sheets) == 2 * 8 and len(plane.end_laps) == 8
        assert all(lap.sheds and lap.upper.off > lap.under.off for lap in plane.end_laps)


def test_a_sheet_stands_a_thickness_square_to_its_flanks_over_the_one_below() -> None:
    """Flanks rise 3/4 in over 15/16 in: the foot of 2-1/2 in less the crown of 5/8 in, halved."""
    thickness = 0.0172
    flank = hypot(0.75, 0.9375) / 0.9375
    for plane in slopes(barn()):
        for lap in plane.end_laps:
            assert (lap.upper.off - lap.under.off) / INCH == pytest.approx(thickness * flank, abs=1e-5)
            assert lap.air[0] == pytest.approx(0.0, abs=1e-5)


def test_where_four_sheets_meet_one_hidden_corner_is_cut_off() -> None:
    """Two inches wide, six and 1/32 in long; seven of the eight sheets of each eave, all but the first."""
    for plane in slopes(barn()):
        lower = [lap.under for lap in plane.end_laps]
        cut = [one for one in lower if one.measured.ways[0].outline.area < one.outline.envelope.area - 1]
        assert len(cut) == 7
        for sheet in cut:
            left, _, right, high = sheet.outline.bounds
            missing = sheet.outline.envelope.difference(sheet.outline)
            a, b, c, d = missing.bounds
            assert (c - a) / INCH == pytest.approx(2.0, abs=1e-6)
            assert (d - b) / INCH == pytest.approx(LAP + 0.8 / INCH, abs=1e-3)
            assert d == pytest.approx(high) and min(a - left, right - c) == pytest.approx(0.0, abs=1e-6)


def test_a_row_of_pairs_goes_through_both_sheets_into_the_purlin() -> None:
    """Astride every rib of the upper sheet, an inch and a half up from its foot or up to a step more."""
    by_name = {piece.name: piece for piece in barn().pieces}
    for plane in slopes(barn()):
        for lap in plane.end_laps:
            foot = lap.region.bounds[1]
            for sheet, rows in ((lap.upper, 1), (lap.under, 0)):
                screws = by_name[f"{sheet.piece.name} screws"]
                heights = [plane.frame.seen(screws.place.point(at))[1] - foot for at in screws.row]
                beside = [v for v in heights if 0 < v < LAP * INCH]
                assert len({round(v, 3) for v in beside}) == rows
                if rows:
                    assert PAST_ROW * INCH - 1e-3 < beside[0] < (PAST_ROW + STEP) * INCH
                    assert len(beside) >= 2 * (len(sheet.crowns) - 2)


def plan(face: str) -> FacePlan:
    return next(one for one in listed().plans if one.face == face)


def test_a_column_is_laid_from_the_eave_up() -> None:
    sheets = plan("left slope").sheets
    assert [(one.number, one.part) for one in sheets[:4]] == [
        (1, "course 1"),
        (1, "course 2"),
        (2, "course 1"),
        (2, "course 2"),
    ]
    assert {round(one.foot / INCH, 3) for one in sheets} == {0.0, 122.5}


def test_tape_is_counted_along_the_section_of_every_lap() -> None:
    """At 3 in 12 one row in each end lap and none along the ribs. A flank is longer than its run by a quarter
    of an inch, 3/4 in over 15/16 in; of the outermost two a leg of 1 in holds 11/15. Eight minor ribs are
    1/8 in over 5/16 in. Where a corner is cut the lap begins an inch inside its rib, with 4/15 of a flank."""
    flank, minor = hypot(0.75, 0.9375) - 0.9375, hypot(0.125, 0.3125) - 0.3125
    whole = 38 + (8 + 2 * 11 / 15) * flank + 16 * minor
    cut = 36 + (6 + 4 / 15 + 1 + 11 / 15) * flank + 16 * minor
    for plane in slopes(barn()):
        first, *others = sorted((lap.developed / INCH for lap in plane.end_laps), reverse=True)
        assert first == pytest.approx(whole, abs=0.01)
        assert others[:6] == pytest.approx([cut] * 6, abs=0.01)
    developed = sum(lap.developed for plane in slopes(barn()) for lap in plane.end_laps)
    (line,) = (one for one in order(listed()).lines if one.list == "tape")
    assert line.kind == "sealant tape for end laps"
    assert line.quantity == ceil(developed / FOOT)


FLAT = (
    'width = "40 ft"\nlength = "12 ft"\neave_height = "7 ft"\npitch = "1/12"\n[sheets]\nlongest = "10 ft"\n'
)


def test_under_3_in_12_sheets_lap_a_foot_and_are_taped_twice() -> None:
    model = raise_building(parse(FLAT, "flat")).model
    planes = slopes(model)
    assert all(lap.length > 12.0 * INCH - 1e-6 for plane in planes for lap in plane.end_laps)
    developed = sum(lap.developed for plane in planes for lap in plane.end_laps)
    assert sum(schedule(model).sealed_ends) == pytest.approx(2 * developed)


OTHERS = {
    "three courses on a single slope that runs out at its head": (
        'width = "24 ft"\nlength = "18 ft"\neave_height = "8 ft"\npitch = "2/12"\n'
        '[roof]\nshape = "single slope"\n'
        '[walls]\nright = "open"\n[sheets]\nlongest = "14 ft"\n[screws]\nstitch = "12 in"\n'
    ),
    "an offset ridge with laps of nine inches": (
        'width = "30 ft"\nlength = "18 ft"\neave_height = "8 ft"\npitch = "4/12"\n[roof]\nridge = "10 ft"\n'
        '[sheets]\nlongest = "14 ft"\nend_lap = "9 in"\n'
    ),
    "as steep as tall, in four courses": (
        'width = "30 ft"\nlength = "9 ft"\neave_height = "8 ft"\npitch = "12/12"\n[walls]\nfront = "open"\n'
        'back = "open"\n[sheets]\nlongest = "8 ft"\n[framing]\npurlin_spacing = "2 ft"\n'
    ),
    "millimetres and wide ribs, run from the front": (
        'units = "mm"\nwidth = "14 m"\nlength = "6 m"\neave_height = "4 m"\npitch = "10 deg"\n'
        '[sheets]\nlongest = "7 m"\nprofile = "1000 x 250 x 35"\n[runs]\nleft_slope = "front"\n'
        '[framing]\nstock = ["8 m"]\n'
    ),
}


@pytest.mark.parametrize("text", OTHERS.values(), ids=OTHERS)
def test_every_judge_finds_sheets_sound_that_lap_up_a_slope(text: str) -> None:
    building = parse(text, "laps")
    found = judged(building)
    assert (found.faults, dict(found.said)) == ({}, {})
    assert any(plane.end_laps for plane in slopes(raise_building(building).model))


def test_the_figures_say_how_far_sheets_lap_up_a_slope() -> None:
    figures = [one for one in audit(barn(), ("laps",)).measured if one.what == "end laps"]
    assert [(one.where, one.count) for one in figures] == [("left slope", 8), ("right slope", 8)]


SPARSE = starter_text("x", "hay-barn").replace('longest = "12 ft"', 'longest = "8 ft"')
SPARSE = SPARSE.replace('width = "40 ft"', 'width = "36 ft"')
SPARSE += '[framing]\npurlin_spacing = "10 ft"\n'


def refused(text: str) -> str:
    with pytest.raises(DescriptionError) as caught:
        parse(text, "x")
    return str(caught.value)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        (FLAT.replace("10 ft", "8 ft"), "sheets lap on a girt, clear of openings, and none is under 4 ft"),
        (
            SPARSE,
            "sheets lap on a purlin, and none is under 4 ft",
        ),
    ],
)
def test_sheets_too_short_are_refused_with_the_length_that_will_do(text: str, said: str) -> None:
    assert said in refused(text)


def test_sheets_lap_lower_where_the_longest_would_leave_a_stub_on_top() -> None:
    """Up 18 ft on girts a foot and a half apart, none higher than 10-1/2 ft. Of 9 ft the first would lap at
    7-1/2 ft and the next not end at 18; three do when the first is shorter."""
    rows = tuple(1.5 * k * FOOT for k in range(1, 8))
    sheets = replace(parse(starter_text("hay-barn", "hay-barn"), "x").sheets, longest=9 * FOOT)
    laps = end_laps(UpSlope(0.0, 18 * FOOT, rows, 4 * INCH), sheets)
    assert laps is not None
    ends = [0.0, *(one for lap in laps for one in (lap.head, lap.foot)), 18 * FOOT]
    lengths = [(b - a) / FOOT for a, b in zip(ends[::2], ends[1::2], strict=True)]
    assert len(lengths) == 3
    assert all(4 <= length <= 9 for length in lengths)


def test_the_length_that_is_told_will_do() -> None:
    told = refused(SPARSE).split("at least ")[1].split(",")[0]
    told = told.replace('"', '\\"')
    parse(SPARSE.replace('longest = "8 ft"', f'longest = "{told}"'), "x")


def test_what_is_lapped_weighs_what_is_bought() -> None:
    """Nothing is lost between the list and the solids: the cut corners alone."""
    sheets = [piece for piece in barn().pieces if piece.role == "roof sheet"]
    assert sum(volume(piece.solid) for piece in sheets) == pytest.approx(
        sum(row.count * row.weight for row in listed().rows) / 7850e-9, rel=1e-6
    )
    assert sum(row.count for row in listed().rows) == 2 * 2 * 8
    assert max(row.length for row in listed().rows) < 12 * FOOT
