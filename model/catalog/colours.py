"""Colours by name: the named colours of CSS Color Module Level 4 (W3C, section 6.1), #rrggbb, or a
name of people's own with its #rrggbb behind it: `barn red (#7a2e2a)`."""

from __future__ import annotations

import re
from functools import cache

from .rows import rows

CODE = re.compile("#[0-9a-f]{6}")
OWN = re.compile(r"[^#()]+ \((#[0-9a-f]{6})\)")


@cache
def colour_names() -> tuple[str, ...]:
    """All names of the catalogue, lower case, in alphabetical order."""
    return tuple(_hexes())


def is_colour(name: str) -> bool:
    """Whether `rgb` knows it."""
    return _code(name) in _hexes() or bool(CODE.fullmatch(_code(name)))


def rgb(name: str) -> tuple[int, int, int]:
    """Red, green and blue of a colour, 0 to 255 each, in sRGB.

    name: of the catalogue, #rrggbb, or one's own as `own_colour` spells it, in any case. Raises KeyError
    for anything else.
    """
    text = _code(name)
    code = text if CODE.fullmatch(text) else _hexes()[text]
    return (int(code[1:3], 16), int(code[3:5], 16), int(code[5:7], 16))


def linear_rgb(name: str) -> tuple[float, float, float]:
    """The same colour in linear light, 0 to 1 each: the sRGB transfer function (IEC 61966-2-1) undone."""
    red, green, blue = (_linear(value / 255) for value in rgb(name))
    return red, green, blue


def _linear(value: float) -> float:
    limit = 0.04045
    return value / 12.92 if value <= limit else float(((value + 0.055) / 1.055) ** 2.4)


def own_colour(name: str, code: str) -> str:
    """What a colour of people's own is called on labels, so that its name and its look travel together."""
    return f"{name} ({code})"


def _code(name: str) -> str:
    """The code in an own colour's name; the name itself, lower case, of any other."""
    text = name.strip().lower()
    own = OWN.fullmatch(text)
    return own[1] if own else text


@cache
def _hexes() -> dict[str, str]:
    return {row["name"]: row["hex"] for row in rows("colours.csv")}
