"""The purlins of a slope, in the frame of their face (u right, v up, w outward, 0 on the steel line)."""

from __future__ import annotations

from collections.abc import Iterator

from ...envelope.face import Face
from ...envelope.nesting import Nest
from ...envelope.steel_lines import SteelLines
from ...place import Place, Point3
from ...recipe import Part, Recipe
from ...roles import Role
from .framing import OUT, RIGHT, ends_of, framing_part, spliced
from .straight_member import Plane, member

IN: Point3 = (0.0, 0.0, -1.0)


def roof_framing(lines: SteelLines, face: Face) -> Iterator[Part]:
    """Purlins of one slope, between the rake angles; their toes point up the slope. Of those that nest every
    second piece of a line is the lower."""
    full = (0.0, face.width)
    pieces = spliced(lines, face, Role.PURLIN, [full])
    for number, v in enumerate(lines.purlins(face), 1):
        ends = tuple(Plane(*face.end(hand, v, lines.rake_stop)) for hand in ("left", "right"))
        for place, (letter, span) in enumerate(zip("abcdefghijklmnopqrstuvwxyz", pieces, strict=False)):
            planes = ends_of(span, (ends[0], ends[1]), full)
            made = _purlin(lines, v, planes, lines.nest if place % 2 else None)
            name = f"purlin {number}{letter if len(pieces) > 1 else ''}"
            yield framing_part(face, name, Role.PURLIN, *made)


def _purlin(
    lines: SteelLines, v: float, ends: tuple[Plane, Plane], under: Nest | None
) -> tuple[Recipe, Place]:
    """A purlin between two planes. under: how it lies under its neighbours, turned over, where it does."""
    shape = lines.building.framing.purlin
    if under is None:
        return member(shape.section(), (0.0, v, -shape.depth / 2), RIGHT, OUT, *ends)
    centre = (0.0, v + under.aside, -shape.depth / 2 - under.deep)
    return member(shape.section(), centre, RIGHT, IN, *ends)
