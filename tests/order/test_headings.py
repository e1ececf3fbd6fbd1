"""Whose job it is, what figures are in and what this is not: on every list, also out of a STEP file."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from ribwright.exchange.step import read_step, write_step
from ribwright.heading import note, short
from ribwright.intake import parse
from ribwright.order.buying.order_list import order
from ribwright.order.lists.handling import Carried
from ribwright.order.lists.schedule import Schedule, schedule
from ribwright.order.written.bend_drawing import bends_svg
from ribwright.order.written.bend_text import bends_page
from ribwright.order.written.csv import csv_text
from ribwright.order.written.json import json_text
from ribwright.order.written.markdown import markdown_text
from ribwright.order.written.order_csv import cuts_csv, order_csv, placing_csv
from ribwright.order.written.order_text import order_table
from ribwright.order.written.place_cells import placing_text
from ribwright.order.written.table import table
from ribwright.raising import raise_building
from support.csv_rows import job_of

TEXT = """\
name = "hut"
address = "12 Mill Lane"
date = 2026-03-01
width = "10 ft"
length = "12 ft"
eave_height = "8 ft"
pitch = "4/12"
"""
JOB = "hut, 12 Mill Lane, 2026-03-01"
UNITS = "Lengths in feet and inches to 1/16; areas in ft2; weights in lb."


@pytest.fixture(scope="module")
def listed(tmp_path_factory: pytest.TempPathFactory) -> Schedule:
    """Read back from STEP, so that the job is known to have travelled."""
    path: Path = tmp_path_factory.mktemp("hut") / "model.step"
    write_step(raise_building(parse(TEXT, "x")).model, path)
    return schedule(read_step(path))


def test_every_list_says_whose_it_is(listed: Schedule) -> None:
    assert job_of(csv_text(listed), "what") == [JOB, UNITS, note(braced=False)]
    content = json.loads(json_text(listed))
    assert [content[key] for key in ("name", "address", "date", "note")] == [
        "hut", "12 Mill Lane", "2026-03-01", note(braced=False),
    ]  # fmt: skip
    for text in (table(listed, 200), markdown_text(listed)):
        assert f"Sheet list: {JOB}" in text
        assert "no bracing is drawn" in text
        assert UNITS in text


def test_each_list_by_itself_says_it_too(listed: Schedule) -> None:
    """Parts of the schedule, where sheets go and how trims are bent, as they are printed."""
    wanted = order(listed)
    for text in (
        table(listed, 80, ["trims"]),
        markdown_text(listed, ["members"]),
        placing_text(listed),
        bends_page(wanted, listed),
        order_table(wanted, listed, Carried()),
    ):
        head = " ".join(text.split())[:700]
        assert JOB in head and UNITS in head and "Geometry, not engineering" in head
    for text in (order_csv(wanted), cuts_csv(wanted)):
        assert job_of(text, "item") == [JOB, UNITS, note(braced=False)]
    assert job_of(placing_csv(listed), "face") == [JOB, UNITS, note(braced=False)]
    drawn = bends_svg(wanted, listed.pitch)
    assert JOB in drawn and UNITS in drawn and short(braced=False) in drawn


def test_what_was_not_given_is_not_said() -> None:
    bare = schedule(raise_building(parse(TEXT.replace("address", "# ").replace("date", "# "), "x")).model)
    assert job_of(csv_text(bare), "what")[0] == "hut"
    assert not {"address", "date"} & set(json.loads(json_text(bare)))
