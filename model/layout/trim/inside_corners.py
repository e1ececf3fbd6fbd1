"""Where a lean-to's clad end stands out from the main wall: an angle over the ribs of both, up the corner
between them, from their feet to the lean-to's roof. The main wall's sheets run on behind it."""

from __future__ import annotations

from collections.abc import Iterator

from ...envelope.edges import Edge
from ...envelope.skin_lines import inside_bend
from ...roles import Role
from .in_line_trims import wall_ends
from .trim_lines import TrimLines
from .trim_run import TrimRun


def inside_corner_runs(lines: TrimLines) -> Iterator[TrimRun]:
    """Those of a lean-to, each in the frame of its wall's end. One leg lies on the wall, the other stands out
    from it, on the main one."""
    t, legs, bend = lines.thickness, lines.profile("inside corner"), inside_bend(lines.building)
    for at in wall_ends(lines, Edge.INSIDE_CORNER):
        out, into = lines.corner(at.wall, at.hand), at.into
        line = (
            (out + legs.out_of_plane, into * bend),
            (out, into * bend),
            (out, into * (bend + legs.in_plane)),
        )
        yield TrimRun(
            name=f"{at.wall.name} inside corner trim",
            role=Role.INSIDE_CORNER_TRIM,
            group=("trims", at.wall.name),
            labels=lines.labels(at.wall.name, "corner"),
            frame=at.frame,
            line=line if into > 0 else line[::-1],
            thickness=t,
            start=at.start,
            end=at.end,
            nest=(t, into * t),
        )
