"""Headwalls: roofs whose heads end at a wall, the flashing there, and what shelters the wall under them.

Such a roof rises towards a wall and ends right before it. A flashing closes it where it reaches up behind
the wall's sheets and down over the roof's; under it the wall's sheets end around the steel that carries it.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np
import shapely

from ..findings import Code, Finding
from ..measure.laid_sheets import LaidSheet
from .clad import Clad, Shade
from .found import found
from .limits import over, under
from .seams import BARE, LEAN, MEETS, End, Seam, between, ends_at, ends_of, foot_of
from .site import Box

BEFORE = 60.0
"""mm before a wall in which the heads of a roof end at it."""
ABOVE, BELOW = 150.0, 400.0
"""mm over a roof's heads in which the feet over it are, and under them in which the heads under it are."""
UP, DOWN = 76.2, 101.6
"""mm that a flashing reaches up behind the sheets above (3 in), and down over the roof in plan (4 in), at the
least. Common practice, no source."""
HANG = (12.7, 25.4)
"""mm; from a flashing's bend up to the sheets' feet (1/2 to 1 in). Common practice, no source."""
STANDS_OUT = 300.0
"""mm from a wall at which one that stands out from it is looked for."""
AROUND = 30.0
"""mm; sheets end so near to the steel that comes through between them: 1/8 in, and a step of length."""
OUT = 254.0
"""mm of an end (10 in) without steel behind: between a corner and the end frame's rafter, which stands in as
far as girts are deep, no girt has its place; the corner trim lies over it. Ours."""
WALL = 1.0
"""mm before a wall's plane up to which a flashing's leg lies in it."""
ROOF_DEEP = 1.0
"""mm before a wall's plane from which steel counts as standing before it."""


@dataclass(frozen=True, eq=False)
class Headwall:
    """A roof's heads at a wall: from left to right on the wall (u), at a height (v). closed: the ends (u) at
    which a wall stands under the roof, so that the one that it ends at is indoors there."""

    roof: Clad
    wall: Clad
    left: float
    right: float
    head: float
    closed: tuple[float, ...] = ()

    def ends(self) -> list[End]:
        """Those of the sheets over and under it that stand over each other, and the feet over it that stand
        over none, where the wall is open under it."""
        pairs = self.pairs()
        paired = {id(pair.upper) for pair in pairs}
        alone = [
            foot_of(sheet, left, right)
            for sheet in self._over()
            if id(sheet) not in paired
            for left, _, right, _ in (
                part.bounds for part in shapely.get_parts(ends_at(sheet, sheet.outline.bounds[1]))
            )
            if right - left > MEETS
        ]
        return [*ends_of(pairs), *alone]

    def _over(self) -> list[LaidSheet]:
        """The sheets whose feet are over it."""
        sheets = self.wall.plane.sheets
        return [one for one in sheets if 0 < one.outline.bounds[1] - self.head < ABOVE]

    def pairs(self) -> list[Seam]:
        """The sheets over and under it that stand over each other."""
        sheets, upper = self.wall.plane.sheets, self._over()
        lower = [one for one in sheets if 0 < self.head - one.outline.bounds[3] < BELOW]
        return [seam for one in lower for other in upper for seam in between(one, other)]

    @property
    def sheltered(self) -> shapely.Geometry:
        """Of the wall's plane: the steel that stands before it under the roof, and a little about it; and the
        roof's heads, up to the bends of the flashings over them."""
        members = self.wall.site.listed("members")
        steel = self.wall.shades(members, ROOF_DEEP, ROOF_DEEP)
        about = shapely.union_all([one.shape.buffer(AROUND, join_style="mitre") for one in steel])
        under_roof = shapely.box(self.left - AROUND, -1e6, self.right + AROUND, self.head + AROUND)
        before = about & under_roof
        ends = (shapely.box(u - AROUND, -1e6, u + AROUND, 1e6) & under_roof for u in self.closed)
        return shapely.union_all([before, *ends, *self._under_bends()])

    def _under_bends(self) -> Iterator[shapely.Geometry]:
        for shade in self.wall.trims:
            if _sheds(self, shade):
                (left, _, right, _), (v, w) = shade.shape.bounds, _points(self.wall, shade)
                yield shapely.box(left, self.head, right, max(self.head, float(v[w < WALL].min())))


