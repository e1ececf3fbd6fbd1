"""Colours by name: the named colours of CSS Color Module Level 4 (W3C, section 6.1), or #rrggbb."""

from __future__ import annotations

import re
from functools import cache

from .rows import rows

CODE = re.compile("#[0-9a-f]{6}")


@cache
def colour_names() -> tuple[str, ...]:
    """All names of the catalogue, lower case, in alphabetical order."""
    return tuple(_hexes())


def is_colour(name: str) -> bool:
    """Whether `rgb` knows it."""
    text = name.strip().lower()
    return bool(CODE.fullmatch(text)) or text in _hexes()


def rgb(name: str) -> tuple[int, int, int]:
    """Red, green and blue of a colour, 0 to 255 each, in sRGB.

    name: of the catalogue or #rrggbb, in any case. Raises KeyError for anything else.
    """
    text = name.strip().lower()
    code = text if CODE.fullmatch(text) else _hexes()[text]
    return (int(code[1:3], 16), int(code[3:5], 16), int(code[5:7], 16))


def linear_rgb(name: str) -> tuple[float, float, float]:
    """The same colour in linear light, 0 to 1 each: the sRGB transfer function (IEC 61966-2-1) undone."""
    red, green, blue = (_linear(value / 255) for value in rgb(name))
    return red, green, blue


def _linear(value: float) -> float:
    limit = 0.04045
    return value / 12.92 if value <= limit else float(((value + 0.055) / 1.055) ** 2.4)


@cache
def _hexes() -> dict[str, str]:
    return {row["name"]: row["hex"] for row in rows("colours.csv")}
