"""Rib ends: what of the hollows under ribs, and over pans, is left open at eaves, heads and feet.

Along an edge across the ribs the sheets' section bounds hollows; closures, trims and concrete that
stand in them, seen along the ribs, stop them.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import numpy as np
import shapely
from numpy.typing import NDArray

from ..findings import Code, Finding
from ..measure.faces import Vectors
from ..measure.laid_sheets import LaidSheet
from .clad import Clad
from .found import found
from .limits import over
from .seams import levels, seams
from .shadow import seen
from .site import Numbers, Site

Shapes = NDArray[np.object_]
"""Array of plane shapes, (n,)."""

OPEN = 0.25
"""Share of a hollow that may stay open: a plug stops short of the rib's thin feet."""
SMALL = 150.0
"""mm2; smaller hollows, or rests of them, are left to tape: those of minor ribs, and the wedge beside an
edge rib."""
LEVEL = 5.0
"""mm; ends of sheets that differ by less end together."""
SLIT = 0.05
"""mm under the crowns, so that pans are hollows apart."""
ALONG = 200.0
"""mm from an end in which what stops it stands."""


def rib_ends(site: Site, face: Clad) -> Iterator[Finding]:
    """The hollows of a face that nothing stops: under its ribs at the foot and at a high eave, over its pans
    at another level head."""
    _, foot, _, head = face.plane.outline.bounds
    feet = [sheet for sheet in face.plane.sheets if sheet.outline.bounds[1] < foot + LEVEL]
    heads = [sheet for sheet in face.plane.sheets if sheet.outline.bounds[3] > head - LEVEL]
    below = site.listed("closures", "trims", "slab")  # a base trim's lying leg, or concrete, closes a foot
    yield from _open(site, face, feet, _under(feet), foot, below)
    level = [sheet for sheet in heads if _square(sheet)]
    if face.runs_out:
        yield from _open(site, face, heads, _under(heads), head, below)
    elif level:
        yield from _open(site, face, level, _above(level), head, site.listed("closures"))
    for seam in levels(face):
        under = [one.lower for one in seams(face) if one.head < seam < one.foot]
        lower = [sheet for sheet in face.plane.sheets if sheet in under]
        yield from _open(site, face, lower, _above(lower), max(one.outline.bounds[3] for one in lower), below)


def _square(sheet: LaidSheet) -> bool:
    """Whether a sheet's head is level all across, so that what lies over it is stopped by closures."""
    left, _, right, high = sheet.outline.bounds
    strip = shapely.box(left, high - LEVEL, right, high)
    return bool(sheet.outline.intersection(strip).area > 0.9 * strip.area)


def _open(
    site: Site,
    face: Clad,
    sheets: Sequence[LaidSheet],
    hollows: Sequence[shapely.Geometry],
    v: float,
    stopping: Numbers,
) -> Iterator[Finding]:
    """The hollows (u, w) that what stands near v leaves open."""
    plane = np.array([face.axes[0], face.axes[2], -face.axes[1]])
    (low, high), (inner, outer) = (site.spread(stopping, axis) for axis in face.axes[1:])
    beside = (outer > face.offset - 5.0) & (inner < face.offset + ALONG)
    near = stopping[(low < v + ALONG) & (high > v - ALONG) & beside]
    stops = [seen(site, k, plane) for k in near.tolist()]
    tree = shapely.STRtree(shapely.transform(stops, lambda points: points - (0.0, face.offset)))
    ends = shapely.box(*face.plane.outline.bounds) & shapely.box(-1e6, v - LEVEL, 1e6, v + LEVEL)
    outlines = np.array([sheet.outline for sheet in sheets], np.object_)
    left, _, right, _ = shapely.bounds(shapely.get_parts(shapely.intersection(outlines, ends))).T
    along = shapely.union_all(shapely.box(left, -1e3, right, 1e3))
    # Where an opening cuts a sheet higher, it has no end here, and the hollows on both its sides are two.
    parts = shapely.get_parts(shapely.intersection(np.array(hollows, np.object_), along))
    parts = parts[shapely.area(parts) >= SMALL]
    for hollow, stopped in zip(parts, _stopped(parts, tree), strict=True):
        open_, most = stopped.area, max(SMALL, OPEN * hollow.area)
        if over(open_, most):
            u = float(hollow.centroid.x)
            sheet = min(sheets, key=lambda one: abs(one.middle - u))
            at = np.array(face.plane.point(u, v))
            yield found(Code.RIB_OPEN, (sheet.piece,), at, open_, most, "area")


