"""What of a face has steel behind it: the walls of members that lie on its steel line, off the recipes."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import lru_cache
from math import hypot

import shapely
from shapely.geometry import Polygon

from ...envelope.face import Face
from ...envelope.skin_lines import PAST_BEND
from ...place import Place, Point2, Point3, dot
from ...recipe import Cut, Joined, Part, Prism, Section
from ...roles import Role
from .screw_kinds import EDGE, SHANK

TOUCHING = 1.0
"""mm; metal this close to a face's steel line lies on it."""
NEARLY = 1e-6
"""mm; what two ways of working out one height may differ by."""
NEAR_END = 1.0
"""mm; between a shank and the end of a purlin that it does not go through. Ours."""
FILM = 0.01
"""mm; a block that reaches this far past a steel line takes off what lies on it: less than any flange's metal
is thick."""


Wall = tuple[Part, Polygon]
"""A flat wall (u, v) on a face's steel line, and the part it belongs to."""


def walls(face: Face, parts: Sequence[Part], under: float = 0.0) -> list[Wall]:
    """All the flat walls of parts that lie on a face's steel line. under: how far under it purlins may that
    lie under others."""
    return [(part, wall) for part in parts for wall in touching(face.frame, part, under=under)]


def backing(face: Face, behind: Sequence[Wall], under: float = 0.0) -> shapely.Geometry:
    """The regions (u, v) of a face where the middle of a screw may stand: flat walls on the steel line,
    1.5 diameters in from their edges and ends (AISI S100), clear of bends, of nested purlins both's."""
    parts = {part.name: part for part, _ in behind}.values()
    inside = {part.name: list(touching(face.frame, part, EDGE, under)) for part in parts}
    found = shapely.union_all([wall for of_part in inside.values() for wall in of_part])
    if not under:
        return found
    rims = [
        wall.buffer(SHANK + NEAR_END, join_style="mitre").difference(shapely.union_all(inside[part.name]))
        for part, wall in behind
        if part.role is Role.PURLIN
    ]
    return found.difference(shapely.union_all(rims))


def touching(frame: Place, part: Part, inset: float = 0.0, under: float = 0.0) -> Iterator[Polygon]:
    """The flat walls of a part that lie on the plane w = 0 of a frame, between its end planes.

    Each is a quadrangle, since a section may be open: what lies between two of its walls is air. inset:
    how far in from edges and ends (mm); with one, bends are kept clear of too. Tabs at a trim's ends stand
    off the plane. under: how far under it the walls of purlins may lie.
    """
    near = TOUCHING + (under if part.role is Role.PURLIN else 0.0)
    recipe = part.recipe.parts[0][0] if isinstance(part.recipe, Joined) else part.recipe
    body = recipe.body if isinstance(recipe, Cut) else recipe
    if not isinstance(body, Prism):
        return
    along, across, up, origin = heights(frame, part.place)
    for a, b in _flats(body.section, inset):
        first = _on(body.start, a, inset)
        if abs(along * first[0] + across * first[1] + up * first[2] + origin) >= near + NEARLY:
            continue  # most walls lie on no face, and the first corner says so
        corners = (
            (body.start, a, inset),
            (body.start, b, inset),
            (body.end, b, -inset),
            (body.end, a, -inset),
        )
        points: list[Point2] = []
        for plane, corner, inward in corners:
            u, v, w = frame.seen(part.place.point(_on(plane, corner, inward)))
            if abs(w) >= near:
                break
            points.append((u, v))
        if len(points) == len(corners):
            wall = Polygon(points)
            if isinstance(recipe, Cut):
                wall = wall.difference(_tools(frame, part, recipe))
            parts = shapely.get_parts(wall)
            yield from (one for one in parts if one.geom_type == "Polygon" and one.area > TOUCHING)


@lru_cache(maxsize=256)
def _flats(section: Section, inset: float) -> tuple[tuple[Point2, Point2], ...]:
    """The straight stretches of a section's outline that are longer than what is kept clear of."""
    ring, found = section.outer, []
    for i, (x0, y0, _) in enumerate(ring):
        x1, y1, _ = ring[(i + 1) % len(ring)]
        size = hypot(x1 - x0, y1 - y0)
        first, last = (_kept_clear(section, j % len(ring), inset) for j in (i, i + 1))
        if size > first + last:
            way = ((x1 - x0) / size, (y1 - y0) / size)
            found.append(
                (
                    (x0 + first * way[0], y0 + first * way[1]),
                    (x1 - last * way[0], y1 - last * way[1]),
                )
            )
    return tuple(found)


def _kept_clear(section: Section, corner: int, inset: float) -> float:
    """From a corner to where a wall beside it is flat, and further in by what is asked."""
    ring = section.outer
    (ax, ay, _), (x, y, radius), (bx, by, _) = ring[corner - 1], ring[corner], ring[(corner + 1) % len(ring)]
    if not radius:
        return inset
    one, other = (x - ax, y - ay), (bx - x, by - y)
    across, along = one[0] * other[1] - one[1] * other[0], one[0] * other[0] + one[1] * other[1]
    # The tangent of half the angle that the outline turns by.
    half = abs(across) / (hypot(*one) * hypot(*other) + along)
    reach = radius * half
    return max(inset, reach + PAST_BEND) if inset else reach


def _on(plane: Point3, point: Point2, inset: float) -> Point3:
    """A point of the section on an end plane, or as far inside of it, square to it."""
    a, b, c = plane
    return (*point, a * point[0] + b * point[1] + c + inset * hypot(1.0, a, b))


def _tools(frame: Place, part: Part, recipe: Cut) -> shapely.Geometry:
    """What a cut takes off a wall on the plane: of every block that reaches it, its shadow."""
    taken = []
    for tool, place in recipe.tools:
        assert isinstance(tool, Prism)
        corners = [
            frame.seen(part.place.point(place.point((x, y, plane[2]))))
            for x, y, _ in tool.section.outer
            for plane in (tool.start, tool.end)
        ]
        ws = [w for _, _, w in corners]
        if min(ws) < FILM < max(ws):
            taken.append(shapely.convex_hull(shapely.multipoints([(u, v) for u, v, _ in corners])))
    return shapely.union_all(taken)


def heights(frame: Place, place: Place) -> tuple[float, float, float, float]:
    """How a placed part's own x, y and z rise from a frame's plane, and how high its origin stands."""
    out = frame.z
    return (dot(place.x, out), dot(place.y, out), dot(place.z, out), frame.seen(place.origin)[2])
