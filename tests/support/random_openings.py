"""Openings of random buildings: of every kind, in every wall, where there is room."""

from __future__ import annotations

from itertools import accumulate, pairwise
from math import ceil
from random import Random

from ribwright.description.keys.tables import KINDS
from ribwright.description.opening import SLIDING
from ribwright.units import INCH, parse_length
from support.random_values import inches

WALLS = ("front", "back", "left", "right")
OFTEN = ("framed opening", "roll-up door", "walk door", "double door")
"""Kinds drawn more often: fewer of them can be built where they are put."""
DRAWN = (*("window" if kind in ("vent", SLIDING) else kind for kind in KINDS), *OFTEN)
"""Kinds that are drawn; of windows some become vents, of others some slide."""
PAINTED = 0.3
"""The share of openings whose leaf has a colour of its own."""
SWUNG = {"walk door": ("left out", "right in"), "double door": ("out", "in")}
HIGHEST = 240.0
"""in; of an opening that no end asks for."""
NARROWEST = 12.0
"""in; the least room between uprights in which an opening is put."""
OVER_SEAM = 55.0
"""in; clear of any seam between tiers."""
KNEE = 36.0
"""in; what column and knee take up of a gable beside its corner."""


Values = dict[str, dict[str, object]]


def in_inches(value: object) -> float:
    """A length as it is typed."""
    return parse_length(str(value)) / INCH


def openings_of(
    chance: Random, wanted: dict[str, object] | None, values: Values, width: float, length: float, eave: float
) -> list[dict[str, object]]:
    """One to four openings of any kind in any wall: between the knees of a gable, or in a bay of a side wall.
    wanted: what the first has to have."""
    clad = [wall for wall in WALLS if not str(values.get("walls", {}).get(wall, "")).startswith("open")]
    walls = chance.sample(clad, min(len(clad), chance.randint(1, 4)))
    if wanted and "wall" in wanted:
        walls = [str(wanted["wall"]), *(wall for wall in walls if wall != wanted["wall"])]
    found: list[dict[str, object]] = []
    for wall in walls:
        asked = (wanted or {}) if not found else {}
        kind = str(asked.get("kind", chance.choice(DRAWN)))
        low, high = _bay(chance, values, length) if wall in ("left", "right") else (KNEE, width - KNEE)
        room = high - low - 16
        if room < NARROWEST and not asked:
            continue
        room = max(NARROWEST, room)
        wide = inches(chance, min(12, room), min(120, room))
        raised = kind == "window" or (kind == "framed opening" and chance.random() < 0.3)
        lowest = OVER_SEAM if "wainscot" in values else 6.0
        sill = inches(chance, lowest, max(lowest, eave / 2)) if raised else 0.0
        highest = min(HIGHEST, eave - sill - 16)
        least = OVER_SEAM if "wainscot" in values and not raised else 12.0
        opening: dict[str, object] = {
            "kind": kind,
            "wall": wall,
            "width": f"{wide} in",
            "height": f"{inches(chance, min(least, highest), highest)} in",
            "from_left": f"{inches(chance, low + 8, high - wide - 8)} in",
            **({"sill": f"{sill} in"} if raised else {}),
        }
        if kind in SWUNG:
            opening["swing"] = chance.choice(SWUNG[kind])
        if chance.random() < PAINTED:
            opening["colour"] = "firebrick"
        found.append(opening | asked)
    return found


def _bay(chance: Random, values: Values, length: float) -> tuple[float, float]:
    """A bay's two ends along a side wall."""
    frame = values.get("frame", {})
    if isinstance(stated := frame.get("bays"), list):
        ends = [0.0, *accumulate(in_inches(bay) for bay in stated)]
    else:
        bays = ceil(length / in_inches(frame.get("spacing", "10 ft")) - 1e-9)
        ends = [length * n / bays for n in range(bays + 1)]
    return chance.choice(list(pairwise(ends)))
