"""Lean-tos along some of a building's bays whose ends are clad: the trim in each inside corner by hand, off
the solids, every judge there is, faults planted there, and what cannot be.

In inches. The shed is 24 by 48 ft in bays of 12 ft, its frames' columns 4 by 4 behind girts 4 deep, so that
the lean-to's front end lies 4 + 2 = 6 before the second frame. Its roof meets the wall at 96 + 20 = 116.
"""

from __future__ import annotations

from functools import cache
from itertools import product

import pytest
from ribwright.audit import audit
from ribwright.audit.reach import reach as reached
from ribwright.catalog.profiles import profiles
from ribwright.catalog.trims import trim_profiles
from ribwright.findings import Code, words
from ribwright.intake import parse
from ribwright.layout.screws.inside_corner_screws import BESIDE_LEG
from ribwright.layout.screws.screw_kinds import EDGE, PAST_EDGE
from ribwright.order.buying.order_list import order
from ribwright.order.lists.schedule import schedule
from ribwright.papers.job import job_of
from ribwright.papers.places import details_of
from ribwright.pieces import Model
from ribwright.place import Point3
from ribwright.raising import raise_building
from ribwright.steps.raising_order import steps
from ribwright.units import INCH
from support.judged import judged
from support.lean_tos import spread
from support.plants import Plant, drop, move
from support.refused import refusals

SHED = """
width = "24 ft"
length = "48 ft"
eave_height = "12 ft"
pitch = "4/12"
[frame]
spacing = "12 ft"
[[lean_to]]
wall = "left"
width = "10 ft"
pitch = "2/12"
eave_height = "8 ft"
bays = [2, 3]
walls = ["front", "back", "outer"]
"""
TRIM = 0.0217
ROOM = 2.1 * TRIM
CROWN = TRIM + 3 / 4 + 2 * 0.0172
"""Of both walls' sheets, from their steel."""
SHORT = CROWN + ROOM + 1 / 8
"""From the main steel line to the end wall's sheets and steel: room for two thicknesses of trim, and 1/8."""
LEG = 5.0
ROOF = 96 + 120 * 2 / 12
START, END = 12 * 12 - 6, 36 * 12 + 6
CORNERS = ("lean-to front inside corner trim", "lean-to back inside corner trim")


@cache
def raised(text: str = SHED) -> Model:
    return raise_building(parse(text, "shed")).model


def reach(name: str, text: str = SHED) -> tuple[list[float], list[float]]:
    return spread(raised(text), name)


@pytest.mark.parametrize(("name", "end", "way"), [(CORNERS[0], START, -1), (CORNERS[1], END, 1)])
def test_a_trim_lies_over_the_ribs_of_both_walls_up_to_the_roof(name: str, end: float, way: int) -> None:
    """Bent where the crowns of both meet; from the sheets' feet to 1/4 under the roof's steel plane there,
    which falls 2 in 12 from the main wall."""
    low, high = reach(name)
    bend = end + way * CROWN
    assert (high[0], low[0]) == pytest.approx((-CROWN, -CROWN - LEG), abs=1e-3)
    assert sorted((low[1], high[1])) == pytest.approx(sorted((bend, bend + way * LEG)), abs=1e-3)
    assert (low[2], high[2]) == pytest.approx((ROOM, ROOF - CROWN * 2 / 12 - 1 / 4), abs=1e-3)


@pytest.mark.parametrize("end", ["front", "back"])
def test_the_sheets_and_the_steel_of_an_end_stop_short_of_the_main_wall_under_its_leg(end: str) -> None:
    """Girts and base rail on an upright, 4 deep, that the sheets end on too. Of the leg all but room and 1/8
    lies over them."""
    for what, steel in (("4", 0), ("base trim", 0), ("end jamb", 0), ("girt", 4), ("base rail", 4)):
        assert reach(f"lean-to {end} {what}")[1][0] == pytest.approx(-SHORT - steel, abs=1e-3), what
    covered = -reach(f"lean-to {end} inside corner trim")[0][0] - SHORT
    assert covered == pytest.approx(LEG - ROOM - 1 / 8, abs=1e-3)


def test_the_main_walls_sheets_run_on_behind_it() -> None:
    """From both sides of the end to beyond both edges of the leg, from the slab up to the lean-to's roof."""
    sheets = [p.name for p in raised().pieces if p.role == "wall sheet" and p.name.startswith("left ")]
    spans = [reach(name) for name in sheets]
    for at in (START - 7, START - CROWN, START, START + 1, END, END + 7):
        assert any(low[1] < at < high[1] and low[2] < 1 and high[2] > ROOF - 5 for low, high in spans), at


