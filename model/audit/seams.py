"""Seams between tiers: sheets whose heads end right under other sheets' feet, and the trim between them.

A trim sheds at a seam where what of it is over the upper feet lies behind the sheets, and what of it is
under the lower heads lies before them.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

import numpy as np
import shapely

from ..findings import Code, Finding
from ..measure.laid_sheets import LaidSheet
from .clad import Clad, Shade
from .found import found
from .limits import over, under
from .site import Box

NEAR = 75.0
"""mm; a foot this near over a head makes a seam: less than any opening between two sheets is high."""
MEETS = 100.0
"""mm that the two sheets share at least, more than a side lap."""
LEVEL = 1.0
"""mm from a sheet's end in which its outline is looked at."""
ONE = 10.0
"""mm; seams nearer to each other in height are one."""
REACH = 20.0
"""mm that a seam's trim reaches behind the upper feet and before the lower heads, at the least."""
BARE = 30.0
"""mm of a seam that may show, where trims meet."""
HANG = (6.35, 12.7)
"""mm; from a seam's shelf up to the sheets' feet (1/4 to 1/2 in). Common practice, no source."""
LEAN = 0.5
"""mm that a shelf may stand off, where lengths of it lap."""
OFF = 101.6
"""mm of a seam (4 in) beside an upright that flush girts stop short of. Common practice, no source."""
BACKED = 50.8
"""mm from a sheet's end in which the steel that takes its row of screws begins. Common practice."""


@dataclass(frozen=True, slots=True, eq=False)
class Seam:
    """Two sheets, one over the other, and the stretch of u that they share."""

    lower: LaidSheet
    upper: LaidSheet
    left: float
    right: float

    @property
    def head(self) -> float:
        """v of the lower sheet's end."""
        return float(self.lower.outline.bounds[3])

    @property
    def foot(self) -> float:
        """v of the upper sheet's end."""
        return float(self.upper.outline.bounds[1])


@dataclass(frozen=True, slots=True, eq=False)
class End:
    """An end of a sheet, from left to right (u), and what of the sheet its row of screws is in (v)."""

    sheet: LaidSheet
    left: float
    right: float
    low: float
    high: float


def foot_of(sheet: LaidSheet, left: float, right: float) -> End:
    """Of a sheet its foot, from left to right."""
    foot = float(sheet.outline.bounds[1])
    return End(sheet, left, right, foot, foot + BACKED)


def ends_of(pairs: Sequence[Seam]) -> Iterator[End]:
    """The ends at seams."""
    for seam in pairs:
        yield End(seam.lower, seam.left, seam.right, seam.head - BACKED, seam.head)
        yield foot_of(seam.upper, seam.left, seam.right)


def seams(face: Clad) -> list[Seam]:
    """Every pair of sheets of a wall that makes one, from left to right."""
    sheets = face.plane.sheets if not face.plane.sloped else ()
    spans = [(sheet, sheet.outline.bounds[1], sheet.outline.bounds[3]) for sheet in sheets]
    return [
        seam
        for lower, _, head in spans
        for upper, foot, _ in spans
        if 0 < foot - head < NEAR
        for seam in between(lower, upper)
    ]


def between(lower: LaidSheet, upper: LaidSheet) -> Iterator[Seam]:
    """Where along u one sheet ends under another: not where either is cut around steel."""
    (low, _, high, head), (start, foot, end, _) = lower.outline.bounds, upper.outline.bounds
    if min(high, end) - max(low, start) <= MEETS:
        return
    for part in shapely.get_parts(ends_at(lower, head) & ends_at(upper, foot)):
        left, _, right, _ = part.bounds
        if right - left > MEETS:
            yield Seam(lower, upper, left, right)


def ends_at(sheet: LaidSheet, v: float) -> shapely.Geometry:
    """Where along u a sheet ends at a height, each stretch as a box: openings cut others higher or lower."""
    strip = sheet.outline & shapely.box(-1e6, v - LEVEL, 1e6, v + LEVEL)
    spans = (part.bounds for part in shapely.get_parts(strip))
    return shapely.union_all([shapely.box(left, 0.0, right, 1.0) for left, _, right, _ in spans])


def levels(face: Clad) -> list[float]:
    """Heights of a wall's seams, from the foot up."""
    found_: list[float] = []
    for middle in sorted((seam.head + seam.foot) / 2 for seam in seams(face)):
        if not found_ or middle - found_[-1] > ONE:
            found_.append(middle)
    return found_


def tier_of(sheet: LaidSheet, heights: Sequence[float]) -> int:
    """Which tier of its wall a sheet is of, from 0 at the foot. heights: of the wall's seams."""
    _, low, _, high = sheet.outline.bounds
    return sum(level < (low + high) / 2 for level in heights)