def headwalls(faces: Sequence[Clad]) -> Iterator[Headwall]:
    """Every roof that ends at a wall."""
    for roof in (face for face in faces if face.plane.sloped):
        left, _, right, head = roof.plane.outline.bounds
        ends = np.array([roof.plane.point(u, head) for u in (left, right)])
        for wall in (face for face in faces if not face.plane.sloped):
            away = ends @ wall.axes[2] - wall.offset
            if roof.axes[2] @ wall.axes[2] > 0 and (away > 0).all() and (away < BEFORE).all():
                across, heights = ends @ wall.axes[0], ends @ wall.axes[1]
                closed = tuple(float(u) for u in across if _closes(faces, wall, u, float(heights.max()) / 2))
                yield Headwall(
                    roof, wall, float(across.min()), float(across.max()), float(heights.max()), closed
                )


def _closes(faces: Sequence[Clad], wall: Clad, u: float, v: float) -> bool:
    """Whether a wall stands out from another at a place on that one."""
    point = np.array(wall.plane.point(u, v)) + STANDS_OUT * wall.axes[2]
    return any(
        abs(face.axes[2] @ point - face.offset) < BEFORE
        and face.plane.outline.convex_hull.intersects(shapely.Point(face.axes[:2] @ point))
        for face in faces
        if not face.plane.sloped and face is not wall
    )


def sheltered(found_: Sequence[Headwall], wall: Clad) -> shapely.Geometry:
    """What of a wall's plane lies under roofs that end at it, and needs no sheet."""
    return shapely.union_all([one.sheltered for one in found_ if one.wall is wall])


def open_heads(headwall: Headwall) -> Iterator[tuple[Finding, Box]]:
    """Stretches of a headwall along which no flashing sheds over the roof."""
    wall = headwall.wall
    spans = [shade.shape.bounds for shade in wall.trims if _sheds(headwall, shade)]
    closed = shapely.union_all([shapely.box(left, -1.0, right, 1.0) for left, _, right, _ in spans])
    line = shapely.LineString([(headwall.left, 0.0), (headwall.right, 0.0)])
    for part in shapely.get_parts(line.difference(closed)):
        if over(part.length, BARE):
            (left, _, right, _), v = part.bounds, headwall.head
            sheets = headwall.roof.plane.sheets
            where = np.array(wall.plane.point((left + right) / 2, v))
            nearest = min(sheets, key=lambda one: abs(_along(headwall, one) - (left + right) / 2))
            ends = np.array([wall.plane.point(u, v + step) for u in (left, right) for step in (-DOWN, ABOVE)])
            finding = found(Code.HEADWALL_OPEN, (nearest.piece,), where, part.length)
            yield finding, (ends.min(axis=0), ends.max(axis=0) + DOWN * np.abs(wall.axes[2]))


def _along(headwall: Headwall, sheet: LaidSheet) -> float:
    """u on the wall of a roof sheet's middle."""
    point = headwall.roof.plane.point(sheet.middle, 0.0)
    return float(np.array(point) @ headwall.wall.axes[0])


def feet_over(headwall: Headwall) -> Iterator[Finding]:
    """Feet too near to the flashing's bend, or too high over it."""
    wall = headwall.wall
    for end in (one for one in headwall.ends() if one.low > headwall.head):
        for shade in wall.trims:
            if not _beside(shade, end) or not _sheds(headwall, shade):
                continue
            v, w = _points(wall, shade)
            hang, (least, most) = end.low - float(v[(w < WALL) & (v < end.low)].max()), HANG
            if under(hang, least - LEAN) or over(hang, most + LEAN):
                at = np.array(wall.plane.point((end.left + end.right) / 2, end.low))
                about = (end.sheet.piece, wall.site.bodies[shade.body])
                yield found(Code.HEADWALL_HANG, about, at, hang, least if hang < least else most)
                break


def _beside(shade: Shade, end: End) -> bool:
    left, _, right, _ = shade.shape.bounds
    return bool(min(right, end.right) - max(left, end.left) > MEETS)


def _points(face: Clad, shade: Shade) -> tuple[np.ndarray, np.ndarray]:
    """v and w of a trim's corners, (n,) each."""
    points = face.site.corners(shade.body)
    return points @ face.axes[1], points @ face.axes[2] - face.offset


def _sheds(headwall: Headwall, shade: Shade) -> bool:
    """Whether a trim reaches up behind the sheets above, and down over the roof before them."""
    feet = [one.outline.bounds[1] for one in headwall.wall.plane.sheets]
    foot = min((v for v in feet if 0 < v - headwall.head < ABOVE), default=headwall.head)
    v, w = _points(headwall.wall, shade)
    behind, lying = v[w < WALL], v[w > DOWN]
    if not len(behind) or not len(lying) or under(float(behind.max()), foot + UP):
        return False
    points = headwall.wall.site.corners(shade.body)
    heights = points @ headwall.roof.axes[2] - headwall.roof.offset
    return bool(heights[w > DOWN].min() > 1.0)
