"""A ribbed sheet measured off its solid, whatever made it and wherever it stands."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from functools import lru_cache

import numpy as np
import shapely
from OCP.TopoDS import TopoDS_Solid
from shapely.geometry import Polygon

from ..place import Place, Point3
from .blank import TOLERANCE, Blank, Cutout, End, blank, cutouts
from .faces import KEPT, Body, Vectors, body
from .outline import outline
from .section import Graph, Rib, graph, has_pan, majors, overlap_side, ribs, turned_over, upright
from .sheet_axes import Lie, NotASheet, lie
from .snap import snapped

STEEL = 7850e-9
"""kg/mm3. 490 lb/ft3, from memory; it reproduces the published weights of hollow sections."""
ALIKE = 1e-3
"""mm; figures nearer than this do not decide which way round a sheet is drawn."""

_TURNED = np.diag([-1.0, -1.0, 1.0])  # end for end, on the same face
_OVER = np.diag([-1.0, 1.0, -1.0])  # onto the other face
_ASIDE = np.array([[0.0, -1.0, 0.0], [1.0, 0.0, 0.0], [0.0, 0.0, 1.0]])  # a quarter turn


@dataclass(frozen=True, slots=True, eq=False)
class Way:
    """A sheet as it lies on the bench one way round.

    bench: the bench frame in the solid's frame: x across the ribs, y along them (v), z off the face.
    Its origin is the lower left corner of the sheet (of the rectangle the sheet is cut from), at the
    underside of the pan. outline: (u, v), holes and all. lower, upper: the section's graphs w(u).
    """

    bench: Place
    outline: Polygon
    lower: Graph
    upper: Graph

    def fits(self, other: Way) -> bool:
        """Whether the other lies in this one to TOLERANCE, both at the corner."""
        ends = zip(self.outline.bounds, other.outline.bounds, strict=True)
        if any(abs(a - b) > TOLERANCE + ALIKE / 1000 for a, b in ends):
            return False
        # Rims alone do not tell: a notch in one side and its complement in the other lie on each other's.
        apart = self.outline.symmetric_difference(other.outline, grid_size=ALIKE / 10).area
        if apart > TOLERANCE * self.outline.length:
            return False
        pairs = (
            (self.outline.boundary, other.outline.boundary),
            (shapely.LineString(self.lower), shapely.LineString(other.lower)),
            (shapely.LineString(self.upper), shapely.LineString(other.upper)),
        )
        return all(shapely.hausdorff_distance(a, b) <= TOLERANCE + ALIKE / 1000 for a, b in pairs)


@dataclass(frozen=True, slots=True, eq=False)
class MeasuredSheet:
    """A ribbed sheet on the bench: face up, overlap rib on the left, ribs along v (mm, mm2, mm3, kg).

    ways: how it may lie: one for a sheet that shows its overlap rib; for one that does not, also
    turned end for end, and for one without ribs turned over. All figures are for the first one,
    which is chosen by shape alone. width: overall. cover: first to last major rib centre, 0 with fewer
    than two. length: along the ribs, the longer edge's. plan_area: of the flat outline as laid.
    formed_area: along the slopes, mean of both faces. weight: at 7850 kg/m3.
    """

    ways: tuple[Way, ...]
    thickness: float
    ribs: tuple[Rib, ...]
    blank: Blank
    cutouts: tuple[Cutout, ...]
    formed_area: float
    volume: float

    @property
    def bench(self) -> Place:
        """The bench frame in the solid's own frame."""
        return self.ways[0].bench

    @property
    def outline(self) -> Polygon:
        """The flat outline (u, v) from the lower left corner, without corners on straight lines."""
        return self.ways[0].outline

    @property
    def pan(self) -> bool:
        """Whether it shows a pan, flat at its lowest. A strip of one rib, cut in its flanks, shows none: how
        high its rib is and in which plane it lies it does not tell."""
        return has_pan(self.ways[0].lower)

    @property
    def majors(self) -> tuple[Rib, ...]:
        """The major ribs it still has, from left to right."""
        return majors(self.ribs)

    @property
    def foot(self) -> End:
        """The cut at the end of low v."""
        return self.blank.foot

    @property
    def head(self) -> End:
        """The cut at the end of high v."""
        return self.blank.head

    @property
    def width(self) -> float:
        """Overall, across the ribs."""
        return float(self.outline.bounds[2])

    @property
    def length(self) -> float:
        """Overall, along the ribs."""
        return float(self.outline.bounds[3])

    @property
    def cover(self) -> float:
        """First to last major rib centre."""
        high = self.majors
        return high[-1].centre - high[0].centre if high else 0.0

    @property
    def plan_area(self) -> float:
        """Flat, as it covers a face."""
        return float(self.outline.area)

    @property
    def weight(self) -> float:
        """Of the solid, as steel."""
        return self.volume * STEEL

    @property
    def size(self) -> tuple[float, ...]:
        """What sheets are put in order by: length, area."""
        return (self.length, self.plan_area)


