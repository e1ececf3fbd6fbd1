"""Roof, gables and side walls under sheets of their own, trims in colours of their own."""

from __future__ import annotations

import pytest
from ribwright.intake import parse
from ribwright.order.lists.schedule import schedule
from ribwright.raising import raise_building
from support.judged import judged

SHED = """width = "20 ft"
length = "24 ft"
eave_height = "9 ft"
pitch = "3/12"
[[opening]]
kind = "overhead door"
wall = "front"
width = "8 ft"
height = "7 ft"
from_left = "5 ft 5 in"
"""
SKINS = {
    "deeper ribs on the roof": '[roof_sheets]\nprofile = "36 x 12 x 1-1/4"\ngauge = 26\n',
    "deeper ribs on the gables": '[gable_sheets]\nprofile = "36 x 12 x 1-1/4"\n',
    "shallower ribs on the gables": '[sheets]\nprofile = "36 x 12 x 1-1/4"\n'
    '[gable_sheets]\nprofile = "36 x 9 x 3/4"\n',
    "three of a kind": '[sheets]\nprofile = "1000 x 250 x 35"\n[roof_sheets]\nprofile = "36 x 9 x 3/4"\n'
    'thickness = "0.9 mm"\n[gable_sheets]\nprofile = "36 x 12 x 1-1/4"\ncolour = "navy"\n',
}


@pytest.mark.parametrize("keys", SKINS.values(), ids=SKINS)
def test_each_face_closes_under_its_own_sheets(keys: str) -> None:
    assert judged(parse(SHED.replace("[[opening]]", f"{keys}[[opening]]"), "shed")).faults == {}


def test_lists_and_trims_say_what_each_face_has() -> None:
    keys = """[sheets]
wall_colour = "wheat"
roof_colour = "maroon"
[gable_sheets]
gauge = 26
colour = "navy"
[roof_sheets]
profile = "36 x 12 x 1-1/4"
thickness = "0.02 in"
[trim]
colour = "white"
corner_colour = "navy"
opening_colour = "black"
"""
    model = raise_building(parse(SHED.replace("[[opening]]", f"{keys}[[opening]]"), "shed")).model
    found = {face: (r.profile, r.gauge, r.colour) for r in schedule(model).rows for face in r.faces}
    small, deep = "36 x 9 x 3/4", "36 x 12 x 1-1/4"
    assert found == {
        **dict.fromkeys(("left", "right"), (small, "29 ga", "wheat")),
        **dict.fromkeys(("front", "back"), (small, "26 ga", "navy")),
        **dict.fromkeys(("left slope", "right slope"), (deep, "0.02 in", "maroon")),
    }
    colours = {piece.role: piece.label("colour") for piece in model.pieces if piece.group[0] == "trims"}
    own = {"corner trim": "navy", "jamb angle": "black", "head angle": "black", "drip": "black"}
    assert colours == {**dict.fromkeys(colours, "white"), **own}
    screws = {p.label("colour") for p in model.pieces if p.name.startswith("front corner trim")}
    assert screws == {"navy"}
