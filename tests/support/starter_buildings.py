"""The starters, each raised and listed once for all tests that look at it."""

from __future__ import annotations

from functools import lru_cache

from ribwright.description.building import Building
from ribwright.intake import parse, starter_text
from ribwright.order.lists.schedule import Schedule, schedule
from ribwright.pieces import Model
from ribwright.raising import Raised, raise_building

KEPT = 3
"""Starters that a process keeps: its tests of one come together, and some look at the sample besides."""


@lru_cache(maxsize=KEPT)
def starter(name: str) -> Building:
    return parse(starter_text(name, name), name)


@lru_cache(maxsize=KEPT)
def starter_raised(name: str) -> Raised:
    return raise_building(starter(name))


def starter_model(name: str) -> Model:
    return starter_raised(name).model


@lru_cache(maxsize=KEPT)
def starter_schedule(name: str) -> Schedule:
    return schedule(starter_model(name))
