"""Whose job it is, what figures are in and what this is not: on every list, also out of a STEP file."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from ribwright.exchange.step import read_step, write_step
from ribwright.heading import note
from ribwright.intake import parse
from ribwright.order.lists.schedule import Schedule, schedule
from ribwright.order.written.csv import csv_text
from ribwright.order.written.json import json_text
from ribwright.order.written.markdown import markdown_text
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


def test_what_was_not_given_is_not_said() -> None:
    bare = schedule(raise_building(parse(TEXT.replace("address", "# ").replace("date", "# "), "x")).model)
    assert job_of(csv_text(bare), "what")[0] == "hut"
    assert not {"address", "date"} & set(json.loads(json_text(bare)))
