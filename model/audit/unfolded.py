"""Trims as they are put up: ends that are folded over are folded last, where they are."""

from __future__ import annotations

from functools import lru_cache

import numpy as np
from OCP.TopoDS import TopoDS_Solid

from ..measure.bends import Bends, measure_bends
from ..measure.end_folds import EndFold
from ..measure.faces import Vectors
from ..solids.properties import REMEMBERED, triangles
from .clash import closed_mesh
from .site import Numbers

AROUND, OFF = 0.1, 0.02
"""mm that what is taken off reaches past a tab, and that it stays off the leg on which the tab hangs."""


@lru_cache(maxsize=REMEMBERED)
def unfolded(solid: TopoDS_Solid) -> tuple[Vectors, Numbers]:
    """Corners (n, 3) and triangles (m, 3) of a trim without the tabs at its ends."""
    bends = measure_bends(solid)
    if bends is None or not bends.folds:
        return triangles(solid)
    import manifold3d  # noqa: PLC0415  # loaded only when something is audited

    rest = closed_mesh(solid)
    for fold in bends.folds:
        rest -= manifold3d.Manifold.hull_points(_box(bends, fold))
    mesh = rest.to_mesh64()
    return np.array(mesh.vert_properties)[:, :3], np.array(mesh.tri_verts, int)


def _box(bends: Bends, fold: EndFold) -> Vectors:
    """(8, 3) corners, in the solid's frame, of a box about a tab, clear of its leg."""
    (low, _, high, reach), t, bench = fold.shape.bounds, bends.thickness, bends.bench
    corners = [
        (*(fold.start + np.array([u, v]) @ fold.axes), y)
        for u in (low - AROUND, high + AROUND)
        for v in (OFF, reach + AROUND)
        for y in (fold.at + fold.end * AROUND, fold.at - fold.end * (t + AROUND))
    ]
    return np.array([bench.point((x, y, z)) for x, z, y in corners])
