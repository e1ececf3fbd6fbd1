"""Sheets of one plane that are two walls: a lower building's stands in line with a higher one's."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import inf

import shapely
from shapely.geometry import Polygon

BETWEEN, HIGHER = 60.0, 150.0
"""mm between the sheets of two walls in line, at most, and by which one is higher there, at least. Ours."""
BESIDE = 1.0
"""mm from an edge in which its height is read."""
FAR = 1e6
"""mm; more than a building is high."""


def walls_in_line(outlines: Sequence[Polygon]) -> Iterator[slice]:
    """Which of the sheets of a plane, from left to right, are one wall's (u, v; mm): where two end side by
    side without a lap, and one is higher there, the next begins."""
    first, reach = 0, -inf
    for number, outline in enumerate(outlines):
        left, _, right, _ = outline.bounds
        if 0.0 < left - reach < BETWEEN:
            heads = [_head(one, u) for one, u in ((outlines[first:number], reach), ([outline], left))]
            if abs(heads[0] - heads[1]) > HIGHER:
                yield slice(first, number)
                first = number
        reach = max(reach, right)
    yield slice(first, len(outlines))


def _head(outlines: Sequence[Polygon], u: float) -> float:
    """How high sheets reach at an edge of theirs."""
    strip = shapely.box(u - BESIDE, -FAR, u + BESIDE, FAR)
    return max(float((one & strip).bounds[3]) for one in outlines if one.intersects(strip))
