"""Lean-tos along a gable: hand calculations held against the parts, what cannot be, every judge there is.

In inches. The shed is 18 ft wide under 4 in 12 from eaves of 12 ft, its frames 10 ft apart; its lean-to is
9 ft wide under 2 in 12 from an eave of 8 ft, so that its steel plane meets the gable at 114, its ledger's
underside at 110. A post stands in the middle of the gable, and a frame of the lean-to at it.
"""

from __future__ import annotations

from functools import cache
from math import floor, hypot

import pytest
from ribwright.description.building import Building
from ribwright.intake import parse
from ribwright.measure.clad_planes import clad_planes
from ribwright.measure.placing import face_plans
from ribwright.order.lists.schedule import schedule
from ribwright.pieces import Model, Piece
from ribwright.raising import raise_building
from ribwright.units import INCH
from support.judged import judged
from support.lean_tos import SHED as AT_SIDE
from support.lean_tos import spread
from support.refused import refusal, refusals

OPEN = AT_SIDE.replace('"left"', '"front"')
SHED = OPEN + 'walls = ["left", "right", "outer"]\n'
SECOND = SHED[SHED.index("[[lean_to]]") :].replace('"front"', '"back"')
WIDE = SHED.replace('"18 ft"', '"30 ft"').replace('"12 ft"', '"13 ft"').replace('"9 ft"', '"12 ft"')
ROOM = 2.1 * 0.0217
CROWN = 0.0217 + 3 / 4 + 2 * 0.0172
SLOPE = hypot(12, 2) / 12
ROOF, LEDGE = 96 + 108 * 2 / 12, 96 + 108 * 2 / 12 - 4
BEND = ROOF + (CROWN + ROOM) * SLOPE
FOOT = BEND + ROOM + 1 / 2
PAST, LEG = 1.0, 5.625
"""Of gable sheets past a corner, over the ends of the side wall's; the legs of a corner trim."""


def halves(length: float) -> float:
    """A length in whole half inches."""
    return floor(2 * length) / 2


def built(text: str = SHED) -> Building:
    return parse(text, "shed")


@cache
def raised() -> Model:
    return raise_building(built()).model


def reach(name: str) -> tuple[list[float], list[float]]:
    return spread(raised(), name)


def sheets(start: str) -> list[Piece]:
    return [p for p in raised().pieces if p.role.endswith("sheet") and p.name.startswith(start)]


def test_its_roof_sheets_are_of_one_length_and_two_marks() -> None:
    """Six over 18 ft from a corner, their ends 1/2 in off the gable; the last one is ripped."""
    assert halves((2 + 108 - 1 / 2) * SLOPE) == 111
    rows = [row for row in schedule(raised()).rows if "lean-to front slope" in row.faces]
    assert sorted((row.count, round(row.length / INCH, 3)) for row in rows) == [(1, 111), (5, 111)]


def test_the_gables_sheets_stop_under_the_ledger_and_begin_again_over_the_bend_up_to_the_rake() -> None:
    assert (len(sheets("front lower")), len(sheets("front"))) == (6, 12)
    low, high = reach("front lower 2")
    assert (low[2], high[2]) == pytest.approx((ROOM, ROOM + halves(LEDGE - 1 / 8 - ROOM)), abs=0.002)
    # A post in the middle, 4 wide: the first sheet's edge is flush with it, so its legs end at 72 and 110.
    low, high = reach("front 2")
    assert (low[0], high[0]) == pytest.approx((36, 74), abs=0.002)
    assert (low[2], high[2]) == pytest.approx((FOOT, 144 + 74 / 3 - 1 / 8), abs=0.002)


def test_its_frames_stand_at_the_corner_columns_and_the_post_and_end_on_them() -> None:
    for number, (end, middle) in enumerate((("frame 1 right column", 210), ("front post 1", 108)), 1):
        rafter, upright = reach(f"lean-to frame {number} front rafter"), reach(end)
        assert rafter[1][1] == pytest.approx(upright[0][1], abs=1e-6)
        assert (rafter[0][0] + rafter[1][0]) / 2 == pytest.approx(middle, abs=1e-6)
        assert upright[0][0] <= rafter[0][0] and rafter[1][0] <= upright[1][0]
    assert reach("lean-to frame 3 front rafter")[1][1] == pytest.approx(4, abs=1e-6)
    assert not [p for p in raised().pieces if p.name.startswith("lean-to frame 4")]


