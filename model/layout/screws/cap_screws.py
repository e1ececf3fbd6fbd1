"""Screws in the front leg of a half wall's cap, into the girt at the sheets' heads."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

import shapely

from ..trim.cap_trims import under_cap
from ..trim.tier_trims import covered, legs_over
from .screw_kinds import EDGE
from .trimmed import Spots, Trimmed, Wanted


def cap_screws(on: Trimmed) -> Iterator[Wanted]:
    """One through each corner trim's leg, which has no other at its head, and one in every pan between."""
    lines, face = on.lines, on.plan.face
    if (half := face.half) is None:
        return
    deep = lines.building.framing.girt.width / 2
    low = max(half.girt - deep, under_cap(lines, half) + EDGE + lines.lap_room)
    high = min(half.girt + deep, half.head - EDGE)
    legs = [covered(leg) for leg, _ in legs_over(lines, face)]
    pans = [(a, b) for a, b in pairwise(on.ribs(face.upper)) if a >= 0.0 and b <= face.width]
    free = [(a, b) for a, b in pans if not any(one < b and a < other for one, other in legs)]
    spots: Spots = [
        (((a + b) / 2, half.row), shapely.box(a + EDGE, low, b - EDGE, high))
        for a, b in sorted([*legs, *free])
    ]
    name = f"{face.name} cap trim"
    yield name, on.run(name), lines.seam + lines.thickness, spots
