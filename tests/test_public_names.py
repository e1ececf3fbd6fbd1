"""What `import ribwright` offers: the way through by eight names, loaded when asked for."""

from __future__ import annotations

import importlib
import inspect
import subprocess
import sys
from pathlib import Path

import pytest
import ribwright
from ribwright.intake import sample_text
from ribwright.order.written.csv import csv_text

SMALL = 'width = "10 ft"\nlength = "12 ft"\neave_height = "8 ft"\npitch = "4/12"\n'


def test_the_whole_way_by_public_names(tmp_path: Path) -> None:
    building = ribwright.parse(SMALL, "hut")
    raised = ribwright.raise_building(building)
    listed = ribwright.schedule(raised.model)
    assert ribwright.audit(raised.model).findings == ()
    assert (
        sum(line.quantity for line in ribwright.order(listed).lines if line.list == "sheets") == listed.count
    )
    ribwright.write_step(raised.model, tmp_path / "hut.step")
    again = ribwright.schedule(ribwright.read_step(tmp_path / "hut.step"))
    assert csv_text(again) == csv_text(listed)
    (tmp_path / "shop.toml").write_text(sample_text(), encoding="utf-8")
    assert ribwright.read(tmp_path / "shop.toml").name == "workshop"
    assert ribwright.read(str(tmp_path / "shop.toml")).name == "workshop"


@pytest.mark.parametrize("name", ribwright.__all__)
def test_each_is_a_typed_function_whatever_was_imported_before(name: str) -> None:
    """Two floors have the name of a function: importing them leaves the function in its place."""
    for floor in ("ribwright.audit", "ribwright.order"):
        assert inspect.ismodule(importlib.import_module(floor))
    found = getattr(ribwright, name)
    assert inspect.isfunction(found) or hasattr(found, "__wrapped__")
    assert "return" in found.__annotations__
    assert name in dir(ribwright)


def test_the_order_of_imports_does_not_matter() -> None:
    for first in ("from ribwright.audit import CHECKS", "import ribwright.order", "pass"):
        code = f"{first}; from ribwright import audit, order; print(audit.__name__, order.__name__)"
        done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
        assert done.stdout == "audit order\n"


def test_a_name_that_is_none() -> None:
    with pytest.raises(AttributeError, match="no attribute 'rise'"):
        ribwright.rise  # noqa: B018 # the look-up is what is tested
