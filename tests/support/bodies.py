"""Solids looked at by others than the kernel's own builders, and sheets to try them on."""

from __future__ import annotations

from itertools import pairwise

import manifold3d
import numpy as np
import shapely
from ribwright.catalog.profiles import profiles
from ribwright.layout.skin.ribs import graphs
from ribwright.place import Point2
from ribwright.recipe import Section, Sheet
from ribwright.solids.properties import triangles

THICKNESS = 0.43688
PROFILE = profiles()["36 x 9 x 3/4"]
LOWER, UPPER = graphs(PROFILE, THICKNESS)
LEFT, RIGHT = -PROFILE.leg, PROFILE.cover + PROFILE.leg


def ring(shape: object) -> tuple[Point2, ...]:
    """The corners of a shapely ring."""
    return tuple((x, y) for x, y in shapely.get_coordinates(shape).tolist()[:-1])


def sheet_over(region: shapely.Polygon) -> Sheet:
    """A sheet of the sample profile over a region (u, v)."""
    region = shapely.geometry.polygon.orient(region)
    return Sheet(LOWER, UPPER, ring(region.exterior), tuple(ring(hole) for hole in region.interiors))


def volume_between(sheet: Sheet) -> float:
    """The integral of upper less lower over the outline, exact: strips of one slope, at their centroids."""
    region = shapely.Polygon(sheet.outline, sheet.holes)
    bends = sorted({u for u, _ in (*sheet.lower, *sheet.upper)})
    low, high = np.array(sheet.lower).T, np.array(sheet.upper).T
    total = 0.0
    for start, end in pairwise(bends):
        strip = region.intersection(shapely.box(start, -1e5, end, 1e5))
        if strip.area > 0.0:
            u = strip.centroid.x
            total += strip.area * (np.interp(u, *high) - np.interp(u, *low))
    return float(total)


def tube(width: float, height: float, wall: float) -> Section:
    """A square tube with outside corner radius twice its wall, about its centre."""
    x, y = width / 2, height / 2
    outer = tuple((sx * x, sy * y, 2 * wall) for sx, sy in ((-1, -1), (1, -1), (1, 1), (-1, 1)))
    inner = tuple((sx * (x - wall), sy * (y - wall), wall) for sx, sy in ((-1, -1), (1, -1), (1, 1), (-1, 1)))
    return Section(outer, (inner,))


def watertight(solid: object) -> manifold3d.Manifold:
    """A solid's triangles as manifold3d takes them: it refuses a surface with a gap or a wrong turn."""
    points, faces = triangles(solid)
    mesh = manifold3d.Mesh64(np.array(points, order="C"), np.array(faces, np.uint64, order="C"))
    body = manifold3d.Manifold(mesh)
    assert body.status() == manifold3d.Error.NoError
    return body
