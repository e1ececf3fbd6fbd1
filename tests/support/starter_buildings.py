"""The starters, each raised and listed once for all tests that look at it."""

from __future__ import annotations

from functools import cache

from ribwright.description.building import Building
from ribwright.intake import parse, starter_text
from ribwright.order.lists.schedule import Schedule, schedule
from ribwright.pieces import Model
from ribwright.raising import Raised, raise_building


@cache
def starter(name: str) -> Building:
    return parse(starter_text(name, name), name)


@cache
def starter_raised(name: str) -> Raised:
    return raise_building(starter(name))


def starter_model(name: str) -> Model:
    return starter_raised(name).model


@cache
def starter_schedule(name: str) -> Schedule:
    return schedule(starter_model(name))
