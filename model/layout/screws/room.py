"""Where the screws of a face may stand: steel behind, nothing in the way of heads, other screws apart."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from functools import lru_cache
from itertools import pairwise
from math import dist

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely.geometry import MultiPolygon, Point, Polygon
from shapely.ops import nearest_points

from ...description.opening import Opening
from ...envelope.face import Face
from ...place import Point2, dot
from ...recipe import Part, Prism, Sheet
from ..skin.outside_closures import eave_band, foam_band
from ..trim.trim_lines import TrimLines
from .screw_kinds import APART, CLEAR, EDGE, INCH, RIM, SHANK
from .steel_contact import NEARLY, TOUCHING, Wall, backing, heights, touching
from .taken import Taken

Floats = NDArray[np.float64]

TIE = 1e-3
"""mm; far less than anything measured, far more than rounding."""
POINT = 40.0
"""mm; no screw's point reaches farther behind a steel line."""


@dataclass
class Room:
    """A face's room for screws, and where they stand already.

    steel: where steel backs a screw, clear of the edges of the flanges between it and the sheets. heads:
    the same, clear of the lips and the foam in front of the sheets.
    """

    steel: shapely.Geometry
    heads: shapely.Geometry
    taken: Taken = field(default_factory=Taken)

    def is_apart(self, at: Point2) -> bool:
        """Whether no screw is near a place."""
        u, v = at
        return all(
            abs(y - v) >= APART or dist(at, (x, y)) >= APART
            for x, y in self.taken.between(u - APART, u + APART)
        )

    def spot(self, wanted: Point2, where: shapely.Geometry) -> Point2 | None:
        """The spot in a region nearest to the wanted one where no other screw is near; None without any."""
        if where.is_empty:
            return None
        low_u, low_v, high_u, high_v = where.bounds
        beside = self.taken.between(low_u - APART, high_u + APART)
        near = [point for point in beside if low_v - APART < point[1] < high_v + APART]
        if shapely.intersects_xy(where, *wanted) and all(dist(wanted, point) >= APART for point in near):
            return wanted
        discs = shapely.buffer(shapely.points(np.array(near).reshape(-1, 2)), APART, quad_segs=32)
        free = where.difference(shapely.union_all(discs))
        if free.is_empty:
            return None
        return _nearest(free, wanted)


def _nearest(free: shapely.Geometry, wanted: Point2) -> Point2:
    """The nearest spot of a region. Of two equally near ones, as above and below a screw that stands in the
    way, the lower, or the left one: their distances differ by rounding alone, which chooses at random."""
    best, other = (
        nearest_points(free, Point(wanted[0] - nudge, wanted[1] - 2 * nudge))[0] for nudge in (0.0, TIE)
    )
    near, far = (dist(wanted, (spot.x, spot.y)) for spot in (best, other))
    chosen = other if far - near < TIE / 10 and best.distance(other) > 10 * TIE else best
    return (chosen.x, chosen.y)


def room(
    lines: TrimLines, face: Face, steel: Sequence[Part], trims: Sequence[Part], behind: Sequence[Wall]
) -> Room:
    """The room on a face, before any screw stands. behind: the steel's walls on it."""
    backed = backing(face, behind, lines.steel.under(face))
    pressed = [wall for trim in trims for wall in touching(face.frame, trim)]
    rims = [wall.buffer(SHANK + INCH / 8, join_style="mitre") - _inside(wall) for wall in pressed]
    ends = [end for part in steel for end in _ends_behind(face, part)]
    low, high = foam_band(lines, face) or (0.0, 0.0)
    foam = [shapely.box(-1e6, low - CLEAR, 1e6, high + CLEAR - TIE)] if high else []
    sound = backed - shapely.union_all(rims + ends + foam)
    under = [_lips(lines, face, number) for number in range(len(face.openings))]
    if eave := eave_band(lines, face):
        under.append(shapely.box(-1e6, eave[0] - RIM, 1e6, eave[1]))
    if face.raked and lines.steel.run_on and not face.half:
        under.append(_under_rakes(lines, face))
    heads = sound - shapely.union_all(under)
    shapely.prepare(heads)
    shapely.prepare(sound)
    return Room(sound, heads)


