"""The drip under hung sheets: a back leg up behind their feet, a shelf that falls outward, a lip turned down.
It runs before the corner trim that comes up from below, and under the one over the sheets' ends."""

from __future__ import annotations

from collections.abc import Iterator

from ...envelope.face import Face
from ...place import Place, Point3
from ...roles import Role
from ..steel.straight_member import Plane
from .shelves import Shelf
from .trim_lines import TrimLines
from .trim_run import Box, TrimRun

ALONG: Point3 = (0.0, 0.0, 1.0)

NOTCH = 1.0
"""mm that a shelf is cut away past what it makes room for: pieces that lap lean. Ours."""


def hung_runs(lines: TrimLines, face: Face) -> Iterator[TrimRun]:
    """Along the foot of a wall's hung sheets."""
    if face.hung is None or face.hung.flashed:
        return
    legs = lines.profile("drip")
    section = Shelf(legs.in_plane, legs.out_of_plane, lines.seam, lines.thickness)
    (left, start), (right, end) = (_end(lines, face, hand) for hand in ("left", "right"))
    yield TrimRun(
        name=f"{face.name} hung drip",
        role=Role.DRIP,
        group=("trims", face.name),
        labels=lines.labels(face.name, "opening"),
        # x up, y out of the wall, z to the right.
        frame=face.frame @ Place((0.0, face.hung.shelf, 0.0), (0.0, 1.0, 0.0), (0.0, 0.0, 1.0)),
        line=section.line,
        thickness=lines.thickness,
        start=start,
        end=end,
        nest=(section.nest, 0.0),
        snips=section.snips,
        notches=tuple(_beside_uprights(lines, face, (left, right), section)),
    )


def _end(lines: TrimLines, face: Face, hand: str) -> tuple[float, Plane]:
    """How far the drip reaches at one end of a wall, and the plane that ends it: mitred with that of a wall
    whose sheets hang too; square at the corner of an open one, or past the corner trim of a clad one."""
    side = face.beside(hand)
    corner, into = (0.0, 1.0) if hand == "left" else (face.width, -1.0)
    other = lines.steel.named[side.other]
    if other.hung:
        across, out = side.mitre
        return corner - into * lines.seam * out / across, Plane((0.0, 0.0, corner), (0.0, into * out, across))
    if not side.open:
        corner -= into * lines.head(other)
    return corner, Plane((0.0, 0.0, corner), ALONG)


def _beside_uprights(
    lines: TrimLines, face: Face, ends: tuple[float, float], section: Shelf
) -> Iterator[tuple[float, float, Box]]:
    """What the corner trims of walls that are clad down to the slab take of it: they come up behind it."""
    behind: Box = (section.edge - NOTCH, -NOTCH, section.leg + NOTCH, lines.thickness + NOTCH)
    for hand, end, into in (("left", 0.0, 1.0), ("right", face.width, -1.0)):
        other = lines.steel.named[face.beside(hand).other]
        if not (other.hung or face.beside(hand).open):
            inner = end + into * (lines.corner_leg(face, hand) + NOTCH)
            outer = ends[hand == "right"] - into * NOTCH
            yield min(inner, outer), max(inner, outer), behind
