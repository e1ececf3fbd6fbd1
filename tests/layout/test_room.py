"""Where screws find room on a face."""

from __future__ import annotations

import pytest
import shapely
from ribwright.envelope.face import Face
from ribwright.intake import sample
from ribwright.layout.screws.room import Room, pans
from ribwright.layout.screws.screw_kinds import APART
from ribwright.layout.screws.taken import Taken
from ribwright.place import Place
from ribwright.recipe import Part, Sheet
from ribwright.roles import Role

WIDE = shapely.box(-100.0, -100.0, 100.0, 100.0)


def test_where_nothing_stands_a_screw_goes_where_it_is_wanted() -> None:
    assert Room(WIDE, WIDE).spot((12.345678901, 2.0), WIDE) == (12.345678901, 2.0)


@pytest.mark.parametrize(
    ("where", "spot"),
    [
        (shapely.box(-1e-9, -100.0, 1e-9, 100.0), (0.0, -APART)),
        (shapely.box(-100.0, -1e-9, 100.0, 1e-9), (-APART, 0.0)),
    ],
)
@pytest.mark.parametrize("rounding", [1e-9, -1e-9])
def test_of_two_equally_near_spots_it_takes_the_lower_or_the_left_whatever_rounding_says(
    where: shapely.Geometry, spot: tuple[float, float], rounding: float
) -> None:
    room = Room(where, where, Taken([(0.0, 0.0)]))
    assert room.spot((rounding, rounding), where) == pytest.approx(spot, abs=0.01)


def test_a_sheet_too_narrow_for_a_screw_has_no_room() -> None:
    face, graph = Face("left", Place(), sample().sheets.sides, (), ()), ((0.0, 0.0), (5.0, 0.0))
    outline = ((0.0, 0.0), (5.0, 0.0), (5.0, 100.0), (0.0, 100.0))
    strip = Part("strip", Role.WALL_SHEET, ("walls",), Sheet(graph, graph, outline), Place())
    assert pans(face, strip, 1.0).is_empty
