"""A body that is nothing but a section between two planes: told off its faces, for files that hold it so."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

import numpy as np
from OCP.TopoDS import TopoDS_Solid
from shapely.geometry import Polygon

from ..place import Place, Point3
from .across import Loop, loops
from .faces import KEPT, Face, Vectors, body
from .member import ALONG, measure_member

FINE = 200
"""Chords of an arc where a section's area is reckoned, for the comparison below."""
SAME = 1e-5
"""Share of its volume by which a body may differ from section times length and still be that: a hundredth
of the smallest hole or notch that anyone makes."""


@dataclass(frozen=True, slots=True, eq=False)
class Straight:
    """A section between two planes (mm).

    frame: in the solid's own frame; z runs along the body, and x, y are those of the section.
    section: its loops there, the outer one first. ends: for each end (a, b, c), the plane
    z = a x + b y + c, the lower one first. reach: lowest and highest z of the body.
    """

    frame: Place
    section: tuple[Loop, ...]
    ends: tuple[Point3, Point3]
    reach: tuple[float, float]

    @property
    def square(self) -> tuple[bool, bool]:
        """Which of its ends are square."""
        one, other = (abs(a) < ALONG and abs(b) < ALONG for a, b, _ in self.ends)
        return one, other


@lru_cache(maxsize=KEPT)
def straight(solid: TopoDS_Solid) -> Straight | None:
    """The body as a section between two planes; None for one that is notched, holed or of another shape."""
    shape = body(solid)
    bench = measure_member(solid).ways[0].bench
    axes = np.array([bench.x, bench.y, bench.z])
    ends = [face for face in shape.faces if abs(float(face.normal @ axes[1])) > ALONG and face.rings]
    ends.sort(key=lambda face: float(face.normal @ axes[1]))
    if len(ends) != 2 or float(ends[0].normal @ axes[1]) > 0 or float(ends[1].normal @ axes[1]) < 0:
        return None
    # Seen along y, x runs left to right and z up; a right-handed section plane is (z, x).
    frame = Place((0.0, 0.0, 0.0), bench.z, bench.x)
    turned = np.array([bench.z, bench.x, bench.y])
    low, high = (_plane(shape.corners, face, turned) for face in ends)
    along = shape.corners @ axes[1]
    for reading in loops(shape, axes):
        found = tuple(_flipped(loop) for loop in reading)
        area, middle = _weighed(found)
        length = float(np.dot(np.subtract(high, low), (*middle, 1.0)))
        flats = sum(len(loop.sides) for loop in found)
        bends = sum(int((loop.radii > 0).sum()) for loop in found)
        same = len(shape.faces) == flats + 2 and shape.curved == bends
        if same and abs(area * length - shape.volume) < SAME * shape.volume:
            return Straight(frame, found, (low, high), (float(along.min()), float(along.max())))
    return None


def _plane(corners: Vectors, face: Face, axes: Vectors) -> Point3:
    a, b, along = (axes @ face.normal).tolist()
    x, y, z = (axes @ corners[face.rings[0][0]]).tolist()
    return (-a / along, -b / along, z + (a * x + b * y) / along)


def _flipped(loop: Loop) -> Loop:
    """A loop in (x, z) of the bench as one in (z, x): mirrored, so walked the other way round."""
    corners = loop.corners[::-1, ::-1]
    return Loop(corners, loop.radii[::-1], loop.turns[::-1])


def rounded(loop: Loop, chords: int) -> Vectors:
    """The loop's points (n, 2), with each arc as so many chords."""
    points = []
    for start, middle, end in arcs(loop):
        if middle is None:
            points.append(start)
            continue
        points += _chords(start, middle, end, chords)
    return np.array(points)


def arcs(loop: Loop) -> list[tuple[Vectors, Vectors | None, Vectors]]:
    """For each corner where its arc begins, its middle, and where it ends; a sharp one has no middle."""
    before = loop.corners - np.roll(loop.corners, 1, axis=0)
    before = before / np.linalg.norm(before, axis=1)[:, None]
    after = np.roll(before, -1, axis=0)
    found: list[tuple[Vectors, Vectors | None, Vectors]] = []
    for corner, way, on, radius, turn in zip(
        loop.corners, before, after, loop.radii, loop.turns, strict=True
    ):
        if not radius:
            found.append((corner, None, corner))
            continue
        reach = radius * np.tan(abs(turn) / 2)
        inward = (on - way) / np.linalg.norm(on - way)
        middle = corner + inward * radius * (1 / np.cos(turn / 2) - 1)
        found.append((corner - reach * way, middle, corner + reach * on))
    return found


def _chords(start: Vectors, middle: Vectors, end: Vectors, chords: int) -> list[Vectors]:
    half, rise = (end - start) / 2, middle - (start + end) / 2
    radius = (half @ half + rise @ rise) / (2 * np.linalg.norm(rise))
    centre = middle - rise / np.linalg.norm(rise) * radius
    turn = 2 * np.arctan2(np.linalg.norm(rise), np.linalg.norm(half))
    angles = np.linspace(-turn, turn, chords + 1)
    out, aside = rise / np.linalg.norm(rise), half / np.linalg.norm(half)
    return [centre + radius * (np.cos(angle) * out + np.sin(angle) * aside) for angle in angles]


def _weighed(section: tuple[Loop, ...]) -> tuple[float, tuple[float, float]]:
    """Area and centroid of a section, arcs as fine chords."""
    outer, *hollows = (rounded(loop, FINE) for loop in section)
    shape = Polygon(outer, hollows)
    return float(shape.area), (float(shape.centroid.x), float(shape.centroid.y))
