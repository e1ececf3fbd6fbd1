"""Trims and closures: laps and lengths, by hand. Common practice, no source, unless a check names one."""

from __future__ import annotations

import re
from itertools import pairwise

import numpy as np
import pytest
from ribwright.audit import audit
from ribwright.intake import parse
from ribwright.layout import lay_out
from ribwright.layout.trim.trim_run import sticks
from ribwright.measure.member import measure_member
from ribwright.measure.sheet import measure_sheet
from ribwright.order.buying.order_list import order
from ribwright.order.lists.schedule import schedule
from ribwright.pieces import Model
from ribwright.raising import raise_building
from ribwright.solids.placed import placed_triangles
from support.clashes import manifold
from support.plain_garage import GARAGE, garage, of
from support.refused import refusal

INCH = 25.4


@pytest.fixture(scope="module")
def model() -> Model:
    return garage()


def test_a_16_ft_head_is_a_full_stick_and_6_ft_3(model: Model) -> None:
    """16 ft + 3 in of lap - 10 ft = 6 ft 3 in."""
    lengths = sorted(measure_member(piece.solid).length / INCH for piece in of(model, "head angle"))
    assert lengths == pytest.approx([75.0, 120.0], abs=0.01)


def test_an_eave_trim_runs_from_corner_to_corner_in_lapped_sticks(model: Model) -> None:
    """480 in and two corner projections: each the flange, the ribs' 3/4 in and two sheets, and the room of
    2.1 trim thicknesses. Of 10 ft sticks lapped 3 in it takes five, of 12 ft four: three and a remainder."""
    projection = 0.0217 + 0.75 + 2 * 0.0172 + 2.1 * 0.0217
    remainder = 480 + 2 * projection - 3 * 141
    for wall in ("left", "right"):
        run = of(model, "eave trim", wall)
        lengths = [measure_member(piece.solid).length / INCH for piece in run]
        assert lengths == pytest.approx([144.0] * 3 + [remainder], abs=0.01)


def test_a_lap_touches_and_shares_nothing(model: Model) -> None:
    """The front piece of an eave trim lies on the rear one: 0.05 mm nearer, they would share volume."""
    one, other = of(model, "eave trim", "left")[:2]
    rear, front = manifold(one), manifold(other)
    assert (rear ^ front).volume() < 0.1
    drop = 3 * INCH * 3 * INCH  # the lap of the drops, mm2
    assert (rear ^ front.translate((0.05, 0.0, 0.0))).volume() > 0.02 * drop


@pytest.mark.parametrize(
    ("low", "high", "expected"),
    [
        (0.0, 120.0, [(0.0, 120.0)]),
        (0.0, 192.0, [(0.0, 120.0), (117.0, 192.0)]),
        (-1.0, 300.0, [(-1.0, 119.0), (116.0, 236.0), (233.0, 300.0)]),
        (0.0, 121.0, [(0.0, 100.0), (97.0, 121.0)]),
        (0.0, 240.0, [(0.0, 120.0), (117.0, 219.0), (216.0, 240.0)]),
    ],
)
def test_full_sticks_and_what_is_left_which_is_no_stub(
    low: float, high: float, expected: list[tuple[float, float]]
) -> None:
    """Of 10 ft alone; 24 in is left at least, and the stick before is cut for it."""
    inches = [(a * INCH, b * INCH) for a, b in expected]
    spans = sticks(low * INCH, high * INCH, (120 * INCH,), 3 * INCH, within=high * INCH)
    assert np.array(spans) == pytest.approx(np.array(inches))


def test_a_run_takes_the_sticks_of_fewest_laps_then_of_least_waste() -> None:
    """10 ft 2 in net 9 ft 11 in: 241 in are 122 + 122; of 10 ft three, of 16 ft two, of which more is bought.
    146 in need 149: two of 10 ft, not one of 12 ft and a stub."""

    def pieces(length: float, *stock: float) -> list[float]:
        spans = sticks(0.0, length * INCH, tuple(one * INCH for one in stock), 3 * INCH, within=length * INCH)
        return [round((b - a) / INCH, 6) for a, b in spans]

    assert pieces(241, 120, 122, 192) == [122, 122]
    assert pieces(241, 120, 192) == [192, 52]
    assert pieces(146, 120, 144) == [120, 29]
    assert pieces(195, 120, 144) == [120, 78]
    assert pieces(250, 120, 144) == [144, 109]


def test_no_stick_but_the_last_reaches_an_oblique_end() -> None:
    spans = sticks(0.0, 1210.0, (1200.0,), 30.0, within=500.0)
    assert spans == ((0.0, 470.0), (440.0, 1210.0))


def test_the_last_lap_lies_about_a_girt_where_another_would_leave_a_piece_between_two() -> None:
    """Girts at 40 and 80, sticks of 48 in, laps of 3: ended 1-1/2 in under the upper girt, as where that
    serves, the second stick would pass none. So one screw there holds it and the last."""
    text = (
        GARAGE.partition('[[opening]]\nkind = "window"')[0]
        + '[framing]\ngirt_heights = ["40 in", "80 in"]\n[trim]\ncorner_stock = ["48 in"]\n'
    )
    model = raise_building(parse(text, "garage")).model
    ends = []
    for number in (1, 2, 3):
        stick = next(piece for piece in model.pieces if piece.name == f"front left corner trim {number}")
        ((points, _),) = placed_triangles([stick])
        ends.append([round(z / INCH, 1) for z in (points[:, 2].min(), points[:, 2].max())])
    assert (ends[0][1], ends[1], ends[2][0]) == (48, [45, 81.5], 78.5)
    assert audit(model).findings == ()


