"""Descriptions in which something may not fit: a shed of 30 x 40 ft, and windows in it."""

from __future__ import annotations

SIZES = {"width": "30 ft", "length": "40 ft", "eave_height": "10 ft", "pitch": "3/12"}


def described(more: str = "", **sizes: str) -> str:
    return "".join(f'{key} = "{value}"\n' for key, value in (SIZES | sizes).items()) + more


def opening(wall: str, size: str, from_left: str, sill: str = "3 ft") -> str:
    width, height = size.split(" x ")
    return (
        f'[[opening]]\nkind = "window"\nwall = "{wall}"\nwidth = "{width}"\nheight = "{height}"\n'
        f'from_left = "{from_left}"\nsill = "{sill}"\n'
    )
