"""A store of 10 x 12 ft with a door and a window, raised once for all tests that read other formats of it."""

from __future__ import annotations

from functools import cache

from ribwright.intake import parse
from ribwright.order.lists.schedule import Schedule, schedule
from ribwright.pieces import Model
from ribwright.raising import raise_building
from support.small_model import small_model

STORE = """\
name = "Kleiner Speicher ü"
units = "{}"
width = "10 ft"
length = "12 ft"
eave_height = "8 ft"
pitch = "4/12"

[[opening]]
kind = "walk door"
wall = "front"
width = "3 ft"
height = "6 ft 8 in"
from_left = "1 ft"

[[opening]]
kind = "window"
wall = "left"
width = "3 ft"
height = "3 ft"
from_left = "2 ft"
sill = "3 ft"
"""


@cache
def store(units: str = "ft-in") -> Model:
    return raise_building(parse(STORE.format(units), "store")).model


@cache
def store_schedule(units: str = "ft-in") -> Schedule:
    return schedule(store(units))


MODELS = {"store": store, "odd names": small_model}
"""What readers of other formats are tried on."""