def test_sticks_too_short_for_the_girts_that_hold_a_corner_trim_are_refused_with_what_does() -> None:
    text = 'width = "20 ft"\nlength = "20 ft"\neave_height = "8 ft"\npitch = "3/12"\n[trim]\nstock = ["{}"]\n'
    problem = refusal(text.format("4 ft"))
    said = re.fullmatch(
        r"one of at least (.*): corner trims are held at girts, every piece at one", problem.remedy
    )
    assert problem.key == "trim.stock" and said
    least = said[1].replace("'", " ft").replace('"', " in")
    raised = raise_building(parse(text.format(least), "shed"))
    assert not [finding for finding in audit(raised.model).findings if finding.fault]


def test_a_10_ft_door_has_no_stub() -> None:
    """Jambs from the slab to a lap's room (2.1 x 0.0217) under the header, below the head angle, and that as
    wide as the opening: three angles of 10 ft sticks; a drip 1-1/2 in past each side, 10 ft 3 in, of a 12 ft
    stick. Both jambs are of one mark, square at both ends: neither side is told from the other."""
    text = GARAGE.replace('eave_height = "10 ft"', 'eave_height = "12 ft"').replace('"16 ft"', '"10 ft"')
    text = text.replace('height = "8 ft"', 'height = "10 ft"').partition('[[opening]]\nkind = "window"')[0]
    door = raise_building(parse(text, "shed")).model
    names = ("jamb angle", "head angle", "drip")
    lengths = {
        name: [measure_member(piece.solid).length / INCH for piece in of(door, name, "overhead")]
        for name in names
    }
    assert [lengths[name] for name in names] == [
        pytest.approx([120.0 - 2.1 * 0.0217] * 2),
        pytest.approx([120.0]),
        pytest.approx([123.0]),
    ]
    listed = schedule(door)
    assert [item.count for item in listed.listed("trims") if item.role == "jamb angle"] == [2]
    bought = [(line.kind, line.size, line.quantity) for line in order(listed).lines]
    assert {line for line in bought if line[0].endswith("angle") and "x" not in line[0]} == {
        ("jamb angle", "10'", 2),
        ("head angle", "10'", 1),
    }
    assert ("drip", "12'", 1) in bought
    assert audit(door).findings == ()


def test_a_short_stick_before_the_last_nests() -> None:
    """Of 10 ft alone 20 ft of ridge cap, 241.8 in and a tab of 7/8 in at both ends, end in a piece of 24 in
    with its tab: the one before it is cut, leans more, and no two share volume; all lie on one another."""
    text = GARAGE.replace('length = "40 ft"', 'length = "20 ft"') + '[trim]\nstock = ["10 ft"]\n'
    caps = of(raise_building(parse(text, "shed")).model, "ridge cap")
    assert [round(measure_member(cap.solid).length / INCH) for cap in caps] == [119, 106, 23]
    for under, over in pairwise(manifold(cap) for cap in caps):
        assert (under ^ over).volume() < 0.1
        assert (under ^ over.translate((0.0, 0.0, -0.05))).volume() > 0.02 * 3 * INCH * 6 * INCH


def test_a_windows_trim_laps_in_shingle_order(model: Model) -> None:
    """3 ft square: the sill runs 1 in past both sides, the J's up them 1 in down over it and, at their heads,
    1/8 in and a lap's room (2.1 x 0.0217) under the drip's bend, which runs 1-1/2 in past. All square."""
    lap = 2.1 * 0.0217
    lengths, ends = set(), set()
    for piece in [*of(model, "j trim", "window"), *of(model, "sill trim")]:
        measured = measure_member(piece.solid)
        lengths.add(round(measured.length / INCH, 3))
        ends.add(tuple(round(end, 6) for end in measured.ends))
    assert lengths == {38.0, round(36 + 1 - 1 / 8 - lap, 3)}
    assert ends == {(0.0, 0.0)}
    (drip,) = of(model, "drip", "window")
    assert measure_member(drip.solid).length / INCH == pytest.approx(36 + 2 * 1.5, abs=0.001)


def test_sheet_edges_sit_in_the_js_pocket(model: Model) -> None:
    """1/8 in short of the J's inside: under the sill the J's thickness and 1/8 in; over the head feet hang
    1/4 in over a drip, and where it laps a lap's room."""
    cuts = [cut for piece in of(model, "wall sheet", "left") for cut in measure_sheet(piece.solid).cutouts]
    low, high = min(cut.y for cut in cuts), max(cut.y + cut.height for cut in cuts)
    assert (high - low) / INCH == pytest.approx(36 + 1 / 8 + 0.0217 + 1 / 4 + 2.1 * 0.0217, abs=0.001)


def test_closures_fill_the_ribs_at_the_eave(model: Model) -> None:
    """A plug under every major rib of a slope: on 480 in ribs at 1, 10, 19 ... 478, the first and the last
    as far as the building goes: 54."""
    plugs = of(model, "inside closure", "left slope")
    assert len(plugs) == 54
    for one, other in pairwise(sorted(piece.place.origin[1] for piece in plugs)):
        assert (other - one) / INCH == pytest.approx(9.0, abs=0.01)


def test_the_ridge_caps_laps_face_away_from_the_wind() -> None:
    """Each piece's start lies on the one before: from the rear with the wind in front, and the other way."""
    starts = {}
    for wind in ("front", "back"):
        text = GARAGE + f'[trim]\nwind = "{wind}"\n'
        caps = [part for part in lay_out(parse(text, "garage")).parts if part.role == "ridge cap"]
        starts[wind] = [cap.place.origin[1] for cap in caps]
    assert starts["front"] == sorted(starts["front"], reverse=True)
    assert starts["back"] == sorted(starts["back"])
    assert len(starts["front"]) == len(starts["back"]) == 4
