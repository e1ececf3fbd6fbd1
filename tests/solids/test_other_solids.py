"""Turned bodies, cuts and joins, and what is read off any solid."""

from __future__ import annotations

import math

import numpy as np
import pytest
from ribwright.place import Place
from ribwright.recipe import Cut, Joined, Prism, Section, Turned
from ribwright.solids import realise
from ribwright.solids.properties import is_valid, triangles, volume
from ribwright.solids.surface import is_closed
from ribwright.solids.weld import Facet, weld
from support.bodies import watertight

BLOCK = Prism(Section(((0, 0, 0), (100, 0, 0), (100, 40, 0), (0, 40, 0))), (0, 0, 0), (0, 0, 20))
HOLE = Turned(((0, -1), (8, -1), (8, 21), (0, 21)))
SCREW = ((0.0, -20.0), (2.4, -20.0), (2.4, 0.0), (6.0, 0.0), (6.0, 1.5), (4.0, 1.5), (4.0, 5.0), (0.0, 5.0))
WASHER = ((3.0, 0.0), (8.0, 0.0), (8.0, 1.5), (3.0, 1.5))


CONE = ((0.0, 0.0), (9.0, 0.0), (4.0, 6.0), (4.0, 8.0), (0.0, 12.0))


def pappus(meridian: tuple[tuple[float, float], ...]) -> float:
    """Volume of a turned meridian: its area times the way of its centroid, by Pappus' second theorem."""
    total = 0.0
    for (r, z), (s, y) in zip(meridian, (*meridian[1:], meridian[0]), strict=True):
        total += (r * y - s * z) * (r + s)
    return math.pi / 3 * total


@pytest.mark.parametrize("meridian", [SCREW, WASHER, CONE, SCREW[::-1]])
@pytest.mark.parametrize("sides", [0, 6, 12])
def test_turned_bodies(meridian: tuple[tuple[float, float], ...], sides: int) -> None:
    """With flats, every circle becomes the regular polygon in it: smaller by one factor throughout."""
    solid = realise(Turned(meridian, sides))
    share = sides / (2 * math.pi) * math.sin(2 * math.pi / sides) if sides else 1.0
    assert is_valid(solid)
    assert volume(solid) == pytest.approx(abs(pappus(meridian)) * share, rel=1e-9)
    assert watertight(solid).volume() == pytest.approx(volume(solid), rel=0.05 if not sides else 1e-9)


def test_a_hole_is_cut_where_it_is_placed() -> None:
    places = [Place((x, 20.0, 0.0)) for x in (20.0, 80.0)]
    solid = realise(Cut(BLOCK, tuple((HOLE, place) for place in places)))
    assert is_valid(solid)
    assert volume(solid) == pytest.approx(100 * 40 * 20 - 2 * math.pi * 64 * 20, rel=1e-9)
    points, _ = triangles(solid)
    inside = points[(points[:, 0] > 1) & (points[:, 0] < 99)]
    away = np.min([np.hypot(inside[:, 0] - p.origin[0], inside[:, 1] - p.origin[1]) for p in places], axis=0)
    assert away == pytest.approx(8.0)


def test_a_cut_that_leaves_two_bodies_or_none_is_refused() -> None:
    saw = Prism(Section(((-1, -1, 0), (1, -1, 0), (1, 50, 0), (-1, 50, 0))), (0, 0, -1), (0, 0, 30))
    with pytest.raises(ValueError, match="2 came out"):
        realise(Cut(BLOCK, ((saw, Place((50.0, 0.0, 0.0))),)))
    with pytest.raises(ValueError, match="0 came out"):
        realise(Cut(BLOCK, ((BLOCK, Place()),)))


def test_touching_parts_join_without_a_seam() -> None:
    solid = realise(Joined(((BLOCK, Place()), (BLOCK, Place((100.0, 0.0, 0.0))))))
    assert is_valid(solid)
    assert volume(solid) == pytest.approx(200 * 40 * 20)
    assert len(triangles(solid)[1]) == 12  # a box again


def test_parts_that_stand_apart_are_refused() -> None:
    with pytest.raises(ValueError, match="2 came out"):
        realise(Joined(((BLOCK, Place()), (BLOCK, Place((300.0, 0.0, 0.0))))))


def test_a_part_may_be_turned_before_it_is_joined() -> None:
    upright = Place((0.0, 0.0, 20.0), (0.0, 0.0, 1.0), (0.0, 1.0, 0.0))  # x up, its thickness along -x
    solid = realise(Joined(((BLOCK, Place()), (BLOCK, Place((20.0, 0.0, 20.0), upright.x, upright.y)))))
    assert volume(solid) == pytest.approx(2 * 100 * 40 * 20)
    low, high = triangles(solid)[0].min(axis=0), triangles(solid)[0].max(axis=0)
    assert (low.tolist(), high.tolist()) == ([0, 0, 0], [100, 40, 120])


def test_faces_that_leave_a_gap_or_overlap_are_refused() -> None:
    lid = Facet((0.0, 0.0, 1.0), [[(0, 0, 0), (1, 0, 0), (0, 1, 0)]])
    with pytest.raises(ValueError, match="not closed"):
        weld([lid])
    with pytest.raises(ValueError, match="more than two faces"):
        weld([lid, lid])


def test_triangles_are_shared_and_read_only() -> None:
    points, faces = triangles(realise(BLOCK))
    assert triangles(realise(BLOCK))[0] is points
    with pytest.raises(ValueError, match="read-only"):
        points[0, 0] = 1.0
    assert is_closed(faces)
    assert not is_closed(faces[1:])
    assert not is_closed(np.concatenate([faces[:-1], faces[-1:, ::-1]]))


def test_triangles_of_a_curve_keep_within_the_deflection() -> None:
    rod = realise(Turned(((0, 0), (50, 0), (50, 200), (0, 200))))
    for deflection in (1.0, 0.1, 0.02):
        points, faces = triangles(rod, deflection)
        wall = faces[np.ptp(points[faces, 2], axis=1) > 0]
        middles = (points[wall] + points[np.roll(wall, 1, axis=1)]) / 2
        assert 50 - np.hypot(middles[..., 0], middles[..., 1]).min() < deflection * 1.001


def test_triangles_are_as_coarse_as_asked_whatever_was_asked_before() -> None:
    solid = realise(Turned(tuple((2 * r, z) for r, z in WASHER)))
    fine, coarse = (len(triangles(solid, deflection)[1]) for deflection in (0.001, 0.1))
    assert coarse < fine / 2
