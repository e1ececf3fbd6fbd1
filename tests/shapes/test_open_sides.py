"""Walls that stand open: what is there and what is not, by hand, off the solids, and every judge there is.

Lengths in inches. Trim is 0.0217 in thick; two thicknesses and a little, 2.1 of them, are the room that
pieces of a run lap in, and so how far the eave trim of an open wall stands off its strut.
"""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from math import hypot

import numpy as np
import pytest
from ribwright.audit import audit
from ribwright.findings import Code
from ribwright.intake import parse, starter_text
from ribwright.order.lists.schedule import schedule
from ribwright.pieces import Model
from ribwright.raising import raise_building
from ribwright.solids.placed import placed_triangles
from ribwright.units import INCH
from support.judged import judged
from support.refused import refusal

TRIM, PAST = 0.0217, 1 / 4
LAP = 2.1 * TRIM
STRUT, JAMB = 6, 2
"""Depth of the eave strut, width of the jamb that stands at a wall's end."""


def raised(text: str) -> Model:
    return raise_building(parse(text, "open")).model


def counted(model: Model) -> Counter[str]:
    return Counter(piece.role for piece in model.pieces)


def reach(model: Model, *names: str) -> tuple[list[float], list[float]]:
    """Least and greatest x, y, z of the pieces whose names begin so, in inches."""
    points = corners(model, *names)
    return points.min(axis=0).tolist(), points.max(axis=0).tolist()


def corners(model: Model, *names: str) -> np.ndarray:
    """Points (n, 3) of the pieces whose names begin so, in inches; their screws are none of them."""
    told = [p for p in model.pieces if p.name.startswith(names) and not p.name.endswith("screws")]
    return np.vstack([points for points, _ in placed_triangles(told)]) / INCH


@pytest.fixture(scope="module")
def carport() -> Model:
    """20 x 22 ft, 8 ft to the eave, 3 in 12, open all round."""
    return raised(starter_text("carport", "carport"))


def test_a_carport_is_a_roof_on_its_frames(carport: Model) -> None:
    count = counted(carport)
    for role in ("wall sheet", "girt", "base rail", "jamb", "post", "base trim", "corner trim"):
        assert count[role] == 0
    # Three bays of 7 ft 4 in are four frames; 22 ft are seven sheets of 3 ft and a rip of 1 ft, twice.
    assert (count["column"], count["rafter"], count["base plate"]) == (8, 8, 8)
    assert (count["roof sheet"], count["eave strut"], count["rake angle"]) == (16, 2, 4)
    assert {piece.label("face") for piece in carport.pieces if piece.role == "outside closure"} == {
        "left slope",
        "right slope",
    }


def test_a_carports_sheets_are_as_long_as_worked_by_hand(carport: Model) -> None:
    (length,) = {round(row.length / INCH, 6) for row in schedule(carport).rows}
    assert length == round(2 * ((120 + 2) * hypot(12, 3) / 12 - 1)) / 2


def test_over_an_open_side_the_eave_trim_covers_the_strut(carport: Model) -> None:
    low, high = reach(carport, "left eave trim")
    assert low[2] == pytest.approx(96 - STRUT - PAST, abs=0.01)
    assert low[0] == pytest.approx(-LAP - 2 * TRIM, abs=0.01)
    # Its ends lie under the rake trims, which stand off the rake angle as it stands off the strut.
    assert (low[1], high[1]) == pytest.approx((-LAP, 264 + LAP), abs=1e-6)


def test_over_an_open_end_the_rake_trim_covers_the_rake_angle(carport: Model) -> None:
    # 4.075 in of angle, square to the slope, at the ridge: where the run is mitred, plumb.
    under = (4.075 + PAST) * hypot(12, 3) / 12
    points = corners(carport, "front left rake trim")
    below = 96 + points[:, 0] * 3 / 12 - points[:, 2]
    assert below.max() == pytest.approx(under, abs=0.03)
    assert points[:, 1].min() == pytest.approx(-LAP - TRIM, abs=0.01)


HALF = """
width = "20 ft"
length = "22 ft"
eave_height = "9 ft"
pitch = "3/12"
[walls]
left = "open"
"""


@pytest.fixture(scope="module")
def half() -> Model:
    return raised(HALF)


