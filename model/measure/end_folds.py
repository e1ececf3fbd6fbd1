"""Ends of a folded trim that are themselves folded over: plates as thick as its steel across an end, each
told by the leg it hangs on and how far it reaches, since the stick is cut so much longer."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

import numpy as np
import shapely
from OCP.TopoDS import TopoDS_Solid

from .faces import Vectors, flats

SQUARE = 1 - 1e-4
"""Cosine between a plate's normal and the trim's length: a piece that laps leans a little."""
PLATE = 0.02
"""mm that a plate's thickness may differ from the trim's, leaning."""
LEAST = 20.0
"""mm2; less is no plate."""
TOUCH = 0.1
"""mm; a plate that hangs on a leg lies so near to its faces."""


@dataclass(frozen=True, slots=True, eq=False)
class EndFold:
    """One of them, flat again: mm.

    leg: which of the trim's legs it hangs on, counted along its line. end: 1 at the far end of the bench, -1
    at the near one. at: of its outer face, along the bench. shape: (u along the leg from the leg's beginning,
    how far it reaches from the leg's inner face). start (2,), axes (2, 2): that frame in x and z of the
    bench.
    """

    leg: int
    end: int
    at: float
    shape: shapely.Polygon
    start: Vectors
    axes: Vectors

    @property
    def side(self) -> int:
        """1 where it is turned to the side on which its leg's steel is of the line, -1 where to the other."""
        (a, b), (c, d) = self.axes
        return 1 if a * d - b * c > 0 else -1

    @property
    def reach(self) -> float:
        """From the leg's inner face."""
        return float(self.shape.bounds[3])


def end_folds(
    solid: TopoDS_Solid, bench: Vectors, origin: Vectors, line: Vectors, thickness: float
) -> list[EndFold]:
    """Those of a trim. bench: (3, 3) its axes, rows; origin: (3,) of it; line: (n, 2) sharp corners of one
    face of its section, the steel on its left, in x and z of the bench."""
    normals, _, rings = flats(solid)
    facing: dict[int, list[tuple[float, shapely.Polygon]]] = {1: [], -1: []}
    for normal, ring in zip(normals @ bench.T, rings, strict=True):
        if abs(normal[1]) > SQUARE:
            points = [(corners - origin) @ bench.T for corners in ring]
            area = shapely.Polygon(points[0][:, [0, 2]], [inner[:, [0, 2]] for inner in points[1:]])
            facing[int(np.sign(normal[1]))].append((float(points[0][:, 1].mean()), area))
    length = max((high for high, _ in facing[1]), default=0.0)
    found = []
    for high, upper in facing[1]:
        for low, lower in facing[-1]:
            if abs(high - low - thickness) > PLATE:
                continue
            end = 1 if high + low > length else -1
            for plate in shapely.get_parts(upper.intersection(lower)):
                if plate.area > LEAST:
                    found += list(_hanging(plate, end, high if end > 0 else low, line, thickness))
    return found


def _hanging(
    plate: shapely.Polygon, end: int, at: float, line: Vectors, thickness: float
) -> Iterator[EndFold]:
    """A plate on the leg that it touches most of."""
    touched = [
        float(plate.intersection(_band(a, b, thickness).buffer(TOUCH)).area) for a, b in pairwise(line)
    ]
    leg = int(np.argmax(touched))
    if touched[leg] <= 0.0:
        return
    way = _way(line[leg], line[leg + 1])
    left = np.array([-way[1], way[0]])
    off = np.array([points @ left for points in shapely.get_coordinates(plate) - line[leg]])
    # On the line's own side the leg's face is the line; on the other one it is a thickness off.
    sign, face = (-1.0, 0.0) if off.mean() < thickness / 2 else (1.0, thickness)
    start, axes = line[leg] + face * left, np.array([way, sign * left])
    shape = shapely.transform(plate, lambda points: (points - start) @ axes.T)
    yield EndFold(leg, end, at, shape, start, axes)


def over(folds: Sequence[EndFold], length: float) -> tuple[float, float]:
    """mm of stick that folds take past the near and the far end of a trim so long."""
    near = max((one.reach - one.at for one in folds if one.end < 0), default=0.0)
    far = max((one.at + one.reach - length for one in folds if one.end > 0), default=0.0)
    return max(near, 0.0), max(far, 0.0)


def _way(start: Vectors, end: Vectors) -> Vectors:
    along: Vectors = (end - start) / np.hypot(*(end - start))
    return along


def _band(start: Vectors, end: Vectors, thickness: float) -> shapely.Polygon:
    """A leg as it is cut across."""
    way = _way(start, end)
    left = thickness * np.array([-way[1], way[0]])
    return shapely.Polygon([start, end, end + left, start + left])
