"""A straight member, a trim or any other body measured off its solid: axis, section, length, ends, holes."""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import cached_property, lru_cache

import numpy as np
from OCP.TopoDS import TopoDS_Solid

from ..place import Place, Point3
from .blank import TOLERANCE
from .faces import KEPT, Body, Vectors, body
from .round_bar import round_bar
from .snap import snapped

ALONG = 1e-6
"""How far the cosine between an axis and the normal of a face that runs along it may be off 0."""
SQUARE = 1e-5
"""How far the cosine between an axis and the normal of a square end may be off 1."""
EDGE = 1e-3
"""Share of a body's largest face under which another is no side of it. Ours."""
ALIKE = 1e-3
"""mm; figures nearer than this do not decide which way a body lies."""

# Half turns about the three axes, and the same after a quarter turn about the length.
_HALF = [np.diag(signs) for signs in ([1.0, 1, 1], [-1.0, 1, -1], [1.0, -1, -1], [-1.0, -1, 1])]
_QUARTER = np.array([[0.0, 0.0, -1.0], [0.0, 1.0, 0.0], [1.0, 0.0, 0.0]])
_TURNS = _HALF + [_QUARTER @ half for half in _HALF]


@dataclass(frozen=True, slots=True, eq=False)
class Lying:
    """A body on the bench one way round: y along it, its lowest corner at the origin.

    bench: that frame in the solid's own. points: (n, 3) its corners there; reach: the highest of them on
    each axis. volume: mm3; curved: how many of its faces are.
    """

    bench: Place
    points: Vectors
    reach: Point3
    volume: float
    curved: int

    def fits(self, other: Lying) -> bool:
        """Whether the other lies in this one to TOLERANCE, corner by corner."""
        if len(self.points) != len(other.points) or self.curved != other.curved:
            return False
        if abs(self.volume - other.volume) > 1e-4 * self.volume:
            return False
        near = TOLERANCE + ALIKE / 1000
        if any(abs(one - its) > near for one, its in zip(self.reach, other.reach, strict=True)):
            return False
        apart = np.linalg.norm(self.points[:, None, :] - other.points[None, :, :], axis=2)
        return bool(apart.min(axis=0).max() <= near and apart.min(axis=1).max() <= near)


@dataclass(frozen=True, eq=False)
class MeasuredMember:
    """A straight body (mm, mm2, mm3).

    ways: how it may lie along the bench. length: overall, along its axis.
    depth, width: of the section overall, depth the larger. thickness: of its wall; 0 for one that is
    solid through. ends: (degrees off square at one end, at the other). holes: round ones through it,
    as diameters. volume: of the solid.
    """

    ways: tuple[Lying, ...]
    length: float
    depth: float
    width: float
    thickness: float
    ends: tuple[float, float]
    holes: tuple[float, ...]
    volume: float

    @cached_property
    def size(self) -> tuple[float, ...]:
        """What bodies are put in order by: length, volume's cube root."""
        return (self.length, self.volume ** (1 / 3))


@lru_cache(maxsize=KEPT)
def measure_member(solid: TopoDS_Solid) -> MeasuredMember:
    """The measures of a body whose faces mostly run along one direction."""
    shape = body(solid)
    if bar := round_bar(solid):
        shape = replace(shape, corners=bar.rims())
    axes = _axes(shape)
    points = shape.corners @ axes.T
    spans = points.max(axis=0) - points.min(axis=0)
    first = _lying(shape, axes)
    return MeasuredMember(
        ways=(first, *(_lying(shape, turn @ axes) for turn in _TURNS[1:])),
        length=float(spans[1]),
        depth=float(max(spans[0], spans[2])),
        width=float(min(spans[0], spans[2])),
        thickness=_thickness(shape, axes[1]),
        ends=_ends(shape, axes[1]),
        holes=shape.bores,
        volume=shape.volume,
    )


def _axes(shape: Body) -> Vectors:
    """Axes (3, 3) of a body, rows x, y, z: y along it, z square to the largest face that runs along it."""
    y = _axis(shape)
    along = [face for face in shape.faces if abs(float(face.normal @ y)) < ALONG]
    z = max(along, key=lambda face: snapped(face.area, ALIKE)).normal if along else np.cross(y, _aside(y))
    z = z - (z @ y) * y
    z = z / np.linalg.norm(z)
    return np.array([np.cross(y, z), y, z])


def _axis(shape: Body) -> Vectors:
    """The direction of edges that the most face area runs along."""
    normals = np.array([face.normal for face in shape.faces])
    areas = np.array([face.area for face in shape.faces])
    rims = [points for face in shape.faces for points in shape.points(face)[:1]]
    if not rims:  # round all through: square to its ends, if it has any
        return normals[int(areas.argmax())] if len(normals) else np.array([0.0, 0.0, 1.0])
    edges = np.concatenate([np.roll(points, -1, axis=0) - points for points in rims])
    sizes = np.linalg.norm(edges, axis=1)
    longest = edges[np.argsort(-sizes, kind="stable")][:12]
    ways = longest / np.linalg.norm(longest, axis=1)[:, None]
    running = (np.abs(ways @ normals.T) < ALONG) @ areas
    best: Vectors = ways[int(np.argmax(np.round(running, 3)))]
    return best


def _aside(y: Vectors) -> Vectors:
    aside: Vectors = np.eye(3)[int(np.abs(y).argmin())]
    return aside


def _lying(shape: Body, axes: Vectors) -> Lying:
    points = shape.corners @ axes.T
    low = points.min(axis=0)
    origin = low @ axes
    bench = Place(_point(origin), _point(axes[0]), _point(axes[1]))
    return Lying(bench, points - low, _point((points - low).max(axis=0)), shape.volume, shape.curved)


def _point(vector: Vectors) -> Point3:
    x, y, z = vector.tolist()
    return (x, y, z)


def _thickness(shape: Body, y: Vectors) -> float:
    """How far behind the largest face along the axis the next one lies that faces the other way; an edge, as
    of a tab at an end, is none."""
    along = [face for face in shape.faces if face.rings and abs(float(face.normal @ y)) < ALONG]
    if not along:
        return 0.0
    face = max(along, key=lambda one: snapped(one.area, ALIKE))
    start = shape.corners[face.rings[0][0]]
    behind = (
        float(face.normal @ (start - shape.corners[other.rings[0][0]]))
        for other in along
        if float(face.normal @ other.normal) < -1 + ALONG and other.area > EDGE * face.area
    )
    return min((gap for gap in behind if gap > ALIKE), default=0.0)


def _ends(shape: Body, y: Vectors) -> tuple[float, float]:
    """How far off square the two ends are cut, in degrees: of the largest face at each end."""
    found = []
    for sign in (-1.0, 1.0):
        facing = [face for face in shape.faces if sign * float(face.normal @ y) > ALONG]
        if not facing:
            found.append(0.0)
            continue
        cosine = min(1.0, abs(float(max(facing, key=lambda face: face.area).normal @ y)))
        found.append(0.0 if cosine > 1 - SQUARE else float(np.degrees(np.arccos(cosine))))
    return (min(found), max(found))
