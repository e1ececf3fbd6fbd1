"""Every code of the audit by faults planted in a sound shed's model, at three places each.

In its own check a fault shows its code and no other: what it brings with it is not said again.
"""

from __future__ import annotations

from dataclasses import replace
from functools import cache

import pytest
from ribwright.audit import Audit, audit, witness
from ribwright.findings import Check, Code, Finding, words
from ribwright.pieces import Model
from ribwright.place import Point3
from support.planted import nested, shed
from support.plants import (
    OUT,
    Plant,
    added,
    again,
    asked,
    askew,
    behind_a_lip,
    down_the_web,
    drop,
    drop_all,
    drop_one,
    end_moved,
    holed,
    inside_out,
    low_screw,
    move,
    narrowed,
    near,
    out,
    relabelled,
    renamed,
    screw,
    shorter,
    thick,
    turned_lap,
    turned_round,
    undressed,
    whole,
    with_solid,
    without_a_face,
    without_row,
)
from support.shape_plants import SHAPES


@cache
def sound(check: Check) -> Audit:
    return audit(shed(), (check,))


def new(model: Model, check: Check) -> list[Finding]:
    known = set(sound(check).findings)
    thorough = check == "bodies"
    return [finding for finding in audit(model, (check,), thorough).findings if finding not in known]


