"""The painted side of a trim is the one that is not hidden by what stands close before it."""

from __future__ import annotations

import pytest
from ribwright.catalog.fold import folded
from ribwright.measure.bends import measure_bends
from ribwright.measure.painted import CLOSE, Surroundings
from ribwright.pieces import Piece
from ribwright.place import Place
from ribwright.recipe import Prism, Section
from ribwright.solids import realise
from support.sample_building import sample_schedule

SIZE, LONG = 100.0, 2000.0


def angle(place: Place) -> Piece:
    """Legs of 100 along x and z of its place, its corner at the origin."""
    line = folded(((0.0, SIZE), (0.0, 0.0), (SIZE, 0.0)), 0.55, 0.0)
    solid = realise(Prism(line, (0.0, 0.0, 0.0), (0.0, 0.0, LONG)))
    return Piece("angle", "corner trim", ("trims",), solid, place)


def block(name: str, at: tuple[float, float], place: Place, role: str = "post") -> Piece:
    """80 x 80, as long as the angle, its least corner at a place of the section."""
    ring = ((0.0, 0.0, 0.0), (80.0, 0.0, 0.0), (80.0, 80.0, 0.0), (0.0, 80.0, 0.0))
    solid = realise(Prism(Section(ring), (0.0, 0.0, 0.0), (0.0, 0.0, LONG)))
    return Piece(name, role, ("frame",), solid, place @ Place((*at, 0.0)))


INSIDE, ASIDE, UNDER = (5.0, 5.0), (-90.0, 10.0), (10.0, -90.0)
TURNED = Place((300.0, -50.0, 10.0), (0.0, 1.0, 0.0), (0.0, 0.0, 1.0))


@pytest.mark.parametrize("place", [Place(), TURNED])
def test_what_is_close_hides_a_side(place: Place) -> None:
    trim = angle(place)
    bends = measure_bends(trim.solid)
    assert bends is not None

    def painted(*others: Piece) -> str:
        return Surroundings((trim, *others)).painted(trim, bends)

    assert painted(block("post", INSIDE, place)) == "outside"
    assert painted(block("one", ASIDE, place), block("other", UNDER, place)) == "inside"
    far = (INSIDE[0] + CLOSE, INSIDE[1] + CLOSE)
    assert painted(block("post", far, place)) == painted()
    assert painted(block("screw", INSIDE, place, "trim screw")) == painted()


def test_the_samples_trims_are_painted_where_they_are_seen() -> None:
    """All but the base trim, which sheets and slab hide on both sides."""
    seen: dict[str, str] = {}
    for item in sample_schedule().listed("trims"):
        seen.setdefault(item.role, item.painted)
    assert {role for role, side in seen.items() if side == "outside"} >= set(seen) - {"base trim", "drip"}
