"""The first twenty random buildings of an everyday length, judged in every way there is, and what longer runs
found wrong; `random_run.py` judges more of them, of any length."""

from __future__ import annotations

from itertools import islice

import pytest
from ribwright.audit import audit
from ribwright.description.building import Building
from ribwright.findings import Code
from ribwright.intake import parse
from ribwright.raising import raise_building
from support.judged import judged
from support.random_buildings import buildings
from support.second_witness import faults

pytestmark = pytest.mark.broad

LONG = 60_000.0
"""mm; a judge takes most of a minute over a thousand feet."""
EVERYDAY = ((drawn, building) for drawn, building in buildings() if building.length < LONG)
CASES = {str(drawn.number): building for drawn, building in islice(EVERYDAY, 20)}

SMALL = 'width = "12 ft"\nlength = "12 ft"\neave_height = "8 ft"\n'
DEEP_WAINSCOT = (
    'width = "16 ft"\nlength = "20 ft"\neave_height = "13 ft"\npitch = "4/12"\n'
    '[wainscot]\nheight = "42 in"\nprofile = "36 x 12 x 1-1/4"\n'
)


def opening(kind: str, wall: str, width: float, height: float, from_left: float, sill: float = 0.0) -> str:
    sizes = {"width": width, "height": height, "from_left": from_left, "sill": sill}
    lines = "".join(f'{key} = "{size} in"\n' for key, size in sizes.items())
    return f'[[opening]]\nkind = "{kind}"\nwall = "{wall}"\n{lines}'


