"""The cap of a half wall: a shelf over girt and sheets that falls outward, a front leg down over the sheets'
heads. It meets the next wall's at a mitre in the corner, over the corner trim."""

from __future__ import annotations

from collections.abc import Iterator

from ...envelope.face import Face, Half
from ...envelope.skin_lines import HEAD_CLEARANCE, SHELF_FALL
from ...place import Place, Point2, Point3
from ...roles import Role
from ..steel.straight_member import Plane
from .shelves import nest_of_shelf
from .trim_lines import TrimLines
from .trim_run import TrimRun

ALONG: Point3 = (0.0, 0.0, 1.0)


def cap_runs(lines: TrimLines, face: Face) -> Iterator[TrimRun]:
    """Along the top of a half wall."""
    if face.half is None:
        return
    t, out, line = lines.thickness, lines.seam, _line(lines)
    edge = line[-1][0]
    yield TrimRun(
        name=f"{face.name} cap trim",
        role=Role.CAP_TRIM,
        group=("trims", face.name),
        labels=lines.labels(face.name, "cap"),
        # x up, y out of the wall, z to the right.
        frame=face.frame @ Place((0.0, face.half.shelf, 0.0), (0.0, 1.0, 0.0), (0.0, 0.0, 1.0)),
        line=line,
        thickness=t,
        start=_end(lines, face, "left"),
        end=_end(lines, face, "right"),
        nest=(nest_of_shelf(t, out), 0.0),
        snips=((edge - 3 * t, out, 3 * t, out + t + 1),),
    )


def _line(lines: TrimLines) -> tuple[Point2, ...]:
    """Its inner faces, from the edge over the girt's inner flange to the front leg's lower one: one slope,
    over the steel line at the shelf's height."""
    out, back = lines.seam, lines.building.framing.girt.depth - HEAD_CLEARANCE
    front = -SHELF_FALL - lines.profile("cap").in_plane
    return (SHELF_FALL * back / out, -back), (-SHELF_FALL, out), (front, out)


def _end(lines: TrimLines, face: Face, hand: str) -> Plane:
    """The plane that ends the cap at one end of a wall: mitred with the next half wall's, or square over the
    trim around the upright at an open one."""
    side = face.beside(hand)
    corner, into = (0.0, 1.0) if hand == "left" else (face.width, -1.0)
    other = lines.steel.named[side.other]
    if other.half:
        across, out = side.mitre
        return Plane((0.0, 0.0, corner), (0.0, into * out, across))
    return Plane((0.0, 0.0, corner - into * lines.head(other)), ALONG)


def under_cap(lines: TrimLines, half: Half) -> float:
    """Height of the lower edge of its front leg."""
    return half.shelf - SHELF_FALL - lines.profile("cap").in_plane
