"""Trims as they are put up: ends that are folded over are folded last, where they are."""

from __future__ import annotations

from functools import lru_cache

import numpy as np
from OCP.TopoDS import TopoDS_Solid

from ..measure.bends import measure_bends
from ..measure.faces import Vectors
from ..measure.tab_boxes import tab_box
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
        rest -= manifold3d.Manifold.hull_points(tab_box(bends, fold, AROUND, OFF))
    mesh = rest.to_mesh64()
    return np.array(mesh.vert_properties)[:, :3], np.array(mesh.tri_verts, int)
