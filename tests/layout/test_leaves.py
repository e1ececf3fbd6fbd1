"""What fills an opening looks like what it is, and is bought by the opening it fills. Lengths in inches."""

from __future__ import annotations

from functools import cache

import numpy as np
import pytest
from ribwright.errors import DescriptionError
from ribwright.findings import Code
from ribwright.intake import parse
from ribwright.layout.whole_building import lay_out
from ribwright.order.buying.order_list import order
from ribwright.order.lists.schedule import schedule
from ribwright.pieces import Model, Piece
from ribwright.raising import raise_building
from ribwright.solids.placed import placed_triangles
from ribwright.solids.properties import volume
from ribwright.steps import steps
from ribwright.units import INCH
from support.judged import judged

pytestmark = pytest.mark.broad

SHED = 'width = "30 ft"\nlength = "36 ft"\neave_height = "12 ft"\npitch = "3/12"\n'


def opening(kind: str, wall: str, size: tuple[str, str], from_left: str, more: str = "") -> str:
    lines = f'width = "{size[0]}"\nheight = "{size[1]}"\nfrom_left = "{from_left}"\n{more}'
    return f'[[opening]]\nkind = "{kind}"\nwall = "{wall}"\n{lines}'


DOORS = (
    SHED
    + opening("overhead door", "front", ("117 in", "9 ft"), "40.5 in", 'colour = "tan"\n')
    + opening("roll-up door", "front", ("99 in", "8 ft"), "220.5 in")
    + opening("double door", "left", ("70 in", "7 ft"), "132.5 in", 'swing = "out"\ncolour = "firebrick"\n')
    + opening("walk door", "right", ("3 ft", "82 in"), "41.5 in", 'swing = "left out"\n')
    + opening("walk door", "right", ("3 ft", "82 in"), "230.5 in", 'swing = "right in"\n')
)


@cache
def doors() -> Model:
    return raise_building(parse(DOORS, "doors")).model


def leaf(name: str) -> Piece:
    return next(piece for piece in doors().pieces if piece.name == name)


def size(piece: Piece) -> list[float]:
    points = np.vstack([points for points, _ in placed_triangles([piece])])
    return (np.ptp(points, axis=0) / INCH).tolist()


def test_an_overhead_door_is_drawn_in_sections_of_two_feet_at_most() -> None:
    """9 ft are five; four grooves of 4 mm, each a triangle 8 mm high, are missing from the block."""
    door = leaf("front overhead door 1 leaf")
    assert size(door) == pytest.approx([117, 2, 108], abs=1e-6)
    assert volume(door.solid) == pytest.approx(117 * INCH * (2 * 108 * INCH**2 - 4 * 16), rel=1e-9)


def test_a_roll_up_door_is_a_curtain_of_slats() -> None:
    """An inch over its waves; as much metal as a flat one as high: waves shear and do not stretch it."""
    door = leaf("front roll-up door 2 leaf")
    assert size(door) == pytest.approx([99, 1, 96], abs=1e-6)
    assert volume(door.solid) == pytest.approx(99 * INCH * 96 * INCH * 6.0, rel=1e-9)


def test_a_double_door_is_two_equal_leaves_an_eighth_apart() -> None:
    """70 in less an eighth at each side and between them."""
    left, right = (leaf(f"left double door 1 leaf {hand}") for hand in ("left", "right"))
    wide = (70 - 3 / 8) / 2
    assert size(left) == pytest.approx([1.75, wide, 84 - 1 / 8], abs=1e-6)
    assert left.mark == right.mark
    assert abs(left.place.origin[1] - right.place.origin[1]) / INCH == pytest.approx(wide + 1 / 8)


def test_doors_are_ordered_by_the_opening_with_their_swing_and_colour() -> None:
    lines = [line for line in order(schedule(doors())).lines if line.list == "openings"]
    double = "5' 6\" x 6' 10\" nominal, 5' 10\" x 7' rough opening"
    walk = "whitesmoke, 2' 8\" x 6' 8\" nominal, 3' x 6' 10\" rough opening"
    assert sorted((line.item, line.count) for line in lines) == [
        (f"double door with its frame, opens out, firebrick, {double}", 1),
        ("overhead door, tan, 9' 9\" x 9'", 1),
        ("roll-up door, whitesmoke, 8' 3\" x 8'", 1),
        (f"walk door with its frame, hinged left, opens out, {walk}", 1),
        (f"walk door with its frame, hinged right, opens in, {walk}", 1),
    ]


