"""Ribbed sheets: what lies between two graphs over an outline, whatever the outline."""

from __future__ import annotations

import math

import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st
from OCP.TopAbs import TopAbs_FACE, TopAbs_SHELL, TopAbs_SOLID
from OCP.TopExp import TopExp_Explorer
from ribwright.recipe import Sheet
from ribwright.solids import realise
from ribwright.solids.planar import planar_faces, planar_triangles
from ribwright.solids.properties import is_valid, volume
from ribwright.solids.ribbed_sheet import sheet as fresh_sheet
from ribwright.solids.surface import is_closed
from shapely import Polygon, box
from support.bodies import (
    LEFT,
    LOWER,
    PROFILE,
    RIGHT,
    UPPER,
    sheet_over,
    volume_between,
    watertight,
)

WHOLE = box(LEFT, 0, RIGHT, 3000)
RAKE = Polygon([(LEFT, 0), (RIGHT, 0), (RIGHT, 3000), (LEFT, 3000 - 241.3)])
BEND = LOWER[5][0]  # where the pan begins

OUTLINES = {
    "whole": WHOLE,
    "rake": RAKE,
    "rake and hole": RAKE - box(200, 900, 700, 1800),
    "a hole between two bends": WHOLE - box(40, 900, 60, 1000),
    "a hole whose side is a bend": WHOLE - box(BEND, 900, 400, 1000),
    "a notch whose side is a bend": WHOLE - box(BEND, -1, 400, 1000),
    "ripped at a bend": box(LEFT, 0, BEND, 3000),
    "begun at a bend": box(BEND, 0, RIGHT, 3000),
    "peak": Polygon([(LEFT, 0), (RIGHT, 0), (RIGHT, 2800), (457.2, 2900), (LEFT, 2780)]),
    "a strip in two parts": WHOLE - box(100, 1000, RIGHT + 1, 2000),
    "a strip in three parts": WHOLE - box(LEFT - 1, 500, 500, 700) - box(LEFT - 1, 900, 300, 1100),
    "a tip on a bend": WHOLE - Polygon([(RIGHT, 400), (RIGHT, 600), (BEND, 500)]),
    "five holes": WHOLE - shapely.union_all([box(50 + 130 * i, 500, 150 + 130 * i, 700) for i in range(5)]),
    "needle": Polygon([(LEFT, 0), (LEFT + 5, 0), (LEFT + 5, 2000)]),
}


def count(solid: object, kind: object) -> int:
    explorer, found = TopExp_Explorer(solid, kind), 0
    while explorer.More():
        found += 1
        explorer.Next()
    return found


def assert_sound(recipe: Sheet) -> None:
    solid = realise(recipe)
    assert is_valid(solid)
    assert (count(solid, TopAbs_SOLID), count(solid, TopAbs_SHELL)) == (1, 1)
    expected = volume_between(recipe)
    assert volume(solid) == pytest.approx(expected, rel=1e-9)
    assert watertight(solid).volume() == pytest.approx(expected, rel=1e-9)
    assert is_closed(planar_triangles(solid)[1])  # without the slower mesher, which would mend it


@pytest.mark.parametrize("name", OUTLINES)
def test_every_kind_of_outline(name: str) -> None:
    assert_sound(sheet_over(OUTLINES[name]))


@st.composite
def outlines(draw: st.DrawFn) -> Polygon:
    """Ripped, raked or peaked sheets with notches and holes; many corners on the graphs' bends."""
    bends = st.sampled_from([u for u, _ in LOWER[1:-1]])
    across = st.one_of(st.floats(LEFT + 1, RIGHT - 1), bends)
    along = st.floats(100, 2400)
    a, b = draw(st.sampled_from([LEFT, *[u for u, _ in LOWER[1:4]]])), draw(across)
    start, end = (a, RIGHT) if abs(a - b) < 5 else (min(a, b), max(a, b))
    head = [(end, draw(st.floats(2500, 3000))), (start, draw(st.floats(2500, 3000)))]
    if draw(st.booleans()):
        head.insert(1, ((start + end) / 2, 3100.0))
    region = Polygon([(start, 0.0), (end, 0.0), *head])
    for _ in range(draw(st.integers(0, 4))):
        u, v = draw(across), draw(along)
        region -= box(u, v, u + draw(st.floats(5, 400)), v + draw(st.floats(5, 400)))
    region = shapely.set_precision(region, 1e-6)
    parts = [part for part in shapely.get_parts(region) if part.area > 100]
    return max(parts, key=lambda part: part.area)


