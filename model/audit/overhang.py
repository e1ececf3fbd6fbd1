"""Overhang: roofs straight along their eaves and as far out as asked, heads under the cap, feet level."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from statistics import median

import numpy as np
import shapely

from ..findings import Code, Finding
from ..measure.faces import Vectors
from ..measure.laid_sheets import LaidSheet
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


def overhangs(face: Clad, terms: Terms, on_roof: bool = False) -> Iterator[Finding]:
    """Every fault of a face's feet and heads. on_roof: whether its feet lie over another roof, no eave."""
    yield from _straight(face, _feet(face), Code.EAVE_CROOKED if face.plane.sloped else Code.FEET_UNEVEN)
    if not face.plane.sloped:
        return
    if not on_roof:
        yield from _as_asked(face, terms, at_head=False)
    if face.runs_out:
        yield from _straight(face, _heads(face), Code.EAVE_CROOKED)
        yield from _as_asked(face, terms, at_head=True)
        return
    cap = _cap(face)
    for sheet in face.plane.heads:
        left, _, right, head = sheet.outline.bounds
        strip = sheet.outline.intersection(shapely.box(left, head - UNDER_CAP, right, head))
        bare = strip.difference(cap).buffer(-STRAIGHT, join_style="mitre")
        if not bare.is_empty:
            yield _of(
                face, Code.RIDGE_BARE, (sheet,), sheet, head, bare.bounds[3] - bare.bounds[1], UNDER_CAP
            )


def _straight(face: Clad, ends: Sequence[tuple[LaidSheet, float]], code: Code) -> Iterator[Finding]:
    """Ends that do not lie in line with the others."""
    usual = median(end for _, end in ends)
    straight = [sheet for sheet, end in ends if abs(end - usual) <= STRAIGHT]
    for sheet, end in ends:
        if over(abs(end - usual), STRAIGHT):
            pair = (sheet, straight[0]) if straight else (sheet,)
            yield _of(face, code, pair, sheet, end, abs(end - usual), STRAIGHT)


def _as_asked(face: Clad, terms: Terms, *, at_head: bool) -> Iterator[Finding]:
    """An overhang that is not the one that was asked; at a high eave, that or up to a step more."""
    ends = _heads(face) if at_head else _feet(face)
    usual, sheet = median(end for _, end in ends), ends[0][0]
    steel = _outermost(face, at_head)
    out = None if steel is None else _out(face, usual, at_head) - steel
    if terms.overhang is None or out is None:
        return
    more = (terms.step or 0.0) if at_head else 0.0
    if over(max(terms.overhang - out, out - terms.overhang - more), ASKED):
        yield _of(face, Code.OVERHANG, (sheet,), sheet, usual, out, terms.overhang)


def edges(face: Clad) -> Edge | None:
    """What a roof measures along its eave and its head; None for a wall."""
    if not face.plane.sloped:
        return None
    outs = []
    for at_head, ends in ((False, _feet(face)), (True, _heads(face) if face.runs_out else [])):
        steel = _outermost(face, at_head) if ends else None
        outs += [] if steel is None else [_out(face, end, at_head) - steel for _, end in ends]
    cap = _cap(face)
    covers = []
    for sheet in face.plane.heads:
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


def _heads(face: Clad) -> list[tuple[LaidSheet, float]]:
    """The sheets that end at a roof's upper edge, with where they end (v)."""
    highest = max(sheet.outline.bounds[3] for sheet in face.plane.sheets)
    heads = [(sheet, sheet.outline.bounds[3]) for sheet in face.plane.sheets]
    return [(sheet, head) for sheet, head in heads if head > highest - FEET]


def _outward(face: Clad, at_head: bool) -> Vectors:
    """The direction in plan in which a roof falls; at its head the one in which it rises."""
    x, y, _ = face.axes[2]
    way: Vectors = np.array([x, y, 0.0]) / np.hypot(x, y)
    return -way if at_head else way


def _out(face: Clad, end: float, at_head: bool) -> float:
    """How far out, in plan, sheets that end at v reach, dropped square onto the plane of the steel."""
    lift = max((shade.high for shade in face.steel), default=0.0)
    return float((np.array(face.plane.point(0.0, end)) + lift * face.axes[2]) @ _outward(face, at_head))


def _outermost(face: Clad, at_head: bool) -> float | None:
    """How far out, in plan, the steel right under a roof reaches; None without any."""
    outward, level = face.axes[2], _outward(face, at_head)
    left, low_end, right, high_end = face.plane.outline.bounds
    members = face.site.listed("members")
    low, high = face.site.spread(members, outward)
    reach = []
    for k in members[(high > face.offset - RIGHT_UNDER) & (low < face.offset + 1.0)].tolist():
        points = face.site.corners(k)
        heights, across, along = points @ outward - face.offset, points @ face.axes[0], points @ face.axes[1]
        beside = (across > left - FEET) & (across < right + FEET)
        beside &= (along > low_end - FEET) & (along < high_end + FEET)
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