def test_doors_of_every_kind_are_sound() -> None:
    found = judged(parse(DOORS, "doors"))
    assert (found.faults, dict(found.said)) == ({}, {})


def test_a_roll_up_door_needs_no_room_for_tracks_but_for_its_coil() -> None:
    """Under an eave of 10 ft tracks 3 ft over a door of 9 ft meet the rafters that a coil of 18 in
    behind the jambs does not reach."""

    def in_the_way(kind: str) -> set[str]:
        room = '[door_room]\nheadroom = "36 in"\n'
        text = SHED.replace("12 ft", "10 ft") + room + opening(kind, "front", ("99 in", "9 ft"), "130.5 in")
        return {one.pieces[0] for one in lay_out(parse(text, "x")).findings if one.code is Code.DOOR_ROOM}

    assert in_the_way("roll-up door") < in_the_way("overhead door")


VENTS = (
    SHED
    + opening("vent", "front", ("24 in", "18 in"), "40 in", 'sill = "9 ft"\n')
    + opening("vent", "right", ("12 in", "6 in"), "60 in", 'colour = "tan"\n')
)


def test_a_vent_is_a_louvre_whose_blades_fall_outward_and_hide_what_is_behind() -> None:
    """In a rim of 1 in, 2 in deep and an eighth less than its opening at sides and head: blades of 8 mm at 45
    degrees every 2 in, in 16 in of light seven slots of which one less than 2 in high does not fit. Its nose
    comes 1 in out of the jamb and 1/2 in on, 1/2 in high at its root, from 1 mm within, and 1/8 less at its
    edge."""
    model = raise_building(parse(VENTS, "vents")).model
    large = next(piece for piece in model.pieces if piece.name == "front vent 1 louvre")
    wide, high, thick, blade = 24 - 2 / 8, 18 - 1 / 8, 2, 8 / INCH
    out = 1 + 1 / 2
    assert size(large) == pytest.approx([wide, thick + out, high], abs=1e-6)
    nose = wide * out * (1 / 2 - 1 / 8 * (out / 2 + 1 / INCH) / (out + 1 / INCH))
    slots = (high - 2 + blade - thick) // thick
    assert slots == 7
    missing = slots * (wide - 2) * thick * (thick - blade)
    assert volume(large.solid) / INCH**3 == pytest.approx(wide * high * thick - missing + nose, rel=1e-9)
    ((points, triangles),) = placed_triangles([large])
    corners = points[triangles]
    corners = corners[corners[:, :, 1].min(axis=1) > points[:, 1].min() + out * INCH - 1e-3]
    normals = np.cross(corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0])
    leaning = normals[(abs(normals[:, 2]) > 1e-3) & (abs(normals[:, 1]) > 1e-3)]
    assert len(leaning) == slots * 2 * 2 and leaning[:, 1] == pytest.approx(-leaning[:, 2])  # up to the front


def test_vents_are_bought_stand_on_their_sills_and_have_a_step() -> None:
    model = raise_building(parse(VENTS, "vents")).model
    lines = [line.item for line in order(schedule(model)).lines if line.list == "openings"]
    assert sorted(lines) == [
        "vent, tan, 1' x 6\" rough opening",
        "vent, white, 2' x 1' 6\" rough opening",
    ]
    assert "vents" in [step.name for step in steps(model)]
    found = judged(parse(VENTS, "vents"))
    assert found.faults == {}


@pytest.mark.parametrize(
    ("kind", "swing", "said"),
    [
        ("double door", "left out", '"out" or "in": a double door has hinges on both sides'),
        ("walk door", "in", '"left in" or "right in": which side its hinges are on'),
        ("vent", "out", "walk doors and double doors have hinges"),
        ("window", "out", "walk doors and double doors have hinges"),
        ("roll-up door", "left in", "walk doors and double doors have hinges"),
    ],
)
def test_a_swing_that_a_door_cannot_have_is_refused(kind: str, swing: str, said: str) -> None:
    text = SHED + opening(kind, "left", ("4 ft", "4 ft"), "40 in", f'swing = "{swing}"\n')
    with pytest.raises(DescriptionError) as caught:
        parse(text, "x")
    assert said in str(caught.value)


def test_a_roll_up_door_stands_on_the_slab() -> None:
    text = SHED + opening("roll-up door", "left", ("4 ft", "4 ft"), "40 in", 'sill = "1 ft"\n')
    with pytest.raises(DescriptionError, match="0: a roll-up door stands on the slab"):
        parse(text, "x")
