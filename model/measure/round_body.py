"""Any body measured as a whole, curved or not: for what is turned, and for what nobody knows."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

import numpy as np
from OCP.Bnd import Bnd_Box
from OCP.BRepBndLib import BRepBndLib
from OCP.BRepGProp import BRepGProp
from OCP.gp import gp_Vec
from OCP.GProp import GProp_GProps
from OCP.TopoDS import TopoDS_Solid

from ..place import Place, Point3
from ..solids.placing import location
from .faces import KEPT, Vectors, body
from .member import Lying, MeasuredMember, measure_member

EQUAL = 1e-4
"""Share by which the volumes and moments of equal bodies may differ."""


@dataclass(frozen=True, slots=True, eq=False)
class Bulk(Lying):
    """A curved body on the bench, known by its bulk alone: mirror images are not told apart.

    moments: (3,) of inertia about its middle, least first, mm5.
    """

    moments: Vectors

    def fits(self, other: Lying) -> bool:
        """Whether the other has the same volume and the same moments."""
        if not isinstance(other, Bulk) or abs(self.volume - other.volume) > EQUAL * self.volume:
            return False
        return bool(np.abs(self.moments - other.moments).max() < EQUAL * self.moments.max())


@lru_cache(maxsize=KEPT)
def measure_body(solid: TopoDS_Solid) -> MeasuredMember:
    """A body's length, depth and width, about its axes of inertia where it has curved faces.

    Its length is along the axis about which it turns most easily.
    """
    shape = body(solid)
    if not shape.curved:
        return measure_member(solid)
    axes, moments, _ = inertia(solid)
    place = Place((0.0, 0.0, 0.0), _point(axes[0]), _point(axes[1]))
    box = Bnd_Box()
    BRepBndLib.AddOptimal_s(solid.Moved(location(place).Inverted()), box, False, False)
    low, high = (np.array([end.X(), end.Y(), end.Z()]) for end in (box.CornerMin(), box.CornerMax()))
    x, length, z = (high - low).tolist()
    bench = Place(_point(low @ axes), place.x, place.y)
    return MeasuredMember(
        ways=(
            Bulk(bench, shape.corners @ axes.T - low, (x, length, z), shape.volume, shape.curved, moments),
        ),
        length=length,
        depth=max(x, z),
        width=min(x, z),
        thickness=0.0,
        ends=(0.0, 0.0),
        holes=shape.bores,
        volume=shape.volume,
    )


@lru_cache(maxsize=KEPT)
def inertia(solid: TopoDS_Solid) -> tuple[Vectors, Vectors, Vectors]:
    """Axes (3, 3) of inertia, rows x, y, z, y the easiest; the moments, least first; the middle (3,)."""
    figures = GProp_GProps()
    BRepGProp.VolumeProperties_s(solid, figures)
    matrix = figures.MatrixOfInertia()
    values = np.array([[matrix.Value(i, j) for j in (1, 2, 3)] for i in (1, 2, 3)])
    moments, ways = np.linalg.eigh(values)
    y, z = ways[:, 0], ways[:, 2]
    middle = figures.CentreOfMass()
    return (
        np.array([np.cross(y, z), y, z]),
        moments,
        np.array(gp_Vec(middle.XYZ()).Coord()),
    )


def _point(vector: Vectors) -> Point3:
    x, y, z = vector.tolist()
    return (x, y, z)