PLANTS: dict[Code, list[Plant]] = {
    Code.CLASH: [
        move("frame 2 left column", (-3.0, 0.0, 0.0)),
        move("front walk door 1 leaf", (5.0, 0.0, 0.0)),
        move("left slope purlin 2", (0.0, 0.0, -3.0)),
    ],
    Code.SCREW_CLASH: [
        added("left 6 screws", (5.0, 0.0, 0.0)),
        added("back 3 screws", (0.0, -5.0, 0.0)),
        added("right 2 screws", (-5.0, 0.0, 0.0)),
    ],
    Code.UNCLAD: [undressed("left"), undressed("back"), undressed("right slope")],
    Code.UNCOVERED: [drop("back 3"), drop("left 6"), drop("left slope 4")],
    Code.COVERED_TWICE: [added(name, (0.0, 0.0, 0.0)) for name in ("left 6", "back 3", "right slope 4")],
    Code.IN_OPENING: [whole("left 4"), whole("right 6"), whole("right 3")],
    Code.HOLE: [holed("left 6"), holed("left 7"), holed("right 2")],
    Code.OPEN_TO_SKY: [drop("ridge cap 1"), drop("ridge cap 2"), drop("ridge cap 3")],
    Code.RAW_EDGE: [
        drop_one("corner trim", "front left"),
        drop_one("rake trim", "back left", 1),
        drop_one("base trim", "back", 1),
    ],
    Code.BARE_EAVE: [drop("left eave trim 2"), drop("right eave trim 1"), drop("right eave trim 2")],
    Code.LAP_OPEN: [thick("left 8", 0.2), thick("right 8", 0.2), thick("back 8", 0.2)],
    Code.LAP_PRESSED: [thick("left 8", -0.1), thick("right 8", -0.1), thick("back 8", -0.1)],
    Code.LAP_WIDTH: [narrowed("left 6", 3.0), narrowed("right 2", 3.0), narrowed("back 3", 3.0)],
    Code.RIBS_APART: [
        move("left 6", (0.0, 0.5, 0.0)),
        move("back 3", (0.5, 0.0, 0.0)),
        move("right 2", (0, 0.5, 0)),
    ],
    Code.LAP_WITHOUT_RIB: [end_moved("back", 1), end_moved("back", -1), end_moved("front", 1)],
    Code.LAP_NOT_AS_ASKED: [turned_round(OUT[face]) for face in ("left", "back", "right")],
    Code.OFF_PLANE: [move(f"{face} 3", out(face, 0.3)) for face in ("left", "back", "right")],
    Code.TRIM_LAP_SHORT: [
        move("left eave trim 1", (0.0, 4.0, 0.0)),
        move("ridge cap 1", (0.0, 4.0, 0.0)),
        move("right eave trim 1", (0.0, 4.0, 0.0)),
    ],
    Code.TRIM_LAP_UPHILL: [
        move("back left rake trim 1", (-0.5, 0.0, 2.0)),
        move("back right rake trim 1", (0.5, 0.0, 2.0)),
        move("front left rake trim 1", (-0.5, 0.0, 2.0)),
    ],
    Code.TRIM_LAP_WINDWARD: [asked(wind=(0.0, 1.0, 0.0))] * 3,
    Code.TRIM_LAP_TURNED: [
        move("left eave trim 1", (-0.7, 0.0, 0.7)),
        move("right eave trim 1", (0.7, 0.0, 0.7)),
        move("left eave trim 3", (0.7, 0.0, -0.7)),
    ],
    Code.RIB_OPEN: [
        drop("left slope inside closure 9"),
        drop("right outside closure 4"),
        drop("right slope outside closure 4"),
    ],
    Code.OVERHANG: [
        asked(overhang=60.0),
        asked(overhang=40.0),
        asked(overhang=48.0),
    ],
    Code.EAVE_CROOKED: [
        move("left slope 3", (-1.5, 0.0, -0.375)),
        move("right slope 3", (1.5, 0.0, -0.375)),
        move("right slope 8", (1.5, 0.0, -0.375)),
    ],
    Code.FEET_UNEVEN: [move(f"{face} 3", (0.0, 0.0, 1.5)) for face in ("left", "back", "right")],
    Code.RIDGE_BARE: [drop("ridge cap 1"), drop("ridge cap 2"), drop("ridge cap 3")],
    Code.SCREW_IN_AIR: [
        screw("left 6", near(1900, 1400, 1), (-60.0, 0.0, 0.0)),
        screw("back 3", near(5000, 1400, 0), (0.0, 60.0, 0.0)),
        screw("right 2", near(5900, 1400, 1), (60.0, 0.0, 0.0)),
    ],
    Code.SCREW_MISSES: [
        screw("left 6", near(1900, 1400, 1), (0.0, 0.0, 100.0)),
        screw("back 3", near(5000, 1400, 0), (0.0, 0.0, 100.0)),
        screw("right 2", near(5900, 1400, 1), (0.0, 0.0, 100.0)),
    ],
    Code.BITE_SHORT: [
        shorter("left 6 screws", 5.0),
        shorter("back 3 screws", 5.0),
        shorter("left slope 3 screws", 5.0),
    ],
    Code.SCREW_GAP: [
        move("left girt 2", (3.0, 0.0, 0.0)),
        move("back girt 1", (0.0, -3.0, 0.0)),
        move("right girt 2", (-3.0, 0.0, 0.0)),
    ],
    Code.WASHER_OFF: [
        screw("left 6", near(1900, 1400, 1), (-1.0, 0.0, 0.0)),
        screw("back 3", near(5000, 1400, 0), (0.0, 1.0, 0.0)),
        screw("right 2", near(5900, 1400, 1), (1.0, 0.0, 0.0)),
    ],
    Code.WASHER_RIDES: [
        screw("left 6", near(1900, 1400, 1), (0.0, 8.0, 0.0)),
        screw("left 7", near(1000, 1400, 1), (0.0, 8.0, 0.0)),
        screw("right 2", near(5900, 1400, 1), (0.0, 8.0, 0.0)),
    ],
    Code.SCREWS_NEAR: [
        again("left 6", near(1900, 1400, 1), (0.0, 0.0, 11.0)),
        again("back 3", near(5000, 1400, 0), (0.0, 0.0, 11.0)),
        again("right 2", near(5900, 1400, 1), (0.0, 0.0, 11.0)),
    ],
    Code.SCREW_ALONG: [
        down_the_web("left 6", near(1900, 1400, 1)),
        down_the_web("back 3", near(5000, 1400, 0)),
        down_the_web("right 2", near(5900, 1400, 1)),
    ],
    Code.EDGE_NEAR: [
        low_screw("left 6", near(1900, 0, 1)),
        low_screw("back 3", near(5000, 0, 0)),
        low_screw("right 2", near(5900, 0, 1)),
    ],
    Code.EDGE_LOOSE: [without_row("left 6", 0.0), without_row("back 3", 0.0), without_row("right 2", 0.0)],
    Code.TRIM_LOOSE: [
        drop_all("back left rake trim screws", "right slope rake trim right screws"),
        drop_all("front right rake trim screws", "right slope rake trim left screws"),
        drop_all("left slope ridge cap screws", "right slope ridge cap screws"),
    ],
    Code.TRIM_TO_TACK: [
        move("left window 1 j trim right", (0.0, 60.0, 0.0)),
        move("right framed opening 1 j trim left", (0.0, 60.0, 0.0)),
        move("front walk door 1 j trim left", (60.0, 0.0, 0.0)),
    ],
    Code.HEAD_BEHIND: [
        *(behind_a_lip("left 4", near(along, 914.4, 1), 914.4 - 12.2) for along in (3800, 4100, 4400)),
    ],
    Code.LAP_TURNED: [turned_lap("left"), turned_lap("right"), turned_lap("left", 6)],
    Code.BODY_INVALID: [with_solid(name, askew) for name in ("left girt 1", "left 6", "ridge cap 1")],
    Code.FLOATING: [
        move("left window 1 pane", (-900.0, 0.0, 0.0)),
        move("front walk door 1 leaf", (0.0, -900.0, 0.0)),
        move("left slope purlin 2", (0.0, 0.0, 900.0)),
    ],
    Code.BODY_OPEN: [with_solid(name, without_a_face) for name in ("left girt 1", "left 6", "ridge cap 1")],
    Code.BODY_HOLLOW: [with_solid(name, inside_out) for name in ("left girt 1", "left 6", "ridge cap 1")],
    Code.GAUGE: [relabelled(name, "gauge", "24 ga") for name in ("left 6", "back 3", "ridge cap 1")],
    Code.PROFILE: [
        relabelled(name, "profile", "36 x 12 x 1-1/4") for name in ("left 6", "back 3", "left slope 3")
    ],
    Code.ROLE: [renamed("left girt 1"), renamed("left 6"), renamed("ridge cap 1")],
}


