"""Laps and overhang where they are, with what was measured there."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

import numpy as np
import shapely

from ...audit import Audit
from ...findings import amount
from ...measure.clad_planes import CladPlane, clad_planes
from ...measure.laps import EndLap, SideLap
from ...pieces import Model
from ...place import Point3, add, unit
from ...printable import printable
from ...units import Units

LIFT = 24.0
"""mm off the pans, over the ribs, at which a lap is painted."""


def laps(model: Model, numbers: Mapping[str, int], units: Units) -> list[dict[str, Any]]:
    """Every lap for JSON: corners (mm), which piece is on top of which, which of the two it is ("left",
    "right", "higher", "lower"), how wide."""
    found = []
    for plane in clad_planes(model):
        for lap in plane.laps:
            said = {
                "face": printable(plane.name),
                "upper": numbers.get(lap.upper.piece.name, -1),
                "under": numbers.get(lap.under.piece.name, -1),
                "top": _top(lap),
                "out": _rounded(plane.frame.z, 6),
                "text": amount(lap.length if isinstance(lap, EndLap) else lap.width, "length", units),
            }
            found += [{**said, "corners": corners} for corners in _corners(plane, lap)]
    return found


def _top(lap: SideLap | EndLap) -> str:
    """Which of two sheets is on top."""
    if isinstance(lap, EndLap):
        return "higher" if lap.sheds else "lower"
    return "left" if lap.leftward else "right"


def _corners(plane: CladPlane, lap: SideLap | EndLap) -> Iterator[list[Point3]]:
    """The corners of each part of a lap, lifted off the sheets."""
    for part in shapely.get_parts(lap.region):
        if part.geom_type == "Polygon" and part.area > 1.0:
            left, low, right, high = part.bounds
            corners = ((left, low), (right, low), (right, high), (left, high))
            yield [_rounded(plane.frame.point((u, v, LIFT)), 2) for u, v in corners]


def edges(model: Model, audited: Audit, units: Units) -> list[dict[str, Any]]:
    """Overhang and cover of every roof's ends as dimensions for JSON: from, to (mm), what, its words."""
    measured = {(figure.where, figure.what): figure for figure in audited.measured}
    found = []
    for plane in (plane for plane in clad_planes(model) if plane.sloped):
        left, low, right, high = plane.outline.bounds
        middle = (left + right) / 2
        z = plane.frame.z
        inward = unit((-z[0], -z[1], 0.0))
        for what, at, way in (
            ("overhang", plane.frame.point((middle, low, LIFT)), inward),
            ("head under trim", plane.frame.point((middle, high, LIFT)), _down(plane)),
        ):
            figure = measured.get((plane.name, what))
            if figure and figure.least:
                end = add(at, way, figure.least)
                text = amount(figure.least, "length", units)
                found.append(
                    {
                        "face": printable(plane.name),
                        "what": what,
                        "from": _rounded(at, 2),
                        "to": _rounded(end, 2),
                        "out": _rounded((-inward[0], -inward[1], 0.0), 6),
                        "text": text,
                    }
                )
    return found


def _down(plane: CladPlane) -> Point3:
    x, y, z = plane.frame.y
    return (-x, -y, -z)


def _rounded(point: Point3, digits: int) -> Point3:
    x, y, z = np.round(point, digits).tolist()
    return (x, y, z)
