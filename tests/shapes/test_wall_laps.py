"""Sheets that lap up a wall: where, how far, screwed how, clear of openings; by hand, off the solids.

Lengths in inches. What laps how far is common practice, no source.
"""

from __future__ import annotations

from functools import cache
from math import floor, hypot

import pytest
from ribwright.audit import audit
from ribwright.audit.driven import driven
from ribwright.audit.site import site
from ribwright.errors import DescriptionError
from ribwright.intake import parse
from ribwright.measure.clad_planes import CladPlane, clad_planes
from ribwright.order.buying.order_list import order
from ribwright.order.lists.schedule import schedule
from ribwright.pieces import Model
from ribwright.raising import raise_building
from ribwright.units import INCH
from support.judged import judged
from support.refused import refusals

TALL = """width = "24 ft"
length = "30 ft"
eave_height = "18 ft"
pitch = "4/12"
[sheets]
longest = "14 ft"
"""
DOOR = """[[opening]]
kind = "overhead door"
wall = "front"
width = "10 ft"
height = "9 ft"
from_left = "7 ft"
"""
WINDOW = """[[opening]]
kind = "window"
wall = "left"
width = "20 in"
height = "3 ft"
from_left = "4 ft 8 in"
sill = "{sill} in"
"""
FLANGE, RIB, SHEET, LAP, PAST_ROW = 0.0217, 0.75, 0.0172, 4.0, 1.5
FOOT = 2.1 * FLANGE
FLANK = hypot(0.75, 0.9375) / 0.9375
GIRTS = [1 + (216 - 1) * k / 5 for k in range(1, 5)]
"""From the middle of the base rail to the eave, no farther apart than 4 ft."""


@cache
def tall() -> Model:
    return raise_building(parse(TALL, "tall")).model


def walls(model: Model) -> dict[str, CladPlane]:
    return {plane.name: plane for plane in clad_planes(model) if not plane.sloped}


def test_side_walls_lap_on_the_girt_that_makes_their_sheets_most_even() -> None:
    """On the second: 89 and 130-1/2 in; on the third 132 and 87-1/2; on the others one is too long. Heads lie
    under the roof's steel, which falls by a third of how far out the sheets stand, two courses included that
    may lie on others."""
    out = FLANGE + RIB + 2 * SHEET + 2 * SHEET * FLANK
    whole = floor(2 * (216 - out / 3 - 1 / 8 - FOOT)) / 2
    upper = -floor(-2 * (FOOT + whole - (GIRTS[1] - PAST_ROW))) / 2
    foot = FOOT + whole - upper
    assert (whole, upper) == (215.5, 130.5)
    for name in ("left", "right"):
        lap = walls(tall())[name].end_laps
        assert len(lap) == 10
        assert {(round(one.region.bounds[1] / INCH, 4), round(one.length / INCH, 4)) for one in lap} == {
            (round(foot, 4), LAP)
        }
        lengths = {
            round((s.outline.bounds[3] - s.outline.bounds[1]) / INCH, 4) for s in walls(tall())[name].sheets
        }
        assert lengths == {upper, foot + LAP - FOOT}


def test_gables_lap_in_line_under_their_lowest_heads() -> None:
    """Up to the peak, at 264 in, no more than 14 ft lie over the third girt, and over the second more. Every
    upper sheet is 4 ft long at its shorter edge too."""
    for name in ("front", "back"):
        plane = walls(tall())[name]
        feet = {round(lap.region.bounds[1], 3) for lap in plane.end_laps}
        assert len(feet) == 1 and len(plane.end_laps) == len(plane.sheets) / 2
        (foot,) = feet
        assert 0 <= GIRTS[2] - PAST_ROW - foot / INCH < 0.5
        assert min(s.outline.bounds[3] - foot for s in plane.sheets if s.off > 0.1) > 48 * INCH


