"""Lap screws: along the side laps of a roof's sheets, where they are asked for."""

from __future__ import annotations

from math import ceil

from ...catalog.trims import trim_profiles
from ...envelope.edges import Edge
from ...recipe import Part, Sheet, grid
from ...roles import Role
from ..skin.cladding import Tile
from .fastening import Fastening
from .screw_kinds import EDGE, INCH, NUMBER_12, RIM, hex_screw
from .sheet_screws import row_through, top_of

STITCH = hex_screw(NUMBER_12, 0.75 * INCH)
"""They hold sheet to sheet on a rib's crown and reach no steel."""
BESIDE_TRIM = 3.0
"""mm; up to a washer and this past a rake trim's leg a lap rib is held by the trim's screws. Ours."""
CAPPED = 2.5 * INCH
"""mm down from the uppermost purlin's row: the ridge cap's leg lies there, which is screwed itself."""


def stitch_screws(plan: Fastening, tile: Tile, sheet: Part) -> Part | None:
    """Lap screws along a roof sheet's overlap rib, where it lies on a neighbour and they are asked for."""
    assert isinstance(sheet.recipe, Sheet)
    apart, face = plan.screws.stitch, plan.face
    rib = face.frame.seen(sheet.place.origin)[0]
    (left, right), trimmed = tile.region.span, trim_profiles()["rake"].in_plane + RIM + BESIDE_TRIM
    if not (apart and face.sloped and left + trimmed < rib < right - trimmed):
        return None
    foot, head = tile.course.foot, tile.course.head
    count = max(1, ceil((head - foot) / apart) - 1)
    step = (head - foot) / (count + 1)
    w, sign = top_of(sheet.recipe, 0.0), tile.column.sign
    base = face.frame.seen(sheet.place.origin)[1]
    capped = _capped(plan, tile)
    row = tuple(
        (0.0, grid(sign * (v - base)), w)
        for v in (foot + step * k for k in range(1, count + 1))
        if v < capped and not (tile.course.below and v < tile.course.below.head + EDGE)
    )
    if not row:
        return None
    return row_through(Role.LAP_SCREW, plan, tile.region.skin, sheet, STITCH, row)


def _capped(plan: Fastening, tile: Tile) -> float:
    """v up to which lap screws stand clear of what lies over a sheet's head."""
    if tile.course.above:
        return tile.course.above.foot - EDGE
    if plan.face.sides[2].kind is Edge.HEADWALL:
        return max(v for _, v in plan.face.outline) - trim_profiles()["headwall"].in_plane - INCH
    return max(line.at for line in plan.lines) - CAPPED
