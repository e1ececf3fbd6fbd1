"""Folded trims: one CSV row a kind, the lengths of its legs; what they must clear comes from the sheets."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

from .rows import rows

INCH = 25.4


@dataclass(frozen=True, slots=True)
class TrimProfile:
    """Legs of a folded trim, mm.

    in_plane: of the leg along the face it is fixed to. out_of_plane: of the other one, past what it
    covers. What each means for a kind is said in its row's source.
    """

    kind: str
    in_plane: float
    out_of_plane: float
    source: str


@cache
def trim_profiles() -> dict[str, TrimProfile]:
    """All kinds by name."""
    found = {}
    for row in rows("trims.csv"):
        scale = INCH if row["unit"] == "in" else 1.0
        legs = (float(row["in_plane"]) * scale, float(row["out_of_plane"]) * scale)
        found[row["kind"]] = TrimProfile(row["kind"], *legs, row["source"])
    return found
