"""How sheets of one plane lap: what lies over what, how far and how close."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np
import shapely

from .faces import Vectors
from .laid_sheets import LaidSheet

THIN = 0.05
"""mm; an overlap that vanishes when its rim is drawn in by this is none."""
IN_LINE = 1.0
"""mm by which an edge of two sheets up one column may be off; those beside each other are a cover apart."""
STEPS = 7
"""Places across a lap at which the air in it is measured, besides every bend."""


@dataclass(frozen=True, eq=False)
class SideLap:
    """Two neighbours, one over the other along their ribs (mm).

    region: where both are (u, v). width: across. air: least and greatest gap between the upper one's
    underside and the lower one's top, negative where they are inside each other. ribs: how far apart
    their lap ribs' middles stand, None where either shows none there. flank: whether a rib's side lies
    in the lap at all. leftward: whether the upper sheet is the left one of the two, seen from outside.
    """

    upper: LaidSheet
    under: LaidSheet
    region: shapely.Geometry
    width: float
    length: float
    air: tuple[float, float]
    ribs: float | None
    flank: bool
    leftward: bool


@dataclass(frozen=True, eq=False)
class EndLap:
    """A sheet over the head of another in line with it (mm).

    region: where both are (u, v). length: up the slope. air: as of a side lap. sheds: whether the one on top
    is the higher one, so that water runs off it onto the other.
    """

    upper: LaidSheet
    under: LaidSheet
    region: shapely.Geometry
    length: float
    air: tuple[float, float]
    sheds: bool

    @property
    def developed(self) -> float:
        """Along the section of the sheets, over ribs and pans (mm): what a row of tape between them takes."""
        left, _, right, _ = self.region.bounds
        inside = self.upper.lower[:, 0]
        at = np.unique(np.concatenate([(left, right), inside[(inside > left) & (inside < right)]]))
        steps = np.diff(np.column_stack([at, _height(self.upper.lower, at)]), axis=0)
        return float(np.hypot(*steps.T).sum())


def meeting(sheets: Sequence[LaidSheet]) -> Iterator[tuple[LaidSheet, LaidSheet, shapely.Geometry]]:
    """Every two sheets that lie over each other, from left to right, and where."""
    outlines = [sheet.outline for sheet in sheets]
    tree = shapely.STRtree(outlines)
    first, second = tree.query(outlines, predicate="intersects")
    pairs = sorted({(int(i), int(j)) for i, j in zip(first, second, strict=True) if i < j})
    for i, j in pairs:
        region = _areas(outlines[i].intersection(outlines[j]))
        if not shapely.buffer(region, -THIN, join_style="mitre").is_empty:
            yield sheets[i], sheets[j], region


def _areas(shape: shapely.Geometry) -> shapely.Geometry:
    """A shape without the lines and points of it: where edges merely touch, noise decides whether any are."""
    parts = shapely.get_parts(shape)
    return shapely.union_all(parts[shapely.area(parts) > 0])


def in_line(one: LaidSheet, other: LaidSheet) -> bool:
    """Whether two sheets are of one column, the one higher up it than the other."""
    (left, low, right, high), (a, foot, b, head) = one.outline.bounds, other.outline.bounds
    higher = min(foot - low, head - high) > IN_LINE or min(low - foot, high - head) > IN_LINE
    return bool(higher and min(abs(left - a), abs(right - b)) < IN_LINE)


def end_lap(one: LaidSheet, other: LaidSheet, region: shapely.Geometry) -> EndLap:
    """The lap of two sheets of one column, where both are."""
    left, low, right, high = region.bounds
    upper, under, air = _over(one, other, _places(one, other, left, right))
    sheds = upper.outline.bounds[3] > under.outline.bounds[3]
    return EndLap(upper, under, region, high - low, air, bool(sheds))


def _over(
    one: LaidSheet, other: LaidSheet, places: Vectors
) -> tuple[LaidSheet, LaidSheet, tuple[float, float]]:
    """Which of two sheets is on top, which under it, and the least and greatest air between them."""
    first = _height(one.lower, places) - _height(other.upper, places)
    second = _height(other.lower, places) - _height(one.upper, places)
    if first.min() > second.min():
        return one, other, (float(first.min()), float(first.max()))
    return other, one, (float(second.min()), float(second.max()))


def side_lap(one: LaidSheet, other: LaidSheet, region: shapely.Geometry) -> SideLap:
    """The lap of two neighbours, where both are."""
    left, low, right, high = region.bounds
    places = _places(one, other, left, right)
    upper, under, air = _over(one, other, places)
    tops = [[crown for crown in sheet.crowns if left - 1 < crown < right + 1] for sheet in (upper, under)]
    apart = tops[0][0] - tops[1][0] if tops[0] and tops[1] else None
    flank = bool(np.ptp(_height(upper.lower, places)) > THIN)
    leftward = upper.middle < under.middle
    return SideLap(upper, under, region, right - left, high - low, air, apart, flank, leftward)


def _places(one: LaidSheet, other: LaidSheet, left: float, right: float) -> Vectors:
    """u of every bend within a lap, its ends and some places between."""
    bends = np.concatenate([line[:, 0] for sheet in (one, other) for line in (sheet.lower, sheet.upper)])
    inside = bends[(bends > left) & (bends < right)]
    return np.unique(np.concatenate([inside, np.linspace(left, right, STEPS)]))


def _height(line: Vectors, at: Vectors) -> Vectors:
    """w of a section over u; its ends run on level."""
    return np.interp(at, line[:, 0], line[:, 1])