def test_its_screws_stand_in_both_walls_steel() -> None:
    """At the base rail and at every girt of the main wall under the roof; up the upright of the end."""
    girts = {round(reach(p.name)[0][2], 2) for p in raised().pieces if p.name.startswith("left girt ")}
    under = [v for v in sorted(girts) if v < ROOF - 4]
    for end, hand in (("front", "right"), ("back", "left")):
        heights = sorted(z for _, _, z in spots(f"lean-to {end} inside corner trim screws"))
        assert len(heights) == 1 + len(under) and heights[0] < 2
        assert all(girt < v < girt + 2 for v, girt in zip(heights[1:], under, strict=True))
        own = spots(f"lean-to {end} inside corner trim {hand} screws")
        assert len(own) > 4 and all(-SHORT - 4 < x < -SHORT for x, _, _ in own)


def spots(name: str) -> list[Point3]:
    """Where the screws of a row stand, in inches."""
    (row,) = [piece for piece in raised().pieces if piece.name == name]
    return [tuple(x / INCH for x in row.place.point(at)) for at in row.row or ()]


@pytest.mark.parametrize("name", profiles())
def test_a_leg_finds_a_pan_wherever_a_rib_stands_under_it(name: str) -> None:
    """What a rib leaves of the strip for screws is more than a bend's room on one side at least."""
    legs, profile = trim_profiles()["inside corner"], profiles()[name]
    strip = legs.out_of_plane - BESIDE_LEG - EDGE - (ROOM - TRIM) * INCH
    assert (strip - profile.base) / 2 > PAST_EDGE


def test_it_is_on_every_list() -> None:
    lines = order(schedule(raised())).lines
    (line,) = [line for line in lines if line.kind == "inside corner trim"]
    assert line.count == 2
    told = [step for step in steps(raised()) if any(p.role == "inside corner trim" for p in step.pieces)]
    assert [step.name for step in told] == ["corner trim"]
    names = [detail.name for detail in details_of(job_of(raised()))]
    assert names.count("inside corner") == 1


def test_it_goes_up_after_the_sheets_and_nothing_is_trapped() -> None:
    order = [piece.name for step in steps(raised()) for piece in (*step.pieces, *step.folded)]
    assert not [f for f in reached(raised(), order) if any("inside corner" in name for name in f.pieces)]
    for name, piece in product(CORNERS, raised().pieces):
        if piece.role == "wall sheet":
            assert order.index(name) > order.index(piece.name)


OWN = SHED[SHED.index("[[lean_to]]") :]
AT_GABLE = """
width = "36 ft"
length = "30 ft"
eave_height = "12 ft"
pitch = "3/12"
[frame]
front_posts = ["12 ft", "24 ft"]
back_posts = ["12 ft", "24 ft"]
[[lean_to]]
wall = "back"
width = "8 ft"
pitch = "2/12"
eave_height = "8 ft"
bays = [2]
walls = ["left", "right", "outer"]
"""


def opening(kind: str, wall: str, left: str, size: str = "3 ft", sill: str = "3 ft") -> str:
    text = f'[[opening]]\nkind = "{kind}"\nwall = "{wall}"\nwidth = "3 ft"\nheight = "{size}"\n'
    return text + f'from_left = "{left}"\n' + (f'sill = "{sill}"\n' if sill else "")