@pytest.mark.parametrize(("end", "side"), [("left", -1), ("right", 1)])
def test_an_end_in_line_with_a_side_wall_stops_short_of_the_gable_under_one_flat_trim(
    end: str, side: int
) -> None:
    short, corner = PAST + 1 / 8, 0 if side < 0 else 216
    for what in ("3", "base trim", "end jamb"):
        assert reach(f"lean-to {end} {what}")[1][1] == pytest.approx(-short, abs=0.002), what
    low, high = reach(f"lean-to {end} in-line trim")
    assert (low[1], high[1]) == pytest.approx((-short - LEG + PAST, LEG - CROWN), abs=0.002)
    # It lies over the gable sheets' overrun, which stands out further than the side wall's crowns.
    faces = sorted(abs(x - corner) for x in (low[0], high[0]))
    assert faces == pytest.approx((PAST, PAST + 0.0217), abs=0.002)
    # Cut along the roof's steel plane, 1/4 under it; the corner trim over it 1/8 higher.
    assert high[2] == pytest.approx(ROOF + high[1] * 2 / 12 - 1 / 4, abs=0.002)
    assert reach(f"front {end} corner trim")[0][2] == pytest.approx(ROOF - 1 / 8 - CROWN / 6, abs=0.02)
    assert reach(f"back {end} corner trim")[0][2] < 1


def test_the_flashing_reaches_up_behind_the_gables_sheets_and_down_over_the_roof() -> None:
    low, high = reach("lean-to headwall flashing 1")
    assert (high[1], high[2]) == pytest.approx((0, BEND + 4), abs=0.03)
    assert low[1] == pytest.approx(-5.5 / SLOPE, abs=0.05)
    assert reach("lean-to headwall flashing")[0][0] == pytest.approx(0, abs=0.002)
    assert reach("lean-to headwall flashing")[1][0] == pytest.approx(216, abs=0.002)


def test_its_faces_are_named_and_read_as_they_lie() -> None:
    plans = {plan.face: plan for plan in face_plans(raised(), clad_planes(raised()), {})}
    own = {face: (plan.start, len(plan.sheets)) for face, plan in plans.items() if "lean-to" in face}
    assert own == {
        "lean-to front": ("right", 6),
        "lean-to left": ("right", 3),
        "lean-to right": ("left", 3),
        "lean-to front slope": ("right", 6),
    }
    assert (plans["left"].start, plans["left"].said) == ("left", "from the left steel corner")


def test_one_slab_lies_under_both() -> None:
    (slab,) = (piece for piece in raised().pieces if piece.role == "slab")
    low, high = reach(slab.name)
    assert (low[1], high[1]) == pytest.approx((-108 - CROWN - 1, 240 + CROWN + 1), abs=0.002)


def opening(wall: str, from_left: str, kind: str = "walk door", sizes: str = "36 80", more: str = "") -> str:
    width, height = (f'"{size} in"' for size in sizes.split())
    place = f'wall = "{wall}"\nfrom_left = "{from_left}"\n{more}'
    return f'[[opening]]\nkind = "{kind}"\nwidth = {width}\nheight = {height}\n{place}'


DOORS = (
    opening("front", "10 ft 6 in")
    + opening("lean-to left", "5 ft")
    + opening("lean-to outer", "3 ft")
    + opening("front", "3 ft", "window", "36 24", 'sill = "4 ft"\n')
    + opening("front", "12 ft", "vent", "48 24", 'sill = "13 ft"\n')
)

