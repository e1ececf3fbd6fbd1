"""What a flat thing to be cut is, whatever it is of: outline, waste, ribs or folds, words on it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
import shapely
from shapely.geometry import Polygon

from ..measure.faces import Vectors
from ..place import Point2
from .seen import rims

SAME = 0.05
"""mm; corners nearer than this along one edge are said once."""


@dataclass(frozen=True, eq=False)
class Flat:
    """A flat to be cut, as it lies: u across from its upper edge, v along from its foot (mm).

    outline: holes and all. blank: what it is cut from. folds: (u, width) of ribs or bends; width 0: a
    line. busy: stretches along it where something is
    cut. fall: by how much its ends stop short at the upper and at the lower edge, where those two lengths
    say it all; None where corners are said one by one. spots: middles of numbered cutouts. foot, head: what
    its ends are called; edge: its upper edge.
    """

    mark: str
    outline: shapely.Geometry
    blank: Polygon
    folds: tuple[tuple[float, float], ...]
    busy: tuple[tuple[float, float], ...]
    fall: tuple[float, float] | None = None
    spots: tuple[Point2, ...] = ()
    foot: str = ""
    head: str = ""
    edge: str = ""
    creases: tuple[tuple[Point2, Point2], ...] = ()

    @property
    def width(self) -> float:
        """Across, of what is left."""
        return float(self.outline.bounds[2])

    @property
    def length(self) -> float:
        """Along, of what is left."""
        return float(self.outline.bounds[3])

    @property
    def top(self) -> float:
        """u of the lower edge of sheet and blank as drawn: where heights are counted from."""
        return max(float(self.blank.bounds[2]), self.width)

    @property
    def across(self) -> list[float]:
        """Distances from the upper edge that are said: ribs or folds, corners."""
        return _distinct([*(u for u, _ in self.folds), *self._corners(0)])

    @property
    def along(self) -> list[float]:
        """Distances from the foot that are said: corners."""
        return _distinct(self._corners(1))

    def _corners(self, axis: int) -> list[float]:
        return [float(point[axis]) for ring in rims(self.outline) for point in ring]


NEAR = 0.5
"""mm; ends whose corners differ by less are cut alike."""
FAR = 1e6
"""mm; longer than anything: tells corners at one end from those at the other."""


def ends_cut(corners: Vectors) -> tuple[tuple[int, ...], ...]:
    """What is the same of things that differ in length alone: every corner, from the nearer end.

    corners: (n, 2 or 3) mm, the second of each along it.
    """
    found = corners - corners.min(axis=0)
    length = float(found[:, 1].max())
    found[:, 1] -= np.where(found[:, 1] > length / 2, length + FAR, 0.0)
    return tuple(sorted({tuple(round(value / NEAR) for value in corner) for corner in found.tolist()}))


def steady(area: shapely.Geometry) -> shapely.Geometry:
    """An area with its corners to a millionth of a mm, begun and gone round one way: what two readings of a
    solid agree in."""
    return shapely.normalize(shapely.transform(area, lambda points: points.round(6) + 0.0))


def likeness(area: shapely.Geometry) -> list[tuple[float, ...]]:
    """What decides which way round an area is drawn: its corners to a hundredth of a mm, in order."""
    corners = shapely.get_coordinates(area).round(2) + 0.0
    return sorted(tuple(corner) for corner in corners.tolist())


def _distinct(values: Sequence[float]) -> list[float]:
    found: list[float] = []
    for value in sorted(values):
        if value > SAME and (not found or value - found[-1] > SAME):
            found.append(value)
    return found