CASES = [(code, number) for code, plants in PLANTS.items() for number in range(len(plants))]


@pytest.mark.parametrize(
    ("code", "number"), CASES, ids=[f"{code.text} {number + 1}" for code, number in CASES]
)
def test_a_planted_fault_shows_its_code_and_no_other(code: Code, number: int) -> None:
    found = new(PLANTS[code][number](shed()), code.check)
    assert {finding.code for finding in found} == {code}
    for finding in found:
        assert finding.at is not None or code.check == "audit"
        assert words(finding, "ft-in") and words(finding, "mm")


IN_SHAPES = [
    (shape, code, number) for shape, (_, plants) in SHAPES.items() for code in plants for number in range(3)
]


@pytest.mark.parametrize(
    ("shape", "code", "number"),
    IN_SHAPES,
    ids=[f"{shape}, {code.text} {n + 1}" for shape, code, n in IN_SHAPES],
)
def test_a_fault_that_only_a_shape_can_have_shows_its_code_and_no_other(
    shape: str, code: Code, number: int
) -> None:
    sound_one, plants = SHAPES[shape]
    assert audit(sound_one(), (code.check,)).findings == ()
    found = audit(plants[code][number](sound_one()), (code.check,)).findings
    assert {finding.code for finding in found} == {code}
    assert all(finding.at is not None and words(finding, "ft-in") for finding in found)


def test_a_nested_purlin_that_lies_in_another_or_hangs_under_it_is_found() -> None:
    """Lifted by half a millimetre; and lowered by three, so that it hangs off the sheets that it carries."""
    lifted = move("left slope purlin 1b", (0.0, 0.0, 0.5))(nested())
    assert Code.CLASH in {finding.code for finding in audit(lifted, ("clash",)).findings}
    lowered = move("left slope purlin 1b", (0.0, 0.0, -3.0))(nested())
    assert Code.SCREW_GAP in {finding.code for finding in audit(lowered, ("bite",)).findings}


FEET = 304.8
BARE: dict[str, tuple[Point3, float]] = {
    "left": ((-1.0, 0.0, 0.0), 24 * 9.0),
    "back": ((0.0, 1.0, 0.0), 20 * 9.0 + 20 * 2.5 / 2),
    "right slope": ((3 / 153**0.5, 0.0, 12 / 153**0.5), 24 * 10 * 153**0.5 / 12),
}
"""Of the shed's faces the outward normals, and the area of their framing by hand, in square feet."""


@pytest.mark.parametrize("face", BARE)
def test_a_face_without_sheets_is_missed_but_not_where_it_was_asked_bare(face: str) -> None:
    normal, area = BARE[face]
    bare = undressed(face)(shed())
    (missed,) = new(bare, "cover")
    assert missed.measured == pytest.approx(area * FEET**2, rel=0.01)
    wanted = asked(bare=(normal,))(bare)
    assert Code.UNCLAD not in {finding.code for finding in new(wanted, "cover")}


def test_a_frame_without_any_sheets_is_not_judged() -> None:
    gone = ("wall sheet", "roof sheet", "sheet screw")
    frame = replace(shed(), pieces=tuple(piece for piece in shed().pieces if piece.role not in gone))
    assert audit(frame, ("cover",)).findings == ()


def test_every_code_of_the_audit_is_planted() -> None:
    """The layout's own notes, and the check that looked at nothing, have tests of their own."""
    planted = {*PLANTS, *(code for _, plants in SHAPES.values() for code in plants)}
    assert set(Code) - planted == {
        code for code in Code if code.check in ("layout", "detailing", "reach", "audit")
    }


def test_a_check_that_looks_at_nothing_says_so(monkeypatch: pytest.MonkeyPatch) -> None:
    """Sheets and screws are there, and what finds them finds none."""
    monkeypatch.setattr(witness, "clad_planes", lambda model: ())
    monkeypatch.setattr(witness, "driven", lambda site: ())
    said = [finding for finding in audit(shed()).findings if finding.code is Code.NOT_LOOKED_AT]
    assert [finding.pieces for finding in said] == [("bite",), ("cover",), ("laps",), ("overhang",)]
