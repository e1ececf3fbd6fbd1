"""Places as the kernel's locations, and back."""

from __future__ import annotations

from OCP.gp import gp_Trsf
from OCP.TopLoc import TopLoc_Location
from OCP.TopoDS import TopoDS, TopoDS_Solid

from ..place import Place, Point3, cross, unit


def location(place: Place) -> TopLoc_Location:
    """A place as a location; the axes go over number by number, so that no turn loses digits."""
    if place == Place():
        return TopLoc_Location()  # the kernel's own identity, which costs nothing
    (ox, oy, oz), (xx, xy, xz), (yx, yy, yz), (zx, zy, zz) = place.origin, place.x, place.y, place.z
    turn = gp_Trsf()
    turn.SetValues(xx, yx, zx, ox, xy, yy, zy, oy, xz, yz, zz, oz)
    return TopLoc_Location(turn)


def place_of(location: TopLoc_Location) -> Place:
    """A location as a place, its axes made square and of length 1 again."""
    if location.IsIdentity():
        return Place()
    turn = location.Transformation()
    x = unit(_column(turn, 1))
    y = unit(cross(cross(x, _column(turn, 2)), x))
    return Place(_column(turn, 4), x, y)


def moved(solid: TopoDS_Solid, place: Place) -> TopoDS_Solid:
    """The solid at a place."""
    return TopoDS.Solid_s(solid.Moved(location(place)))


def _column(turn: gp_Trsf, column: int) -> Point3:
    x, y, z = (turn.Value(row, column) + 0.0 for row in (1, 2, 3))  # + 0.0: no -0.0
    return (x, y, z)
