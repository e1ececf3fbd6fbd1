"""The built-in sample, raised once for all tests that read files of it."""

from __future__ import annotations

from functools import cache

from ribwright.intake import sample
from ribwright.order.lists.schedule import Schedule, schedule
from ribwright.pieces import Model
from ribwright.raising import raise_building


@cache
def sample_model() -> Model:
    return raise_building(sample()).model


@cache
def sample_schedule() -> Schedule:
    return schedule(sample_model())