OTHERS = {
    "its outer wall clad, flush girts": OPEN + 'walls = "outer"\n[framing]\ngirts = "flush"\n',
    "its ends clad, flush girts": SHED + '[framing]\ngirts = "flush"\n',
    "one at each gable": SHED + SECOND,
    "openings under it, over it and in it": WIDE + DOORS,
    "posts where they are said": WIDE + '[frame]\nfront_posts = ["8 ft", "14 ft", "22 ft"]\n',
    "deeper ribs on the gables": SHED + '[gable_sheets]\nprofile = "36 x 12 x 1-1/4"\n',
    "deeper ribs on all but the gables, no posts": SHED
    + '[frame]\nfront_posts = "none"\n'
    + '[sheets]\nprofile = "36 x 12 x 1-1/4"\n[gable_sheets]\nprofile = "36 x 9 x 3/4"\n',
    "a wainscot": OPEN + '[wainscot]\nheight = "42 in"\n',
    "steep, on zees, under a single slope": SHED.replace("2/12", "4/12").replace('"8 ft"', '"7 ft"')
    + '[frame]\nrafter = "tube 6x6x0.12"\n[framing]\ngirt = "zee 6x2.5x0.07"\npurlin = "zee 8x2.5x0.07"\n'
    + '[roof]\nshape = "single slope"\nfalls_to = "right"\n',
    "gutters, blankets, a run from a corner": SHED
    + '[trim]\ngutters = "low eaves"\n[insulation]\nwalls = "4 in"\nroof = "4 in"\n[runs]\nfront = "left"\n',
    "open side walls": OPEN + '[walls]\nleft = "open"\nright = "open in bay 1"\n',
    "in millimetres": """
units = "mm"
width = "9 m"
length = "12 m"
eave_height = "4.5 m"
pitch = "10 deg"
[[lean_to]]
wall = "back"
width = "3.3 m"
pitch = "8 deg"
eave_height = "2.6 m"
walls = ["right", "outer"]
""",
}


@pytest.mark.parametrize("text", OTHERS.values(), ids=OTHERS)
def test_it_closes_whatever_is_about_it(text: str) -> None:
    assert judged(built(text)).faults == {}


ACROSS = opening("front", "3 ft", "window", "36 36", 'sill = "7 ft 6 in"\n')


@pytest.mark.parametrize(
    ("text", "key", "remedy"),
    [
        (
            OPEN + SECOND.replace('"back"', '"left"'),
            "lean_to[2].wall",
            '"back": around a corner two are not yet',
        ),
        (OPEN + SECOND.replace('"back"', '"front"'), "lean_to[2].wall", '"back": one lean-to stands'),
        (OPEN + 'walls = ["front"]\n', "lean_to[1].walls", '"left" or "right", the ends of one at this wall'),
        (AT_SIDE + 'walls = "left"\n', "lean_to[1].walls", '"back" or "front", the ends'),
        (
            OPEN + '[bracing]\nbrace = "rod 5/8"\n',
            "bracing.brace",
            "not yet possible with a lean-to at a gable",
        ),
        (OPEN + '[walls]\nfront = "open"\n', "walls.front", 'between = "open"'),
        (OPEN + '[walls]\nfront = "infill"\n', "walls.front", "not yet possible with a lean-to"),
        (SHED + '[walls]\nleft = "open"\n', "walls.left", 'walls without "left"'),
        (
            OPEN + '[frame]\nfront_posts = ["8 ft", "9 ft"]\n',
            "frame.front_posts",
            "the lean-to's rafters stand on them",
        ),
        (OPEN + ACROSS, "lean_to[1].eave_height", "its roof ends at the wall across the window there"),
        (
            SHED + opening("lean-to front", "3 ft"),
            "opening[1].wall",
            "lean-to left, lean-to right, lean-to outer",
        ),
    ],
)
def test_what_it_cannot_stand_with_is_refused_by_its_key(text: str, key: str, remedy: str) -> None:
    problems = refusals(text)
    said = {problem.key: problem.remedy for problem in problems}
    assert key in said and remedy in said[key], said


def test_the_highest_that_is_said_is_built_and_sound() -> None:
    """The strip over the flashing is the gable's raked sheets, 8 in under its rake trims at the corners."""
    text = OPEN.replace('eave_height = "8 ft"', 'eave_height = "10 ft"')
    problem = refusal(text)
    assert problem.key == "lean_to[1].eave_height"
    most, why = problem.remedy.removeprefix("at most ").split(": ")
    assert why == "its flashing stays 8 in under the front wall's rake trims"
    spelled = most.replace("'", " ft").replace('"', " in")
    mended = built(text.replace('eave_height = "10 ft"', f'eave_height = "{spelled}"'))
    assert judged(mended).faults == {}
    room = 144 - (1 / 8 + 1.5) * hypot(12, 4) / 12 - 8 - (CROWN + ROOM) * SLOPE - 18
    assert mended.lean_tos[0].eave_height / INCH == pytest.approx(room, abs=1 / 16)
