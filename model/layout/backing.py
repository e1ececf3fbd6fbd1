"""What of a face has steel behind it: read from the recipes of the steel that was laid out."""

from __future__ import annotations

from collections.abc import Iterable

import shapely
from shapely.geometry import MultiPoint

from ..place import Place, Point3, add, dot
from ..recipe import Part, Prism
from .faces import Face

TOUCHING = 1.0
"""mm; steel this close under a face's steel line backs the sheets on it."""


def backing(face: Face, steel: Iterable[Part]) -> shapely.Geometry:
    """The regions (u, v) of a face where members lie on its steel line."""
    return shapely.union_all([region for part in steel if (region := _contact(face.frame, part)) is not None])


def _contact(frame: Place, part: Part) -> shapely.Geometry | None:
    """Where a prism touches the plane w = 0 of a frame: the hull of its corners there."""
    recipe = part.recipe
    if not isinstance(recipe, Prism):
        return None
    points = []
    for x, y, _ in recipe.section.outer:
        for a, b, c in (recipe.start, recipe.end):
            u, v, w = seen(frame, part.place.point((x, y, a * x + b * y + c)))
            if abs(w) < TOUCHING:
                points.append((u, v))
    if len(points) < 3:
        return None
    hull = MultiPoint(points).convex_hull
    return hull if hull.area > TOUCHING else None


def seen(frame: Place, point: Point3) -> Point3:
    """A building point in a frame's own coordinates."""
    from_origin = add(point, frame.origin, -1.0)
    return (dot(from_origin, frame.x), dot(from_origin, frame.y), dot(from_origin, frame.z))
