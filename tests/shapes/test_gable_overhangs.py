"""Roofs that run on over their gables: what stands where, by hand, off the solids, and every judge there is.

Lengths in inches. Trim is 0.0217 in thick; two thicknesses and a little, 2.1 of them, are the room that
pieces of a run lap in, each riding on the one before. Purlins are 4 in deep, and square to a slope of 4 in
12 that is 4 * sqrt(160) / 12 in plumb.
"""

from __future__ import annotations

from collections import Counter
from math import ceil, sqrt

import numpy as np
import pytest
from ribwright.findings import Code
from ribwright.intake import parse
from ribwright.pieces import Model
from ribwright.raising import raise_building
from ribwright.solids.placed import placed_triangles
from ribwright.units import INCH
from support.judged import judged
from support.refused import refusal, refusals

TRIM = 0.0217
LAP = 2.1 * TRIM
PLUMB = sqrt(12**2 + 4**2) / 12
PURLIN, HEAD, LIP, SIDE = 4, 1 / 8, 1 / 2, 1
"""Depth of a purlin; between what lies over them and heads; the J's lip; from the steel corner to the corner
trim's inner face: the leg of the gable's sheets."""

SHED = 'width = "24 ft"\nlength = "30 ft"\neave_height = "10 ft"\npitch = "4/12"\n'
OVER = SHED + '[roof]\ngable_overhang = "12 in"\n'


@pytest.fixture(scope="module")
def shed() -> Model:
    return raise_building(parse(OVER, "shed")).model


def reach(model: Model, *names: str) -> tuple[list[float], list[float]]:
    """Least and greatest x, y, z of the pieces whose names begin so, in inches."""
    told = [p for p in model.pieces if p.name.startswith(names) and not p.name.endswith("screws")]
    points = np.vstack([points for points, _ in placed_triangles(told)]) / INCH
    return points.min(axis=0).tolist(), points.max(axis=0).tolist()


def test_purlins_struts_and_sheets_run_on(shed: Model) -> None:
    for names in (["left slope 1", "left slope 11"], ["left eave strut"]):
        low, high = reach(shed, *names)
        assert (low[1], high[1]) == pytest.approx((-12, 372), abs=1e-6)
    # 32 ft of roof are, at a cover of 36 in and legs of 1 in, eleven sheets a slope; 30 ft would be ten.
    count = Counter(piece.role for piece in shed.pieces)
    assert count["roof sheet"] == 2 * ceil((384 - 2) / 36) == 22
    # The rake angle closes the purlins' ends out there, the rake trim stands before it.
    assert reach(shed, "front rake angle")[0][1] == pytest.approx(-12, abs=1e-6)
    assert reach(shed, "front left rake trim")[0][1] == pytest.approx(-12 - LAP - 2 * TRIM, abs=0.001)


def test_the_gables_sheets_stop_under_the_purlins(shed: Model) -> None:
    sheets = [p.name for p in shed.pieces if p.role == "wall sheet" and p.label("face") == "front"]
    assert reach(shed, *sheets)[1][2] == pytest.approx(120 + 48 - PURLIN * PLUMB - HEAD, abs=0.001)
    # The angle behind their heads hangs right under the purlins, its face on the steel line.
    low, high = reach(shed, "front hung rake angle")
    assert low[1] == pytest.approx(0, abs=1e-6)
    assert high[2] == pytest.approx(168 - PURLIN * PLUMB, abs=0.01)


def test_trims_at_the_corner_end_under_what_runs_on(shed: Model) -> None:
    # The lip of the J at the heads ends 4 in, a lap's room and 1/2 in under the roof, square; corner trims
    # end a lap's room under that at the steel corner, so lower by the slope at their outer edge.
    head = (PURLIN + LAP + LIP) * PLUMB + LAP
    points = np.vstack(
        [
            points
            for points, _ in placed_triangles([p for p in shed.pieces if p.name == "front left corner trim"])
        ]
    )
    above = (points / INCH)[:, 2] - 120 - (points / INCH)[:, 0] * 4 / 12
    assert above.max() == pytest.approx(-head, abs=1e-3)
    # The eave trim reaches an inch past their heads, and runs as far as the rake trims.
    low, high = reach(shed, "left eave trim")
    assert low[2] == pytest.approx(120 - (SIDE + LAP) * 4 / 12 - head - 1, abs=0.01)
    assert (low[1], high[1]) == pytest.approx((-12 - LAP, 372 + LAP), abs=1e-6)


def test_the_open_gap_over_a_clad_gable_is_said() -> None:
    said = [f for f in raise_building(parse(OVER, "shed")).findings if f.code is Code.OPEN_OVER_GABLE]
    assert [(f.pieces, f.measured, f.fault) for f in said] == [
        (("back",), PURLIN * INCH, False),
        (("front",), PURLIN * INCH, False),
    ]
    open_front = parse(OVER + '[walls]\nfront = "open"\n', "shed")
    said = [f for f in raise_building(open_front).findings if f.code is Code.OPEN_OVER_GABLE]
    assert [f.pieces for f in said] == [("back",)]