FOUND = {
    "sheets that end on corner columns": SMALL + 'pitch = "6/12"\n[framing]\ngirts = "flush"\n',
    "a roof as steep as they go": SMALL + 'pitch = "18/12"\n',
    "a roof that ends at the eave trim": SMALL + 'pitch = "9/12"\n[sheets]\noverhang = "1-1/8 in"\n',
    "a header not as deep as the jambs": SMALL
    + 'pitch = "3/12"\n[framing]\nheader = "tube 2x2x0.120"\n'
    + opening("overhead door", "front", 40, 60, 50),
    "a slot in the ridge longer than the sticks of its cap": SMALL.replace("12 ft", "20 ft")
    + 'pitch = "3/12"\n[trim]\nstock = ["4 ft"]\ncorner_stock = ["10 ft"]\n'
    + '[ridge_vent]\nplaces = ["33 in"]\nlength = "94 in"\n',
    "an eave strut that is seen aslant, in triangles with a crack between": SMALL.replace("12 ft", "45 ft", 1)
    .replace("12 ft", "21 ft")
    .replace("8 ft", "10 ft")
    + 'pitch = "3/12"\n[roof]\nridge = "324.425 in"\n',
    "a base rail that ends before the next rib": SMALL.replace("12 ft", "22 ft", 1)
    + 'pitch = "1/12"\n[sheets]\nprofile = "36 x 12 x 1-1/4"\n[frame]\nplate_reach = "5.838 in"\n'
    + '[framing]\ngirts = "flush"\n[screws]\nends = "single"\n',
    "a corner trim of short sticks over a lean-to's in line": SMALL.replace("12 ft", "16 ft", 1)
    .replace("12 ft", "20 ft")
    .replace("8 ft", "13 ft")
    + 'pitch = "6/12"\n[[lean_to]]\nwall = "left"\nwidth = "8 ft"\npitch = "2/12"\neave_height = "7 ft"\n'
    + 'walls = ["front", "back", "outer"]\n[trim]\nstock = ["4 ft"]\n',
    "infill an inch or two high at its ends, in millimetres": SMALL.replace("12 ft", "18 ft", 1)
    .replace("12 ft", "26 ft")
    .replace("8 ft", "9 ft")
    + 'pitch = "0.5/12"\nunits = "mm"\n[walls]\nback = "infill"\n[insulation]\nwalls = "2 in"\n',
    "a base rail whose middle stands over the base trim's leg": SMALL
    + 'pitch = "3/12"\n[framing]\nbase_rail = "angle 3x2x0.075"\n',
    "a hat under hung sheets, its face over the drip's leg": SMALL
    + 'pitch = "3/12"\n[skirt]\nfoot = "4 ft"\nwalls = "front"\n[framing]\ngirt = "hat 4x3x0.0346"\n',
    "an upright wider than the strut under a deeper rake angle": SMALL.replace("12 ft", "24 ft")
    + 'pitch = "3/12"\n[skirt]\nfoot = "4 ft"\nwalls = "back"\n'
    + '[framing]\njamb = "cee 4x3x0.059"\nrake_angle = "angle 8.1x2x0.075"\n',
    "a lean-to under the gable of an open wall": SMALL.replace("8 ft", "13 ft").replace("12 ft", "20 ft")
    + 'pitch = "10 deg"\n[roof]\nshape = "single slope"\n[walls]\nright = "open"\n'
    + '[[lean_to]]\nbetween = "open"\nwall = "back"\nwidth = "8 ft"\npitch = "2/12"\neave_height = "7 ft"\n',
    "screws in two sticks of the trim over a trim in line": 'width = "16 ft"\nlength = "20 ft"\n'
    + 'eave_height = "13 ft"\npitch = "3/12"\n[trim]\nstock = ["54 in"]\n[[lean_to]]\nbetween = "open"\n'
    + 'wall = "left"\nwidth = "8 ft"\npitch = "2/12"\neave_height = "7 ft"\nwalls = "front"\n',
    "a wainscot of gables": 'width = "15 ft"\nlength = "20 ft"\neave_height = "126 in"\npitch = "3/12"\n'
    + '[wainscot]\nheight = "42 in"\nwalls = "gables"\n',
    "lap screws on a rib at the edge of a rake trim": 'width = "16 ft"\nlength = "20 ft"\n'
    + 'eave_height = "13 ft"\npitch = "9/12"\n[roof]\nright_eave_height = "17 ft 10 in"\n'
    + '[screws]\nstitch = "12 in"\n[roof_sheets]\nprofile = "1000 x 250 x 35"\n',
    "a long lap that ends beside an upright": SMALL.replace("12 ft", "20 ft").replace("8 ft", "44 ft")
    + 'pitch = "3/12"\n[framing]\nstock = ["200 ft"]\n[skirt]\nfoot = "4 ft"\nwalls = "front"\n'
    + '[sheets]\nend_lap = "24 in"\n',
    "deep ribs past a corner": 'width = "16 ft"\nlength = "19 ft"\neave_height = "8 ft"\n'
    'pitch = "4/12"\n[slab]\nhang = "2 in"\n[gable_sheets]\nprofile = "1000 x 250 x 35"\n',
    "feet as high as they may hang": SMALL + 'pitch = "3/12"\n[sheets]\nfoot_gap = "5/8 in"\n',
    "a ledge that ends the base trim behind the screws": SMALL
    + 'pitch = "3/12"\n[slab]\nledge_depth = "0.641 in"\n',
    "screws through trims where they lap": SMALL + 'pitch = "10 deg"\n[trim]\nlap = "12 in"\n',
    "a single screw a rib on a steep rake": SMALL + 'pitch = "18/12"\n[screws]\nends = "single"\n',
    "a single screw a rib on a rake of 45 degrees": 'width = "21 ft"\nlength = "12 ft"\n'
    'eave_height = "8 ft"\npitch = "12/12"\n[screws]\nends = "single"\n',
    "a jamb just out of reach of a corner": SMALL
    + 'pitch = "3/12"\n'
    + opening("window", "left", 50, 12, 8.5, 19),
    "a lean-to too short for a purlin": 'width = "16 ft"\nlength = "20 ft"\neave_height = "12 ft"\n'
    'pitch = "4/12"\n[framing]\npurlin_spacing = "10 ft"\n'
    '[[lean_to]]\nwall = "left"\nwidth = "8 ft"\npitch = "2/12"\neave_height = "7 ft"\n',
    "end laps in a roof whose ends are asked for single": 'width = "24 ft"\nlength = "10 ft"\n'
    'eave_height = "8 ft"\npitch = "3/12"\n[sheets]\nlongest = "11 ft"\n[screws]\nends = "single"\n',
    "a rake screw beside the trim of a high corner": 'width = "16 ft"\nlength = "12 ft"\n'
    'eave_height = "13 ft"\npitch = "22.5 deg"\n[roof]\nshape = "single slope"\n',
    "trim an eighth of an inch thick, at a ridge and over a lean-to": 'width = "16 ft"\nlength = "20 ft"\n'
    'eave_height = "12 ft"\npitch = "4/12"\n[sheets]\nflange = "1/16 in"\n'
    '[roof_sheets]\nprofile = "36 x 12 x 1-1/4"\n'
    '[[lean_to]]\nwall = "left"\nwidth = "8 ft"\npitch = "0.5/12"\neave_height = "7 ft"\n',
    "short sticks up a rake far from the corner that all is measured from": 'width = "23 ft"\n'
    'length = "11 ft"\neave_height = "17 ft"\npitch = "3/12"\n[trim]\nrake_stock = ["4 ft"]\n',
    "an infill's girt under rake angles deeper than the strut": 'width = "23 ft"\nlength = "12 ft"\n'
    'eave_height = "12 ft"\npitch = "1/12"\n[walls]\nback = "infill"\n'
    '[framing]\npurlin = "zee 8x2.5x0.059"\n',
    "a gable's girt just over the strut of an open wall": 'width = "24 ft"\nlength = "24 ft"\n'
    'eave_height = "106 in"\npitch = "9/12"\n[walls]\nright = "open"\n'
    '[roof]\nright_eave_height = "165.1 in"\n[framing]\ngirt_spacing = "32.7 in"\n',
    "the last stick of a rake longer than the one with a tab": 'width = "14 ft"\nlength = "16 ft"\n'
    'eave_height = "10 ft"\npitch = "10 deg"\n[trim]\nstock = ["4 ft"]\ngutters = "low eaves"\n',
    "sticks of corner trim that end near a seam": 'width = "21 ft"\nlength = "12 ft"\n'
    'eave_height = "92 in"\npitch = "4/12"\n[wainscot]\nheight = "42 in"\n[trim]\ncorner_stock = ["4 ft"]\n',
    "an eighth of an inch of a leg beside an opening": SMALL
    + 'pitch = "3/12"\n[sheets]\ncut_clearance = "1/2 in"\n'
    + opening("framed opening", "right", 21, 20, 14.375, 8),
    "a drip under the ribs of a wainscot of another profile": 'width = "12 ft"\nlength = "12 ft"\n'
    'eave_height = "8 ft"\npitch = "3/12"\n[wainscot]\nheight = "42 in"\nprofile = "36 x 12 x 1-1/4"\n'
    + opening("roll-up door", "front", 62, 30, 40),
    "roof screws at a steep high eave, and its trim": 'width = "12 ft"\nlength = "13 ft"\n'
    'eave_height = "8 ft"\npitch = "16/12"\n[roof]\nshape = "single slope"\n'
    '[framing]\neave_strut = "cee 5x2.75x0.059"\n',
    "an eave trim with most of the building outside it": 'width = "6 ft"\nlength = "16 ft"\n'
    'eave_height = "13 ft"\npitch = "12/12"\n[[lean_to]]\nwall = "left"\nwidth = "8 ft"\npitch = "2/12"\n'
    'eave_height = "7 ft"\n',
    "sheets hung on a gable beside a bay that is open": 'width = "8 ft"\nlength = "24 ft"\n'
    'eave_height = "112 in"\npitch = "9/12"\n[skirt]\nfoot = "4 ft"\nwalls = "gables"\n'
    '[frame]\nspacing = "12 ft"\nfront_posts = "centre"\n[walls]\nright = "open in bay 1"\n',
    "jambs deeper than a gable's girts under a flat rafter": 'width = "19 ft"\nlength = "14 ft"\n'
    'eave_height = "102 in"\npitch = "1/12"\n[framing]\neave_strut = "cee 8x2.5x0.059"\n'
    'girt = "tube 3.5x2x0.120"\n[frame]\nback_posts = "none"\n'
    + opening("framed opening", "back", 94, 73.5, 66),
    "a sheet's edge over a door that no rib brings a screw": 'width = "12 ft"\nlength = "29 ft"\n'
    'eave_height = "115 in"\npitch = "1/12"\n[screws]\nends = "single"\n'
    '[framing]\njamb = "cee 3x2x0.059"\nheader = "tube 3.5x2x0.120"\n'
    + opening("walk door", "left", 35.875, 60.25, 67.3125),
    "a girt just over the foot of a rake angle deeper than the strut": 'width = "16 ft"\nlength = "20 ft"\n'
    'eave_height = "13 ft"\npitch = "9/12"\n[[lean_to]]\nwall = "left"\npitch = "2/12"\n'
    'eave_height = "7 ft"\nwidth = "166.12 in"\n[roof]\nright_eave_height = "121.743 in"\n'
    '[framing]\nrake_angle = "angle 8.1x2x0.075"\n',
    "half walls under an eave three sheets high": 'width = "12 ft"\nlength = "12 ft"\neave_height = "24 ft"\n'
    'pitch = "3/12"\n[sheets]\nlongest = "8 ft"\nprofile = "1000 x 250 x 35"\ngauge = 22\n'
    '[half_wall]\nheight = "38 in"\n',
    "a corner trim's screw beside the head of a sheet that another covers": 'width = "20 ft"\n'
    'length = "20 ft"\neave_height = "60 ft"\npitch = "9/12"\n[framing]\nstock = ["200 ft"]\n'
    '[walls]\nright = "open in bay 1"\n[roof]\nshape = "single slope"\n',
    "a corner trim's screw beside the foot of a hung sheet that covers another": 'width = "20 ft"\n'
    'length = "20 ft"\neave_height = "40 ft"\npitch = "12/12"\n[framing]\nstock = ["200 ft"]\n'
    '[skirt]\nfoot = "4 ft"\nwalls = "gables"\n[wainscot]\nheight = "42 in"\n',
    "a hung sheet's last rib where it laps over another": SMALL.replace("8 ft", "16 ft")
    + 'pitch = "6/12"\n[sheets]\nlongest = "110 in"\n[skirt]\nfoot = "4 ft"\nwalls = "gables"\n',
    "a sheet's screws up a column, beside the head of the one under it": SMALL.replace("8 ft", "20 ft")
    + 'pitch = "6/12"\n[sheets]\nlongest = "110 in"\n[screws]\napart = "12 in"\n'
    '[skirt]\nfoot = "4 ft"\nwalls = "gables"\n',
    "a hung sheet's last rib where it laps over another, on a column": 'width = "12 ft"\nlength = "16 ft"\n'
    'eave_height = "16 ft"\npitch = "6/12"\n[sheets]\nlongest = "130 in"\n[screws]\napart = "8 in"\n'
    '[framing]\ngirts = "flush"\n[skirt]\nfoot = "4 ft"\nwalls = "all"\n',
    "a narrow window beside a corner": 'width = "10 ft"\nlength = "12 ft"\neave_height = "112 in"\n'
    'pitch = "2/12"\n' + opening("window", "right", 6, 27.5, 14, 55.125),
    "a sheet over a window, level with those beside it that lap": 'width = "12 ft"\nlength = "20 ft"\n'
    'eave_height = "16 ft"\npitch = "3/12"\n[sheets]\nlongest = "10 ft"\n[frame]\nspacing = "20 ft"\n'
    + opening("window", "left", 61, 24, 28, 132),
    "feet that whole steps would lift out of a flashing's reach": 'width = "16 ft"\nlength = "20 ft"\n'
    'eave_height = "13 ft"\npitch = "10 deg"\n[roof_sheets]\nprofile = "1000 x 250 x 35"\n'
    '[[lean_to]]\nbays = 1\nwall = "right"\nwidth = "8 ft"\npitch = "2/12"\neave_height = "7 ft"\n',
    "a strip of one rib between a door and a lap, in three lengths": 'width = "20 ft"\nlength = "12 ft"\n'
    'eave_height = "22 ft"\npitch = "4/12"\n[sheets]\nprofile = "36 x 12 x 1-1/4"\nlongest = "14 ft"\n'
    + opening("framed opening", "front", 12, 240, 104.25),
    "a downspout before the trim of a wainscot that deep gables set far out": SMALL
    + 'pitch = "3/12"\n[wainscot]\nheight = "42 in"\n[gable_sheets]\nprofile = "1000 x 250 x 35"\n'
    '[trim]\ngutters = "low eaves"\n',
    "a lean-to's rake trim at a corner that a deep wainscot sets far out": DEEP_WAINSCOT
    + '[[lean_to]]\nwall = "left"\nwidth = "8 ft"\npitch = "2/12"\neave_height = "7 ft"\n',
    "a lean-to's rake trim at a gable with a deep wainscot": DEEP_WAINSCOT
    + '[[lean_to]]\nwall = "back"\nwidth = "8 ft"\npitch = "2/12"\neave_height = "7 ft"\n',
    "rakes' screws that move to the edge of pieces that ride on others": SMALL
    + 'pitch = "18/12"\n[trim]\nlap = "12 in"\nrake_stock = ["4 ft"]\n'
    '[sheets]\nflange = "1/16 in"\n[screws]\napart = "6 in"\n',
    "a tier trim that leans, notched around the flange of a jamb angle": 'width = "12 ft"\nlength = "23 ft"\n'
    + 'eave_height = "109 in"\npitch = "12/12"\n[wainscot]\nheight = "42 in"\n[sheets]\nflange = "1/16 in"\n'
    + opening("overhead door", "left", 44.3125, 91.1875, 202),
}


