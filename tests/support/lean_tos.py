"""A shed of 18 x 20 ft that lean-tos are set beside."""

from __future__ import annotations

import numpy as np
from ribwright.pieces import Model
from ribwright.solids.placed import placed_triangles
from ribwright.units import INCH

SHED = """
width = "18 ft"
length = "20 ft"
eave_height = "12 ft"
pitch = "4/12"
[[lean_to]]
wall = "left"
width = "9 ft"
pitch = "2/12"
eave_height = "8 ft"
"""
"""With an open one along its left wall."""


def spread(model: Model, name: str) -> tuple[list[float], list[float]]:
    """Least and greatest x, y, z of the pieces whose names begin so, in inches, their screws left out."""
    told = [p for p in model.pieces if p.name.startswith(name) and not p.name.endswith("screws")]
    points = np.vstack([points for points, _ in placed_triangles(told)]) / INCH
    return points.min(axis=0).tolist(), points.max(axis=0).tolist()
