"""Screws in a column along every upright at which sheets end: jambs, flush corner columns."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise
from math import ceil

import shapely
from shapely.geometry import LineString, Polygon

from ...place import Point2
from .fastening import Fastening, Missed, ScrewedSheet, put
from .screw_kinds import EDGE, INCH

JAMB = 24 * INCH
"""mm; the greatest distance between the screws along a jamb. Common practice, no source."""


def along_uprights(plan: Fastening, laid: Sequence[ScrewedSheet]) -> Iterator[Missed]:
    """A column of screws along every upright at which sheets end."""
    most = min(plan.screws.apart, JAMB)
    apart = most - 2 * EDGE
    for (low, high), wall in plan.uprights:
        u = (wall.bounds[0] + wall.bounds[2]) / 2
        strip = shapely.box(wall.bounds[0], wall.bounds[1], wall.bounds[2], wall.bounds[3])
        count = max(1, ceil((high - low) / apart))
        beside = [(sheet, where) for sheet in laid if not (where := sheet.flats(strip)).is_empty]
        for k in range(count + 1):
            yield from _wanted(plan, (u, low + (high - low) * k / count), wall, beside, laid)
        for below, above in pairwise(_standing(plan, (u - BESIDE, u + BESIDE), (low - REACH, high + REACH))):
            if above - below > most + LITTLE:
                yield from _wanted(plan, (u, (below + above) / 2), wall, beside, laid)
        for sheet, where in beside:
            if sheet.lap and low < sheet.lap.row < high:
                row, head = sheet.lap.row, sheet.lap.head
                yield from _where_lapped(plan, sheet, where, (u, row), (row - REACH, row + REACH))
                if head < high:
                    yield from _where_lapped(plan, sheet, where, (u, head - REACH), (head - HOLDS, head))


def _wanted(
    plan: Fastening,
    at: Point2,
    wall: Polygon,
    beside: Sequence[tuple[ScrewedSheet, shapely.Geometry]],
    laid: Sequence[ScrewedSheet],
) -> Iterator[Missed]:
    """Places the screw of a column wanted at a place; tells where a sheet lies there and shows no room."""
    _one_of_column(plan, at, beside)
    if not _held(plan, at, wall) and not plan.cut_out(at):
        away, _, name = min(_reach(sheet, at, wall) for sheet in laid)
        if away < 4 * INCH:
            yield Missed(name, plan.face.name, at)


def _where_lapped(
    plan: Fastening, sheet: ScrewedSheet, where: shapely.Geometry, at: Point2, span: Point2
) -> Iterator[Missed]:
    """A screw through a sheet's foot and the head that it lies on, at the row of their lap or under the head,
    where none of the sheet's stands near to the upright in a span of heights."""
    if any(abs(x - at[0]) < BESIDE and span[0] <= y <= span[1] for x, y in sheet.spots):
        return
    near = where.intersection(shapely.box(at[0] - 1e4, at[1] - EDGE, at[0] + 1e4, at[1] + EDGE))
    if not put(plan, sheet, plan.room.spot(at, near)):
        yield Missed(sheet.part.name, plan.face.name, at)


def _reach(sheet: ScrewedSheet, at: Point2, wall: Polygon) -> tuple[float, float, str]:
    """How far a sheet is from a place in an upright's wall and how little of the wall's width it lies on
    there. Where two lap, the edge beside the opening is that of the sheet that lies on more of the wall."""
    left, _, right, _ = wall.bounds
    across = sheet.inside.intersection(LineString([(left, at[1]), (right, at[1])])).length
    return (sheet.inside.distance(shapely.Point(at)), -across, sheet.part.name)


def _one_of_column(
    plan: Fastening, at: Point2, beside: Sequence[tuple[ScrewedSheet, shapely.Geometry]]
) -> None:
    """The screw of a column wanted at a place, in whichever sheet has room within a few inches of it."""
    window = shapely.box(at[0] - 1e4, at[1] - REACH, at[0] + 1e4, at[1] + REACH)
    for sheet, where in beside:
        near = where.intersection(window)
        if not near.is_empty and (spot := plan.room.spot(at, near)):
            put(plan, sheet, spot)
            return


REACH, BESIDE = 3 * INCH, 5.5 * INCH
"""mm; how far up or down a jamb's screw may slide, and how far beside a jamb one of a lap's row holds the
sheets' edge there. Ours."""
HOLDS = 11 * INCH
"""mm; a screw this near under a lapped head, as long laps have none, holds the head's edge. Ours."""


LITTLE = 1.5 * INCH
"""mm; screws that slid apart along a jamb stand no more than this past what was asked. Ours."""


def _held(plan: Fastening, at: Point2, wall: Polygon) -> bool:
    """Whether a screw stands in the jamb's wall near a height."""
    left, _, right, _ = wall.bounds
    return bool(_standing(plan, (left, right), (at[1] - REACH, at[1] + REACH)))


def _standing(plan: Fastening, across: Point2, up: Point2) -> list[float]:
    """Heights at which screws stand within spans of u and of v, from the lowest up."""
    return sorted(v for _, v in plan.room.taken.between(*across) if up[0] <= v <= up[1])