FLUSH = SHED + '[framing]\ngirts = "flush"\n'
INSIDE = "clear of the inside corner trim"
SHAPES = {
    "both ends within their wall": SHED,
    "from a corner, right": SHED.replace('"left"', '"right"').replace("[2, 3]", "[1, 2]"),
    "one end, the other and the outer wall open": SHED.replace('"front", "back", "outer"', '"back"'),
    "at a gable's middle bay": AT_GABLE,
    "at a gable's first bay": AT_GABLE.replace('"back"\n', '"front"\n').replace("[2]", "[1]"),
    "deep ribs, others on the gables": SHED
    + '[sheets]\nprofile = "36 x 12 x 1-1/4"\n[gable_sheets]\nprofile = "36 x 9 x 3/4"\n',
    "steep, on zees": SHED.replace("2/12", "5/12").replace('"10 ft"', '"7 ft"')
    + '[framing]\ngirt = "8ZS2.25x059"\n',
    "flush girts": FLUSH,
    "flush girts, at a gable": AT_GABLE + '[framing]\ngirts = "flush"\n',
    "short sticks": SHED + '[trim]\nstock = ["7 ft"]\n',
    "openings as near as they may": SHED
    + opening("walk door", "left", "37 ft 1 in", "6 ft 8 in", "")
    + opening("window", "lean-to back", "7 in")
    + opening("window", "lean-to front", "77 in"),
    "one opposite, braced, gutters": SHED.replace("[2, 3]", "[2]")
    + OWN.replace('"left"', '"right"').replace("[2, 3]", "[4]")
    + '[bracing]\nbays = [3]\nbrace = "rod 5/8"\n[trim]\ngutters = "low eaves"\n',
    "insulated, metric": 'units = "mm"\nwidth = "6 m"\nlength = "9 m"\neave_height = "3.8 m"\n'
    'pitch = "12 deg"\n[sheets]\nprofile = "1000 x 250 x 35"\n[frame]\nspacing = "3 m"\n[insulation]\n'
    'walls = "80 mm"\n[[lean_to]]\nwall = "right"\nwidth = "2.5 m"\npitch = "8 deg"\neave_height = "2.4 m"\n'
    'bays = "2"\nwalls = ["front", "back", "outer"]\n',
    "single slope": SHED.replace("4/12", "2/12") + '[roof]\nshape = "single slope"\nfalls_to = "right"\n',
}


@pytest.mark.parametrize("text", SHAPES.values(), ids=SHAPES)
def test_it_closes_whatever_is_about_it(text: str) -> None:
    assert judged(parse(text, "shed")).faults == {}


@pytest.mark.parametrize(
    ("more", "key", "remedy"),
    [
        (opening("walk door", "left", "36 ft 8 in", "6 ft 8 in", ""), "opening[1].from_left", INSIDE),
        (opening("window", "lean-to back", "6 in"), "opening[1].from_left", INSIDE),
        ('[wainscot]\nheight = "42 in"\n', "wainscot.height", "no wainscot"),
    ],
)
def test_what_cannot_be_is_refused_by_its_key(more: str, key: str, remedy: str) -> None:
    problems = refusals(SHED + more)
    said = {problem.key: problem.remedy for problem in problems}
    assert key in said and remedy in said[key], said


def test_a_window_across_an_inside_corner_is_none_over_the_roof() -> None:
    high = SHED.replace('"12 ft"\np', '"18 ft"\np')
    parse(high + opening("window", "left", "36 ft 8 in", sill="13 ft"), "shed")


def test_the_main_frame_in_the_plane_of_an_end_is_the_main_walls_steel() -> None:
    """With flush girts its column stands there up to the main eave: no sheet of the end is due on it, but on
    all of the end's own."""
    assert audit(raised(FLUSH), ("cover",)).findings == ()
    for number, code in ((3, Code.UNCOVERED), (4, Code.RAW_EDGE)):
        found = audit(drop(f"lean-to front {number}")(raised(FLUSH)), ("cover",)).findings
        assert code in {finding.code for finding in found}, number


def test_with_flush_girts_those_of_an_end_reach_its_upright() -> None:
    """No knee of its own stands at the main wall."""
    assert reach("lean-to front girt", FLUSH)[1][0] == pytest.approx(-SHORT - 4, abs=1e-3)
    ends = [
        reach(p.name, FLUSH)[1][0] for p in raised(FLUSH).pieces if p.name.startswith("lean-to front girt")
    ]
    assert ends == pytest.approx([-SHORT - 4] * len(ends), abs=1e-3)


PLANTS: dict[Code, list[Plant]] = {
    Code.RAW_EDGE: [*map(drop, CORNERS), move(CORNERS[0], (-60.0, 0.0, 0.0))],
    Code.WASHER_OFF: [move(CORNERS[0], (0.0, -12.0, 0.0)), move(CORNERS[1], (-12.0, 0.0, 0.0))],
}
CASES = [(code, number) for code, plants in PLANTS.items() for number in range(len(plants))]


@pytest.mark.parametrize(("code", "number"), CASES, ids=[f"{code.text} {n + 1}" for code, n in CASES])
def test_a_fault_planted_in_an_inside_corner_shows_its_code(code: Code, number: int) -> None:
    assert audit(raised(), (code.check,)).findings == ()
    found = audit(PLANTS[code][number](raised()), (code.check,)).findings
    assert code in {finding.code for finding in found}
    assert all(finding.at is not None and words(finding, "ft-in") for finding in found)
