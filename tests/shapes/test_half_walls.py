"""Walls clad up to a height and open above: what stands where, by hand, and every judge there is.

Lengths in inches. Trim is 0.0217 in thick; 2.1 of that are the room that its pieces lap in, on which sheets
stand. Under a cap at 42 the sheets have 1/4 in less, and come in whole half inches: 41-1/2.
"""

from __future__ import annotations

from collections import Counter
from functools import cache

import numpy as np
import pytest
from ribwright.intake import parse
from ribwright.order.lists.schedule import schedule
from ribwright.pieces import Model
from ribwright.raising import raise_building
from ribwright.solids.placed import placed_triangles
from ribwright.steps import steps
from ribwright.units import INCH
from support.judged import judged
from support.refused import refusal

TRIM = 0.0217
LAP = 2.1 * TRIM
HEIGHT, FALL, LIP = 42.0, 1 / 8, 2.5
SHED = 'width = "16 ft"\nlength = "20 ft"\neave_height = "9 ft"\npitch = "4/12"\n'
HALF = '[half_wall]\nheight = "42 in"\n'
THREE = SHED + '[walls]\nfront = "open"\n' + HALF
DOOR = '[[opening]]\nkind = "walk door"\nwidth = "3 ft"\nheight = "6 ft 8 in"\nfrom_left = "6 ft"\n'


@cache
def raised(text: str = THREE) -> Model:
    return raise_building(parse(text, "half")).model


def reach(*names: str) -> tuple[list[float], list[float]]:
    """Least and greatest x, y, z of the pieces whose names begin so, in inches."""
    told = [p for p in raised().pieces if p.name.startswith(names) and not p.name.endswith("screws")]
    points = np.vstack([points for points, _ in placed_triangles(told)]) / INCH
    return points.min(axis=0).tolist(), points.max(axis=0).tolist()


def test_sheets_end_under_the_cap_in_whole_half_inches() -> None:
    rows = [row for row in schedule(raised()).rows if row.role == "wall sheet"]
    assert {round(row.length / INCH, 6) for row in rows} == {41.5}
    assert {face for row in rows for face in row.faces} == {"left", "right", "back"}
    (_, _, foot), (_, _, head) = reach("left 1", "left 2", "left 3")
    assert (foot, head) == pytest.approx((LAP, LAP + 41.5), abs=0.002)


def test_the_cap_passes_over_the_steel_line_at_its_height_and_falls_outward() -> None:
    """Its front leg hangs before the corner trims, 1 in of leg and 2.1 of trim out; its shelf reaches in over
    the girt, all but 1/8 in of its 4, at one slope."""
    low, high = reach("left cap trim")
    out, back = 1 + LAP, 4 - 1 / 8
    assert (-low[0], high[0]) == pytest.approx((out + TRIM, back), abs=0.01)
    assert low[2] == pytest.approx(HEIGHT - FALL - LIP, abs=0.01)
    assert high[2] == pytest.approx(HEIGHT + FALL * back / out + 2 * TRIM, abs=0.03)


def test_a_girt_runs_along_the_top_with_the_row_of_the_heads() -> None:
    girts = [p.name for p in raised().pieces if p.role == "girt" and p.label("face") == "back"]
    tops = sorted(reach(name)[1][2] for name in girts)
    row = LAP + 41.5 - 3 / 4
    assert tops[-1] - 2.5 < row < tops[-1] <= HEIGHT - LAP + 1e-6
    assert Counter(p.role for p in raised().pieces)["girt"] == len(girts) * 3


def test_above_it_stands_open_with_the_trims_of_an_open_wall() -> None:
    """The eave trim covers the strut, 6 deep, and the corner trims end under the cap."""
    assert reach("left eave trim")[0][2] == pytest.approx(9 * 12 - 6 - 1 / 4, abs=0.03)
    assert reach("back left corner trim")[1][2] == pytest.approx(HEIGHT - FALL - 1 / 8, abs=0.01)
    assert {p.role for p in raised().pieces if p.label("face") == "back"} >= {"rake angle", "rake trim"}


def test_at_an_open_wall_it_ends_on_an_upright_no_taller_than_itself() -> None:
    for wall in ("left", "right"):
        (_, first, foot), (_, last, head) = reach(f"{wall} end jamb")
        assert (first, foot) == pytest.approx((0, 0), abs=1e-6)
        assert head == pytest.approx(reach(f"{wall} girt")[1][2], abs=1e-6)
        assert last <= 4 + 1e-6


def test_its_cap_goes_on_over_the_closures_at_the_heads() -> None:
    every = [[piece.role for piece in step.pieces] for step in steps(raised())]
    (roles,) = [roles for roles in every if "cap trim" in roles]
    assert "outside closure" in roles
    assert roles.index("outside closure") < roles.index("cap trim")


@pytest.mark.parametrize(
    "text",
    [
        SHED + HALF,
        THREE,
        SHED + '[walls]\nfront = "open"\nback = "open"\n' + HALF + 'walls = "sides"\n',
        SHED + '[walls]\nleft = "open"\nright = "open"\n[framing]\ngirt = "tube 4x2x0.120"\n' + HALF,
        'units = "mm"\nwidth = "7 m"\nlength = "9 m"\neave_height = "3 m"\npitch = "15 deg"\n'
        '[walls]\nleft = "open"\n[half_wall]\nheight = "1200 mm"\n',
        'width = "14 ft"\nlength = "14 ft"\neave_height = "24 ft"\npitch = "3/12"\n'
        '[half_wall]\nheight = "20 ft"\n[sheets]\nlongest = "14 ft"\n',  # sheets that lap up it
        SHED.replace('"4/12"', '"1/12"') + '[roof]\nshape = "single slope"\n' + HALF,
        SHED + '[slab]\nhang = "1-1/2 in"\n' + HALF.replace("42 in", "5 ft"),
        SHED + '[sheets]\nstep = "1 in"\nfoot_closures = "inside"\n[trim]\ngutters = "low eaves"\n' + HALF,
    ],
)
def test_half_walls_close(text: str) -> None:
    assert judged(parse(text, "half")).faults == {}


@pytest.mark.parametrize(
    ("more", "key", "remedy"),
    [
        ('[half_wall]\nheight = "8 ft"\n', "half_wall.height", "at most 6' 6\""),
        ('[half_wall]\nwalls = "left"\n', "half_wall.height", "missing; a height"),
        (HALF + 'walls = "left"\n', "half_wall.walls", '[walls] back = "open" and front = "open"'),
        (HALF + 'walls = "left"\n[walls]\nleft = "open"\n', "half_wall.walls", "walls that are not open"),
        (HALF + '[framing]\ngirts = "flush"\n', "framing.girts", '"by-pass"'),
        (HALF + '[framing]\ngirt = "zee 6x2.5x0.059"\n', "framing.girt", "a cee or a tube"),
        (HALF + '[roof]\ngable_overhang = "1 ft"\n', "roof.gable_overhang", "comes nearest: 0"),
        (HALF + '[wainscot]\nheight = "42 in"\n', "half_wall.height", "not yet possible with a wainscot"),
        (HALF + DOOR + 'wall = "left"\n', "opening[1].wall", "the left wall is open over its [half_wall]"),
    ],
)
def test_what_half_walls_cannot_stand_with_is_refused(more: str, key: str, remedy: str) -> None:
    problem = refusal(SHED + more)
    assert problem.key == key
    assert remedy in problem.remedy
