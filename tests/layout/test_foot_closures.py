"""Closures at the feet of wall sheets, asked for by a key: under every rib that comes down, and no other."""

from __future__ import annotations

import numpy as np
import pytest
from ribwright.audit import audit
from ribwright.intake import parse, starter_text, starters
from ribwright.layout import lay_out
from ribwright.measure.sheet import measure_sheet
from ribwright.measure.standing import standing_box
from ribwright.order.buying.order_list import order
from ribwright.order.lists.schedule import schedule
from ribwright.raising import raise_building
from shapely.geometry import Point
from support.rays import Solids
from support.second_witness import faults
from support.starter_buildings import starter


def asked(name: str) -> str:
    text, key = starter_text(name, name), 'foot_closures = "inside"\n'
    return (
        text.replace("[sheets]\n", f"[sheets]\n{key}") if "[sheets]\n" in text else f"{text}[sheets]\n{key}"
    )


@pytest.mark.parametrize("name", ["garage", "wainscot"])
def test_foam_is_under_every_rib_that_stands_at_the_foot(name: str) -> None:
    """Looking up from under the foot, in the middle of every crown, 8 mm under it: foam where the sheet is as
    low as its wall's others, none where a door or a lower tier ends it higher. Nothing else changes."""
    model = raise_building(parse(asked(name), name)).model
    assert audit(model).findings == ()
    assert faults(model) == []
    foam = Solids(piece for piece in model.pieces if "foot closure" in piece.name)
    sheets = [piece for piece in model.pieces if piece.role == "wall sheet"]
    boxes = [standing_box(piece) for piece in model.pieces if piece.role == "base rail"]
    rails = np.array([np.min(boxes, axis=0)[0], np.max(boxes, axis=0)[1]])
    floor: dict[str, float] = {}
    benches = [(piece, measure_sheet(piece.solid)) for piece in sheets]
    for piece, sheet in benches:
        bench, face = piece.place @ sheet.bench, piece.label("face")
        low = min(bench.point((0.0, y, 0.0))[2] for y in (0.0, sheet.length))
        floor[face] = min(floor.get(face, low), low)
    seen = 0
    for piece, sheet in benches:
        bench, face = piece.place @ sheet.bench, piece.label("face")
        up = bench.y[2] > 0
        for rib in sheet.majors:
            at_foot = sheet.outline.buffer(0.01).contains(Point(rib.centre, 0.0 if up else sheet.length))
            spot = bench.point((rib.centre, 0.0 if up else sheet.length, rib.height - 8.0))
            along = 0 if abs(bench.x[0]) > 0.5 else 1
            in_wall = rails[0, along] + 5.0 < spot[along] < rails[1, along] - 5.0
            stands = at_foot and in_wall and spot[2] < floor[face] + 1.0
            found = foam.along((spot[0], spot[1], floor[face] - 5.0), (0.0, 0.0, 1.0), 20.0)
            if stands:
                assert found, (piece.name, rib.centre)
                seen += 1
    assert seen > 40


def test_they_are_bought_in_strips() -> None:
    """The garage, 24 x 26 ft: from first to last rib 310 in on the left, 9 strips of 3 ft; on the right one
    before the door at 26 in, and 312 - 62 in behind it, 7; the back, from the centre, 288 and less, 8; 48 in
    on both sides of the front's door, 2 each. With the 18 at the eaves that is 47."""
    (line,) = [
        line
        for line in order(schedule(raise_building(parse(asked("garage"), "garage")).model)).lines
        if line.kind.startswith("inside closure")
    ]
    assert line.quantity == 2 * 9 + 9 + (1 + 7) + 8 + 2 * 2


@pytest.mark.parametrize("name", starters())
def test_there_are_none_unless_asked(name: str) -> None:
    parts = lay_out(starter(name)).parts
    assert not [part.name for part in parts if "foot closure" in part.name]
