"""Sheets as they are laid in a plane: their outlines and sections, from left to right."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

import numpy as np
import shapely
from shapely.geometry import Polygon

from ..pieces import Piece
from ..place import Place, add, dot
from .faces import Vectors
from .section import Graph
from .sheet import MeasuredSheet


@dataclass(frozen=True, eq=False)
class LaidSheet:
    """A sheet in its plane. outline: (u, v); lower, upper: its section, (u, w), from left to right; off: how
    far the underside of its pan stands out of the plane. All mm."""

    piece: Piece
    measured: MeasuredSheet
    outline: Polygon
    lower: Vectors
    upper: Vectors
    off: float
    crowns: tuple[float, ...]

    @cached_property
    def middle(self) -> float:
        """u halfway across it."""
        left, _, right, _ = self.outline.bounds
        return float(left + right) / 2


def laid(frame: Place, piece: Piece, bench: Place, measured: MeasuredSheet) -> LaidSheet:
    """A measured sheet in a plane's frame. bench: where the frame that it is measured in lies."""
    way = 1.0 if dot(frame.x, bench.x) > 0 else -1.0
    start = add(bench.origin, frame.origin, -1.0)
    u, v, w = dot(frame.x, start), dot(frame.y, start), dot(frame.z, start)
    first = measured.ways[0]
    return LaidSheet(
        piece,
        measured,
        shapely.transform(first.outline, lambda points: points * way + (u, v)),
        _turned(first.lower, way, u, w),
        _turned(first.upper, way, u, w),
        w,
        tuple(sorted(u + way * rib.centre for rib in measured.majors)),
    )


def _turned(line: Graph, way: float, u: float, w: float) -> Vectors:
    points = np.array(line) * (way, 1.0) + (u, w)
    return points if way > 0 else points[::-1]
