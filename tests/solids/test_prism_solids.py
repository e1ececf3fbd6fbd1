"""Members: sharp and rounded sections between any two end planes."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from OCP.BRepAdaptor import BRepAdaptor_Surface
from OCP.GeomAbs import GeomAbs_Cylinder
from ribwright.place import Point3
from ribwright.recipe import Prism, Section
from ribwright.solids.planar import faces_of
from ribwright.solids.prism import prism
from ribwright.solids.properties import is_valid, volume
from support.bodies import tube, watertight

SQUARE, LONG = (0.0, 0.0, 0.0), (0.0, 0.0, 3000.0)
MITRE, RAKE = (0.3, 0.0, 0.0), (-0.25, 0.1, 3000.0)
LEE = Section(((0, 0, 0), (50, 0, 0), (50, 3, 0), (3, 3, 0), (3, 50, 0), (0, 50, 0)))


def corner_area(radius: float) -> float:
    """What a square corner loses when it is rounded."""
    return radius * radius * (1 - math.pi / 4)


def tube_area(width: float, height: float, wall: float) -> float:
    inside = (width - 2 * wall) * (height - 2 * wall) - 4 * corner_area(wall)
    return width * height - 4 * corner_area(2 * wall) - inside


def cylinders(solid: object) -> list[float]:
    surfaces = [BRepAdaptor_Surface(face) for face in faces_of(solid)]
    return sorted(s.Cylinder().Radius() for s in surfaces if s.GetType() == GeomAbs_Cylinder)


@pytest.mark.parametrize("start", [SQUARE, MITRE])
@pytest.mark.parametrize("end", [LONG, RAKE])
def test_a_tube_has_true_arcs_and_its_worked_volume(start: Point3, end: Point3) -> None:
    """About its centre a section's mitre takes off at one side what it adds at the other."""
    solid = prism(Prism(tube(100.0, 60.0, 4.0), start, end))
    assert is_valid(solid)
    assert volume(solid) == pytest.approx(tube_area(100.0, 60.0, 4.0) * 3000.0, rel=1e-9)
    assert cylinders(solid) == pytest.approx([4.0] * 4 + [8.0] * 4)
    assert len(list(faces_of(solid))) == 2 * 8 + 2
    assert watertight(solid).volume() == pytest.approx(volume(solid), rel=2e-3)


@settings(max_examples=40, deadline=None)
@given(*[st.floats(-1.5, 1.5)] * 4, st.booleans())
def test_sharp_sections_take_any_end_planes(a: float, b: float, d: float, e: float, turned: bool) -> None:
    outer = LEE.outer[::-1] if turned else LEE.outer
    solid = prism(Prism(Section(outer), (a, b, 0.0), (d, e, 400.0)))
    area = 50 * 3 + 3 * 47
    x = y = (50 * 3 * 25 + 3 * 47 * 1.5) / area  # the centroid; the angle is alike both ways
    assert is_valid(solid)
    assert volume(solid) == pytest.approx(area * (400.0 + (d - a) * x + (e - b) * y), rel=1e-9)
    assert watertight(solid).volume() == pytest.approx(volume(solid), rel=1e-9)


def test_a_sharp_section_with_a_hole() -> None:
    box = ((0, 0, 0), (80, 0, 0), (80, 40, 0), (0, 40, 0))
    hole = ((30, 10, 0), (50, 10, 0), (50, 30, 0), (30, 30, 0))
    for inner in (hole, hole[::-1]):
        solid = prism(Prism(Section(box, (inner,)), (0.1, 0.0, -4.0), (0.0, 0.0, 100.0)))
        assert is_valid(solid)
        assert volume(solid) == pytest.approx((80 * 40 - 20 * 20) * 100.0)  # -4 at x = 0, +4 at x = 80


def test_a_square_of_full_radii_is_a_rod() -> None:
    rod = Section(((-9, -9, 9), (9, -9, 9), (9, 9, 9), (-9, 9, 9)))
    solid = prism(Prism(rod, SQUARE, LONG))
    assert is_valid(solid)
    assert volume(solid) == pytest.approx(math.pi * 81 * 3000, rel=1e-9)


def test_a_corner_that_turns_back_is_rounded_the_other_way() -> None:
    cee = (0, 0, 5), (60, 0, 0), (60, 3, 0), (3, 3, 2), (3, 97, 2), (60, 97, 0), (60, 100, 0), (0, 100, 5)
    area = 60 * 3 * 2 + 94 * 3 - 2 * corner_area(5) + 2 * corner_area(2)
    solid = prism(Prism(Section(cee), SQUARE, LONG))
    assert is_valid(solid)
    assert volume(solid) == pytest.approx(area * 3000, rel=1e-9)


def test_arcs_that_overlap_are_refused() -> None:
    with pytest.raises(ValueError, match="overlap"):
        prism(Prism(Section(((0, 0, 6), (10, 0, 6), (10, 50, 0), (0, 50, 0))), SQUARE, LONG))


def test_end_planes_that_cross_are_refused() -> None:
    with pytest.raises(ValueError, match="cross"):
        prism(Prism(LEE, (0.0, 0.0, 10.0), (-1.0, 0.0, 30.0)))
