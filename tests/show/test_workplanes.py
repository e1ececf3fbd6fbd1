"""Pieces and models handed to CadQuery."""

from __future__ import annotations

import math

import cadquery
import pytest
from ribwright.pieces import Model, Piece
from ribwright.place import Place
from ribwright.recipe import Prism, Section
from ribwright.show.workplanes import assembly, workplane
from ribwright.solids import realise

BAR = Prism(
    Section(((0.0, 0.0, 0.0), (100.0, 0.0, 0.0), (100.0, 50.0, 0.0), (0.0, 50.0, 0.0))),
    (0.0, 0.0, 0.0),
    (0.0, 0.0, 2000.0),
)
LYING = Place((500.0, 0.0, 300.0), (0.0, 1.0, 0.0), (0.0, 0.0, 1.0))  # its length along X
RED = (("colour", "red"),)


def model() -> Model:
    solid = realise(BAR)
    return Model(
        "bars",
        "mm",
        (
            Piece("one", "bar", ("frame", "front"), solid, LYING, RED),
            Piece("two", "bar", ("frame",), solid, Place(), RED),
            Piece("row", "bar", ("frame",), solid, Place(), row=((0.0, 200.0, 0.0), (0.0, 400.0, 0.0))),
        ),
    )


def test_a_workplane_holds_the_piece_where_it_stands() -> None:
    box = workplane(model().pieces[0]).val().BoundingBox()
    low, high = (box.xmin, box.ymin, box.zmin), (box.xmax, box.ymax, box.zmax)
    assert low == pytest.approx((500.0, 0.0, 300.0), abs=1e-6)
    assert high == pytest.approx((2500.0, 100.0, 350.0), abs=1e-6)


def test_a_row_is_all_its_bodies() -> None:
    placed = workplane(model().pieces[2])
    assert placed.solids().size() == 2
    assert sum(solid.Volume() for solid in placed.solids().vals()) == pytest.approx(2 * 100.0 * 50.0 * 2000.0)
    assert placed.combine().val().BoundingBox().ymax == pytest.approx(450.0, abs=1e-6)


def test_an_assembly_is_the_models_tree() -> None:
    made = assembly(model())
    assert isinstance(made, cadquery.Assembly)
    assert made.name == "bars"
    (frame,) = made.children
    assert frame.name == "frame"
    assert {child.name for child in frame.children} == {"two", "row", "front"}
    (front,) = (child for child in frame.children if child.name == "front")
    assert [child.name for child in front.children] == ["one"]


def test_an_assembly_has_the_volume_and_the_colours_of_the_pieces() -> None:
    made = assembly(model())
    assert math.isclose(made.toCompound().Volume(), 4 * 100.0 * 50.0 * 2000.0, rel_tol=1e-9)
    colour = made.objects["frame/front/one"].color
    assert colour is not None
    assert colour.toTuple() == pytest.approx((1.0, 0.0, 0.0, 1.0))


def test_a_piece_may_be_called_as_its_group_is() -> None:
    slab = Piece("slab", "slab", ("slab",), realise(BAR), Place())
    (group,) = assembly(Model("one slab", "mm", (slab,))).children
    assert [child.name for child in group.children] == ["slab 1"]
