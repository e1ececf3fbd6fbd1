"""The cover over a sliding door's rail: a back leg up behind the sheets above, a shelf that falls outward
over the rail, a lip turned down before it. The sheets under it end behind the rail."""

from __future__ import annotations

from collections.abc import Iterator

from ...envelope.face import Face
from ...envelope.skin_lines import SHELF_FALL
from ...envelope.sliding import RAIL_DEEP, rail_back, rails_of
from ...place import Place, Point3
from ...roles import Role
from ..steel.straight_member import Plane
from .opening_trims import EARS
from .shelves import Shelf
from .trim_lines import PAST_STEEL, TrimLines
from .trim_run import Box, TrimRun

ALONG: Point3 = (0.0, 0.0, 1.0)


def cover_runs(lines: TrimLines, face: Face) -> Iterator[TrimRun]:
    """Over the rails of a wall's sliding doors, an inch past both their ends; leg and lip run on past the
    shelf, before the edges of the sheets there."""
    legs = lines.profile("rail cover")
    before = rail_back(lines.building, face) + RAIL_DEEP + PAST_STEEL
    section = Shelf(legs.in_plane, legs.out_of_plane, before, lines.thickness)
    for rail in rails_of(lines.building, face.name):
        (left, right), t = rail.cover, lines.thickness
        low, high = left - EARS, right + EARS
        shelf: Box = (-SHELF_FALL - 3 * t, t, 3 * t, before)
        yield TrimRun(
            name=f"{face.name} {rail.opening.kind} {rail.number} rail cover",
            role=Role.RAIL_COVER,
            group=("trims", face.name),
            labels=lines.labels(face.name, "opening"),
            # x up, y out of the wall, z to the right.
            frame=face.frame @ Place((0.0, rail.seam.shelf, 0.0), (0.0, 1.0, 0.0), (0.0, 0.0, 1.0)),
            line=section.line,
            thickness=t,
            start=Plane((0.0, 0.0, low), ALONG),
            end=Plane((0.0, 0.0, high), ALONG),
            nest=(section.nest, 0.0),
            snips=section.snips,
            notches=((low - 1, left, shelf), (right, high + 1, shelf)),
        )