def test_a_wall_ends_at_an_open_one_on_an_upright(half: Model) -> None:
    low, high = reach(half, "front end jamb left")
    assert (low, high) == (
        pytest.approx((0, 0, 0), abs=1e-6),
        pytest.approx((4, JAMB, 108 - STRUT), abs=1e-6),
    )
    assert counted(half)["jamb"] == 2
    # Girts and base rail stop at it; the sheets end at the steel corner, and past the other one by their leg.
    assert reach(half, "front girt 1")[0][0] == pytest.approx(4, abs=1e-6)
    assert reach(half, "front base rail")[0][0] == pytest.approx(4, abs=1e-6)
    sheets = [p.name for p in half.pieces if p.role == "wall sheet" and p.label("face") == "front"]
    low, high = reach(half, *sheets)
    assert (low[0], high[0]) == pytest.approx((0, 240 + 1), abs=1e-6)


def test_the_corner_trim_there_lies_around_the_upright(half: Model) -> None:
    low, high = reach(half, "front left corner trim")
    assert low[0] == pytest.approx(-TRIM, abs=0.01)
    assert high[0] == pytest.approx(5.625, abs=0.01)
    assert high[1] == pytest.approx(JAMB + PAST, abs=0.01)
    assert low[2] == pytest.approx(LAP, abs=1e-3)
    names = {piece.name for piece in half.pieces if piece.role == "corner trim"}
    assert names == {f"{end} {side} corner trim" for end in ("front", "back") for side in ("left", "right")}


def test_in_a_ledge_its_leg_on_the_open_wall_stands_on_the_slab() -> None:
    model = raised(HALF.replace("left", "front") + '[slab]\nledge_depth = "1-1/2 in"\n')
    points = corners(model, "left front corner trim", "front left corner trim")
    assert points[:, 2].min() == pytest.approx(-1.5 + LAP, abs=1e-3)
    assert points[points[:, 0] > 0.01][:, 2].min() == pytest.approx(0, abs=1e-6)
    # No ledge along the open end: between the two of the side walls its edge is one drop.
    slab = corners(model, "slab")
    top = slab[(slab[:, 1] < 0) & (slab[:, 2] > -0.01)]
    assert (top[:, 0].min(), top[:, 0].max()) == pytest.approx((0, 240), abs=1e-6)


BAYS = """
width = "16 ft"
length = "30 ft"
eave_height = "8 ft"
pitch = "3/12"
[walls]
left = "{}"
"""


@pytest.fixture(scope="module")
def bays() -> Model:
    """Three bays of 10 ft, the middle one of the left wall open."""
    return raised(BAYS.format("open in bay 2"))


def test_an_open_bay_is_clear_between_its_columns(bays: Model) -> None:
    """Frames at 10 and 20 ft, columns 4 in wide: from 122 to 238 in there is nothing."""
    left = [
        p for p in bays.pieces if p.label("face") == "left" and p.role in ("wall sheet", "girt", "base rail")
    ]
    for piece in left:
        ((points, _),) = placed_triangles([piece])
        assert points[:, 1].max() < 122 * INCH + 1e-6 or points[:, 1].min() > 238 * INCH - 1e-6
    ends = [corners(bays, piece.name)[:, 1] for piece in left if piece.role == "wall sheet"]
    assert max(y.max() for y in ends if y.max() < 180) == pytest.approx(122, abs=1e-6)
    assert min(y.min() for y in ends if y.min() > 180) == pytest.approx(238, abs=1e-6)
    # Laid from the back: past the bay begins a run of its own, its first sheet whole.
    assert any((y.min(), y.max()) == pytest.approx((122 - 38, 122), abs=1e-6) for y in ends)


def test_sheets_end_there_on_uprights_in_a_trim_that_returns_to_the_column(bays: Model) -> None:
    uprights = [reach(bays, f"left end jamb of bay {n}") for n in (1, 2)]
    assert sorted((low[1], high[1]) for low, high in uprights) == [
        (pytest.approx(118), pytest.approx(122)),
        (pytest.approx(238), pytest.approx(242)),
    ]
    assert {round(high[2], 6) for _, high in uprights} == {96 - STRUT}
    for number in (1, 2):
        # Girts are 4 in deep and pass before the columns.
        assert reach(bays, f"left end trim {number}")[1][0] == pytest.approx(4, abs=0.01)
    assert reach(bays, "left eave trim")[0][2] == pytest.approx(96 - STRUT - PAST, abs=0.02)


