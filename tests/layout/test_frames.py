"""The frame and its framing, worked by hand for one gable and checked against the rules of squaring."""

from __future__ import annotations

from math import dist, pi

import pytest
from ribwright.description.building import Building
from ribwright.findings import Code
from ribwright.intake import parse
from ribwright.layout.whole_building import lay_out
from ribwright.measure.faces import body
from ribwright.measure.member import measure_member
from ribwright.order.lists.schedule import Schedule, schedule
from ribwright.pieces import Model, Piece
from ribwright.place import Point3
from ribwright.raising import raise_building
from ribwright.recipe import Prism

INCH = 25.4

# 24 x 32 ft, so that the slab's edges and diagonal are 24-32-40, four times 6-8-10 (Carpenters' Guide).
SHOP = """
width = "24 ft"
length = "32 ft"
eave_height = "10 ft"
pitch = "3/12"
[frame]
spacing = "8 ft"
back_posts = "centre"
[[opening]]
kind = "walk door"
wall = "front"
width = "3 ft"
height = "6 ft 8 in"
from_left = "10 ft"
"""


@pytest.fixture(scope="module")
def building() -> Building:
    return parse(SHOP, "shop")


@pytest.fixture(scope="module")
def model(building: Building) -> Model:
    return raise_building(building).model


@pytest.fixture(scope="module")
def listed(model: Model) -> Schedule:
    return schedule(model)


def corners(piece: Piece) -> list[Point3]:
    way = measure_member(piece.solid).ways[0]
    return [piece.place.point(way.bench.point(tuple(point))) for point in way.points.tolist()]


def of(model: Model, role: str, *faces: str) -> list[Piece]:
    return [
        piece for piece in model.pieces if piece.role == role and (not faces or piece.label("face") in faces)
    ]


def test_columns_are_plumb(model: Model) -> None:
    """Far inside the 1/500 that AISC 303-16 7.13.1.1 allows an erected column: drawn ones are exact."""
    for piece in of(model, "column"):
        points = corners(piece)
        foot = [p for p in points if p[2] < min(q[2] for q in points) + 0.01]
        for x, y, _ in points:
            assert min(abs(x - p[0]) + abs(y - p[1]) for p in foot) < 1e-6


def test_the_steel_line_is_square(model: Model) -> None:
    """24-32-40: the girts reach the four corners of the steel line, whose diagonals are 40 ft each."""
    points = [p for piece in of(model, "girt") for p in corners(piece)]
    ends = {
        name: min(points, key=lambda p, c=corner: dist(p[:2], c))
        for name, corner in {
            "front left": (0.0, 0.0),
            "front right": (24 * 12 * INCH, 0.0),
            "back left": (0.0, 32 * 12 * INCH),
            "back right": (24 * 12 * INCH, 32 * 12 * INCH),
        }.items()
    }
    one = dist(ends["front left"][:2], ends["back right"][:2])
    other = dist(ends["front right"][:2], ends["back left"][:2])
    assert one == pytest.approx(other, abs=0.01)
    assert one / INCH == pytest.approx(40 * 12, abs=1 / 2)  # a bend's radius short of the sharp corner


def test_frames_stand_no_further_apart_than_asked(model: Model) -> None:
    """32 ft in bays of at most 8 ft: five frames, the end ones in by the girts' 4 in and half a column."""
    at = sorted(
        {round(sum(p[1] for p in corners(c)) / len(corners(c)) / INCH, 3) for c in of(model, "column")}
    )
    assert at == pytest.approx([4 + 2, 96, 192, 288, 384 - 6], abs=0.001)


def test_the_front_gable_by_hand(listed: Schedule) -> None:
    """The front gable's own steel, in inches.

    Rafters and columns are the frames'. Door 120 to 156, jambs 2 in wide: from 118 to 158.
    Base rail: 0 to 118 and 158 to 288 with one mitre each: 118 and 130.
    Side girts: rail's middle at 1, eave at 120, at most 48 apart: three spaces, at 1 + 119/3 = 40.67 and
    80.33. The door's header ends at 80 + 2 = 82, over 80.33 - 1: both girts stop at the jambs: 118, 130.
    Girts over the eave: rake angle's leg 4.075 in down; peak less half a girt 120 + 36 - 4.2005 - 1 =
    150.80; from the eave up 30.80 in one space: one at 120. Its lower edge at 119 meets the rake's plane
    at u = (119 - 120 + 4.2005) * 4 = 12.80: it is 288 - 2 * 12.80 = 262.40 long on its lower edge.
    Jambs from the slab to the underside of that girt, 119. Header 36.
    """
    front = {
        (item.role, round(item.length / INCH, 2)): item.count
        for item in listed.listed("members")
        if item.faces == ("front",)
    }
    assert front[("base rail", 118.0)] == 1
    assert front[("base rail", 130.0)] == 1
    assert front[("girt", 118.0)] == 2
    assert front[("girt", 130.0)] == 2
    assert front[("jamb", 119.0)] == 2
    assert front[("header", 36.0)] == 1
    both = {
        (item.role, round(item.length / INCH, 2)): item.count
        for item in listed.listed("members")
        if set(item.faces) == {"front", "back"}
    }
    assert both[("girt", 262.40)] == 2


def test_base_plates_are_bored_without_a_boolean(building: Building, model: Model) -> None:
    """4 x 10 in of 3/8 in plate less four holes of 11/16 in, each one round face: 14.443 in3."""
    laid = [part for part in lay_out(building).parts if part.role == "base plate"]
    assert laid
    assert all(isinstance(part.recipe, Prism) for part in laid)
    for piece in of(model, "base plate"):
        plate = body(piece.solid)
        assert plate.bores == pytest.approx((11 / 16 * INCH,) * 4, abs=1e-6)
        assert plate.curved == 4
        by_hand = (4 * 10 - 4 * pi / 4 * (11 / 16) ** 2) * 3 / 8
        assert plate.volume / INCH**3 == pytest.approx(by_hand, rel=1e-9)


def test_a_post_in_a_doors_way_is_left_out_or_stopped_and_said() -> None:
    text = SHOP.replace('back_posts = "centre"', 'front_posts = "centre"').replace('10 ft"\n', '10 ft"\n', 1)
    by_pass = raise_building(parse(text, "shop"))
    assert [f.code for f in by_pass.findings] == [Code.POST_LEFT_OUT]
    assert not any(f.fault for f in by_pass.findings)
    assert [piece.name for piece in of(by_pass.model, "post")] == ["back post 1"]
    flush = raise_building(parse(text + '[framing]\ngirts = "flush"\n', "shop"))
    assert Code.POST_ON_HEADER in [f.code for f in flush.findings]
    (post,) = [piece for piece in of(flush.model, "post") if piece.name.startswith("front")]
    assert min(p[2] for p in corners(post)) / INCH == pytest.approx(80 + 2)  # on the header


def test_what_stands_in_an_overhead_doors_room_is_said() -> None:
    door = """
[[opening]]
kind = "overhead door"
wall = "left"
width = "6 ft"
height = "8 ft"
from_left = "9 ft 1 in"
"""
    assert raise_building(parse(SHOP + door, "shop")).findings == ()
    high = SHOP + door + '[door_room]\nheadroom = "36 in"\n'  # 11 ft, over a 10 ft eave
    found = raise_building(parse(high, "shop")).findings
    assert {f.code for f in found} == {Code.DOOR_ROOM}
    assert all(f.fault for f in found)
    assert any("purlin" in f.pieces[0] for f in found)
    assert not any("right" in f.pieces[0] for f in found)
