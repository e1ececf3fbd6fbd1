"""Ribbed sheet profiles: one CSV row each, named by geometry (cover x rib pitch x rib height)."""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from math import hypot

from ..units import Unreadable, parse_number
from .rows import rows


@dataclass(frozen=True, slots=True)
class RibProfile:
    """The shape of a ribbed sheet's underside, all in mm.

    cover: first to last major rib centre; a whole number of pitches. pitch: between major ribs.
    height: of a major rib, pan to crown (same face of the sheet). crown: flat width on top of a
    major rib. base: its width at the pan. leg: sheet past each lap rib's centre, at most base / 2.
    minors: low ribs in each pan, evenly spaced, with their own height, crown and base (all 0: none).
    source: where the figures are from.
    """

    name: str
    cover: float
    pitch: float
    height: float
    crown: float
    base: float
    leg: float
    minors: int
    minor_height: float
    minor_crown: float
    minor_base: float
    source: str

    @property
    def flank(self) -> float:
        """How much longer the steepest flank of a rib is than it is wide: in thicknesses, how far a sheet
        stands off one that it lies on."""
        ribs = [
            (self.height, self.base - self.crown),
            (self.minor_height, self.minor_base - self.minor_crown),
        ]
        return max(hypot(1.0, 2 * high / wide) for high, wide in ribs if wide)


_UNITS = {"in": Fraction(127, 5), "mm": Fraction(1)}
_SIZES = ("cover", "pitch", "height", "crown", "base", "leg", "minor_height", "minor_crown", "minor_base")


@cache
def profiles() -> dict[str, RibProfile]:
    """Every profile of the catalogue by its name, in the catalogue's order."""
    return {row["name"]: profile_of(row) for row in rows("profiles.csv")}


def find_profile(name: str) -> RibProfile | None:
    """The profile of that name; None when the catalogue has none.

    Spaces, case, units, "*" or the multiplication sign for "x", and how a fraction is written make no
    difference: 36" x 9" x 3/4", 36x9x0.75 and 36 x 9 x 3/4 in are one profile.
    """
    return _by_sizes().get(_sizes(name))


def profile_of(row: dict[str, str]) -> RibProfile:
    """A profile from a catalogue row, its sizes in the row's own unit (in or mm)."""
    scale = _UNITS[row["unit"]]
    sizes = {size: float(parse_number(row[size]) * scale) for size in _SIZES}
    return RibProfile(name=row["name"], minors=int(row["minors"]), source=row["source"], **sizes)


def faults(profile: RibProfile) -> list[str]:
    """What makes a profile impossible to roll, lap or draw; empty for a sound one."""
    p = profile
    ribs = p.cover / p.pitch
    pan = (p.pitch - p.base) / (p.minors + 1)
    rules = {
        "cover is a whole number of pitches, at least one": ribs > 0.5 and abs(ribs - round(ribs)) < 1e-9,
        "ribs are high": p.height > 0,
        "0 < crown < base < pitch": 0 < p.crown < p.base < p.pitch,
        "the leg ends on the flank: crown/2 < leg < base/2": p.crown / 2 < p.leg < p.base / 2,
        "minor ribs have a size if there are any, and none if not": (p.minors > 0)
        == (p.minor_height > 0)
        == (p.minor_base > 0),
        "minor ribs are lower than major ones": p.minors == 0 or p.minor_height < p.height / 2,
        "0 < minor crown < minor base": p.minors == 0 or 0 < p.minor_crown < p.minor_base,
        "minor ribs fit in the pan with flats between": p.minors >= 0 and p.minor_base < pan,
        "the row says where it is from": bool(p.source),
    }
    return [rule for rule, kept in rules.items() if not kept]


def _sizes(name: str) -> tuple[object, ...]:
    """The numbers in a profile's name; the text itself when it is not made of numbers."""
    plain = re.sub(r"[\"″”]|\b(in|inch|inches|mm)\b\.?|(?<=\d)(in|mm)\b", " ", name.lower())
    try:
        return tuple(parse_number(number) for number in re.split("[x\u00d7*]", plain))
    except Unreadable:
        return (" ".join(plain.split()),)


@cache
def _by_sizes() -> dict[tuple[object, ...], RibProfile]:
    return {_sizes(name): profile for name, profile in profiles().items()}