def open_seams(face: Clad) -> Iterator[tuple[Finding, Box]]:
    """Stretches of a seam that no trim closes so that water runs off over the lower sheets, each with its
    place."""
    bare: list[shapely.Geometry] = []
    pairs = seams(face)
    for seam in pairs:
        across = shapely.box(seam.left, seam.head - REACH, seam.right, seam.foot + REACH)
        closing = [one for one in _at(face, seam) if _sheds(face, seam, one) or _upright(seam, one)]
        bare.append(across.difference(shapely.union_all([shade.shape for shade in closing])))
    for part in shapely.get_parts(shapely.union_all(bare)):
        left, low, right, high = part.bounds
        if part.area > 1.0 and over(right - left, BARE):
            at = part.representative_point()
            seam = min(pairs, key=lambda one: abs(one.left + one.right - 2 * at.x))
            pair = (seam.upper.piece, seam.lower.piece)
            place = np.array(face.plane.point(at.x, at.y))
            corners = np.array([face.plane.point(u, v) for u in (left, right) for v in (low, high)])
            finding = found(Code.SEAM_OPEN, pair, place, right - left, None)
            yield finding, (corners.min(axis=0), corners.max(axis=0))


def hangs(face: Clad) -> Iterator[Finding]:
    """Feet too near to their shelf, or too high over it."""
    for seam in seams(face):
        for shade in _at(face, seam):
            if not _sheds(face, seam, shade):
                continue
            v, w = _points(face, shade)
            shelf = float(v[(w > 0) & (v < seam.foot + REACH)].max(initial=-np.inf))
            hang, (least, most) = seam.foot - shelf, HANG
            if under(hang, least - LEAN) or over(hang, most + LEAN):
                limit = least if hang < least else most
                at = np.array(face.plane.point((seam.left + seam.right) / 2, seam.foot))
                pair = (seam.upper.piece, face.site.bodies[shade.body])
                yield found(Code.SEAM_HANG, pair, at, hang, limit)
                break


def off_steel(face: Clad, ends: Iterable[End], most: float = OFF) -> Iterator[Finding]:
    """Ends that have no steel right behind them for their row of screws. most: mm that may."""
    for end in ends:
        behind = face.backing.intersection(shapely.box(end.left, end.low, end.right, end.high))
        spans = [shapely.box(a, 0, b, 1) for a, _, b, _ in (p.bounds for p in shapely.get_parts(behind))]
        bare = float(end.right - end.left - shapely.union_all(spans).area)
        if over(bare, most):
            at = np.array(face.plane.point((end.left + end.right) / 2, (end.low + end.high) / 2))
            yield found(Code.SEAM_OFF_STEEL, (end.sheet.piece,), at, bare, most)


def _at(face: Clad, seam: Seam) -> Iterator[Shade]:
    """The trims that cross a seam's height before it."""
    across = shapely.box(seam.left, seam.head, seam.right, seam.foot)
    yield from (shade for shade in face.trims if shade.shape.intersects(across))


def _points(face: Clad, shade: Shade) -> tuple[np.ndarray, np.ndarray]:
    """v and w of a trim's corners, (n,) each."""
    points = face.site.corners(shade.body)
    return points @ face.axes[1], points @ face.axes[2] - face.offset


def closed_by(face: Clad, slot: shapely.Geometry) -> shapely.Geometry:
    """What of a slot across a wall's sheets trims close that shed, as at a seam."""
    _, low, _, high = slot.bounds
    crossing = (shade for shade in face.trims if not face.plane.sloped and shade.shape.intersects(slot))
    return shapely.union_all([shade.shape for shade in crossing if _sheds_at(face, shade, low, high)])


def _sheds(face: Clad, seam: Seam, shade: Shade) -> bool:
    return _sheds_at(face, shade, seam.head, seam.foot)


def _sheds_at(face: Clad, shade: Shade, head: float, foot: float) -> bool:
    """Whether a trim lies behind what is over a foot and before what is under a head (v)."""
    v, w = _points(face, shade)
    over_, below = w[v > foot + ONE], w[v < head - ONE]
    return bool(len(over_) and len(below) and over_.max() < 1.0 and below.min() > 1.0)


def _upright(seam: Seam, shade: Shade) -> bool:
    """Whether a trim runs past a seam both ways and is taller than wide: an upright's, which closes it in its
    own way, piece over piece."""
    left, low, right, high = shade.shape.bounds
    past = low < seam.head - REACH and high > seam.foot + REACH
    return bool(past and high - low > right - left)
