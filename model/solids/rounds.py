"""Cylinders that stand along z where a section is rounded, and where planes cross them, in closed form.

On the cylinder, at an angle u about its axis and a height v, a plane z = a x + b y + c is the curve
v = h + r s cos(u - g): h its height at the axis, s its slope, g the way it rises. In space that is an
ellipse whose own parameter is u - g (a circle, where it is level), so both are written and agree.
"""

from __future__ import annotations

import math
from functools import cache

import numpy as np
from numpy.typing import NDArray
from OCP.Geom import Geom_Circle, Geom_Curve, Geom_CylindricalSurface, Geom_Ellipse
from OCP.Geom2d import Geom2d_BSplineCurve, Geom2d_Curve, Geom2d_Line
from OCP.gp import gp_Ax2, gp_Ax3, gp_Dir, gp_Dir2d, gp_Pnt, gp_Pnt2d
from OCP.TColgp import TColgp_Array1OfPnt2d
from OCP.TColStd import TColStd_Array1OfInteger, TColStd_Array1OfReal

from ..place import Point3
from .section_sides import Side


class Round:
    """The cylinder over an arc. Its u runs counter-clockwise seen from above, from 0 where the arc begins."""

    def __init__(self, arc: Side) -> None:
        begin = arc.start if arc.turn > 0.0 else arc.end
        self._centre, self._radius, self._turn = arc.centre, arc.radius, abs(arc.turn)
        self._begin = math.atan2(begin[1] - arc.centre[1], begin[0] - arc.centre[0])

    def cylinder(self) -> Geom_CylindricalSurface:
        """The surface, its normal away from the axis."""
        axes = gp_Ax3(gp_Pnt(*self._centre, 0.0), gp_Dir(0.0, 0.0, 1.0), self._first_way())
        return Geom_CylindricalSurface(axes, self._radius)

    def crossing(self, plane: Point3) -> tuple[Geom_Curve, float, float]:
        """Where the plane z = a x + b y + c (mm) crosses, from one parameter of a curve to another."""
        a, b, _ = plane
        level, slope, first = self._meeting(plane)
        middle, last = gp_Pnt(*self._centre, level), first + self._turn
        if slope:
            axes = gp_Ax2(middle, gp_Dir(-a, -b, 1.0), gp_Dir(a / slope, b / slope, slope))
            return Geom_Ellipse(axes, self._radius * math.hypot(1.0, slope), self._radius), first, last
        axes = gp_Ax2(middle, gp_Dir(0.0, 0.0, 1.0), self._first_way())
        return Geom_Circle(axes, self._radius), first, last

    def drawn_crossing(self, plane: Point3) -> Geom2d_Curve:
        """The same, of the same parameter, on the cylinder."""
        level, slope, first = self._meeting(plane)
        if slope:
            return _wave(first, self._turn, level, self._radius * slope)
        return Geom2d_Line(gp_Pnt2d(0.0, level), gp_Dir2d(1.0, 0.0))

    def drawn_uprights(self, begin: float, end: float) -> tuple[Geom2d_Line, Geom2d_Line]:
        """The lines up the cylinder where the arc begins and where it ends, each from a height (mm) on."""
        up = gp_Dir2d(0.0, 1.0)
        return Geom2d_Line(gp_Pnt2d(0.0, begin), up), Geom2d_Line(gp_Pnt2d(self._turn, end), up)

    def _meeting(self, plane: Point3) -> Point3:
        """A plane's height at the axis, its slope, and the parameter of its crossing where the arc begins."""
        a, b, c = plane
        level, slope = a * self._centre[0] + b * self._centre[1] + c, math.hypot(a, b)
        return level, slope, (self._begin - math.atan2(b, a)) % math.tau if slope else 0.0

    def _first_way(self) -> gp_Dir:
        return gp_Dir(math.cos(self._begin), math.sin(self._begin), 0.0)


def _wave(first: float, turn: float, level: float, height: float) -> Geom2d_BSplineCurve:
    """The points (t - first, level + height cos t), t from `first` on, as one polynomial."""
    # of degree n it errs by 2 (turn / 4)^(n + 1) / (n + 1)! of the height: under 1e-12 up to a whole circle
    degree = 8 + math.ceil(2.0 * turn)
    share, to_poles = _interpolation(degree)
    heights = level + height * (to_poles @ np.cos(first + turn * share))
    poles = TColgp_Array1OfPnt2d(1, degree + 1)
    for i, v in enumerate(heights.tolist()):
        poles.SetValue(i + 1, gp_Pnt2d(turn * i / degree, v))
    knots, uses = TColStd_Array1OfReal(1, 2), TColStd_Array1OfInteger(1, 2)
    for i, knot in enumerate((first, first + turn)):
        knots.SetValue(i + 1, knot)
        uses.SetValue(i + 1, degree + 1)
    return Geom2d_BSplineCurve(poles, knots, uses, degree)


@cache
def _interpolation(degree: int) -> tuple[NDArray[np.float64], NDArray[np.float64]]:
    """The best n + 1 shares of a stretch to read a curve at, and what makes its poles of the readings."""
    share = 0.5 - 0.5 * np.cos(np.pi * np.arange(degree + 1) / degree)
    binomial = np.array([math.comb(degree, i) for i in range(degree + 1)])
    power = np.arange(degree + 1)
    bernstein = binomial * share[:, None] ** power * (1.0 - share[:, None]) ** (degree - power)
    return share, np.asarray(np.linalg.inv(bernstein), dtype=np.float64)
