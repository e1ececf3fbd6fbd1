"""Where a lean-to's clad end stands out from the main wall: an angle over the ribs of both, up the corner
between them, from their feet to the lean-to's roof. The main wall's sheets run on behind it."""

from __future__ import annotations

from collections.abc import Iterator

from ...envelope.edges import Edge
from ...envelope.skin_lines import inside_bend
from ...place import Place, Point3
from ...roles import Role
from ..steel.straight_member import Plane
from .in_line_trims import short_of_roof
from .trim_lines import TrimLines
from .trim_run import TrimRun

ALONG: Point3 = (0.0, 0.0, 1.0)


def inside_corner_runs(lines: TrimLines) -> Iterator[TrimRun]:
    """Those of a lean-to, each in a frame at its wall's end: x out of that wall, y along it, z up. One leg
    lies on the wall, the other stands out from it, on the main one."""
    t, legs, bend = lines.thickness, lines.profile("inside corner"), inside_bend(lines.building)
    for wall in lines.steel.walls:
        for hand, into in (("left", 1.0), ("right", -1.0)):
            if wall.beside(hand).kind is not Edge.INSIDE_CORNER or wall.open:
                continue
            corner, eave = 0.0 if hand == "left" else wall.width, lines.steel.over_corner(wall, hand)
            frame = wall.frame @ Place((corner, 0.0, 0.0), (0.0, 0.0, 1.0), (1.0, 0.0, 0.0))
            out = lines.corner(wall, hand)
            line = (
                (out + legs.out_of_plane, into * bend),
                (out, into * bend),
                (out, into * (bend + legs.in_plane)),
            )
            yield TrimRun(
                name=f"{wall.name} inside corner trim",
                role=Role.INSIDE_CORNER_TRIM,
                group=("trims", wall.name),
                labels=lines.labels(wall.name, "corner"),
                frame=frame,
                line=line if into > 0 else line[::-1],
                thickness=t,
                start=Plane((0.0, 0.0, lines.foot), ALONG),
                end=short_of_roof(lines, eave, frame, eave.height),
                nest=(t, into * t),
            )
