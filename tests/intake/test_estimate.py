"""How many pieces a building will have, before it is laid out."""

from __future__ import annotations

from itertools import islice

import pytest
from ribwright.description.building import Building
from ribwright.errors import TooManyPieces
from ribwright.intake import parse, starters
from ribwright.intake.estimate import estimated, refuse_too_many
from ribwright.layout import lay_out
from support.random_buildings import buildings
from support.starter_buildings import starter

LONG = """name = "long"
width = "{}"
length = "{}"
eave_height = "14 ft"
pitch = "3/12"
[framing]
girt_spacing = "{}"
purlin_spacing = "{}"
[screws]
between = "{}"
stitch = "1 ft"
"""
HUGE = LONG.format("200 ft", "1000 ft", "1 ft", "1 ft", "single").replace(
    "[screws]", 'stock = ["110 ft"]\n[screws]'
)


def bodies(building: Building) -> int:
    return sum(max(1, len(part.row)) for part in lay_out(building).parts)


@pytest.mark.parametrize("name", starters())
def test_a_starter_has_about_as_many_as_estimated(name: str) -> None:
    building = starter(name)
    assert 0.8 < estimated(building) / bodies(building) < 1.25


@pytest.mark.parametrize("spacing", ["2 ft", "5 ft"])
@pytest.mark.parametrize("between", ["single", "pair"])
def test_a_long_building_has_almost_as_many_as_estimated(spacing: str, between: str) -> None:
    building = parse(LONG.format("60 ft", "200 ft", spacing, spacing, between), "long")
    assert 0.9 < estimated(building) / bodies(building) < 1.1


def test_any_building_has_about_as_many_as_estimated() -> None:
    for drawn, building in islice(buildings(), 15):
        assert 0.8 < estimated(building) / bodies(building) < 1.3, drawn.text


def test_too_many_are_refused_with_the_limit_that_would_do() -> None:
    building = parse(HUGE, "long")
    with pytest.raises(TooManyPieces) as refused:
        refuse_too_many(building, 100_000)
    said = str(refused.value)
    assert f"about {estimated(building):,} pieces" in said
    assert "\n" not in said
    refuse_too_many(building, int(said.rpartition("--pieces ")[2]))