def test_upper_sheets_stand_a_thickness_square_to_their_flanks_over_the_lower_ones() -> None:
    for plane in walls(tall()).values():
        for lap in plane.end_laps:
            assert lap.sheds
            assert (lap.upper.off - lap.under.off) / INCH == pytest.approx(SHEET * FLANK, abs=1e-5)
            assert lap.air[0] == pytest.approx(0.0, abs=1e-5)


def test_both_are_screwed_into_the_girt_astride_every_rib() -> None:
    """A pair at each of the four ribs of a sheet but its last, whose own neighbour's pair holds it."""
    at = site(tall())
    names = {piece.name for piece in tall().pieces if piece.role == "wall sheet"}
    held: dict[tuple[str, ...], int] = {}
    for screw in driven(at):
        bodies = [at.bodies[layer.body] for layer in screw.held]
        through = tuple(body.name for body in bodies if body.name in names)
        if screw.piece.role == "sheet screw" and len(through) == 2 and through[0][:-1] == through[1][:-1]:
            assert bodies[-1].role == "girt"
            held[through] = held.get(through, 0) + 1
    inner = [f"left {number}" for number in range(2, 10)]
    assert [held[f"{name}b", f"{name}a"] for name in inner] == [8] * 8


def test_no_tape_is_bought_for_walls_and_all_is_bought_as_short_as_it_comes() -> None:
    lines = order(schedule(tall())).lines
    assert [line for line in lines if line.list == "tape"] == []
    assert max(row.length for row in schedule(tall()).rows) <= 14 * 12 * INCH
    figures = [one for one in audit(tall(), ("laps",)).measured if one.what == "end laps"]
    assert {one.where: one.count for one in figures} == {"left": 10, "right": 10, "front": 8, "back": 8}


def test_over_a_door_that_takes_whole_sheets_they_lap_above_it() -> None:
    """A door of 9 ft: 4 in and 6 in over its head begin at 118 in, under the third girt."""
    model = raise_building(parse(TALL + DOOR, "tall")).model
    feet = {lap.region.bounds[1] / INCH for lap in walls(model)["front"].end_laps}
    assert all(foot + PAST_ROW + 0.5 > 118 and foot < GIRTS[2] for foot in feet)
    with pytest.raises(DescriptionError) as caught:
        parse(TALL + DOOR.replace("9 ft", "13 ft"), "tall")
    assert "or girts closer together: sheets lap on a girt, clear of openings" in str(caught.value)


def test_beside_a_narrow_window_they_lap_on_the_next_girt() -> None:
    """A head at 88 in keeps them from the second girt, at 87; the third makes sheets of 132 and 87-1/2 in."""
    model = raise_building(parse(TALL + WINDOW.format(sill=52), "tall")).model
    (foot,) = {round(lap.region.bounds[1], 3) for lap in walls(model)["left"].end_laps}
    assert 0 <= GIRTS[2] - PAST_ROW - foot / INCH < 0.5


@pytest.mark.parametrize("text", [TALL.replace("14 ft", "8 ft"), TALL.replace("14 ft", "10 ft") + DOOR])
def test_what_is_too_short_is_refused_and_the_length_that_is_told_will_do(text: str) -> None:
    problems = refusals(text)
    told = problems[0].remedy.split("at least ")[1].split(",")[0].replace('"', '\\"')
    length = text.split("longest = ")[1].split("\n", maxsplit=1)[0]
    parse(text.replace(f"longest = {length}", f'longest = "{told}"'), "tall")


@pytest.mark.parametrize(
    "text",
    [
        TALL + DOOR + WINDOW.format(sill=56),
        TALL
        + '[insulation]\nwalls = "3 in"\n[wainscot]\nheight = "42 in"\n[slab]\nledge_depth = "1-1/2 in"\n',
        TALL.replace("4/12", "2/12") + '[roof]\nshape = "single slope"\n',
        TALL.replace("14 ft", "10 ft").replace("18 ft", "22 ft") + '[framing]\ngirt_spacing = "3 ft"\n',
    ],
    ids=["openings", "two tiers, a blanket", "one slope", "three courses"],
)
def test_every_judge_passes_them(text: str) -> None:
    assert judged(parse(text, "tall")).faults == {}
