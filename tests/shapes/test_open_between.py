"""Lean-tos that are open to their building: what stands where, by hand, off the solids, every judge there is,
and what cannot be.

In inches. The lean-to is 9 ft wide under 2 in 12 from an eave of 8 ft: its steel plane meets the main wall at
96 + 18 = 114. Its flashing lies over the crowns of its sheets and two laps of trim, square to that plane;
feet hang 1/2 over it where it laps. Trim is 0.0217 thick, 2.1 of that are the room that its pieces lap in.
"""

from __future__ import annotations

from functools import cache
from math import floor, hypot

import pytest
from ribwright.audit import audit
from ribwright.findings import Code, words
from ribwright.intake import parse
from ribwright.measure.standing import standing_box
from ribwright.pieces import Model
from ribwright.raising import raise_building
from ribwright.units import INCH
from support.judged import judged
from support.lean_tos import SHED as CLAD
from support.lean_tos import spread
from support.plants import Plant, drop, move
from support.refused import refusals

SHED = CLAD + 'between = "open"\n'
ENCLOSED = SHED + 'walls = ["front", "back", "outer"]\n'
AT_GABLE = SHED.replace('"left"', '"front"')
TRIM = 0.0217
ROOM = 2.1 * TRIM
CROWN = TRIM + 3 / 4 + 2 * 0.0172
BEND = 114 + (CROWN + ROOM) * hypot(12, 2) / 12
FOOT = BEND + ROOM + 1 / 2
GIRT, JAMB = 2, 2
"""in; how high girts are, and how far jambs reach in from the sheets that they back."""
LEDGE = 114 - 4


@cache
def raised(text: str = SHED) -> Model:
    return raise_building(parse(text, "shed")).model


def reach(name: str, text: str = SHED) -> tuple[list[float], list[float]]:
    return spread(raised(text), name)


def names(start: str, text: str = SHED) -> list[str]:
    return [piece.name for piece in raised(text).pieces if piece.name.startswith(start)]


def test_nothing_stands_in_the_wall_under_the_roof_but_its_columns() -> None:
    """Sheets, girts, base rail and base trim are gone; the frames stand, and the gables keep theirs."""
    low = [name for kind in ("lower", "base", "hung") for name in names(f"left {kind}")]
    assert low == []
    assert {piece.role for piece in raised().pieces if piece.name.startswith("left girt")} == {"girt"}
    assert reach("left girt")[0][2] > 114
    assert len([name for name in names("frame") if name.endswith("left column")]) == 3
    assert reach("front base rail")[1][0] == pytest.approx(216, abs=1e-6)


def test_the_sheets_over_it_hang_half_an_inch_over_the_flashing() -> None:
    """Up to the eave at 144, less what the pitch takes off over a crown and 1/8, in whole half inches."""
    low, high = reach("left 1")
    assert low[2] == pytest.approx(FOOT, abs=0.002)
    assert high[2] - low[2] == pytest.approx(floor(2 * (144 - CROWN * 4 / 12 - 1 / 8 - FOOT)) / 2, abs=1e-6)
    assert reach("lean-to headwall flashing")[1][2] == pytest.approx(BEND + 4, abs=2 * TRIM)
    # Their row is 3/4 over their feet, where the girt's flat is.
    low, high = reach("left girt 1")
    assert low[2] < FOOT + 3 / 4 < high[2]
    assert high[2] - low[2] == pytest.approx(GIRT, abs=1e-6)


def test_one_girt_runs_around_the_building_at_its_height() -> None:
    """Behind the feet alone: there are no heads under the roof."""
    around = [reach(name)[0][2] for name in names("front girt")]
    assert [v for v in around if 100 < v < 130] == pytest.approx([reach("left girt 1")[0][2]], abs=1e-6)


def test_an_upright_backs_the_gables_corner_trim_under_the_roof() -> None:
    """Its leg on the open side is screwed to that up to where it makes room for the ledger; from the feet up
    the trim over the sheets' ends lies over it."""
    low, high = reach("front end jamb left")
    assert (low[0], high[1]) == pytest.approx((0, JAMB), abs=1e-6)
    (row,) = (piece for piece in raised().pieces if piece.name == "left corner trim right screws")
    assert standing_box(row)[1][2] / INCH < LEDGE - 1 / 8
    (trim,) = (piece for piece in raised().pieces if piece.name == "front left corner trim")
    assert standing_box(trim)[1][2] / INCH == pytest.approx(FOOT + 3, abs=1e-6)
    assert reach("front left corner trim over")[0][2] == pytest.approx(FOOT, abs=1e-6)


