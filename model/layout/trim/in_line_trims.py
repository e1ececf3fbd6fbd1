"""Where a lean-to's end wall stands in line with the main gable.

One flat trim lies over the ends of both walls' sheets, from the foot up to the lean-to's roof; over that the
main corner trim begins.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import hypot

from ...envelope.edges import Edge
from ...envelope.face import Face
from ...envelope.headwall import in_line_at
from ...envelope.roof_lines import Eave
from ...envelope.run_on import under_run_on
from ...envelope.skin_lines import HEAD_CLEARANCE, in_line
from ...place import Place, Point3, dot
from ...roles import Role
from ..steel.straight_member import Plane
from .trim_lines import TrimLines
from .trim_run import TrimRun

ALONG: Point3 = (0.0, 0.0, 1.0)

SHORT = 6.35
"""mm; corner trims stop this far (1/4 in) under the roof; eave and rake trims reach further down. Ours."""

NAME = "in-line trim"


def short_of_roof(lines: TrimLines, eave: Eave, frame: Place, head: float) -> Plane:
    """The head of an upright trim, in a frame at its foot: cut to the roof's steel plane, short of it."""
    roof, below = lines.steel.named[eave.slope].frame.z, under_run_on(lines.building, eave.rise) or SHORT
    return Plane((0.0, 0.0, head - below), (dot(roof, frame.x), dot(roof, frame.y), roof[2]))


@dataclass(frozen=True, slots=True)
class WallEnd:
    """A clad wall's left or right end at another building's. into: the way (1, -1) from there along the wall.
    frame: at its foot, x outward, y to the right, z up. start, end: of a trim that stands there."""

    wall: Face
    hand: str
    into: float
    frame: Place
    start: Plane
    end: Plane


def wall_ends(lines: TrimLines, kind: Edge) -> Iterator[WallEnd]:
    """Those of a kind that a lean-to has."""
    for wall in lines.steel.walls:
        for hand, into in (("left", 1.0), ("right", -1.0)):
            if wall.beside(hand).kind is not kind or wall.open:
                continue
            corner, eave = 0.0 if hand == "left" else wall.width, lines.steel.over_corner(wall, hand)
            frame = wall.frame @ Place((corner, 0.0, 0.0), (0.0, 0.0, 1.0), (1.0, 0.0, 0.0))
            start = Plane((0.0, 0.0, lines.foot), ALONG)
            yield WallEnd(wall, hand, into, frame, start, short_of_roof(lines, eave, frame, eave.height))


def in_line_runs(lines: TrimLines) -> Iterator[TrimRun]:
    """Those of a lean-to, each in the frame of its wall's end."""
    t = lines.thickness
    for at in wall_ends(lines, Edge.IN_LINE):
        out, leg = lines.corner(at.wall, at.hand), lines.corner_leg(at.wall, at.hand)
        ends = sorted((-at.into * lines.leg_beyond, at.into * (in_line(lines.building) + leg)))
        yield TrimRun(
            name=f"{at.wall.name} {NAME}",
            role=Role.CORNER_TRIM,
            group=("trims", at.wall.name),
            labels=lines.labels(at.wall.name, "corner"),
            frame=at.frame,
            line=((out, ends[0]), (out, ends[1])),
            thickness=t,
            start=at.start,
            end=at.end,
            nest=(t, 0.0),
        )


def in_line_start(lines: TrimLines, walls: Sequence[Face], frame: Place) -> Plane | None:
    """Where the corner trim of two walls begins, in its frame, over the end wall of a lean-to; None where
    none stands in line with either."""
    headwall = in_line_at(lines.building, [wall.name for wall in walls])
    if headwall is None:
        return None
    size, out = hypot(1.0, headwall.rise), lines.steel.named[headwall.wall].frame.z
    across, along = (headwall.rise * dot(out, axis) / size for axis in (frame.x, frame.y))
    return Plane((0.0, 0.0, headwall.roof - SHORT + HEAD_CLEARANCE), (across, along, 1 / size))
