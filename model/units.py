"""Lengths and pitches as tradespeople type them, and figures as they are shown to people.

Inside the program every length is in millimetres and every angle in degrees. Reading is exact
(rational arithmetic, rounded once to a float); 1 in = 25.4 mm and 1 lb = 0.45359237 kg by
definition (the international yard and pound agreement of 1959).
"""

from __future__ import annotations

import re
from decimal import ROUND_HALF_UP, Decimal
from fractions import Fraction
from math import atan2, degrees, floor, log10, radians, tan
from typing import Literal

Units = Literal["ft-in", "mm"]

INCH = 25.4
"""mm"""
FOOT = 304.8
"""mm"""
POUND = 0.45359237
"""kg"""

LIGHTEST = 1e-4
"""lb, kg; less is shown as nothing."""

LENGTH_HINT = "a length such as 30', 9' 2-1/2\", 110.5 in, 9.144 m or 2500 mm"
PITCH_HINT = 'a pitch such as 3/12 (rise in 12 of run) or "10 deg"'


class Unreadable(ValueError):
    """Text that does not say what was asked for; `str(error)` is what would do."""


def _caseless(*words: str) -> str:
    """A pattern for any of the words, in either case, without a flag (a JSON Schema has none)."""
    return "|".join("".join(f"[{c}{c.upper()}]" if c.isalpha() else c for c in word) for word in words)


_VULGAR = dict(zip("½¼¾⅛⅜⅝⅞", ("1/2", "1/4", "3/4", "1/8", "3/8", "5/8", "7/8"), strict=True))
_NUMBER = r"(?:[0-9]{1,9}(?:\.[0-9]{0,12})?|\.[0-9]{1,12})"
_PART = rf"(?:[0-9]{{1,3}}\s*[/\u2044]\s*(?:2|4|8|16|32|64)|[{''.join(_VULGAR)}])"
_AMOUNT = rf"(?:[0-9]{{1,9}}(?:\s*-\s*|\s+){_PART}|[0-9]{{1,9}}[{''.join(_VULGAR)}]|{_PART}|{_NUMBER})"
_FOOT = rf"(?:['\u2018\u2019\u2032](?!')|(?:{_caseless('feet', 'foot', 'ft')})\.?)"
_INCH = (
    rf"""(?:["\u201c\u201d\u2033]|''|\u2019\u2019|\u2032\u2032|(?:{_caseless("inches", "inch", "in")})\.?)"""
)
_METRIC = _caseless("mm", "cm", "m")

LENGTH_PATTERN = (
    rf"^\s*(-?)\s*(?:({_AMOUNT})\s*{_FOOT}(?:[\s-]*({_AMOUNT})\s*{_INCH}?)?"
    rf"|({_AMOUNT})\s*{_INCH}|({_NUMBER})\s*({_METRIC}))\s*$"
)
"""The grammar of a length; good for Python and for ECMA 262, so that a JSON Schema can carry it."""

PITCH_PATTERN = (
    rf"^\s*(-?)\s*(?:({_AMOUNT})\s*(?:/|:|\s(?:{_caseless('in')})\s)\s*12"
    rf"|({_NUMBER})\s*(?:°|{_caseless('degrees', 'degree', 'deg')}))\s*$"
)
"""The grammar of a pitch, good for Python and ECMA 262."""

_LENGTH = re.compile(LENGTH_PATTERN)
_PITCH = re.compile(PITCH_PATTERN)
_BARE = re.compile(rf"^\s*-?\s*{_AMOUNT}\s*$")
_MILLIMETRES = {"mm": Fraction(1), "cm": Fraction(10), "m": Fraction(1000)}
_LONGEST = 60  # characters in a length; nobody types more, and a pattern need not look at more


def parse_length(text: str) -> float:
    """The millimetres of a length as typed: feet and inches, or m, cm, mm. May be negative.

    Inches take fractions (6-1/2", 6 1/2 in, 6½") or decimals; after feet the inch mark may be left
    out (9' 2-1/2). Typographic primes and quotes pass for straight ones. A number without a unit is
    refused, except 0, which is the same in all of them.

    Raises Unreadable.
    """
    match = _LENGTH.match(text) if len(text) <= _LONGEST else None
    if not match:
        return _unitless(text)
    sign, feet, odd, inches, metric, unit = match.groups()
    if metric:
        size = Fraction(metric) * _MILLIMETRES[unit.lower()]
    else:
        extra = _amount(odd or inches or "0")
        whole = _amount(feet or "0")
        if odd and (whole.denominator > 1 or extra >= 12):
            raise Unreadable("whole feet with less than 12 inches after them, such as 9' 2-1/2\"")
        size = (whole * 12 + extra) * Fraction(127, 5)
    return float(-size if sign else size)