SMALL = 'width = "14 ft"\nlength = "14 ft"\neave_height = "8 ft"\n'
SHAPES = {
    "a single slope": SMALL + 'pitch = "2/12"\n[roof]\nshape = "single slope"\ngable_overhang = "6 in"\n',
    "gutters": SMALL + 'pitch = "6/12"\n[roof]\ngable_overhang = "8 in"\n[trim]\ngutters = "low eaves"\n',
    "flush girts, steep": SMALL
    + 'pitch = "9/12"\n[roof]\ngable_overhang = "24 in"\n[framing]\ngirts = "flush"\n',
    "two pitches, deep purlins": SMALL
    + 'pitch = "3/12"\n[roof]\nridge = "5 ft"\nright_eave_height = "7 ft"\ngable_overhang = "9 in"\n'
    + '[framing]\npurlin = "zee 8x2.5x0.060"\n',
    "open at one side and one end": SMALL
    + 'pitch = "4/12"\n[roof]\ngable_overhang = "1 ft"\n[walls]\nleft = "open"\nfront = "open"\n',
    "the upright beside a stretch of an open side": SMALL
    + 'pitch = "6/12"\n[roof]\ngable_overhang = "9 in"\n[walls]\nleft = "open in bay 1"\n',
    "metric, tall ribs, a wainscot": 'units = "mm"\nwidth = "5 m"\nlength = "5 m"\neave_height = "2800 mm"\n'
    'pitch = "12 deg"\n[roof]\ngable_overhang = "300 mm"\n[sheets]\nprofile = "1000 x 250 x 35"\n'
    '[wainscot]\nheight = "1 m"\n',
    "trim an eighth of an inch where it laps, deep purlins": SMALL
    + 'pitch = "12/12"\n[roof]\ngable_overhang = "9 in"\n[sheets]\nflange = "1/16 in"\n'
    + '[framing]\npurlin = "zee 8x2.5x0.060"\n',
    "a skirt, its end jambs up to struts less deep than the purlins": 'width = "6 ft"\nlength = "12 ft"\n'
    'eave_height = "88 in"\npitch = "3/12"\n[skirt]\nfoot = "4 ft"\nwalls = "gables"\n'
    '[roof]\ngable_overhang = "24 in"\n[framing]\npurlin = "cee 6x2.5x0.059"\n',
    "steep, over infill, the gap of the other gable open": 'width = "15 ft"\nlength = "13 ft"\n'
    'eave_height = "128 in"\npitch = "9/12"\n[roof]\ngable_overhang = "9 in"\n[walls]\nback = "infill"\n',
}


@pytest.mark.parametrize("text", SHAPES.values(), ids=SHAPES)
def test_a_roof_that_runs_on_is_sound(text: str) -> None:
    assert judged(parse(text, "over")).faults == {}


@pytest.mark.parametrize(
    ("keys", "said", "words"),
    [
        ('[roof]\ngable_overhang = "3 in"\n', "roof.gable_overhang", '0, or at least 4"'),
        ('[roof]\ngable_overhang = "25 in"\n', "roof.gable_overhang", "at most 2'"),
        # Over the gable's sheets a strut is at most 4 * sqrt(160) / 12 in, less 4/12 of the 2-1/4 in across.
        (
            '[roof]\ngable_overhang = "12 in"\n[framing]\neave_strut = "cee 6x2x0.059"\n',
            "framing.eave_strut",
            'at most 3-7/16" deep',
        ),
        (
            '[roof]\ngable_overhang = "12 in"\n[[lean_to]]\nwall = "left"\nwidth = "8 ft"\npitch = "2/12"\n'
            'eave_height = "7 ft"\n',
            "roof.gable_overhang",
            "not yet possible with a lean-to",
        ),
    ],
)
def test_what_no_steel_carries_is_refused(keys: str, said: str, words: str) -> None:
    problems = refusals(SHED + keys)
    assert [problem.key for problem in problems] == [said]
    assert words in problems[0].remedy


def test_a_gutter_runs_out_as_far_as_the_roof() -> None:
    """30 ft and a foot at each end, all but a hair at the folded ends; its downspout stands at the wall."""
    model = raise_building(parse(OVER + '[trim]\ngutters = "low eaves"\n', "over")).model
    points = {p.name: np.vstack([q for q, _ in placed_triangles([p])]) / INCH for p in model.pieces}
    gutter, spout = points["left gutter"], points["left downspout 1"]
    assert (gutter[:, 1].min(), gutter[:, 1].max()) == pytest.approx((-12, 360 + 12), abs=0.03)
    assert 0 < spout[:, 1].min() < spout[:, 1].max() < 360


def test_a_roof_too_steep_for_its_struts_is_refused_with_the_purlins_that_do() -> None:
    """13/12: over purlins 4 in deep the strut under the foam has no room for its row; 12/12 still has."""
    steep = SMALL + 'pitch = "{pitch}"\n[roof]\ngable_overhang = "1 ft"\n'
    parse(steep.format(pitch="12/12"), "over")
    problem = refusal(steep.format(pitch="13/12"))
    assert (problem.key, problem.remedy[:31]) == ("framing.purlin", 'a section at least 4-1/4" deep,')
    for pitch, purlin in (("12/12", "4x2"), ("13/12", "4.25x2")):
        text = steep.format(pitch=pitch) + f'[framing]\npurlin = "cee {purlin}x0.059"\n'
        assert not [f for f in raise_building(parse(text, "over")).findings if f.fault]


def test_an_opening_under_the_eave_keeps_clear_of_the_deeper_trim() -> None:
    door = '[[opening]]\nkind = "framed opening"\nwall = "left"\nwidth = "3 ft"\nfrom_left = "4 ft 1 in"\n'
    problem = refusal(f'{OVER}{door}height = "9 ft 6 in"\n')
    assert "eave trim" in problem.remedy
    height = problem.remedy.split("at most ")[1].split(":")[0]
    parse(f"{OVER}{door}height = '''{height}'''\n", "over")