SAID = {
    "a door whose edge is on the rib where two sheets lap": (
        'width = "24 ft"\nlength = "12 ft"\neave_height = "8 ft"\npitch = "3/12"\n'
        + opening("walk door", "front", 54.8125, 67.125, 51.875),
        {"front 2", "front 3"},
    ),
    "foam over all of a strut's flange under a steep eave": (
        SMALL + 'pitch = "18/12"\n[framing]\ngirts = "flush"\n[roof]\nright_eave_height = "7 ft"\n',
        {f"{side} {number}" for side in ("left", "right") for number in range(1, 5)},
    ),
    "a strip of one rib, without a pan, between a door and a lap": (
        'width = "9 ft"\nlength = "23 ft"\neave_height = "129 in"\npitch = "4/12"\n'
        '[wainscot]\nheight = "42 in"\n' + opening("walk door", "left", 20.875, 106.3125, 230.75),
        {"left 7", "left wainscot 7b"},
    ),
    "a last strip with a rib over the ends of rails and girts": (
        'width = "18 ft"\nlength = "12 ft"\neave_height = "8 ft"\npitch = "3/12"\n'
        '[frame]\npost = "tube 6x6x0.120"\n',
        {"back 4"},
    ),
    "a rail before a strip of a wainscot that shows no pan": (
        SMALL.replace("8 ft", "11 ft")
        + 'pitch = "3/12"\n[wainscot]\nheight = "36 in"\n[runs]\nright = "front"\n'
        + opening("sliding door", "right", 14.12, 79.875, 38.375)
        + 'slides = "right"\n',
        {"right 2", "right wainscot 2a"},
    ),
    "an edge whose screws slide apart to where it shows a flat": (
        SMALL.replace("12 ft", "9 ft", 1).replace("8 ft", "139 in")
        + 'pitch = "4/12"\n[framing]\ngirt_heights = ["35.58 in", "65.91 in"]\n'
        + opening("framed opening", "front", 16.6875, 24.875, 47.3125, 37.8125),
        {"front 1"},
    ),
    "what of a rib stands beside a door under the trim over a wainscot": (
        SMALL.replace("12 ft", "45 ft", 1).replace("12 ft", "9 ft").replace("8 ft", "11 ft")
        + 'pitch = "3/12"\n[wainscot]\nheight = "42 in"\n[sheets]\ncut_clearance = "0.164 in"\n'
        + opening("double door", "back", 103.375, 81.1875, 373.125),
        {"back 14", "back wainscot 14"},
    ),
    "upper sheets of a lap under a rail's cover": (
        SMALL.replace("12 ft", "20 ft").replace("8 ft", "44 ft")
        + 'pitch = "12/12"\n[framing]\nstock = ["60 ft"]\n'
        + opening("sliding door", "right", 22, 480, 52.4375),
        {"right 6a", "right 6b"},
    ),
    "the foot over the end of a rail's cover, where no rib of its sheet is": (
        SMALL.replace("12 ft", "20 ft", 1).replace("8 ft", "95 in")
        + 'pitch = "0.5/12"\n[screws]\nends = "single"\n'
        + opening("sliding door", "back", 23.81, 48, 58.6875)
        + 'slides = "apart"\n',
        {"back 2a"},
    ),
}
"""What the layout must say of itself: sheets that it leaves screws out of, and of no others."""


