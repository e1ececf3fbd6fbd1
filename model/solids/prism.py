"""Members, trims, plates: a section between two end planes."""

from __future__ import annotations

from collections.abc import Iterator

from OCP.TopoDS import TopoDS_Solid

from ..place import Point2, Point3
from ..recipe import Prism
from .rounded_prism import rounded_prism
from .section_sides import is_sharp, oriented
from .weld import Facet, weld


def prism(recipe: Prism) -> TopoDS_Solid:
    """The solid of a prism in its own frame (mm), rounded corners as true cylinders.

    Raises ValueError when the radii of two corners overlap or the end planes cross the section.
    """
    _check_ends(recipe)
    if is_sharp(recipe.section):
        return weld(_facets(recipe))
    return rounded_prism(recipe.section, recipe.start, recipe.end)


def _check_ends(recipe: Prism) -> None:
    for x, y, _ in recipe.section.outer:
        if height(recipe.start, (x, y)) > height(recipe.end, (x, y)):
            raise ValueError(f"the end planes of a prism cross before ({x}, {y})")


def height(plane: Point3, point: Point2) -> float:
    """The z of the plane z = a x + b y + c at (x, y)."""
    return plane[0] * point[0] + plane[1] * point[1] + plane[2]


def _facets(recipe: Prism) -> Iterator[Facet]:
    rings = [[(x, y) for x, y, _ in oriented(recipe.section.outer, 1)]]
    rings += [[(x, y) for x, y, _ in oriented(hole, -1)] for hole in recipe.section.holes]
    start = [_lifted(recipe.start, ring) for ring in rings]
    end = [_lifted(recipe.end, ring) for ring in rings]
    (a, b, _), (d, e, _) = recipe.start, recipe.end
    yield Facet((a, b, -1.0), [ring[::-1] for ring in start])
    yield Facet((-d, -e, 1.0), end)
    for low, high in zip(start, end, strict=True):
        for i, (p, q) in enumerate(zip(low, [*low[1:], low[0]], strict=True)):
            yield Facet((q[1] - p[1], p[0] - q[0], 0.0), [[p, q, high[(i + 1) % len(high)], high[i]]])


def _lifted(plane: Point3, ring: list[Point2]) -> list[Point3]:
    return [(*point, height(plane, point)) for point in ring]