def _unitless(text: str) -> float:
    """What to say of a text that is not a length; 0 when it is a plain nought."""
    if len(text) <= _LONGEST and _BARE.match(text):
        if text.strip() in ("0", "0.0"):
            return 0.0
        number = text.strip(" -")
        raise Unreadable(f"a unit after the number: {number}', {number} in, {number} m or {number} mm")
    if "," in text:
        raise Unreadable(f"{LENGTH_HINT}; decimals take a point, thousands nothing")
    raise Unreadable(LENGTH_HINT)


def parse_number(text: str) -> Fraction:
    """A plain number as the catalogues have it: 9, 0.75, 3/4, 1-1/4 or 1 1/4. Raises Unreadable."""
    if not re.fullmatch(rf"\s*{_AMOUNT}\s*", text):
        raise Unreadable("a number such as 9, 0.75 or 1-1/4")
    return _amount(text.strip())


def _amount(text: str) -> Fraction:
    """A number with or without a fraction: "2-1/2", "3/4", "2½", "110.5"."""
    for sign, spelled in _VULGAR.items():
        text = text.replace(sign, f" {spelled}")
    text = text.replace("\u2044", "/")
    if "/" not in text:
        return Fraction(text.strip())
    before, denominator = text.split("/")
    *whole, numerator = before.replace("-", " ").split()
    bottom = int(denominator)
    if whole and int(numerator) >= bottom:
        raise Unreadable("a proper fraction such as 2-1/2 or 3/4")
    return Fraction(whole[0] if whole else 0) + Fraction(int(numerator), bottom)


def parse_pitch(text: str) -> float:
    """The degrees of a pitch as typed: 3/12, 3:12, 3-1/2:12, 3 in 12, 10 deg, 10°. Raises Unreadable."""
    match = _PITCH.match(text) if len(text) <= _LONGEST else None
    if not match:
        raise Unreadable(PITCH_HINT)
    sign, rise, angle = match.groups()
    turn = degrees(atan2(_amount(rise), 12)) if rise else float(Fraction(angle))
    return -turn if sign else turn


def _rounded(value: float, noise: int, step: str) -> Decimal:
    """value to the nearest step, half up (away from nought), after dropping noise behind `noise` decimals."""
    steady = Decimal(repr(round(value, noise)))
    return steady.quantize(Decimal(step), rounding=ROUND_HALF_UP)


def format_length(mm: float, units: Units) -> str:
    """A length for people: `9' 2-1/2"` to the nearest 1/16 in, or whole millimetres, without a unit.

    Rounded to 1e-5 mm first and then half up, so that noise in the ninth decimal never shows.
    """
    if units == "mm":
        return f"{_rounded(mm, 5, '1') + 0}"
    sixteenths = int((Decimal(repr(round(abs(mm), 5))) * 16 / Decimal("25.4")).quantize(1, ROUND_HALF_UP))
    feet, rest = divmod(sixteenths, 12 * 16)
    inches, part = divmod(rest, 16)
    fraction = f"{Fraction(part, 16)}" if part else ""
    small = "-".join(filter(None, (str(inches) if inches or feet or not part else "", fraction)))
    sign = "-" if mm < 0 and sixteenths else ""
    if feet and not rest:
        return f"{sign}{feet}'"
    return f"{sign}{feet}' {small}\"" if feet else f'{sign}{small}"'


def format_exact(mm: float, units: Units) -> str:
    """A length as it would be typed, with its unit, when the 1/16 or the millimetre may not swallow it."""
    if units == "mm":
        return f"{round(mm, 4):.10g} mm"
    near = format_length(mm, units)
    return near if abs(parse_length(near) - mm) < 1e-5 else f"{round(mm / INCH, 5):.10g} in"


def format_pitch(degree: float, units: Units) -> str:
    """A pitch for people: 3/12 with ft-in, 14.04 deg with mm."""
    if units == "mm":
        return f"{round(degree, 2):.10g} deg"
    rise = 12 * tan(radians(degree))
    return f"{round(rise, 2):.10g}/12"


def area_unit(units: Units) -> str:
    """The unit of `format_area` for the head of a table."""
    return "m2" if units == "mm" else "ft2"


def weight_unit(units: Units) -> str:
    """The unit of `format_weight` for the head of a table."""
    return "kg" if units == "mm" else "lb"


def format_area(mm2: float, units: Units) -> str:
    """An area for people: square feet or square metres, two decimals, without a unit."""
    return f"{_rounded(mm2 / (1e6 if units == 'mm' else FOOT**2), 9, '0.01') + 0}"


def format_weight(kg: float, units: Units) -> str:
    """A weight for people: pounds or kilograms, one decimal, without a unit; under 1 three figures."""
    value = kg / (1 if units == "mm" else POUND)
    small = LIGHTEST < abs(value) < 1
    step = Decimal(1).scaleb(max(floor(log10(abs(value))) - 2, -9)) if small else Decimal("0.1")
    return f"{_rounded(value, 12 if small else 9, str(step)) + 0:f}"
