"""The STEP file alone gives the schedule, to the byte, in every way it is written."""

from __future__ import annotations

from pathlib import Path

import pytest
from ribwright.exchange.step import read_step, write_step
from ribwright.intake import parse
from ribwright.order.buying.order_list import buying_on, order
from ribwright.order.lists.schedule import schedule
from ribwright.order.written.csv import csv_text
from ribwright.order.written.json import json_text
from ribwright.order.written.markdown import markdown_text
from ribwright.order.written.order_csv import order_csv
from ribwright.order.written.table import table
from ribwright.pieces import Model
from ribwright.raising import raise_building

METRIC = """
units = "mm"
width = "7333.3 mm"
length = "8 m"
eave_height = "2777.7 mm"
pitch = "11.3 deg"
[[opening]]
kind = "window"
wall = "left"
width = "917.7 mm"
height = "811.3 mm"
from_left = "2888.8 mm"
sill = "1000.1 mm"
"""
INCHES = """
width = "16'"
length = "20' 7-5/16\\""
eave_height = "8'"
pitch = "5/12"
"""


def written(model: Model) -> list[str]:
    listed = schedule(model)
    writers = (table, lambda one: table(one, 200), csv_text, json_text, markdown_text)
    return [write(listed) for write in writers]


@pytest.mark.parametrize("text", [METRIC, INCHES], ids=["mm", "ft-in"])
def test_the_step_file_alone_gives_the_same_bytes(text: str, tmp_path: Path) -> None:
    model = raise_building(parse(text, "shed")).model
    write_step(model, tmp_path / "model.step")
    again = read_step(tmp_path / "model.step")
    assert len(again.pieces) == len(model.pieces)
    assert written(again) == written(model)


def test_the_order_of_a_file_is_the_order_of_its_description(tmp_path: Path) -> None:
    """Stick length and kerf are asked, and no solid shows them: they travel with the model."""
    text = INCHES.replace('"5/12"', '"2/12"') + '[trim]\nkerf = "1/8 in"\n'
    text += 'stock = ["12 ft"]\neave_stock = ["10 ft", "20 ft"]\n'
    model = raise_building(parse(text, "shed")).model
    write_step(model, tmp_path / "model.step")
    again = read_step(tmp_path / "model.step")
    assert again.terms == model.terms
    orders = [order_csv(order(schedule(one), buying_on(one.terms))) for one in (model, again)]
    assert orders[0] == orders[1]
    assert "12'" in orders[0] and "20'" in orders[0]
    assert orders[0] != order_csv(order(schedule(model), buying_on(model.terms, stock=(3048.0,))))
