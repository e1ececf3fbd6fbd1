"""What closures over sheets and under them share: foam between two lines, as deep as it is cut."""

from __future__ import annotations

from ...envelope.face import Face
from ...place import Place, Point2
from ...recipe import Part, Sheet, grid
from ...roles import Role
from .ribs import Graph, height_at

FOAM_LABELS = (("colour", "dimgray"), ("material", "foam"))
EDGE = 1e-3
"""mm; how far before a lap the step up onto the overlying sheet is drawn."""


def stretch(graph: Graph, low: float, high: float) -> Graph:
    """A sheet's line between two values of u, its ends interpolated."""
    inside = [p for p in graph if low + EDGE / 10 < p[0] < high - EDGE / 10]
    return ((grid(low), grid(height_at(graph, low))), *inside, (grid(high), grid(height_at(graph, high))))


def flat(low: float, high: float, deep: float) -> tuple[Point2, ...]:
    """The outline of a strip on the bench, from u to u and so deep."""
    a, b, d = grid(low), grid(high), grid(deep)
    return ((a, 0.0), (b, 0.0), (b, d), (a, d))


def foam_part(name: str, role: Role, face: Face, recipe: Sheet, place: Place) -> Part:
    """A closure of a face."""
    return Part(name, role, ("closures", face.name), recipe, place, (("face", face.name), *FOAM_LABELS))
