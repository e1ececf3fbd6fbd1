"""Walls that are open below and clad above, gables over open ends and skirts: what stands where, by hand, off
the solids, and every judge there is.

Lengths in inches. Trim is 0.0217 in thick; 2.1 of that are the room that its pieces lap in. Sheets hang that
and 1/4 in over the shelf of the drip under them, their row of screws 3/4 in over their feet.
"""

from __future__ import annotations

from collections import Counter

import numpy as np
import pytest
from ribwright.intake import parse, starter_text
from ribwright.pieces import Model
from ribwright.raising import raise_building
from ribwright.solids.placed import placed_triangles
from ribwright.units import INCH
from support.judged import judged
from support.refused import refusals

TRIM = 0.0217
LAP = 2.1 * TRIM
OVER_SHELF = LAP + 1 / 4
STRUT, GIRT, CLEAR, LIP, FALL = 6, 2.5, 1 / 8, 3 / 4, 1 / 8
SHED = 'width = "24 ft"\nlength = "30 ft"\neave_height = "10 ft"\npitch = "4/12"\n'
PORT = SHED + '[walls]\nfront = "infill"\nback = "infill"\nleft = "open"\nright = "open"\n'


def raised(text: str) -> Model:
    return raise_building(parse(text, "hung")).model


@pytest.fixture(scope="module")
def port() -> Model:
    return raised(PORT)


def reach(model: Model, *names: str) -> tuple[list[float], list[float]]:
    """Least and greatest x, y, z of the pieces whose names begin so, in inches."""
    told = [p for p in model.pieces if p.name.startswith(names) and not p.name.endswith("screws")]
    points = np.vstack([points for points, _ in placed_triangles(told)]) / INCH
    return points.min(axis=0).tolist(), points.max(axis=0).tolist()


def sheets(model: Model, face: str) -> list[str]:
    return [p.name for p in model.pieces if p.role == "wall sheet" and p.label("face") == face]


def test_an_infill_has_no_foot_and_no_posts(port: Model) -> None:
    count = Counter(piece.role for piece in port.pieces)
    for role in ("base rail", "base trim", "post", "jamb"):
        assert count[role] == 0
    assert {p.label("face") for p in port.pieces if p.role == "wall sheet"} == {"front", "back"}


def test_an_infills_girt_runs_right_under_the_eave_struts(port: Model) -> None:
    low, high = reach(port, "front girt 1")
    assert high[2] == pytest.approx(120 - STRUT - CLEAR, abs=1e-6)
    assert (low[0], high[0]) == pytest.approx((0, 288), abs=1e-6)
    assert low[1] == pytest.approx(0, abs=1e-6)


def test_an_infills_sheets_hang_over_a_drip_before_the_girt(port: Model) -> None:
    girt, feet = reach(port, "front girt 1"), reach(port, *sheets(port, "front"))
    drip = reach(port, "front hung drip")
    # The feet stand over the shelf, whose bend is where the drip's leg of 2 in begins.
    shelf = drip[1][2] - 2
    assert feet[0][2] - shelf == pytest.approx(OVER_SHELF, abs=2 * TRIM)
    # The lip hides the girt's lower edge; the row stands in the girt.
    assert drip[0][2] == pytest.approx(shelf - FALL - LIP, abs=2 * TRIM)
    assert drip[0][2] < girt[0][2] < feet[0][2] + 3 / 4 < girt[1][2]
    assert feet[1][2] == pytest.approx(120 + 48 - CLEAR, abs=0.01)


def test_over_the_corner_of_an_open_side_a_trim_covers_the_sheets_ends(port: Model) -> None:
    low, _ = reach(port, "front left corner trim over")
    # Its leg on the open side lies on the strut; it begins at the sheets' feet.
    assert low[0] == pytest.approx(-TRIM, abs=1e-6)
    assert low[2] == pytest.approx(reach(port, *sheets(port, "front"))[0][2], abs=1e-6)


def test_where_a_side_is_clad_the_lower_trim_ends_under_the_upper_by_a_lap() -> None:
    model = raised(SHED + '[walls]\nfront = "infill"\n')
    lower = reach(model, "front left corner trim")  # both
    upper = reach(model, "front left corner trim over")
    names = {p.name for p in model.pieces}
    assert {"front left corner trim", "front left corner trim over", "left end jamb right"} <= names
    assert lower[0][2] == pytest.approx(LAP, abs=1e-6)
    (one,) = (p for p in model.pieces if p.name == "front left corner trim")
    ((points, _),) = placed_triangles([one])
    assert points[:, 2].max() / INCH - upper[0][2] == pytest.approx(3, abs=1e-6)


