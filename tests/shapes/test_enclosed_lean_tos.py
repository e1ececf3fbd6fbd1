"""Lean-tos whose own walls are clad: hand calculations held against the parts, what cannot be, every judge.

In inches: 9 ft wide under 2 in 12 from an eave of 8 ft, so that its steel plane meets the main wall at 114.
Its end walls stand in line with the main gables, whose sheets run a leg past the main corner.
"""

from __future__ import annotations

from functools import cache

import numpy as np
import pytest
from ribwright.description.building import Building
from ribwright.intake import parse
from ribwright.measure.clad_planes import clad_planes
from ribwright.measure.placing import face_plans
from ribwright.pieces import Model
from ribwright.raising import raise_building
from ribwright.solids.placed import placed_triangles
from ribwright.units import INCH
from support.judged import judged
from support.lean_tos import SHED as ONE
from support.refused import refusal

SHED = ONE + 'walls = ["front", "back", "outer"]\n'
SECOND = SHED[SHED.index("[[lean_to]]") :].replace('"left"', '"right"')
PAST = 1.0
"""Of the gable sheets past the main corner: a leg, the corner trim's room."""
SHORT = PAST + 1 / 8
"""From the main steel line to the end wall's sheets and steel."""
LEG = 5.625 - PAST
ROOF = 96 + 108 * 2 / 12


def built(text: str = SHED) -> Building:
    return parse(text, "shed")


@cache
def raised() -> Model:
    return raise_building(built()).model


def reach(name: str) -> tuple[list[float], list[float]]:
    """Least and greatest x, y, z of the pieces whose names begin so, in inches, their screws left out."""
    told = [p for p in raised().pieces if p.name.startswith(name) and not p.name.endswith("screws")]
    points = np.vstack([points for points, _ in placed_triangles(told)]) / INCH
    return points.min(axis=0).tolist(), points.max(axis=0).tolist()


@pytest.mark.parametrize("end", ["front", "back"])
def test_the_sheets_and_the_steel_of_an_end_stop_short_of_the_main_wall(end: str) -> None:
    """Girts and base rail on an upright, 4 deep, that the sheets end on too."""
    for what, steel in (("3", 0), ("base trim", 0), ("end jamb", 0), ("girt", 4), ("base rail", 4)):
        assert reach(f"lean-to {end} {what}")[1][0] == pytest.approx(-SHORT - steel, abs=0.002), what


@pytest.mark.parametrize("end", ["front", "back"])
def test_one_flat_trim_lies_over_both_walls_up_to_the_roof_where_the_corner_trim_begins(end: str) -> None:
    low, high = reach(f"lean-to {end} in-line trim")
    assert (low[0], high[0]) == pytest.approx((-SHORT - LEG, LEG), abs=0.002)
    # Cut along the roof's steel plane, 1/4 under it; the corner trim 1/8 over that.
    assert high[2] == pytest.approx(ROOF + LEG * 2 / 12 - 1 / 4, abs=0.002)
    corner = reach(f"{end} left corner trim")
    assert corner[0][2] == pytest.approx(ROOF - (PAST + 0.0217) * 2 / 12 - 1 / 8, abs=0.02)
    assert reach(f"{end} right corner trim")[0][2] < 1


def test_the_run_of_an_end_starts_at_its_own_corner_and_is_read_from_there() -> None:
    plans = {plan.face: plan for plan in face_plans(raised(), clad_planes(raised()), {})}
    for face, start in (("lean-to front", "left"), ("lean-to back", "right")):
        plan = plans[face]
        assert (plan.start, plan.said) == (start, f"from the {start} steel corner")
        assert [round(sheet.edge / INCH, 3) for sheet in plan.sheets][:2] == [37, 73]
    assert (plans["front"].start, len(plans["front"].sheets)) == ("centre", 6)


def test_the_wall_inside_stays_clad() -> None:
    lower = [p for p in raised().pieces if p.role == "wall sheet" and p.name.startswith("left lower")]
    assert len(lower) == 7
    assert not [p for p in raised().pieces if p.role == "corner trim" and "left" in p.name and _low(p.name)]


def _low(name: str) -> bool:
    return not name.startswith("lean-to") and reach(name)[0][2] < 90


