"""The painted side of a trim is the one that is not hidden by what stands close before it."""

from __future__ import annotations

import pytest
from ribwright.catalog.fold import folded
from ribwright.intake import parse, starters
from ribwright.measure.bends import measure_bends
from ribwright.measure.congruent import groups
from ribwright.measure.painted import CLOSE, Surroundings
from ribwright.pieces import Piece
from ribwright.place import Place
from ribwright.raising import raise_building
from ribwright.recipe import Prism, Section
from ribwright.roles import list_of
from ribwright.solids import realise
from support.starter_buildings import starter_model

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


GUTTERED = """
width = "12 ft"
length = "12 ft"
eave_height = "8 ft"
pitch = "4/12"
sheets = { overhang = "2.5 in" }
trim = { gutters = "low eaves" }
"""

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


IN = ("base trim", "drip", "headwall flashing")
"""Trims whose back leg goes up behind the sheets and whose shelf falls outward: they are seen inside the bend
between the two. Those of other roles lie round the building's outside, a shelf's and a lip's bend too."""


@pytest.mark.parametrize("name", starters())
def test_a_kind_of_trim_is_painted_where_it_is_seen_from_outside(name: str) -> None:
    """In every building, on every wall, the same side of its bends, hidden as base trims are."""
    model = starter_model(name)
    around, told = Surroundings(model.pieces), {}
    for group in groups(model):
        piece = group.members[0].piece
        bends = measure_bends(piece.solid) if list_of(piece.role) == "trims" else None
        if bends:
            told[group.mark] = (piece.role, around.painted(piece, bends))
    assert told
    assert [
        (mark, *one) for mark, one in told.items() if one[1] != ("inside" if one[0] in IN else "outside")
    ] == []


def test_a_gutter_is_painted_round_its_trough() -> None:
    """Not where rain falls into it, though its back leg faces out. The bend at its back leg's head turns the
    other way: inside of that is outside of the trough."""
    model = raise_building(parse(GUTTERED, "gutter")).model
    gutter = next(piece for piece in model.pieces if piece.role == "gutter")
    bends = measure_bends(gutter.solid)
    assert bends is not None
    assert len({turn > 0 for turn in bends.turns[1:]}) == 1
    assert (bends.turns[0] > 0) != (bends.turns[1] > 0)
    assert Surroundings(model.pieces).painted(gutter, bends) == "inside"
