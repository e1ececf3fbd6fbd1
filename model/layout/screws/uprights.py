"""The uprights along which a face's sheets end: jambs, and corner columns that girts are flush with."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import shapely
from shapely.geometry import Polygon

from ...description.building import Building
from ...envelope.face import Face
from ...envelope.headwall import Headwall
from ...envelope.sliding import rails_of
from ...envelope.tiers import Seam
from ...place import Point2
from ...roles import Role
from .screw_kinds import EDGE, INCH
from .steel_contact import Wall

Upright = tuple[Point2, Polygon]
"""An upright wall along which sheets end, with the heights of its first and last screw."""


def edge_walls(face: Face, behind: Sequence[Wall], ends: Sequence[Seam | Headwall]) -> Iterator[Upright]:
    """The uprights of a face, those that run past ends of its sheets, from the lowest up, once for each
    region."""
    for (first, last), wall in _uprights(face, behind):
        low, rest = first, wall
        for end in ends:
            if low < end.rows[0] < end.rows[1] < last:
                left, foot, right, head = rest.bounds
                yield (low, end.rows[0]), shapely.box(left, foot, right, end.head)
                low, rest = end.rows[1], shapely.box(left, end.foot, right, head)
        yield (low, last), rest


def level_ends(building: Building, face: Face) -> list[Point2]:
    """From u to u of what the sheets of a face end level over and under: openings, the covers over rails."""
    openings = [(opening.from_left, opening.from_left + opening.width) for opening in face.openings]
    return [*openings, *(rail.cover for rail in rails_of(building, face.name))]


def _uprights(face: Face, behind: Sequence[Wall]) -> Iterator[Upright]:
    """Jambs, screwed from an inch in from the opening's corners; corner columns that girts are flush with."""
    for number, opening in enumerate(face.openings, 1):
        span = (opening.sill + INCH, opening.sill + opening.height - INCH)
        for part, wall in behind:
            if part.role is Role.JAMB and part.group[-1] == f"{face.name} {opening.kind} {number}":
                yield span, wall
    for part, wall in behind if not (face.sloped or face.open) else ():
        left, low, right, high = wall.bounds
        at_corner = min(left, face.width - right) < INCH and right - left > 2 * EDGE
        if (part.role is Role.COLUMN and at_corner) or (
            part.group == ("framing", face.name) and part.role is Role.JAMB
        ):
            yield (max(low + INCH, face.hung.row if face.hung else low), high - INCH), wall