OTHERS = {
    "all round": SHED,
    "one end, outer side open": SHED.replace('"front", "back", "outer"', '"front"'),
    "one on each side": SHED + SECOND,
    "one enclosed, one open": SHED + SECOND.replace('["front", "back", "outer"]', '"none"'),
    "steep, on zees": SHED.replace("2/12", "4/12").replace('"8 ft"\nwalls', '"7 ft"\nwalls')
    + '[frame]\nrafter = "tube 6x6x0.12"\n[framing]\ngirt = "zee 6x2.5x0.07"\npurlin = "zee 8x2.5x0.07"\n',
    "flush girts": SHED + '[framing]\ngirts = "flush"\n',
    "deep ribs on the gables": SHED + '[gable_sheets]\nprofile = "36 x 12 x 1-1/4"\n',
    "gables from their corners": SHED + '[runs]\nfront = "right"\nback = "centre, right first"\n',
    "wide, on posts": SHED.replace('"9 ft"', '"24 ft"')
    .replace('"18 ft"', '"30 ft"')
    .replace("12 ft", "16 ft"),
    "in millimetres": """
units = "mm"
width = "9 m"
length = "12 m"
eave_height = "4.5 m"
pitch = "10 deg"
[[lean_to]]
wall = "right"
width = "3.3 m"
pitch = "8 deg"
eave_height = "2.6 m"
walls = ["back", "outer"]
""",
}


@pytest.mark.parametrize("text", OTHERS.values(), ids=OTHERS)
def test_it_closes_whatever_is_about_it(text: str) -> None:
    assert judged(built(text)).faults == {}


@pytest.mark.parametrize(
    ("more", "key", "remedy"),
    [
        ('[wainscot]\nheight = "42 in"\n', "wainscot.height", 'walls = "outer"'),
        ('[walls]\nback = "open"\n', "walls.back", 'walls without "back"'),
    ],
)
def test_what_clad_ends_cannot_stand_with_is_refused(more: str, key: str, remedy: str) -> None:
    problem = refusal(SHED + more)
    assert problem.key == key
    assert problem.remedy.startswith("not yet possible with a lean-to whose ends are clad")
    assert remedy in problem.remedy


def test_another_word_is_answered_with_those_there_are() -> None:
    problem = refusal(SHED.replace('"outer"', '"outter"'))
    assert (problem.key, problem.remedy) == (
        "lean_to[1].walls",
        "a list of some of 'front', 'back', 'left', 'right' or 'outer'; the nearest is 'outer'; or \"none\"",
    )


def door(wall: str, from_left: str = "10 ft 1/2 in") -> str:
    sizes = f'width = "3 ft"\nheight = "6 ft 8 in"\nfrom_left = "{from_left}"\n'
    return f'[[opening]]\nkind = "walk door"\nwall = "{wall}"\n{sizes}'


LONGER = SHED.replace('"20 ft"', '"24 ft"').replace('"12 ft"', '"13 ft"').replace('"9 ft"', '"12 ft"')


def test_doors_stand_in_its_own_walls() -> None:
    """Read from the wall's left corner: the front's is the lean-to's, the outer wall's the back one."""
    text = LONGER + door("lean-to front", "4 ft 1/2 in") + door("left") + door("lean-to outer")
    model = raise_building(built(text)).model
    leaves = {piece.name: piece for piece in model.pieces if piece.role == "leaf"}
    assert set(leaves) == {f"{wall} walk door 1 leaf" for wall in ("left", "lean-to front", "lean-to left")}
    points = {name: next(iter(placed_triangles([piece])))[0] / INCH for name, piece in leaves.items()}
    front, outer = points["lean-to front walk door 1 leaf"], points["lean-to left walk door 1 leaf"]
    assert front[:, 0].mean() == pytest.approx(-144 + 48.5 + 18, abs=0.1)
    assert outer[:, 1].mean() == pytest.approx(288 - 120.5 - 18, abs=0.1)
    assert judged(built(text)).faults == {}


@pytest.mark.parametrize(
    ("text", "key", "remedy"),
    [
        (
            LONGER + SECOND + door("lean-to outer"),
            "wall",
            "one that is clad (left lean-to front, left lean-to",
        ),
        (SHED.replace(', "outer"', "") + door("lean-to outer"), "wall", "(lean-to front, lean-to back), by"),
        (
            SHED[: SHED.index("[[lean_to]]")] + door("lean-to front"),
            "wall",
            "no opening, since no wall of one",
        ),
        (
            SHED + door("leanto front"),
            "wall",
            "of a lean-to 'lean-to front', 'lean-to back' or 'lean-to outer', and so on",
        ),
        (SHED + door("lean-to front"), "from_left", "at most 5' 6\", to stand in the lean-to front wall"),
        (LONGER + door("lean-to front", "8 ft 5 in"), "from_left", "other wall's steel"),
        (LONGER + door("lean-to outer", "7 ft"), "from_left", "clear of the column"),
    ],
)
def test_an_opening_that_its_walls_cannot_have_is_refused(text: str, key: str, remedy: str) -> None:
    problem = refusal(text)
    assert problem.key == f"opening[1].{key}"
    assert remedy in problem.remedy