def test_in_line_with_a_clad_end_one_trim_begins_over_the_roof() -> None:
    assert names("front left corner trim", ENCLOSED) == ["front left corner trim over"]
    low, _ = reach("front left corner trim over", ENCLOSED)
    # 1/4 under the plane that meets the wall at 114, 1/8 clear; it falls out to the trim's outer face.
    assert 114 - 1 / 4 - 1 / 2 < low[2] < 114
    assert reach("lean-to front in-line trim", ENCLOSED)[1][2] < low[2] + 1


def test_along_a_gable_its_rafters_stand_on_posts() -> None:
    posts = [piece for piece in raised(AT_GABLE).pieces if piece.role == "post"]
    assert [piece.name for piece in posts if piece.place.origin[1] < 600]
    # The flashing runs on under the overrun of the gable's sheets: a leg of 1 in past each corner.
    low, high = reach("lean-to headwall flashing", AT_GABLE)
    assert (low[0], high[0]) == pytest.approx((-1, 217), abs=1e-6)


OPPOSITE = '[[lean_to]]\nwall = "right"\nwidth = "9 ft"\npitch = "2/12"\neave_height = "8 ft"\n'
WINDOW = '[[opening]]\nkind = "window"\nwall = "left"\nwidth = "3 ft"\nheight = "18 in"\nfrom_left = "4 ft"\n'
HIGH = SHED.replace("12 ft", "15 ft")
SHAPES = {
    "open below": SHED,
    "enclosed": ENCLOSED,
    "its outer wall clad": SHED + 'walls = "outer"\n',
    "at a gable": AT_GABLE,
    "at a gable, enclosed": AT_GABLE + 'walls = ["left", "right", "outer"]\n',
    "flush girts": SHED + '[framing]\ngirts = "flush"\n',
    "a wainscot": SHED + '[wainscot]\nheight = "42 in"\n',
    "one opposite that is not": SHED + OPPOSITE,
    "both": SHED + OPPOSITE + 'between = "open"\nwalls = "outer"\n',
    "a window over its roof": HIGH + WINDOW + 'sill = "11 ft 6 in"\n',
    "under a high eave": SHED + '[roof]\nshape = "single slope"\nfalls_to = "right"\n',
    "an open gable": SHED + '[walls]\nfront = "open"\n',
    "deep jambs": SHED + '[framing]\njamb = "tube 4x4x0.120"\ngirt = "cee 4x2.5x0.059"\n',
    "insulated, metric": 'units = "mm"\nwidth = "6 m"\nlength = "7 m"\neave_height = "3.8 m"\n'
    'pitch = "12 deg"\n[insulation]\nwalls = "80 mm"\n[[lean_to]]\nwall = "right"\nwidth = "2.5 m"\n'
    'pitch = "8 deg"\neave_height = "2.4 m"\nbetween = "open"\n',
}


@pytest.mark.parametrize("text", SHAPES.values(), ids=SHAPES)
def test_it_closes_whatever_is_about_it(text: str) -> None:
    assert judged(parse(text, "shed")).faults == {}


@pytest.mark.parametrize(
    ("more", "key", "remedy"),
    [
        (WINDOW + 'sill = "2 ft"\n', "opening[1].wall", "clad to the slab (right, back, front)"),
        (WINDOW + 'sill = "9 ft"\n', "opening[1].wall", "open under the roof of the lean-to"),
        ('[skirt]\nfoot = "4 ft"\nwalls = "right"\n', "skirt.foot", "not yet possible with a lean-to"),
        ('[walls]\nleft = "open"\n', "walls.left", 'between = "open"'),
    ],
)
def test_what_cannot_be_is_refused_by_its_key(more: str, key: str, remedy: str) -> None:
    problems = refusals(SHED + more)
    said = {problem.key: problem.remedy for problem in problems}
    assert key in said and remedy in said[key], said


PLANTS: dict[Code, list[Plant]] = {
    Code.HEADWALL_HANG: [
        move("lean-to headwall flashing 1", (0.0, 0.0, 8.0)),
        move("lean-to headwall flashing 2", (0.0, 0.0, 8.0)),
    ],
    Code.SEAM_OFF_STEEL: [drop("left girt 1")],
    Code.HEADWALL_OPEN: [
        drop("lean-to headwall flashing 1"),
        move("lean-to headwall flashing 2", (-25.0, 0.0, 0.0)),
    ],
}
CASES = [(code, number) for code, plants in PLANTS.items() for number in range(len(plants))]


@pytest.mark.parametrize(("code", "number"), CASES, ids=[f"{code.text} {n + 1}" for code, n in CASES])
def test_a_fault_planted_over_an_open_wall_shows_its_code_and_no_other(code: Code, number: int) -> None:
    assert audit(raised(), (code.check,)).findings == ()
    found = audit(PLANTS[code][number](raised()), (code.check,)).findings
    assert {finding.code for finding in found} == {code}
    assert all(finding.at is not None and words(finding, "ft-in") for finding in found)