def _stopped(hollows: Shapes, tree: shapely.STRtree) -> Shapes:
    """(n,) what of each hollow is left of all that stands in it, taken off one after the other."""
    of, stop = tree.query(hollows)
    order = np.lexsort((np.arange(len(of)), of))
    of, stop = of[order], stop[order]
    number = np.arange(len(of)) - np.searchsorted(of, of)
    left = hollows.copy()
    for turn in range(int(number.max(initial=-1)) + 1):
        now = number == turn
        left[of[now]] = shapely.difference(left[of[now]], tree.geometries[stop[now]])
    return left


def _under(sheets: Sequence[LaidSheet]) -> list[shapely.Geometry]:
    """Between the pans' plane, or the heads that they lie on, and the undermost of the sheets, rib by rib
    (u, w)."""
    base = max(0.0, min((sheet.off for sheet in sheets), default=0.0))
    bends = np.unique(np.concatenate([sheet.lower[:, 0] for sheet in sheets]))
    tops = np.full(len(bends), np.inf)
    for sheet in sheets:
        inside = _inside(sheet.lower, bends)
        tops[inside] = np.minimum(tops[inside], _height(sheet.lower, bends[inside]))
    tops = np.maximum(np.where(np.isfinite(tops), tops, base), base)
    return _between(bends, np.full_like(tops, base), tops)


def _above(sheets: Sequence[LaidSheet]) -> list[shapely.Geometry]:
    """Between the uppermost of the sheets and the level of their lower crowns, pan by pan (u, w)."""
    bends = np.unique(np.concatenate([sheet.upper[:, 0] for sheet in sheets]))
    tops = np.full(len(bends), -np.inf)
    for sheet in sheets:
        inside = _inside(sheet.upper, bends)
        tops[inside] = np.maximum(tops[inside], _height(sheet.upper, bends[inside]))
    crowns = [float(_height(sheet.upper, np.array(sheet.crowns)).min()) for sheet in sheets if sheet.crowns]
    level = min(crowns, default=0.0) - SLIT
    return _between(bends, np.minimum(tops, level), np.full(len(bends), level))


def _between(bends: Vectors, low: Vectors, high: Vectors) -> list[shapely.Geometry]:
    """The areas between two graphs over the same places, each where the upper one lies over the lower."""
    open_ = high - low > SLIT / 10
    wide = np.flatnonzero(open_[1:] | open_[:-1])
    runs = np.split(wide, np.flatnonzero((np.diff(wide) > 1) | ~open_[wide[1:]]) + 1)
    upper, lower = np.column_stack([bends, high]), np.column_stack([bends, low])
    parts = [slice(run[0], run[-1] + 2) for run in runs if len(run)]
    return [shapely.Polygon(np.concatenate([upper[part], lower[part][::-1]])) for part in parts]


def _inside(line: Vectors, at: Vectors) -> NDArray[np.bool_]:
    """Which places lie on a section."""
    on: NDArray[np.bool_] = (at >= line[0, 0] - 1e-6) & (at <= line[-1, 0] + 1e-6)
    return on


def _height(line: Vectors, at: Vectors) -> Vectors:
    """w of a section over u."""
    return np.interp(at, line[:, 0], line[:, 1])
