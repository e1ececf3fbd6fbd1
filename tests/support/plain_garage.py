"""A garage of 30 x 40 ft with a wide door in front and a window in the left wall, no post behind."""

from __future__ import annotations

from functools import cache

from ribwright.intake import parse
from ribwright.pieces import Model, Piece
from ribwright.raising import raise_building

GARAGE = """
width = "30 ft"
length = "40 ft"
eave_height = "10 ft"
pitch = "3/12"
[frame]
back_posts = "none"
[[opening]]
kind = "overhead door"
wall = "front"
width = "16 ft"
height = "8 ft"
from_left = "7 ft"
[[opening]]
kind = "window"
wall = "left"
width = "3 ft"
height = "3 ft"
from_left = "12 ft"
sill = "4 ft"
"""


@cache
def garage() -> Model:
    """The garage, raised once."""
    return raise_building(parse(GARAGE, "garage")).model


def of(model: Model, role: str, name: str = "") -> list[Piece]:
    """Pieces of a role whose names hold a word."""
    return [piece for piece in model.pieces if piece.role == role and name in piece.name]