@pytest.mark.parametrize("building", CASES.values(), ids=CASES)
def test_a_random_building_is_sound(building: Building) -> None:
    assert judged(building).faults == {}


@pytest.mark.parametrize("text", FOUND.values(), ids=FOUND)
def test_what_a_long_run_found_is_mended(text: str) -> None:
    raised = raise_building(parse(text, "found"))
    assert raised.findings == ()
    assert {finding.code for finding in audit(raised.model).findings} <= {Code.TRIM_TO_TACK}
    assert faults(raised.model) == []


def test_a_thick_base_plates_edge_asks_for_no_screw() -> None:
    """The column's flange beside it is turned away, and the layout says so of the corner's trim."""
    text = SMALL.replace("12 ft", "16 ft", 1) + 'pitch = "6/12"\n[framing]\ngirts = "flush"\n'
    text += '[frame]\nplate_thickness = "0.712 in"\ncolumn = "cee 4x4x0.059"\n'
    assert Code.EDGE_LOOSE not in {
        finding.code for finding in audit(raise_building(parse(text, "found")).model).findings
    }


@pytest.mark.parametrize(("text", "sheets"), SAID.values(), ids=SAID)
def test_a_sheet_that_nothing_holds_is_named(text: str, sheets: set[str]) -> None:
    raised = raise_building(parse(text, "found"))
    assert {finding.code for finding in raised.findings} == {Code.SCREW_LEFT_OUT}
    assert {finding.pieces[0] for finding in raised.findings} == sheets
    faults = [finding for finding in audit(raised.model).findings if finding.fault]
    assert {finding.code for finding in faults} == {Code.EDGE_LOOSE}
    assert {piece for finding in faults for piece in finding.pieces} == sheets


def test_a_foot_that_leans_is_cut_clear_of_a_jamb_where_sheets_hang() -> None:
    text = (
        'width = "10 ft"\nlength = "18 ft"\neave_height = "111 in"\npitch = "4/12"\n[slab]\nhang = "6 in"\n'
    )
    model = raise_building(parse(text + opening("overhead door", "right", 40, 56, 22), "found")).model
    assert audit(model).findings == ()
    assert faults(model) == []


def test_a_stick_of_corner_trim_may_begin_where_it_is_cut_round_a_rafter() -> None:
    text = (
        'width = "16 ft"\nlength = "6 ft"\neave_height = "13 ft"\npitch = "1/12"\n'
        '[framing]\ngirts = "flush"\npurlin = "zee 8x2.25x0.05 wider 0.1875"\n'
        '[[lean_to]]\nwall = "left"\nwidth = "8 ft"\npitch = "2/12"\neave_height = "111.302 in"\n'
    )
    model = raise_building(parse(text, "found")).model
    assert audit(model).findings == ()
    assert faults(model) == []