def test_a_skirts_drip_is_where_it_was_asked() -> None:
    model = raised(SHED + '[skirt]\nfoot = "6 ft"\n')
    for face in ("front", "left"):
        assert reach(model, *sheets(model, face))[0][2] == pytest.approx(72 + OVER_SHELF, abs=1e-6)
        assert reach(model, f"{face} hung drip")[1][2] == pytest.approx(72 + 2, abs=2 * TRIM)
    # 10 ft less 6 ft, clearances at head and feet and the crown times the pitch: down to half an inch.
    low, high = reach(model, *sheets(model, "left"))
    assert (high[2] - low[2]) * 2 == pytest.approx(round((high[2] - low[2]) * 2), abs=1e-6)
    crown = TRIM + 3 / 4 + 2 * 0.0172
    most = 120 - crown * 4 / 12 - CLEAR - 72 - OVER_SHELF
    assert most - 1 / 2 < high[2] - low[2] <= most


SMALL = 'width = "14 ft"\nlength = "14 ft"\neave_height = "8 ft"\n'
INFILL = '[walls]\nfront = "infill"\nback = "infill"\nleft = "open"\n'
SHAPES = {
    "the pavilion": starter_text("pavilion", "pavilion"),
    "infill beside a clad side": SMALL + 'pitch = "3/12"\n' + INFILL,
    "infill, flush girts, steep": SMALL + f'pitch = "9/12"\n{INFILL}[framing]\ngirts = "flush"\n',
    "infill of a single slope, in a ledge": SMALL
    + f'pitch = "2/12"\n{INFILL}[roof]\nshape = "single slope"\n[slab]\nledge_depth = "1.5 in"\n',
    "a skirt all round": SMALL + 'pitch = "4/12"\n[skirt]\nfoot = "5 ft"\n',
    "a skirt beside clad gables": SMALL + 'pitch = "4/12"\n[skirt]\nfoot = "4 ft"\nwalls = "left"\n',
    "a skirt before jambs not as deep as girts": SMALL
    + 'pitch = "4/12"\n[skirt]\nfoot = "4 ft"\nwalls = "left"\n[framing]\njamb = "cee 3.5x2x0.059"\n',
    "a skirt beside the points of long screws": SMALL
    + 'pitch = "4/12"\n[skirt]\nfoot = "4 ft"\nwalls = "left"\n[screws]\nlength = "3 in"\n',
    "a skirt, metric, beside open sides": 'units = "mm"\nwidth = "5 m"\nlength = "5 m"\n'
    'eave_height = "2800 mm"\npitch = "12 deg"\n[walls]\nleft = "open"\n[skirt]\nfoot = "1600 mm"\n',
    "a skirt beside a wainscot": SMALL
    + 'pitch = "4/12"\n[wainscot]\nheight = "42 in"\n[skirt]\nfoot = "5 ft"\nwalls = "right"\n',
}


@pytest.mark.parametrize("text", SHAPES.values(), ids=SHAPES)
def test_what_hangs_is_sound(text: str) -> None:
    assert judged(parse(text, "hung")).faults == {}


LEAN_TO = '[[lean_to]]\nwall = "left"\nwidth = "8 ft"\npitch = "2/12"\neave_height = "7 ft"\n'
DOOR = '[[opening]]\nkind = "walk door"\nwidth = "3 ft"\nheight = "6 ft 8 in"\nfrom_left = "4 ft 1 in"\n'


@pytest.mark.parametrize(
    ("keys", "said"),
    [
        ('[skirt]\nfoot = "9 ft"\n', ["skirt.foot"]),
        ('[skirt]\nfoot = "30 ft"\n', ["skirt.foot"]),
        ('[skirt]\nwalls = "left"\n', ["skirt.foot"]),
        ('[skirt]\nfoot = "6 ft"\nwalls = "left"\n[walls]\nleft = "open"\n', ["skirt.walls"]),
        ('[skirt]\nfoot = "6 ft"\nwalls = "left"\n[walls]\nfront = "infill"\n', ["skirt.foot"]),
        ('[skirt]\nfoot = "6 ft"\nwalls = "front"\n' + LEAN_TO, ["skirt.foot"]),
        ('[walls]\nfront = "infill"\n' + LEAN_TO, ["walls.front"]),
        ('[walls]\nleft = "infill"\n', ["walls.left"]),
        (f'[walls]\nfront = "infill"\n{DOOR}wall = "front"\n', ["opening[1].wall"]),
        (f'[skirt]\nfoot = "6 ft"\n{DOOR}wall = "right"\n', ["opening[1].wall"]),
    ],
)
def test_what_cannot_hang_is_refused_by_its_key(keys: str, said: list[str]) -> None:
    problems = refusals(SHED + keys)
    assert [problem.key for problem in problems] == said
