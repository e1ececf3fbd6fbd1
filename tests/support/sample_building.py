"""The built-in sample, raised once for all tests that read files of it: it is the workshop."""

from __future__ import annotations

from ribwright.order.lists.schedule import Schedule
from ribwright.pieces import Model
from support.starter_buildings import starter_model, starter_schedule


def sample_model() -> Model:
    return starter_model("workshop")


def sample_schedule() -> Schedule:
    return starter_schedule("workshop")
