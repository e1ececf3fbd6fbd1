"""What can be changed on the page, said in words."""

from __future__ import annotations

import pytest
from ribwright.intake import parse, starter_text, starters
from ribwright.live.fields import fields, offered
from ribwright.raising import raise_building


@pytest.mark.parametrize("name", starters())
def test_every_field_has_words_of_its_own(name: str) -> None:
    """None spelled as a key of a table is, none twice."""
    text = starter_text(name, name)
    said = [field.words for field in fields(text, parse(text, name))]
    assert len(set(said)) == len(said)
    assert not any(letter in words for words in said for letter in "_[].")


def test_words_of_the_sample_by_hand() -> None:
    text = starter_text("workshop", "workshop")
    said = {field.content()["name"]: field.words for field in fields(text, parse(text, "workshop"))}
    assert said["eave_height"] == "eave height"
    assert said["sheets.wall_colour"] == "wall colour"
    assert said["runs.left_slope"] == "left slope: run starts"
    assert said["opening[1].from_left"] == "front overhead door 1: from left"


SHAPED = """
width = "36 ft"
length = "24 ft"
eave_height = "12 ft"
pitch = "4/12"
[ridge_vent]
places = ["7 ft"]
[wainscot]
height = "3 ft"
[[opening]]
kind = "sliding door"
wall = "left"
width = "6 ft"
height = "8 ft"
from_left = "9 ft 6 in"
slides = "left"
"""
SIZES = {"width", "length", "eave height", "pitch"}
DOOR = {"kind", "wall", "width", "height", "from left", "sill", "colour", "swing", "slides"}


@pytest.mark.parametrize(
    ("starter", "of", "more"),
    [
        ("", "sliding door 1 leaf", {f"left sliding door 1: {key}" for key in DOOR}),
        ("", "sliding door 1 rail", {f"left sliding door 1: {key}" for key in DOOR}),
        ("", "ridge vent", {"ridge vent: length"}),
        ("", "wainscot", {"wainscot: height", "wainscot: colour", "left: run starts"}),
        ("double-pitch", "rafter", {"roof: break at", "roof: lower pitch"}),
        ("offset-ridge", "rafter", {"roof: ridge", "roof: right eave height"}),
    ],
)
def test_a_piece_is_offered_the_keys_it_follows_from(starter: str, of: str, more: set[str]) -> None:
    """With the sizes of all; of a roof's shape only what the description says."""
    text = starter_text(starter, starter) if starter else SHAPED
    building = parse(text, "x")
    found = fields(text, building)
    pieces = raise_building(building).model.pieces
    lists, own = offered(found, building, pieces)
    number = next(k for k, piece in enumerate(pieces) if of in f"{piece.name} {piece.role}")
    assert {found[k].words for k in lists[own[number]]} == SIZES | more
