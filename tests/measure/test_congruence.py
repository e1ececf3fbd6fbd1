"""Which pieces share a mark, and how marks are numbered."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from OCP.TopoDS import TopoDS_Solid
from ribwright.exchange.step import read_step, write_step
from ribwright.measure import groups, in_tree_order, marked
from ribwright.measure.snap import snapped
from ribwright.pieces import Model, Piece
from ribwright.place import Place
from ribwright.solids import realise
from shapely import transform
from shapely.geometry import Polygon, box
from support.bodies import LEFT, PROFILE, RIGHT, sheet_over
from support.poses import moved

PITCH = PROFILE.pitch
PLAIN = box(LEFT, 0, RIGHT, 2000)
RAKED = Polygon([(LEFT, 0), (RIGHT, 0), (RIGHT, 2000), (LEFT, 1758.7)])
MIRRORED = Polygon([(LEFT, 0), (RIGHT, 0), (RIGHT, 1758.7), (LEFT, 2000)])
LABELS = (("colour", "white"), ("gauge", "29 ga"), ("material", "steel"), ("profile", "p"))


def solid_of(outline: Polygon) -> TopoDS_Solid:
    return realise(sheet_over(outline))


def piece(solid: TopoDS_Solid, name: str = "", **changes: object) -> Piece:
    made = Piece(name, "wall sheet", ("walls",), solid, Place(), LABELS)
    return replace(made, **changes)  # type: ignore[arg-type]  # the caller names fields of Piece


def marks(*pieces: Piece) -> list[str]:
    return [one.mark for one in marked(Model("shop", "mm", pieces)).pieces]


def share(*outlines: Polygon) -> bool:
    """Whether sheets of the outlines all have one mark, each body somewhere else in space."""
    solids = [moved(solid_of(outline), seed) for seed, outline in enumerate(outlines)]
    return len(set(marks(*map(piece, solids)))) == 1


def test_a_sheet_shares_its_mark_wherever_it_stands() -> None:
    assert share(RAKED, RAKED, RAKED)


def test_mirror_images_are_two_sheets() -> None:
    assert not share(RAKED, MIRRORED)
    hole, mirrored = box(100, 500, 300, 900), box(PROFILE.cover - 300, 500, PROFILE.cover - 100, 900)
    assert not share(PLAIN - hole, PLAIN - mirrored)


def test_a_hole_in_the_other_end_is_another_sheet_and_a_rip_turned_end_for_end_the_same() -> None:
    """The overlap rib tells the ends apart; a rip between two plain ribs may be turned."""
    centre = PROFILE.cover / 2
    low, high = box(centre - 50, 300, centre + 50, 700), box(centre - 50, 1300, centre + 50, 1700)
    assert not share(PLAIN - low, PLAIN - high)
    left, right = PITCH - 40, 3 * PITCH + 40
    rip = box(left, 0, right, 2000)
    assert share(rip - low, rip - high)
    # on one side of the middle it can only be its mirror image
    aside = box(centre + 20, 300, centre + 60, 700)
    turned = transform(aside, lambda points: (2 * centre, 2000) - points)
    upside = transform(aside, lambda points: (0, 2000) + points * (1, -1))
    assert share(rip - aside, rip - turned)
    assert not share(rip - aside, rip - upside)


def test_equal_rips_from_different_pans_are_one() -> None:
    assert share(box(PITCH + 40, 0, 2 * PITCH + 40, 900), box(2 * PITCH + 40, 0, 3 * PITCH + 40, 900))
    assert not share(box(PITCH + 40, 0, 2 * PITCH + 40, 900), box(PITCH + 41, 0, 2 * PITCH + 41, 900))


@pytest.mark.parametrize(("off", "same"), [(0.005, True), (0.015, False), (0.02, False)])
def test_a_hundredth_of_a_millimetre_decides(off: float, same: bool) -> None:
    """0.015 mm of length would be 0.0075 at either end if sheets were laid centre on centre."""
    hole = box(200, 500, 700, 900)
    near = {
        "longer": (PLAIN, box(LEFT, 0, RIGHT, 2000 + off)),
        "wider": (box(LEFT, 0, 400, 900), box(LEFT, 0, 400 + off, 900)),
        "hole moved": (PLAIN - hole, PLAIN - box(200 + off, 500, 700 + off, 900)),
        "hole higher": (PLAIN - hole, PLAIN - box(200, 500, 700, 900 + off)),
        "notch deeper": (PLAIN - box(300, -1, 500, 90), PLAIN - box(300, -1, 500, 90 + off)),
        "rake": (RAKED, Polygon([(LEFT, 0), (RIGHT, 0), (RIGHT, 2000), (LEFT, 1758.7 - off)])),
    }
    assert {name: share(*pair) for name, pair in near.items()} == dict.fromkeys(near, same)


@pytest.mark.parametrize("label", ["colour", "gauge", "material", "profile"])
def test_labels_that_steel_cannot_show_tell_sheets_apart(label: str) -> None:
    solid = solid_of(PLAIN)
    other = tuple((key, "other" if key == label else value) for key, value in LABELS)
    assert len(set(marks(piece(solid), piece(solid, labels=other)))) == 2
    assert len(set(marks(piece(solid), piece(solid, labels=(*LABELS, ("face", "left")))))) == 1


def test_roles_have_marks_of_their_own_and_strangers_none() -> None:
    solid = solid_of(PLAIN)
    roles = ["roof sheet", "wall sheet", "garden gnome", ""]
    assert marks(*(piece(solid, role=role) for role in roles)) == ["R1", "W1", "", ""]


def test_marks_that_pieces_carry_are_not_believed() -> None:
    solid = solid_of(PLAIN)
    assert marks(piece(solid, mark="W9"), piece(solid, mark="X1")) == ["W1", "W1"]


def test_marks_count_from_the_longest_down_then_by_area_then_by_place() -> None:
    long, short = solid_of(box(LEFT, 0, RIGHT, 3000)), solid_of(box(LEFT, 0, RIGHT, 1000))
    narrow = solid_of(box(LEFT, 0, 400, 3000))
    raked, mirrored = solid_of(RAKED), solid_of(MIRRORED)
    assert marks(*map(piece, (short, narrow, raked, mirrored, long))) == ["W5", "W2", "W3", "W4", "W1"]
    # equal length and area: whichever comes first
    assert marks(*map(piece, (mirrored, raked))) == ["W1", "W2"]
    assert marks(*map(piece, (raked, mirrored))) == ["W1", "W2"]


def test_the_order_of_a_tree_is_that_of_its_groups() -> None:
    """Groups that were interleaved come back from a file one after the other: marks stay."""
    raked, mirrored = solid_of(RAKED), solid_of(MIRRORED)
    a, b, inner = ("a",), ("b",), ("a", "inner")
    pieces = [
        piece(solid_of(PLAIN), "1", group=a),
        piece(mirrored, "2", group=b),
        piece(raked, "3", group=inner),
        piece(raked, "4", group=a),
    ]
    listed = in_tree_order(pieces)
    assert [one.name for one in listed] == ["1", "4", "3", "2"]
    assert in_tree_order(listed) == listed
    by_name = dict(zip((one.name for one in pieces), marks(*pieces), strict=True))
    assert by_name == {"1": "W1", "3": "W2", "4": "W2", "2": "W3"}
    assert [by_name[one.name] for one in listed] == marks(*listed)


@settings(max_examples=15, deadline=None)
@given(order=st.permutations(range(9)), seed=st.integers(0, 1000))
def test_classes_do_not_depend_on_order_or_pose(order: list[int], seed: int) -> None:
    """A chain of sheets 0.008 mm apart hangs together from whichever end it is taken up."""
    chain = [box(LEFT, 0, RIGHT, 1500 + 0.008 * step) for step in range(4)]
    outlines = [*chain, RAKED, RAKED, MIRRORED, RAKED - box(200, 500, 700, 900), box(LEFT, 0, RIGHT, 1500.06)]
    pieces = [piece(moved(solid_of(outline), seed + i), str(i)) for i, outline in enumerate(outlines)]
    found = groups(Model("shop", "mm", tuple(pieces[i] for i in order)))
    classes = {frozenset(int(member.piece.name) for member in group.members) for group in found}
    assert classes == {frozenset(c) for c in ([0, 1, 2, 3], [4, 5], [6], [7], [8])}


def test_marks_survive_step(tmp_path: Path) -> None:
    outlines = [PLAIN, RAKED, MIRRORED, RAKED - box(200, 500, 700, 900), box(LEFT, 0, 60, 900), RAKED]
    pieces = [piece(moved(solid_of(one), seed), str(seed)) for seed, one in enumerate(outlines)]
    model = marked(Model("shop", "mm", tuple(pieces)))
    write_step(model, tmp_path / "m.step")
    again = marked(read_step(tmp_path / "m.step"))
    assert {one.name: one.mark for one in again.pieces} == {one.name: one.mark for one in model.pieces}


def test_head_up_and_turned() -> None:
    """The head is up when v points up: so it does for a wall sheet stood on its foot, y up."""
    standing = Place((0, 0, 0), (1, 0, 0), (0, 0, 1))
    on_its_head = Place((0, 0, 0), (-1, 0, 0), (0, 0, -1))
    rip = box(PITCH - 40, 0, 3 * PITCH + 40, 2000)
    for outline, ups in ((PLAIN, [True, False]), (rip, [True, True])):
        solid = solid_of(outline)
        pieces = (piece(solid, place=standing), piece(solid, place=on_its_head))
        (group,) = groups(Model("shop", "mm", pieces))
        assert [member.head_up for member in group.members] == ups


@given(
    halves=st.integers(-(10**6), 10**6),
    micro=st.sampled_from([0, 0, 1, -1, 5]),
    noise=st.floats(-1e-9, 1e-9),
    step=st.sampled_from([0.01, 1e-3, 0.1]),
)
def test_snapping_is_the_same_with_and_without_noise(
    halves: int, micro: int, noise: float, step: float
) -> None:
    """On the grid of recipes, 1e-6 mm, no noise of 1e-9 mm turns a rounding, not even on a tie."""
    value = round(halves * step / 2 + micro / 1e6, 6)
    assert snapped(value + noise, step) == snapped(value, step)
    assert abs(snapped(value, step) - value) <= step / 2 + 1e-6
