"""Laps of sheets: nested over their whole section, rib to rib, one way a face, as was asked."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from statistics import median

import numpy as np
import shapely

from ..findings import Code, Finding
from ..measure.laid_sheets import LaidSheet
from ..measure.laps import EndLap, SideLap
from ..terms import Terms
from .clad import Clad
from .found import found
from .limits import over
from .seams import levels, tier_of

NESTED = 0.05
"""mm of air, or of metal in metal, between nested sheets."""
RIBS = 0.1
"""mm between the middles of two lap ribs."""
EVEN = 0.5
"""mm by which one lap of a face may be wider than another."""
LEVEL = 0.05
"""mm that a sheet may stand off the plane of its face."""
FACING = 1e-6
"""How far the cosine between a face's normal and the one asked about may be off 1."""


def sheet_laps(face: Clad, laps: Sequence[SideLap], terms: Terms) -> Iterator[Finding]:
    """Every fault of a face's side laps. What is wrong with one lap is said once, by its cause."""
    ends = face.plane.end_laps
    off = [sheet for lap in ends if not seated(lap) for sheet in (lap.upper, lap.under)]
    on_others = _on_others(ends, laps)
    for sheet in (one for one in face.plane.sheets if one not in on_others and one not in off):
        if sheet.measured.pan and over(abs(sheet.off), LEVEL):
            off.append(sheet)
            yield _of(face, Code.OFF_PLANE, (sheet,), sheet.outline, sheet.off, LEVEL)
    sound = []
    for lap in laps:
        if lap.upper in off or lap.under in off:
            continue
        fault = _fault(face, lap)
        if fault:
            yield fault
        else:
            sound.append(lap)
    yield from _widths(face, sound)
    yield from _one_way(face, sound, terms)


def _on_others(ends: Sequence[EndLap], laps: Sequence[SideLap]) -> set[LaidSheet]:
    """The sheets that lie on the ones below them, and those level with such a one beside them: over an
    opening as wide as a sheet there is none below to lie on."""
    lying = {lap.upper for lap in ends}
    pairs = [(lap.upper, lap.under) for lap in laps if not over(abs(lap.upper.off - lap.under.off), LEVEL)]
    while more := {sheet for pair in pairs if lying.intersection(pair) for sheet in pair} - lying:
        lying |= more
    return lying


def seated(lap: EndLap) -> bool:
    """Whether a sheet lies on the one below it, and not under it, in it or over it in the air."""
    return lap.sheds and not over(abs(lap.air[0]), NESTED)


def _fault(face: Clad, lap: SideLap) -> Finding | None:
    """What keeps two sheets from nesting."""
    pair, (least, most) = (lap.upper, lap.under), lap.air
    nested = not over(-least, NESTED) and not over(most, NESTED)
    if not lap.flank or (lap.ribs is None and not nested):
        return _of(face, Code.LAP_WITHOUT_RIB, pair, lap.region)
    if lap.ribs is not None and over(abs(lap.ribs), RIBS):
        return _of(face, Code.RIBS_APART, pair, lap.region, abs(lap.ribs), RIBS)
    if over(-least, NESTED):
        return _of(face, Code.LAP_PRESSED, pair, lap.region, -least, NESTED)
    if over(most, NESTED):
        return _of(face, Code.LAP_OPEN, pair, lap.region, most, NESTED)
    return None


def _widths(face: Clad, laps: Sequence[SideLap]) -> Iterator[Finding]:
    """Laps that differ from most of their tier."""
    heights = levels(face)
    for tier in range(len(heights) + 1):
        of_tier = [lap for lap in laps if tier_of(lap.upper, heights) == tier]
        usual = median(lap.width for lap in of_tier) if of_tier else 0.0
        for lap in of_tier:
            if over(abs(lap.width - usual), EVEN):
                yield _of(face, Code.LAP_WIDTH, (lap.upper, lap.under), lap.region, lap.width, usual)


def _one_way(face: Clad, laps: Sequence[SideLap], terms: Terms) -> Iterator[Finding]:
    """Laps against most of their face; or the whole face against what was asked."""
    if not laps:
        return
    left = sum(lap.leftward for lap in laps)
    leftward = left * 2 >= len(laps)
    for lap in laps:
        if lap.leftward != leftward:
            yield _of(face, Code.LAP_TURNED, (lap.upper, lap.under), lap.region)
    asked = {side for normal, side in terms.overlap if float(face.axes[2] @ normal) > 1 - FACING}
    # The overlap rib lies on the neighbour: with it on the left, the right one of two sheets is on top.
    if asked == {"left" if leftward else "right"}:
        sheets = tuple(dict.fromkeys(lap.upper for lap in laps))
        yield _of(face, Code.LAP_NOT_AS_ASKED, sheets, laps[0].region)


def _of(
    face: Clad,
    code: Code,
    sheets: Sequence[LaidSheet],
    shape: shapely.Geometry,
    measured: float | None = None,
    limit: float | None = None,
) -> Finding:
    middle = shape.representative_point()
    at = np.array(face.plane.point(middle.x, middle.y))
    return found(code, (sheet.piece for sheet in sheets), at, measured, limit)
