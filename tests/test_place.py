"""Places: two ways to one spot are written alike."""

from __future__ import annotations

from math import cos, radians, sin

from ribwright.place import Place

TWELFTH = Place(
    (1.0, 2.0, 3.0), (cos(radians(30)), sin(radians(30)), 0.0), (-sin(radians(30)), cos(radians(30)), 0.0)
)


def test_once_around_is_where_one_began() -> None:
    """Twelve turns by 30 degrees and the steps between them, added up, end at the first place to 1e-13;
    rounded they end on it."""
    around = Place()
    for _ in range(12):
        around = TWELFTH @ around
    assert around != Place((around.origin[0], around.origin[1], 36.0))
    x, y, z = around.rounded().origin
    assert (around.rounded().x, around.rounded().y) == (Place().x, Place().y)
    assert (x, y, z) == (0.0, 0.0, 36.0)


def test_rounding_moves_nothing_that_is_measured() -> None:
    place = Place((0.1234567, 1e-7, -1e-9), TWELFTH.x, TWELFTH.y)
    assert place.rounded().origin == (0.123457, 0.0, 0.0)
    assert str(place.rounded().origin[2]) == "0.0"
    assert max(abs(a - b) for a, b in zip(place.rounded().x, place.x, strict=True)) <= 5e-13
