"""A description to spoil."""

from __future__ import annotations

GOOD = """name = "shop"
units = "ft-in"
width = "30 ft"
length = "40 ft"
eave_height = "10 ft"
pitch = "3/12"
[sheets]
gauge = 29
overhang = "2 in"
[slab]
ledge_depth = "1 in"
[runs]
front = "left"
left = "back"
[[opening]]
kind = "overhead door"
wall = "front"
width = "10 ft"
height = "8 ft"
from_left = "5 ft"
[[opening]]
kind = "window"
wall = "front"
width = "3 ft"
height = "3 ft"
from_left = "20 ft"
sill = "4 ft"
"""