def test_all_bays_open_are_an_open_wall() -> None:
    one, other = (parse(BAYS.format(how), "x") for how in ("open in bays 1, 2-3", "open"))
    assert one == other


SMALL = 'width = "16 ft"\nlength = "14 ft"\neave_height = "8 ft"\n'
OPEN = {
    "left": SMALL + 'pitch = "3/12"\n[walls]\nleft = "open"\n',
    "front, in a ledge": SMALL
    + 'pitch = "4/12"\n[walls]\nfront = "open"\n[slab]\nledge_depth = "1-1/2 in"\n',
    "both ends": SMALL + 'pitch = "4/12"\n[walls]\nfront = "open"\nback = "open"\n[trim]\nstock = ["6 ft"]\n',
    "two that meet, flush": SMALL
    + 'pitch = "5/12"\n[walls]\nleft = "open"\nfront = "open"\n[framing]\ngirts = "flush"\n',
    "all, flush": SMALL
    + 'pitch = "5/12"\n[walls]\nleft = "open"\nfront = "open"\nright = "open"\nback = "open"\n'
    + '[framing]\ngirts = "flush"\n',
    "the high side": starter_text("run-in", "run-in"),
    "all but the high side": SMALL
    + 'pitch = "2/12"\n[roof]\nshape = "single slope"\nfalls_to = "left"\n'
    + '[walls]\nleft = "open"\nfront = "open"\nback = "open"\n',
    "a bay in the middle": BAYS.format("open in bay 2"),
    "a bay at each end, in a ledge": BAYS.format("open in bays 1 and 3")
    + '[slab]\nledge_depth = "1-1/2 in"\n',
    "two bays in the middle of four": BAYS.format("open in bays 2-3").replace("30 ft", "36 ft"),
    "two bays, sheets that hang": BAYS.format("open in bays 2-3") + '[slab]\nhang = "1-1/2 in"\n',
    "a bay beside an open end": BAYS.format("open in bay 1") + 'front = "open"\n',
    "a bay between flush girts": BAYS.format("open in bay 2") + '[framing]\ngirts = "flush"\n',
    "a carport": starter_text("carport", "carport"),
}


@pytest.mark.parametrize("text", OPEN.values(), ids=OPEN)
def test_a_building_with_open_walls_is_sound(text: str) -> None:
    assert judged(parse(text, "open")).faults == {}


def test_the_audit_is_told_which_faces_were_asked_open() -> None:
    model = raised(OPEN["two that meet, flush"])
    assert set(model.terms.bare) == {(-1.0, 0.0, 0.0), (0.0, -1.0, 0.0)}
    untold = replace(model, terms=replace(model.terms, bare=()))
    assert Code.UNCLAD in {finding.code for finding in audit(untold, only=["cover"]).findings}


@pytest.mark.parametrize(
    ("more", "key", "remedy"),
    [
        (
            '[[opening]]\nkind = "window"\nwall = "left"\n'
            'width = "3 ft"\nheight = "3 ft"\nfrom_left = "4 ft"\n',
            "opening[1].wall",
            "one that is clad (front, back, right); the left wall is open, by [walls]",
        ),
        (
            'right = "open in bays 1-3"\n[[opening]]\nkind = "window"\nwall = "right"\n'
            'width = "3 ft"\nheight = "3 ft"\nfrom_left = "4 ft"\n',
            "opening[1].wall",
            "one that is clad (front, back); the right wall is open, by [walls]",
        ),
        ('right = "open in bays 2, 4"\n', "walls.right", "bays from 1 to 3, counted from the front"),
        ('right = "open in bay two"\n', "walls.right", 'such as "open in bays 1, 2"'),
        (
            'right = "open in bay 2"\n[[opening]]\nkind = "window"\nwall = "right"\n'
            'width = "3 ft"\nheight = "3 ft"\nfrom_left = "8 ft"\n',
            "opening[1].from_left",
            "clear of the open bay from",
        ),
        ('[framing]\njamb = "cee 6x5x0.059"\n', "framing.jamb", 'a section at most 4" wide'),
        ('front = "opne"\n', "walls.front", "'clad', 'open' or 'infill'; the nearest is 'open'"),
    ],
)
def test_what_does_not_go_with_an_open_wall_is_refused(more: str, key: str, remedy: str) -> None:
    problem = refusal(HALF + more)
    assert (problem.key, problem.line > 0) == (key, True)
    assert remedy in problem.remedy
