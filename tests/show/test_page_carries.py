"""What the customer's page carries: bodies, colours, laps and steps, as in the model, and small."""

from __future__ import annotations

import base64
import gzip
from dataclasses import replace
from typing import Any

import numpy as np
import pytest
from ribwright.audit import audit
from ribwright.catalog.colours import colour_names
from ribwright.description.keys.schema import schema
from ribwright.intake import parse
from ribwright.raising import raise_building
from ribwright.show.page.paints import paints
from ribwright.solids.properties import triangles
from ribwright.steps import steps
from support.pages import (
    carried,
    long_model,
    long_page,
    page_of,
    sample_page,
)
from support.planted import shed
from support.sample_building import sample_model

SMALL, LARGE = 400_000, 1_500_000  # bytes: of the sample, and of one ten times as long


def test_bodies_are_carried_to_a_hundredth_of_a_millimetre() -> None:
    """Each once: its triangles are the solid's, its pieces stand where they stand in the model."""
    content = carried(sample_page())
    made = content["geometry"]
    buffer = gzip.decompress(base64.b64decode(made["bytes"]))
    at = 0

    def taken(size: int) -> Any:
        nonlocal at
        at += 4 * size
        return np.cumsum(np.frombuffer(buffer, "<i4", size, at - 4 * size))

    def points(size: int) -> Any:
        return np.stack([taken(size) for _ in range(3)], 1) / 100

    bodies = [(points(size), taken(3 * faces).reshape(-1, 3)) for size, faces in made["meshes"]]
    assert len(points(sum(made["rows"]))) == sum(made["rows"])
    places = np.frombuffer(buffer, "<f4", -1, at).reshape(9, -1).T
    assert len(set(made["mesh"])) == len(made["meshes"]) < 120
    for piece, number, place in zip(sample_model().pieces, made["mesh"], places, strict=True):
        own, own_faces = triangles(piece.solid)
        assert np.abs(bodies[number][0] - own).max() <= 0.00501
        assert np.array_equal(bodies[number][1], own_faces)
        assert place == pytest.approx(
            [*piece.place.origin, *piece.place.x, *piece.place.y], rel=1e-6, abs=1e-3
        )
    rows = [piece.row for piece in sample_model().pieces]
    assert [made["rows"][k] if k >= 0 else 0 for k in made["row"]] == [len(row) for row in rows]


def test_it_is_small() -> None:
    assert len(sample_page().encode()) < SMALL
    assert sum(piece.count for piece in long_model().pieces) > 15_000
    assert len(long_page().encode()) < LARGE


KEYS = """
[sheets]
wall_colour = "white"
roof_colour = "red"
[gable_sheets]
colour = "tan"
[wainscot]
height = "3 ft"
colour = "brown"
[trim]
colour = "navy"
corner_colour = "black"
"""


def test_a_tried_colour_goes_back_to_the_key_it_came_from() -> None:
    """Each colour of a building with many names the table and the key that asked for it."""
    text = 'width = "20 ft"\nlength = "24 ft"\neave_height = "9 ft"\npitch = "3/12"\n' + KEYS
    model = raise_building(parse(text, "many")).model
    found = {(paint.table, paint.key): paint.colour for paint in paints(model.pieces)}
    assert found == {
        ("sheets", "wall_colour"): "white",
        ("gable_sheets", "colour"): "tan",
        ("wainscot", "colour"): "brown",
        ("sheets", "roof_colour"): "red",
        ("trim", "colour"): "navy",
        ("trim", "corner_colour"): "black",
    }
    known = schema()["properties"]
    assert all(key in known[table]["properties"] for table, key in found)


def test_every_piece_of_a_face_of_two_colours_knows_its_own() -> None:
    model = sample_model()
    content = carried(sample_page())
    names = [paint["name"] for paint in content["paints"]]
    assert names == ["gainsboro", "slategray", "slategray"]
    for piece, paint in zip(model.pieces, content["pieces"]["paint"], strict=True):
        if piece.role in ("wall sheet", "roof sheet") or piece.role.endswith("screw"):
            assert names[paint] == piece.label("colour")
    assert set(names) <= set(colour_names())


def test_laps_are_carried_with_what_was_measured_there() -> None:
    content = carried(sample_page())
    figures = [figure for figure in audit(sample_model()).measured if figure.what == "side laps"]
    assert len({(lap["upper"], lap["under"]) for lap in content["laps"]}) <= sum(one.count for one in figures)
    assert {lap["text"] for lap in content["laps"]} == {"2.000 in"}
    for lap in content["laps"]:
        wide = np.linalg.norm(np.subtract(*lap["corners"][:2]))
        assert wide == pytest.approx(50.8, abs=0.02)
        tops = {one.said for one in figures if one.where == lap["face"]}
        assert tops == {f"{lap['top']} sheet on top"}
    for edge in content["edges"]:
        long = np.linalg.norm(np.subtract(edge["from"], edge["to"]))
        assert long == pytest.approx(50.8 if edge["what"] == "overhang" else 114.167, abs=0.02)


def test_a_page_of_bodies_without_marks_names_them_by_shape() -> None:
    """As from a file that kept solids alone."""
    bare = tuple(replace(piece, role="", mark="", labels=(), group=()) for piece in shed().pieces)
    model = replace(shed(), pieces=bare)
    content = carried(page_of(model))
    assert "" not in content["marks"]
    assert set(content["pieces"]["role"]) >= {"sheet", "member", "screw"}


def test_every_piece_comes_in_its_step() -> None:
    content = carried(sample_page())
    order = steps(sample_model())
    for number, step in enumerate(order):
        own = [k for k, one in enumerate(content["steps"]) if one == number]
        names = [content["pieces"]["name"][k] for k in own]
        assert sorted(names) == sorted(piece.name for piece in step.pieces)
    assert len(set(content["steps"])) > 12
