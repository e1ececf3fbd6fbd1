"""Bodies somewhere else in space: the same solid with its very coordinates turned and shifted."""

from __future__ import annotations

import numpy as np
from OCP.BRepBuilderAPI import BRepBuilderAPI_Transform
from OCP.gp import gp_Quaternion, gp_Trsf, gp_Vec
from OCP.TopoDS import TopoDS, TopoDS_Solid
from ribwright.place import Place

FAR = 40000.0  # mm, along each axis: as far off as the end of a long building


def moved(solid: TopoDS_Solid, seed: int = 7) -> TopoDS_Solid:
    """The solid at random, the worst that a file of someone else's can do to it."""
    return posed(solid, seed)[0]


def posed(solid: TopoDS_Solid, seed: int) -> tuple[TopoDS_Solid, Place]:
    """The solid at random, and where the frame it was made in stands now."""
    rng = np.random.default_rng(seed)
    turn, shift = rng.normal(size=4), rng.uniform(-FAR, FAR, 3)
    motion = gp_Trsf()
    motion.SetTransformation(gp_Quaternion(*(turn / np.linalg.norm(turn)).tolist()), gp_Vec(*shift.tolist()))
    x, y, _, origin = ((motion.Value(1, j), motion.Value(2, j), motion.Value(3, j)) for j in range(1, 5))
    return TopoDS.Solid_s(BRepBuilderAPI_Transform(solid, motion, True).Shape()), Place(origin, x, y)