@settings(max_examples=60, deadline=None)
@given(outlines())
def test_random_outlines(region: Polygon) -> None:
    assert_sound(sheet_over(region))


def test_the_faces_are_as_few_as_can_be() -> None:
    """A whole sheet: a face for each side of both graphs, two ends, two edges."""
    solid = realise(sheet_over(WHOLE))
    assert count(solid, TopAbs_FACE) == len(LOWER) - 1 + len(UPPER) - 1 + 4


def test_a_rip_a_hair_off_a_bend_leaves_no_sliver() -> None:
    """The bend is set on the rip: the volume is right to the hair, 0.00002 mm of 97."""
    recipe = sheet_over(box(LEFT, 0, BEND + 2e-5, 3000))
    solid = realise(recipe)
    assert is_valid(solid)
    assert volume(solid) == pytest.approx(volume_between(recipe), rel=1e-6)
    assert count(solid, TopAbs_FACE) == count(realise(sheet_over(box(LEFT, 0, BEND, 3000))), TopAbs_FACE)
    assert min(len(face.rings[0]) for face in planar_faces(solid)) == 4


def test_points_on_a_straight_line_make_no_faces() -> None:
    extra = Polygon([(LEFT, 0), (0, 0), (RIGHT, 0), (RIGHT, 1500), (RIGHT, 3000), (LEFT, 3000), (LEFT, 1)])
    plain, split = realise(sheet_over(WHOLE)), fresh_sheet(sheet_over(extra))
    assert count(split, TopAbs_FACE) == count(plain, TopAbs_FACE)


def test_a_bend_that_is_none_makes_no_face() -> None:
    (u, w), (after, over) = LOWER[4:6]
    middle = ((u + after) / 2, (w + over) / 2)
    split = fresh_sheet(Sheet((*LOWER[:5], middle, *LOWER[5:]), UPPER, sheet_over(WHOLE).outline))
    assert count(split, TopAbs_FACE) == count(realise(sheet_over(WHOLE)), TopAbs_FACE)


@pytest.mark.parametrize("name", OUTLINES)
def test_no_face_is_a_sliver(name: str) -> None:
    for face in planar_faces(realise(sheet_over(OUTLINES[name]))):
        for ring in face.rings:
            sides = [math.dist(p, q) for p, q in zip(ring, [*ring[1:], ring[0]], strict=True)]
            assert min(sides) > 1e-3


def test_the_way_round_an_outline_or_a_hole_is_given_does_not_matter() -> None:
    given_one_way = sheet_over(OUTLINES["rake and hole"])
    other = Sheet(LOWER, UPPER, given_one_way.outline[::-1], (given_one_way.holes[0][::-1],))
    assert volume(realise(other)) == pytest.approx(volume(realise(given_one_way)), rel=1e-12)


def test_graphs_that_meet_at_an_edge_make_a_wedge() -> None:
    wedge = Sheet(((0, 0), (100, 0)), ((0, 0), (100, 20)), ((0, 0), (100, 0), (100, 50), (0, 50)))
    assert is_valid(realise(wedge))
    assert volume(realise(wedge)) == pytest.approx(100 * 20 / 2 * 50)


def test_graphs_that_do_not_cover_the_outline_are_refused() -> None:
    with pytest.raises(ValueError, match="covers no"):
        fresh_sheet(Sheet(LOWER, UPPER, ((LEFT - 5, 0), (RIGHT, 0), (RIGHT, 10), (LEFT - 5, 10))))


def test_equal_recipes_are_one_solid() -> None:
    assert realise(sheet_over(RAKE)) is realise(sheet_over(Polygon(RAKE)))


def test_neighbours_nest_and_touch() -> None:
    """The overlap rib of the next sheet lies on the underlap rib of this one: no gap, no shared volume.

    Pressed in by a hair, it is stopped all over the lap, two legs wide.
    """
    this = watertight(realise(sheet_over(WHOLE)))
    after = this.translate((PROFILE.cover, 0.0, 0.0))
    assert (this ^ after).volume() == pytest.approx(0.0, abs=1e-5 * 3000 * 2 * PROFILE.leg)
    pressed = after.translate((0.0, 0.0, -0.01))
    assert (this ^ pressed).volume() == pytest.approx(0.01 * 3000 * 2 * PROFILE.leg, rel=1e-3)
