"""Folding a line into a sheet, and the eave strut bent from a cee."""

from math import cos, pi, radians, sin, sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st
from ribwright.catalog.fold import flats, folded, shifted
from ribwright.catalog.sections import parse_section, strut_section
from shapely.geometry import Polygon

INCH = 25.4


# -- eave struts ---------------------------------------------------------------------------------


@given(st.sampled_from(["cee 6x2.5x0.059", "9CS2.5x059", "cee 8x3x0.1 lip 0"]), st.floats(0, 45))
def test_an_eave_strut_lies_under_wall_and_roof(name: str, pitch: float) -> None:
    cee = parse_section(name)
    drawn = strut_section(cee, pitch)
    steel = Polygon([(x, y) for x, y, _ in drawn.outer])
    assert steel.is_valid and steel.exterior.is_ccw
    slope = (cos(radians(pitch)), sin(radians(pitch)))
    points = [(x, y) for x, y, _ in drawn.outer]
    above_roof = [slope[0] * y - slope[1] * x for x, y in points]
    assert max(above_roof) == pytest.approx(0, abs=1e-5)
    assert min(x for x, _ in points) == 0
    assert min(y for _, y in points) == pytest.approx(-cee.depth)
    assert (0, 0, cee.radius + cee.thickness) in drawn.outer
    along = max(
        slope[0] * x + slope[1] * y for (x, y), h in zip(points, above_roof, strict=True) if h > -1e-5
    )
    assert along == pytest.approx(cee.breadth, abs=1e-5)


def test_an_eave_strut_under_a_flat_roof_is_the_cee_itself() -> None:
    cee = parse_section("9CS2.5x059")
    moved = [(x - cee.breadth / 2, y + cee.depth / 2, r) for x, y, r in strut_section(cee, 0).outer]
    assert moved == [pytest.approx(corner, abs=2e-6) for corner in cee.section().outer]


def test_no_eave_strut_from_a_tube_or_under_a_wall() -> None:
    with pytest.raises(ValueError, match="cee"):
        strut_section(parse_section("tube 4x4x0.12"), 10)
    with pytest.raises(ValueError, match="60"):
        strut_section(parse_section("cee 6x2.5x0.059"), 60)


# -- folding -------------------------------------------------------------------------------------


def test_the_thickness_lies_to_the_right_of_the_line() -> None:
    """Up, then right: a right turn, so the line is the outer face."""
    drawn = folded([(0, 0), (0, 10), (20, 10)], 1, 2)
    assert drawn.outer == ((20, 10, 0), (0, 10, 3), (0, 0, 0), (1, 0, 0), (1, 9, 2), (20, 9, 0))
    inner = folded([(20, 9), (1, 9), (1, 0)], 1, 2)
    assert set(inner.outer) == set(drawn.outer), "the same sheet walked the other way along its other face"


def test_flats_are_what_the_bends_leave() -> None:
    assert flats([(0, 0), (0, 10), (20, 10)], 1, 2) == pytest.approx((10 - 3, 20 - 3))
    assert flats([(0, 0), (0, 10), (-20, 10)], 1, 2) == pytest.approx((10 - 2, 20 - 2))
    assert flats([(0, 0), (10, 0), (20, 10)], 1, 2)[0] == pytest.approx(10 - 2 * (sqrt(2) - 1))


def test_a_shifted_line_keeps_its_corners_mitred() -> None:
    assert shifted([(0, 0), (0, 10), (20, 10)], 1) == ((1, 0), (1, 9), (20, 9))
    assert shifted([(0, 0), (0, 10), (20, 10)], -1) == ((-1, 0), (-1, 11), (20, 11))


@pytest.mark.parametrize(
    ("points", "says"),
    [
        ([(0, 0), (0, 2), (20, 2)], "leg 0 is 1.000 mm shorter"),
        ([(0, 0), (0, 10), (0, 20)], "a bend of 0.0 degrees"),
        ([(0, 0), (0, 10), (0, 0)], "a bend of 180.0 degrees"),
        ([(0, 0), (0, 0), (0, 10)], "in one place"),
    ],
)
def test_lines_that_cannot_be_folded(points: list[tuple[float, float]], says: str) -> None:
    with pytest.raises(ValueError, match=says):
        folded(points, 1, 2)


def test_a_folded_blank_has_the_length_of_its_middle() -> None:
    """Flats and arcs by hand: an 8 in cee's girth at mid thickness against its closed form."""
    cee = parse_section("800S200-54")
    girth = sum(flats(cee.line(), cee.thickness, cee.radius)) + 4 * pi / 2 * (cee.radius + cee.thickness / 2)
    legs = 8 + 2 * 2 + 2 * 0.625
    by_hand = legs * INCH - 8 * (cee.radius + cee.thickness) + 2 * pi * (cee.radius + cee.thickness / 2)
    assert girth == pytest.approx(by_hand)