def _ends_behind(face: Face, part: Part) -> Iterator[shapely.Geometry]:
    """The cut ends of members close behind a face, such as purlins' behind a rake angle: a screw's point
    keeps clear of them."""
    if not isinstance(part.recipe, Prism):
        return
    along, across, up, origin = heights(face.frame, part.place)
    (x, y, _), *_ = part.recipe.section.outer
    for a, b, c in (part.recipe.start, part.recipe.end):
        first = along * x + across * y + up * (a * x + b * y + c) + origin
        if not -POINT - NEARLY < first < NEARLY - TOUCHING:
            continue  # most ends are far from the face, and the first corner says so
        corners = [
            face.frame.seen(part.place.point((x, y, a * x + b * y + c)))
            for x, y, _ in part.recipe.section.outer
        ]
        if all(-POINT < w < -TOUCHING for _, _, w in corners):
            yield Polygon([(u, v) for u, v, _ in corners]).buffer(SHANK + 1.0)


def _inside(wall: Polygon) -> shapely.Geometry:
    return wall.buffer(-EDGE, join_style="mitre")


def _under_rakes(lines: TrimLines, face: Face) -> Polygon:
    """As far down as the lip of the J along a gable's rakes reaches over the sheets' heads, and what heads of
    screws keep clear of it."""
    lip = lines.steel.rake_back[0] + lines.lap_room + lines.profile("j").out_of_plane + CLEAR - TIE
    line = face.top.lowered(lip)
    points = [(0.0, line.height(0.0)), *line.points[1:-1], (face.width, line.height(face.width))]
    return Polygon([*points, (face.width, 1e6), (0.0, 1e6)])


def _lips(lines: TrimLines, face: Face, number: int) -> shapely.Geometry:
    """An opening, as far as the lips of its J's and its drip reach over the sheets, and what heads keep clear
    of them."""
    opening = face.openings[number]
    reach = lip_reach(lines, opening)
    left, right = opening.from_left, opening.from_left + opening.width
    low = opening.sill - reach if opening.sill > 0 else lines.foot - INCH
    return shapely.box(left - reach, low, right + reach, opening.sill + opening.height)


def lip_reach(lines: TrimLines, opening: Opening) -> float:
    """How far from an opening's side no head stands (mm): the lip of its J reaches over the sheet there."""
    return 0.0 if opening.overhead else lines.profile("j").out_of_plane + CLEAR


def pans(face: Face, sheet: Part, beside: float) -> shapely.Geometry:
    """The flats of a sheet on the face (u, v), 1.5 diameters in from its edges and `beside` from bends."""
    assert isinstance(sheet.recipe, Sheet)
    on_bench = _on_bench(sheet.recipe, beside)
    return shapely.transform(on_bench, lambda points: _on_face(face, sheet, points))


@lru_cache(maxsize=256)
def _on_bench(recipe: Sheet, beside: float) -> shapely.Geometry:
    inside = Polygon(recipe.outline, recipe.holes).buffer(-EDGE, join_style="mitre")
    left, low, right, high = inside.bounds
    flats = [
        shapely.box(a + beside, low - 1, b - beside, high + 1)
        for (a, w0), (b, w1) in pairwise(recipe.lower)
        if abs(w0) < 1e-6 and abs(w1) < 1e-6 and b - a > 2 * beside
        if a < right and b > left
    ]
    pieces = shapely.get_parts(shapely.intersection(inside, flats))
    return MultiPolygon([piece for piece in pieces if piece.area > 0])


def _on_face(face: Face, sheet: Part, points: Floats) -> Floats:
    """Bench points (n, 2) of a sheet on its face, (n, 2)."""
    u, v, _ = face.frame.seen(sheet.place.origin)
    sign = dot(sheet.place.x, face.frame.x)
    moved: Floats = np.array([u, v]) + sign * points
    return moved


def segments(found: shapely.Geometry) -> Iterator[Point2]:
    """The v ranges of what a vertical line has in common with a region."""
    for part in shapely.get_parts(found):
        if part.length > 0:
            yield (part.bounds[1], part.bounds[3])
