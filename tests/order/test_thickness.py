"""Thickness is measured: a gauge is a label, and the figure beside it is the solid's own."""

from __future__ import annotations

import json

import pytest
from ribwright.layout.skin.ribs import graphs
from ribwright.layout.trim.trim_run import strip
from ribwright.order.buying.order_list import Buying, order
from ribwright.order.lists.figures import figures_by_mark
from ribwright.order.lists.schedule import Schedule, schedule
from ribwright.order.written.csv import csv_text
from ribwright.order.written.json import json_text
from ribwright.order.written.markdown import markdown_text
from ribwright.order.written.table import table
from ribwright.pieces import Model, Piece
from ribwright.place import Place
from ribwright.recipe import Prism, Sheet
from ribwright.solids import realise
from support.bodies import LEFT, PROFILE, RIGHT
from support.csv_rows import rows_of

THIN, THICK, TRIM = 0.43688, 0.6, 0.55118
GAUGE = (("gauge", "29 ga"), ("colour", "white"))


def sheet(thickness: float) -> Piece:
    outline = ((LEFT, 0.0), (RIGHT, 0.0), (RIGHT, 2000.0), (LEFT, 2000.0))
    solid = realise(Sheet(*graphs(PROFILE, thickness), outline))
    return Piece(f"sheet {thickness}", "wall sheet", (), solid, Place(), GAUGE)


@pytest.fixture(params=["ft-in", "mm"])
def listed(request: pytest.FixtureRequest) -> Schedule:
    """Two sheets that are called the same and are not, and a trim."""
    line = ((0.0, 100.0), (0.0, 0.0), (40.0, 0.0), (40.0, 12.0))
    trim = realise(Prism(strip(line, TRIM), (0.0, 0.0, 0.0), (0.0, 0.0, 3000.0)))
    pieces = (sheet(THIN), sheet(THICK), Piece("eave trim", "eave trim", (), trim, Place()))
    return schedule(Model("two gauges", request.param, pieces))


SHOWN = {"ft-in": ['0.0172"', '0.0236"', '0.0217"'], "mm": ["0.44", "0.6", "0.55"]}
"""0.43688, 0.6 and 0.55118 mm, by hand."""


def test_thickness_is_measured_into_every_list(listed: Schedule) -> None:
    assert [row.thickness for row in listed.rows] == pytest.approx([THIN, THICK], abs=1e-6)
    assert [item.thickness for item in listed.items] == pytest.approx([TRIM], abs=1e-6)
    said = SHOWN[listed.units]
    found = rows_of(csv_text(listed))
    assert [row["gauge"] for row in found] == ["29 ga", "29 ga", ""]
    assert [row["thickness"] for row in found] == said
    assert [row["thickness mm"] for row in found] == ["0.437", "0.6", "0.551"]
    content = json.loads(json_text(listed))
    sheets = [row["thickness"] for row in (*content["sheets"], *content["trims"])]
    assert sheets == [{"mm": mm, "shown": text} for mm, text in zip((0.437, 0.6, 0.551), said, strict=True)]
    for text in (table(listed, 200), markdown_text(listed)):
        assert all(text.count(f" {one} ") == 1 for one in said)
    unit = " mm" if listed.units == "mm" else ""
    figures = figures_by_mark(listed)
    assert [figures[mark]["thickness"] for mark in ("W1", "W2", "TE1")] == [one + unit for one in said]


def test_an_order_does_not_add_up_sheets_of_two_thicknesses(listed: Schedule) -> None:
    lines = [line for line in order(listed, Buying()).lines if line.list in ("sheets", "trims")]
    unit = " mm" if listed.units == "mm" else ""
    said = {one + unit for one in SHOWN[listed.units]}
    assert {line.item.split(", ")[1].removeprefix("29 ga ") for line in lines} == said
    assert [line.quantity for line in lines] == [1, 1, 1]


def test_what_is_neither_sheet_nor_trim_nor_member_has_no_thickness() -> None:
    slab = Prism(strip(((0.0, 0.0), (5000.0, 0.0)), 100.0), (0.0, 0.0, 0.0), (0.0, 0.0, 9000.0))
    listed = schedule(Model("slab", "mm", (Piece("slab", "slab", (), realise(slab), Place()),)))
    assert [item.thickness for item in listed.items] == [0.0]
    assert "thickness" not in json.loads(json_text(listed))["slab"][0]
