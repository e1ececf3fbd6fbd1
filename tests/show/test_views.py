"""Cameras: everything is in the picture, and as large as it can be."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from ribwright.place import Point3, add, cross, dot, unit
from ribwright.show.views import INSIDE, MARGIN, VIEWS, Camera, close_up, corners, whole

OUTSIDE = [view for view in VIEWS if view != INSIDE]
BOX = ((0.0, 0.0, 0.0), (9000.0, 12000.0, 4500.0))


def seen(camera: Camera, point: Point3, aspect: float) -> tuple[float, float]:
    """Where a point falls: -1 to 1 across and up is the picture."""
    look = unit(add(camera.target, camera.eye, -1.0))
    right = unit(cross(look, camera.up))
    high = cross(right, look)
    offset = add(point, camera.eye, -1.0)
    half = math.tan(math.radians(camera.angle / 2)) * dot(offset, look)
    return dot(offset, right) / (half * aspect), dot(offset, high) / half


sizes = st.floats(300.0, 120000.0)


@given(st.sampled_from(OUTSIDE), st.tuples(sizes, sizes, sizes), st.floats(0.5, 3.0))
def test_a_view_holds_the_whole_box_and_wastes_no_room(view: str, size: Point3, aspect: float) -> None:
    low = (-500.0, 250.0, -150.0)
    bounds = (low, add(low, size))
    camera = whole(bounds, view, aspect)
    most = max(abs(part) for corner in corners(bounds) for part in seen(camera, corner, aspect))
    assert most == pytest.approx(1.0 / MARGIN, rel=1e-9)


@pytest.mark.parametrize(
    ("view", "left", "right"),
    [
        ("front", (0.0, 0.0, 0.0), (9000.0, 0.0, 0.0)),
        ("back", (9000.0, 12000.0, 0.0), (0.0, 12000.0, 0.0)),
        ("left", (0.0, 12000.0, 0.0), (0.0, 0.0, 0.0)),
        ("right", (9000.0, 0.0, 0.0), (9000.0, 12000.0, 0.0)),
        ("top", (0.0, 6000.0, 4500.0), (9000.0, 6000.0, 4500.0)),
        ("front left", (0.0, 12000.0, 0.0), (9000.0, 0.0, 0.0)),
    ],
)
def test_left_and_right_are_those_of_someone_who_stands_there(view: str, left: Point3, right: Point3) -> None:
    camera = whole(BOX, view, 1.6)
    assert seen(camera, left, 1.6)[0] < 0.0 < seen(camera, right, 1.6)[0]


def test_inside_stands_in_the_room_at_eye_height() -> None:
    camera = whole(BOX, INSIDE, 1.6)
    assert all(low < part < high for low, part, high in zip(BOX[0], camera.eye, BOX[1], strict=True))
    assert 1500.0 <= camera.eye[2] <= 1800.0


@pytest.mark.parametrize("view", VIEWS)
def test_a_close_up_centres_its_point_at_its_distance(view: str) -> None:
    camera = close_up((10.0, 20.0, 30.0), view, 750.0)
    assert seen(camera, (10.0, 20.0, 30.0), 1.6) == pytest.approx((0.0, 0.0), abs=1e-9)
    assert math.dist(camera.eye, (10.0, 20.0, 30.0)) == pytest.approx(750.0)
