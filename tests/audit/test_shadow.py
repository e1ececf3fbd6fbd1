"""Shadows stay polygons however they are turned: corners that rounding crosses are none."""

from __future__ import annotations

import numpy as np
from ribwright.audit.shadow import seen
from ribwright.audit.site import site as site_of
from ribwright.intake import parse
from ribwright.raising import raise_building
from support.judged import judged

RAFTERS_THROUGH = """width = "14 ft"
length = "14 ft"
eave_height = "12 ft"
pitch = "6/12"
[[lean_to]]
wall = "right"
width = "6 ft"
pitch = "3/12"
eave_height = "6 ft 9 in"
walls = ["front", "back", "outer"]
"""


def test_every_shadow_on_a_plane_of_the_building_is_a_polygon_that_does_not_cross_itself() -> None:
    site = site_of(raise_building(parse(RAFTERS_THROUGH, "shed")).model)
    planes = [
        ((0, 1, 0), (0, 0, 1), (1, 0, 0)),
        ((1, 0, 0), (0, 0, 1), (0, -1, 0)),
        ((1, 0, 0), (0, 1, 0), (0, 0, 1)),
    ]
    for plane in planes:
        shadows = {body.name: seen(site, k, np.array(plane, float)) for k, body in enumerate(site.bodies)}
        assert [name for name, shadow in shadows.items() if not shadow.is_valid] == []


def test_sheets_around_rafters_that_come_through_are_whole() -> None:
    assert judged(parse(RAFTERS_THROUGH, "shed")).faults == {}
