"""Overhang: roofs straight along their eaves and as far out as asked, heads under the cap, feet level."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from statistics import median

import numpy as np
import shapely

from ..findings import Code, Finding
from ..measure.faces import Vectors
from ..measure.laps import LaidSheet
from ..terms import Terms
from .clad import Clad
from .found import found
from .limits import over

STRAIGHT = 0.5
"""mm that feet along an eave, or on a base, may differ."""
FEET = 150.0
"""mm; sheets that end higher than this over the lowest one do not stand on the base."""
ASKED = 0.5
"""mm that the overhang may differ from what was asked."""
UNDER_CAP = 75.0
"""mm of each roof sheet's head under the ridge cap (3 in, less a millimetre). Common practice, no source."""
LONGEST_CAP = 1000.0
"""mm down from a head in which trim over it is its cap."""
RIGHT_UNDER = 40.0
"""mm; steel whose corners are this near under a roof carries it."""


@dataclass(frozen=True, slots=True)
class Edge:
    """What was measured along a roof's eave and head (mm): overhang in plan, least and greatest; cover of
    its heads by trims above, least and greatest."""

    overhang: tuple[float, float]
    cover: tuple[float, float]


def overhangs(face: Clad, terms: Terms) -> Iterator[Finding]:
    """Every fault of a face's feet and heads."""
    feet = _feet(face)
    usual = median(foot for _, foot in feet)
    code = Code.EAVE_CROOKED if face.plane.sloped else Code.FEET_UNEVEN
    straight = [sheet for sheet, foot in feet if abs(foot - usual) <= STRAIGHT]
    for sheet, foot in feet:
        if over(abs(foot - usual), STRAIGHT):
            pair = (sheet, straight[0]) if straight else (sheet,)
            yield _of(face, code, pair, sheet, foot, abs(foot - usual), STRAIGHT)
    if not face.plane.sloped:
        return
    steel = _outermost(face)
    out = None if steel is None else _out(face, usual) - steel
    if terms.overhang is not None and out is not None and over(abs(out - terms.overhang), ASKED):
        sheet = feet[0][0]
        yield _of(face, Code.OVERHANG, (sheet,), sheet, usual, out, terms.overhang)
    cap = _cap(face)
    for sheet in face.plane.sheets:
        left, _, right, head = sheet.outline.bounds
        strip = sheet.outline.intersection(shapely.box(left, head - UNDER_CAP, right, head))
        bare = strip.difference(cap).buffer(-STRAIGHT, join_style="mitre")
        if not bare.is_empty:
            yield _of(
                face, Code.RIDGE_BARE, (sheet,), sheet, head, bare.bounds[3] - bare.bounds[1], UNDER_CAP
            )


def edges(face: Clad) -> Edge | None:
    """What a roof measures along its eave and its head; None for a wall."""
    if not face.plane.sloped:
        return None
    steel = _outermost(face)
    outs = [] if steel is None else [_out(face, foot) - steel for _, foot in _feet(face)]
    cap = _cap(face)
    covers = []
    for sheet in face.plane.sheets:
        head = sheet.outline.bounds[3]
        under = cap.intersection(
            shapely.LineString([(sheet.middle, head - LONGEST_CAP), (sheet.middle, head)])
        )
        covers.append(0.0 if under.is_empty else head - under.bounds[1])
    return Edge((min(outs, default=0.0), max(outs, default=0.0)), (min(covers), max(covers)))


def _feet(face: Clad) -> list[tuple[LaidSheet, float]]:
    """The sheets that stand on a face's base or eave, with where they end (v)."""
    lowest = min(sheet.outline.bounds[1] for sheet in face.plane.sheets)
    feet = [(sheet, sheet.outline.bounds[1]) for sheet in face.plane.sheets]
    return [(sheet, foot) for sheet, foot in feet if foot < lowest + FEET]


def _downhill(face: Clad) -> Vectors:
    """The direction in plan in which a roof falls."""
    x, y, _ = face.axes[2]
    way: Vectors = np.array([x, y, 0.0]) / np.hypot(x, y)
    return way


def _out(face: Clad, foot: float) -> float:
    """How far out, in plan, a foot at v ends, dropped square onto the plane of the steel."""
    lift = max((shade.high for shade in face.steel), default=0.0)
    return float((np.array(face.plane.point(0.0, foot)) + lift * face.axes[2]) @ _downhill(face))


def _outermost(face: Clad) -> float | None:
    """How far out, in plan, the steel right under a roof reaches; None without any."""
    outward, level = face.axes[2], _downhill(face)
    left, _, right, _ = face.plane.outline.bounds
    members = face.site.listed("members")
    low, high = face.site.spread(members, outward)
    reach = []
    for k in members[(high > face.offset - RIGHT_UNDER) & (low < face.offset + 1.0)].tolist():
        points = face.site.corners(k)
        heights, across = points @ outward - face.offset, points @ face.axes[0]
        beside = (across > left - FEET) & (across < right + FEET)
        near = points[(heights > -RIGHT_UNDER) & (heights < 1.0) & beside]
        if len(near):
            reach.append(float((near @ level).max()))
    return max(reach, default=None)


def _cap(face: Clad) -> shapely.Geometry:
    """Trims over the roof."""
    over = [shade.shape for shade in face.trims if shade.high > 1.0]
    return shapely.union_all(over)


def _of(
    face: Clad,
    code: Code,
    sheets: Sequence[LaidSheet],
    at: LaidSheet,
    v: float,
    measured: float,
    limit: float,
) -> Finding:
    where = np.array(face.plane.point(at.middle, v))
    return found(code, (sheet.piece for sheet in sheets), where, measured, limit)