@lru_cache(maxsize=KEPT)
def measure_sheet(solid: TopoDS_Solid) -> MeasuredSheet:
    """A ribbed sheet's figures. Raises NotASheet for a solid that is none."""
    shape = body(solid)
    lying = lie(shape)
    ways = [_way(shape, lying, axes) for axes in _axes(shape, lying)]
    if len(ways) > 1:
        ways.sort(key=_order)
    first = ways[0]
    sheet = blank(first.outline)
    skin = sum(shape.faces[i].area for i in (*lying.top, *lying.bottom))
    return MeasuredSheet(
        tuple(ways),
        lying.thickness,
        ribs(first.lower, lying.thickness),
        sheet,
        cutouts(first.outline, sheet),
        skin / 2,
        shape.volume,
    )


def _axes(shape: Body, lying: Lie) -> list[Vectors]:
    """The axes (3, 3) of every way the sheet may lie: face up, overlap rib on the left."""
    lower, upper = _section(shape, lying, lying.axes)
    here, over = upright(lower, upper)
    faces = [(lying.axes, lower)] * here + [(_OVER @ lying.axes, turned_over(upper))] * over
    found: list[Vectors] = []
    for axes, underside in faces:
        side = overlap_side(underside, lying.thickness)
        found += [axes] if side != "right" else []
        found += [_TURNED @ axes] if side != "left" else []
    return found + [_ASIDE @ axes for axes in found] if lying.flat else found


def _section(shape: Body, lying: Lie, axes: Vectors) -> tuple[Graph, Graph]:
    """The underside's and the top's graph for some axes, w from the solid's own origin."""
    bottom, top = lying.sides(axes)
    return _graph(shape, bottom, axes), _graph(shape, top, axes)


def _graph(shape: Body, side: tuple[int, ...], axes: Vectors) -> Graph:
    corners = np.concatenate([shape.faces[i].rings[0] for i in side])
    return graph(shape.corners[np.unique(corners)] @ axes[[0, 2]].T)


def _way(shape: Body, lying: Lie, axes: Vectors) -> Way:
    lower, upper = _section(shape, lying, axes)
    top = lying.sides(axes)[1]
    try:
        flat = outline(shape.corners @ axes.T, [ring for i in top for ring in shape.faces[i].rings])
    except ValueError as problem:
        raise NotASheet(f"a body that is called a sheet is none: {problem}") from problem
    u, v = flat.bounds[:2]
    w = min(height for _, height in lower)
    return Way(
        Place(_point(np.array([u, v, w]) @ axes), _point(axes[0]), _point(axes[1])),
        shapely.transform(flat, lambda points: points - (u, v)),
        tuple((a - u, b - w) for a, b in lower),
        tuple((a - u, b - w) for a, b in upper),
    )


def _point(vector: Vectors) -> Point3:
    x, y, z = vector.tolist()
    return (x, y, z)


def _order(way: Way) -> tuple[object, ...]:
    """What decides between ways: long side along v, square end at the foot, then the shape as such."""

    def near(points: Iterable[Iterable[float]]) -> list[list[float]]:
        return sorted([snapped(value, ALIKE) for value in point] for point in points)

    length = snapped(way.outline.bounds[3], ALIKE)
    rims = shapely.get_coordinates(way.outline)
    return (
        -length,
        blank(way.outline).foot.kind != "square",
        near((v, u) for u, v in rims.tolist()),
        near(way.lower),
        near(way.upper),
    )
