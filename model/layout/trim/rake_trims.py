"""Trims along the rakes: over the roof's edge, and under a roof that runs on over a gable at the heads of the
sheets there, each as a run in its own frame."""

from __future__ import annotations

from collections.abc import Iterator

from ...envelope.face import Face, Rake, rakes
from ...place import Place, Point2, Point3
from ...roles import Role
from ..steel.straight_member import Plane
from .break_lines import rake_start, rake_stop
from .closed_ends import rake_end, wall_end
from .end_tabs import CLEAR
from .trim_lines import TrimLines
from .trim_run import Box, TrimRun, mirrored

ALONG: Point3 = (0.0, 0.0, 1.0)

NOTCH = 1.0
"""mm that a flange is cut away past what it makes room for. Ours."""

BEYOND = 1000.0
"""mm; more than any trim runs past a corner."""


def rake_runs(lines: TrimLines, gable: Face) -> Iterator[TrimRun]:
    """Up the rakes of a gable, upper pieces over lower ones: over the roof's edge, down over the gable."""
    t = lines.thickness
    out = lines.head(gable)
    inner = (
        (lines.profile("rake").in_plane, lines.roof_crown),
        (-out, lines.roof_crown),
        (-out, -lines.rake_drop(gable)),
    )
    for rake in rakes(gable):
        side = rake.side
        start = rake_start(lines, rake)
        if start is None:
            start = -lines.building.sheets.overhang / rake.cos - CLEAR
        end = Plane((0.0, 0.0, lines.steel.named[rake.slope].upper.head + CLEAR), ALONG)
        runs_out = not rake.head
        if lines.building.joined in (gable.beside("left").other, gable.beside("right").other):
            end = _plumb(rake, rake.length - lines.at_wall / rake.cos)  # at the main wall's corner trim
            runs_out = False
        at_wall = wall_end(lines, gable, rake) if gable.name in lines.building.inset else ()
        yield TrimRun(
            name=f"{gable.name} {rake.name} rake trim",
            role=Role.RAKE_TRIM,
            group=("trims", gable.name),
            labels=lines.labels(gable.name, "rake"),
            frame=gable.frame @ _beside(rake),
            line=inner if side > 0 else mirrored(inner),
            thickness=t,
            start=Plane((0.0, 0.0, start), ALONG),
            end=rake_stop(lines, rake) or _mitre(rake) or end,
            nest=(side * -t, t),
            start_tabs=rake_end(lines, gable, rake, foot=True),
            end_tabs=rake_end(lines, gable, rake, foot=False) if runs_out else at_wall,
        )


def head_runs(lines: TrimLines, gable: Face) -> Iterator[TrimRun]:
    """Under purlins that run on over a clad gable, along its rakes: a J in whose pocket the raked edges of
    its sheets stand. Flange on the hung angle, web under the purlins, lip down over the sheets. Of pieces
    that lap only the webs nest."""
    if not lines.steel.run_on or gable.open:
        return
    t, legs, room = lines.thickness, lines.profile("j"), lines.lap_room
    # Pieces that lap rise towards the purlins.
    web, deep = -lines.steel.rafter_top - lines.ride, lines.crown(gable) + room + t
    flange, lip = web - legs.in_plane, web - legs.out_of_plane
    line = ((-deep, lip), (-deep, web), (0.0, web), (0.0, flange))
    snips: tuple[Box, Box] = (
        (-t, flange - 1, 1.0, web + 3 * t),
        (-deep - 1, flange - 1, t - deep, web + 3 * t),
    )
    beside: Box = (-t, flange - 1, 1.0, web - t)
    for rake in rakes(gable):
        left = rake.side > 0
        near, far = ("left", "right") if left else ("right", "left")
        # At a corner as far out as the outer face of the corner trim, whose head is under it.
        out, beyond = (_corner_face(lines, gable, hand) / rake.cos for hand in (near, far))
        yield TrimRun(
            name=f"{gable.name} {rake.name} head trim",
            role=Role.J_TRIM,
            group=("trims", gable.name),
            labels=lines.labels(gable.name, "rake"),
            frame=gable.frame @ _beside(rake),
            line=line if left else mirrored(line),
            thickness=t,
            start=_plumb(rake, -out),
            end=_mitre(rake) or _plumb(rake, rake.length + beyond),
            nest=(0.0, t),
            snips=tuple(_handed(snip, rake) for snip in snips),
            notches=tuple((low, high, _handed(beside, rake)) for low, high in _past_corners(rake, line)),
        )


def _past_corners(rake: Rake, line: tuple[Point2, ...]) -> Iterator[Point2]:
    """Between which places along a rake its J's flange would stand past the steel's corners, in the corner
    trims' way."""
    lean = rake.sin / abs(rake.cos)
    yield -BEYOND, line[2][1] * lean + NOTCH
    if rake.head is None:
        yield rake.length + line[3][1] * lean - NOTCH, rake.length + BEYOND


def _handed(box: Box, rake: Rake) -> Box:
    """What is cut off a run up a rake that climbs to the right, on either."""
    x0, y0, x1, y1 = box
    return box if rake.side > 0 else (-x1, y0, -x0, y1)


def _corner_face(lines: TrimLines, gable: Face, hand: str) -> float:
    """From a gable's steel corner along it to the outer face of the corner trim on the other wall."""
    other, there = lines.steel.named[gable.beside(hand).other], "right" if hand == "left" else "left"
    return lines.corner(other, there) + lines.thickness


def _beside(rake: Rake) -> Place:
    """A frame at a rake's foot, in its gable's: x into the building on the left, out of it on the right; y
    off the roof; z up the slope."""
    return Place((*rake.foot, 0.0), (0.0, 0.0, -rake.side), (-rake.side * rake.sin, rake.cos, 0.0))


def _plumb(rake: Rake, along: float) -> Plane:
    """The plumb plane, in that frame, so far along a rake."""
    return Plane((0.0, 0.0, along), (0.0, -rake.sin, rake.cos))


def _mitre(rake: Rake) -> Plane | None:
    """The plane that halves a rake from the next one; None at a high eave."""
    if rake.head is None:
        return None
    across, up = rake.head
    lean = -rake.side * rake.sin * across + rake.cos * up
    return Plane((0.0, 0.0, rake.length), (0.0, lean, rake.side * rake.cos * across + rake.sin * up))
