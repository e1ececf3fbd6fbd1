"""What the tape must read while it goes up: by hand, and at every sheet of a run."""

from __future__ import annotations

from collections import Counter

import numpy as np
import pytest
from ribwright.intake import starters
from ribwright.steps import steps
from ribwright.steps.step_text import steps_table
from ribwright.steps.survey import survey
from support.sample_building import sample_model
from support.starter_buildings import starter_model
from support.told_steps import named, sizes

FOOT, INCH = 304.8, 25.4


def test_what_the_tape_reads_of_the_sample_by_hand() -> None:
    """30 x 40 ft; 2 in overhang; ledge 1-13/16 in wide: the slab is 3-5/8 in larger both ways."""
    found = steps(sample_model())
    slab = sizes(named(found, "slab"))
    wide, long = 30 * FOOT + 3.625 * INCH, 40 * FOOT + 3.625 * INCH
    assert slab["width", "slab, outside"] == pytest.approx(wide, abs=0.5)
    assert slab["diagonals, both", "slab, outside"] == pytest.approx(np.hypot(wide, long), abs=1)
    left = sizes(named(found, "sheets of the left"))
    read = "overlap rib, from the left steel corner"
    for number, ribs in ((5, 4), (10, 9), (13, 12)):
        at = f"sheet {number}, at the foot and at the head"
        assert left[read, at] == pytest.approx((36 * ribs + 1) * INCH, abs=0.05)
    roof = sizes(named(found, "sheets of the left slope"))
    assert roof["overhang, in plan past the steel", "left slope, eave"] == pytest.approx(2 * INCH, abs=0.05)
    doors = sizes(named(found, "framing of openings"))
    assert doors["rough width, between jambs", "front overhead door 1"] == pytest.approx(12 * FOOT, abs=0.05)
    assert doors["rough height, slab to header", "front overhead door 1"] == pytest.approx(
        10 * FOOT, abs=0.05
    )


@pytest.mark.parametrize("name", starters())
def test_every_eave_hangs_over_as_asked(name: str) -> None:
    """Also one over the roof of a lean-to, whose steel stands farther out."""
    model = starter_model(name)
    told = [one for step in steps(model) for one in step.dimensions if one.what.startswith("overhang")]
    eaves = [one.size for one in told if one.at.endswith(", eave")]
    assert eaves == pytest.approx([model.terms.overhang] * len(eaves), abs=0.05)
    high = [one.size - model.terms.overhang for one in told if one.at.endswith(", high eave")]
    assert all(-0.05 < more < 13.0 for more in high)  # up to a step of sheets' lengths more
    assert len(told) == len({one.at for one in told}) > 0


def test_covers_and_frames_ahead_of_the_sample_by_hand() -> None:
    """Cover 36 in. Frames of the sample stand 6 in and 20 ft from the front: the fifth roof sheet of the left
    slope, laid from its left corner at the back, ends 15 ft 2 in on, 24 ft 10 in from the front: 4 ft 10 in
    before the third frame."""
    found = steps(sample_model())
    for name in ("sheets of the left", "sheets of the right slope"):
        covers = [one for one in named(found, name).dimensions if one.what.startswith("cover")]
        assert [one.size for one in covers] == [pytest.approx(36 * INCH, abs=0.05)]
    ahead = sizes(named(found, "sheets of the left slope"))
    at = "sheet 5, at the eave and at the head the same"
    read = "leading edge to the middle of the next frame"
    assert ahead[read, at] == pytest.approx(58 * INCH, abs=0.05)
    assert not any("next frame" in one.what for one in named(found, "sheets of the left").dimensions)


@pytest.mark.parametrize(
    "name", ["workshop", "long-store", "single-slope", "wainscot", "lean-to", "machine-shed"]
)
def test_every_sheet_is_laid_at_its_running_distance(name: str) -> None:
    """Stretches taken apart again: every number once, each where the plan of its face has it."""
    one = survey(starter_model(name))
    plans = [plan for plan in one.plans if plan.sheets]
    told: Counter[tuple[object, ...]] = Counter()
    for step in steps(starter_model(name)):
        for stretch in step.laid:
            for k in range(stretch.count):
                rib = None if stretch.rib is None else stretch.rib + k * stretch.every
                for mark in stretch.marks:
                    told[place(mark, stretch.first + k, rib, stretch.edge + k * stretch.every)] += 1
    assert told == Counter(
        place(sheet.mark, sheet.number, sheet.rib, sheet.edge) for plan in plans for sheet in plan.sheets
    )


def place(mark: str, number: int, rib: float | None, edge: float) -> tuple[object, ...]:
    """A sheet and where it is to 1 mm."""
    return mark, number, None if rib is None else round(rib), round(edge)


def test_a_long_run_is_told_by_its_ends() -> None:
    """The long store's right wall of 90 ft, from its right corner: sheets 1 in on, 36 in cover."""
    (step,) = [one for one in steps(starter_model("long-store")) if one.name == "sheets of the right"]
    first, last = step.laid
    assert (first.first, first.count, last.first) == (1, 29, 30)
    assert (first.rib, first.edge) == (pytest.approx(INCH, abs=0.01), pytest.approx(38 * INCH, abs=0.01))
    assert first.every == pytest.approx(36 * INCH, abs=0.01)


def test_what_is_read_at_even_sheets_is_told_by_the_first_and_the_last() -> None:
    """Every fifth of the long store's 30 sheets, 15 ft apart, then those before the last two."""
    found = steps(starter_model("long-store"))
    text = " ".join(steps_table(found, "ft-in", (), 200).split())
    read = 'from the right steel corner, at the foot and at the head, within 1/8" (common practice): '
    even = (
        "sheet 5: 12' 1\"; every 5 sheets 15' on to sheet 25: 72' 1\"; sheet 29: 84' 1\"; sheet 30: 87' 1\""
    )
    assert f"overlap rib, {read}{even}" in text


def test_bays_are_squared_by_their_diagonals() -> None:
    """Off the columns' middles in plan; 1/4 in up to 40 ft, 1/2 in beyond."""
    plumb = named(steps(sample_model()), "plumb, square, tighten")
    wide = {one.at: one.size for one in plumb.dimensions if one.what.startswith("outer columns")}
    along = {one.at: one.size for one in plumb.dimensions if one.what.startswith("from frame 1")}
    (bay,) = [one for one in plumb.dimensions if one.at == "bay 1"]
    assert bay.size == pytest.approx(np.hypot(wide["each of frames 1 to 5"], along["frame 2"]), abs=0.01)
    assert bay.within == INCH / 4
    (slab,) = [one for one in named(steps(sample_model()), "slab").dimensions if "diagonal" in one.what]
    assert slab.within == INCH / 2
    upright = [one for one in plumb.dimensions if one.what.startswith("out of plumb")]
    assert [one.within for one in upright] == [pytest.approx(one.size / 500) for one in upright]
