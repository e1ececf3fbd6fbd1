"""Cameras: everything is in the picture, and as large as it can be."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from ribwright.place import Point3, add
from ribwright.show.views import EYE_HEIGHT, INSIDE, MARGIN, STANDING, VIEWS, close_up, corners, whole

OUTSIDE = [view for view in VIEWS if view != INSIDE]
BOX = ((0.0, 0.0, 0.0), (9000.0, 12000.0, 4500.0))


sizes = st.floats(300.0, 120000.0)


@given(st.sampled_from(OUTSIDE), st.tuples(sizes, sizes, sizes), st.floats(0.5, 3.0))
def test_a_view_holds_the_whole_box_and_wastes_no_room(view: str, size: Point3, aspect: float) -> None:
    low = (-500.0, 250.0, -150.0)
    bounds = (low, add(low, size))
    camera = whole([bounds], view, aspect, -120.0)
    across, up = zip(*(camera.seen(corner, aspect) for corner in corners(bounds)), strict=True)
    assert max(abs(part) for part in (*across, *up)) <= 1.0
    reach = max(max(across) - min(across), max(up) - min(up))
    assert reach == pytest.approx(2.0 / MARGIN, rel=1e-6)


@pytest.mark.parametrize("view", STANDING)
def test_who_stands_outside_sees_what_is_plumb_upright(view: str) -> None:
    """From a person's height, also where the ground is not the slab's."""
    camera = whole([BOX], view, 1.6, -100.0)
    assert camera.half or camera.eye[2] == EYE_HEIGHT - 100.0
    for x, y, _ in corners(BOX):
        heights = [camera.seen((x, y, z), 1.6)[0] for z in (0.0, 2000.0, 4500.0)]
        assert heights == pytest.approx([heights[0]] * 3, abs=1e-9)


@pytest.mark.parametrize(("view", "away"), [("front", (0, 1, 0)), ("right", (1, 0, 0)), ("above", (0, 0, 1))])
def test_an_elevation_shows_what_is_far_as_large_as_what_is_near(view: str, away: Point3) -> None:
    camera = whole([BOX], view, 1.6)
    point = (1000.0, 2000.0, 3000.0)
    assert camera.seen(point, 1.6) == pytest.approx(camera.seen(add(point, away, 5000.0), 1.6), abs=1e-9)


@pytest.mark.parametrize(
    ("view", "left", "right"),
    [
        ("front", (0.0, 0.0, 0.0), (9000.0, 0.0, 0.0)),
        ("back", (9000.0, 12000.0, 0.0), (0.0, 12000.0, 0.0)),
        ("left", (0.0, 12000.0, 0.0), (0.0, 0.0, 0.0)),
        ("right", (9000.0, 0.0, 0.0), (9000.0, 12000.0, 0.0)),
        ("above", (0.0, 6000.0, 4500.0), (9000.0, 6000.0, 4500.0)),
        ("front left", (0.0, 12000.0, 0.0), (9000.0, 0.0, 0.0)),
    ],
)
def test_left_and_right_are_those_of_someone_who_stands_there(view: str, left: Point3, right: Point3) -> None:
    camera = whole([BOX], view, 1.6)
    assert camera.seen(left, 1.6)[0] < 0.0 < camera.seen(right, 1.6)[0]


def test_inside_stands_in_the_room_at_eye_height() -> None:
    camera = whole([BOX], INSIDE, 1.6)
    assert all(low < part < high for low, part, high in zip(BOX[0], camera.eye, BOX[1], strict=True))
    assert 1500.0 <= camera.eye[2] <= 1800.0


@pytest.mark.parametrize("view", VIEWS)
def test_a_close_up_centres_its_point_at_its_distance(view: str) -> None:
    camera = close_up((10.0, 20.0, 30.0), view, 750.0)
    assert camera.seen((10.0, 20.0, 30.0), 1.6) == pytest.approx((0.0, 0.0), abs=1e-9)
    assert math.dist(camera.eye, (10.0, 20.0, 30.0)) == pytest.approx(750.0)
