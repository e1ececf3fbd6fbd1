"""The first twenty random buildings, judged in every way there is; `random_run.py` judges more of them."""

from __future__ import annotations

from itertools import islice

import pytest
from ribwright.description.building import Building
from support.judged import judged
from support.random_buildings import buildings

CASES = {str(drawn.number): building for drawn, building in islice(buildings(), 20)}


@pytest.mark.parametrize("building", CASES.values(), ids=CASES)
def test_a_random_building_is_sound(building: Building) -> None:
    assert judged(building).faults == {}
