"""No two pieces share volume, every solid is valid, and the model's file gives its own lists again."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from ribwright.description import parse, starter_text, starters
from ribwright.description.building import Building
from ribwright.exchange.step import read_step, write_step
from ribwright.order.json import json_text
from ribwright.order.schedule import schedule
from ribwright.raising import raise_building
from ribwright.solids.properties import is_valid
from support.clashes import clashes
from support.random_buildings import buildings


@pytest.mark.parametrize("name", starters())
def test_a_starter_stands_without_clashes_or_findings(name: str) -> None:
    raised = raise_building(parse(starter_text(name, name), name))
    assert raised.findings == ()
    assert all(is_valid(piece.solid) for piece in raised.model.pieces)
    assert clashes(raised.model.pieces) == []


@settings(max_examples=50, deadline=None, suppress_health_check=list(HealthCheck))
@given(buildings())
def test_random_buildings_stand_without_clashes(building: Building) -> None:
    """Frames, up to six openings, both girt styles, three profiles: what may be said of each is a finding."""
    raised = raise_building(building)
    assert all(is_valid(piece.solid) for piece in raised.model.pieces)
    assert clashes(raised.model.pieces) == []


@settings(max_examples=8, deadline=None, suppress_health_check=list(HealthCheck))
@given(buildings())
def test_a_random_buildings_step_gives_its_own_schedule(
    tmp_path_factory: pytest.TempPathFactory, building: Building
) -> None:
    model = raise_building(building).model
    path: Path = tmp_path_factory.mktemp("step") / "model.step"
    write_step(model, path)
    assert json_text(schedule(read_step(path))) == json_text(schedule(model))
