"""Recipes: frozen values that say how a body is made, without the kernel.

Layout makes recipes, `ribwright.solids` turns each into a solid once. Equal recipes are the same
solid, so numbers that mean the same must be written the same (layout rounds to `GRID`).
Local frames in millimetres.
"""

from __future__ import annotations

from dataclasses import dataclass, field

from .place import Place, Point2, Point3
from .roles import Role

GRID = 1e-6  # mm; coordinates of recipes are rounded to this, far below anything measured


def grid(value: float) -> float:
    """A coordinate rounded to GRID; never -0.0."""
    return round(value, 6) + 0.0


@dataclass(frozen=True, slots=True)
class Sheet:
    """A ribbed sheet (or a closure): the points over an outline between two graphs w(u).

    Bench frame: x = u across the sheet, 0 at the centre of the overlap rib of the whole profile
    (on the left); y = v along the ribs, lowest point of the outline at 0; z = w, face up, 0 at the
    underside of the pan.

    lower, upper: (n, 2) points (u, w), u strictly ascending, covering the outline's u range.
    outline: (n, 2) points (u, v), simple, counter-clockwise, not closed by repeating.
    holes: each (n, 2), strictly inside the outline, apart from each other.
    """

    lower: tuple[Point2, ...]
    upper: tuple[Point2, ...]
    outline: tuple[Point2, ...]
    holes: tuple[tuple[Point2, ...], ...] = ()


@dataclass(frozen=True, slots=True)
class Section:
    """A closed cross-section in (x, y): corner points with the radius each corner is rounded to.

    outer: counter-clockwise (x, y, radius); holes: the same, one ring each. Radius 0 is sharp.
    """

    outer: tuple[Point3, ...]
    holes: tuple[tuple[Point3, ...], ...] = ()


def round_hole(centre: Point2, radius: float) -> tuple[Point3, ...]:
    """The ring of a round hole: a square whose corners are rounded until they meet."""
    (x, y), r = centre, grid(radius)
    return tuple((grid(x + a * r), grid(y + b * r), r) for a, b in ((-1, -1), (1, -1), (1, 1), (-1, 1)))


@dataclass(frozen=True, slots=True)
class Prism:
    """A section extruded along z between two planes.

    start, end: (a, b, c): the plane z = a*x + b*y + c that closes that end; start lies below end
    everywhere on the section. A square-cut member of length L: start (0,0,0), end (0,0,L).
    """

    section: Section
    start: Point3
    end: Point3


@dataclass(frozen=True, slots=True)
class Turned:
    """A closed meridian (r, z), r >= 0, counter-clockwise, turned about z in `sides` flats (0: round)."""

    meridian: tuple[Point2, ...]
    sides: int = 0


@dataclass(frozen=True, slots=True)
class Cut:
    """A body less tools, each at its place in the body's frame."""

    body: Recipe
    tools: tuple[tuple[Recipe, Place], ...]


@dataclass(frozen=True, slots=True)
class Joined:
    """Touching or overlapping parts made one body."""

    parts: tuple[tuple[Recipe, Place], ...]


Recipe = Sheet | Prism | Turned | Cut | Joined


@dataclass(frozen=True, slots=True)
class Part:
    """A recipe set in the building: what layout hands on for every piece.

    name: unique in the building, for people ("left wall 3").
    role: what it is.
    group: path in the model's tree, outermost first (("walls", "front")).
    labels: what geometry cannot hold (profile, gauge, colour, material, face): (key, text) pairs.
    row: points of the part's own frame at which the body stands, all alike; empty: once, at the origin.
    """

    name: str
    role: Role
    group: tuple[str, ...]
    recipe: Recipe
    place: Place
    labels: tuple[tuple[str, str], ...] = field(default=())
    row: tuple[Point3, ...] = field(default=())

    def label(self, key: str) -> str:
        """The text of a label, empty when it has none."""
        return dict(self.labels).get(key, "")
