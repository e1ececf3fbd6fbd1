"""Trims along the building's edges: base, corners, eaves, rakes, ridge, each as a run in its own frame."""

from __future__ import annotations

from collections.abc import Iterator

from ...place import Place, Point3
from ...roles import Role
from ..faces import Face
from ..steel.framing import remaining
from ..steel.straight_member import Plane
from .trim_lines import TrimLines
from .trim_run import TrimRun, mirrored

UP: Point3 = (0.0, 0.0, 1.0)
FRONT: Point3 = (0.0, -1.0, 0.0)
ALONG: Point3 = (0.0, 0.0, 1.0)

SHORT = 6.35
"""mm; corner trims stop this far (1/4 in) under the roof; eave and rake trims reach further down. Ours."""


def base_runs(lines: TrimLines, face: Face) -> Iterator[TrimRun]:
    """Along a wall's foot, less its doors: one leg on the base rail, one under the sheets' feet."""
    t, up, low = lines.thickness, lines.profile("base").in_plane, lines.bottom
    flange = max(lines.profile("j").in_plane, lines.profile("jamb angle").in_plane)
    doors = [(o.from_left - flange, o.from_left + o.width + flange) for o in face.openings if o.sill == 0]
    full = (-lines.crown, face.width + lines.crown)
    # x inward, y up, z to the right: the face's frame turned.
    frame = face.frame @ Place((0.0, 0.0, 0.0), (0.0, 0.0, -1.0), (0.0, 1.0, 0.0))
    line = ((0.0, low + up), (0.0, low), (1.0 - lines.crown, low))
    mitres = (Plane((0.0, 0.0, 0.0), (-1.0, 0.0, 1.0)), Plane((0.0, 0.0, face.width), (1.0, 0.0, 1.0)))
    for number, (a, b) in enumerate(remaining(full, doors), 1):
        yield TrimRun(
            name=f"{face.name} base trim {number}",
            role=Role.BASE_TRIM,
            group=("trims", face.name),
            labels=_labels(lines, face.name),
            frame=frame,
            line=line,
            thickness=t,
            start=mitres[0] if a <= full[0] else Plane((0.0, 0.0, a), ALONG),
            end=mitres[1] if b >= full[1] else Plane((0.0, 0.0, b), ALONG),
            nest=(0.0, t),
            snips=((-t - 1, low + t, 1.0, low + up + 2 * t + 1),),
        )


def corner_runs(lines: TrimLines) -> Iterator[TrimRun]:
    """Up the four corners, over the side sheets' ends and the gable sheets' overrun."""
    building, t = lines.building, lines.thickness
    width, length = building.width, building.length
    leg = lines.profile("corner")
    a, c = lines.side, lines.crown
    inner = ((a, c - leg.out_of_plane), (a, c), (a - leg.in_plane, c))
    swapped = tuple((y, x) for x, y in inner[::-1])
    head = building.eave_height - SHORT
    left, right, back = (-1.0, 0.0, 0.0), (1.0, 0.0, 0.0), (0.0, 1.0, 0.0)
    corners: tuple[tuple[str, str, Point3, Point3, Point3, bool], ...] = (
        ("front left", "front", (0.0, 0.0, 0.0), left, FRONT, False),
        ("front right", "front", (width, 0.0, 0.0), FRONT, right, True),
        ("back right", "back", (width, length, 0.0), right, back, False),
        ("back left", "back", (0.0, length, 0.0), back, left, True),
    )
    for name, wall, origin, x, y, side_is_y in corners:
        fall = lines.steel.rise
        # The head is cut to the roof's steel plane, which falls outward from the side wall.
        slope: Point3 = (0.0, fall, 1.0) if side_is_y else (fall, 0.0, 1.0)
        yield TrimRun(
            name=f"{name} corner trim",
            role=Role.CORNER_TRIM,
            group=("trims", wall),
            labels=_labels(lines, wall),
            frame=Place(origin, x, y),
            line=swapped if side_is_y else inner,
            thickness=t,
            start=Plane((0.0, 0.0, lines.foot), ALONG),
            end=Plane((0.0, 0.0, head), slope),
            nest=(t, t),
        )


def eave_runs(lines: TrimLines) -> Iterator[TrimRun]:
    """Along both eaves from the rear, the front piece on top; ends flush with the corner trims.

    The top leg lies on the roof's steel plane under the roof sheets, the drop over the wall's closure.
    """
    building, t, rise = lines.building, lines.thickness, lines.steel.rise
    legs, e = lines.profile("eave"), lines.eave
    inner = ((legs.in_plane, legs.in_plane * rise), (-e, -e * rise), (-e, -e * rise - legs.out_of_plane))
    run = building.length + 2 * lines.gable
    snip = (-e - 3 * t - 1, -(e + 3 * t) * rise, legs.in_plane + 1, legs.in_plane * rise + 5)
    for wall, x, inward, line, cut in (
        ("left", 0.0, (1.0, 0.0, 0.0), inner, snip),
        ("right", building.width, (1.0, 0.0, 0.0), mirrored(inner), (-snip[2], snip[1], -snip[0], snip[3])),
    ):
        sign = 1.0 if wall == "left" else -1.0
        yield TrimRun(
            name=f"{wall} eave trim",
            role=Role.EAVE_TRIM,
            group=("trims", wall),
            labels=_labels(lines, wall),
            frame=Place((x, building.length + lines.gable, building.eave_height), inward, UP),
            line=line,
            thickness=t,
            start=Plane((0.0, 0.0, 0.0), ALONG),
            end=Plane((0.0, 0.0, run), ALONG),
            nest=(-sign * t, -t * rise),
            snips=(cut,),
        )


def rake_runs(lines: TrimLines, gable: Face) -> Iterator[TrimRun]:
    """Up both rakes of a gable, upper pieces over lower ones: over the roof's edge, down over the gable."""
    building, steel, t = lines.building, lines.steel, lines.thickness
    legs, out = lines.profile("rake"), lines.gable
    drop = lines.head_clearance + legs.out_of_plane
    inner = ((legs.in_plane, lines.crown), (-out, lines.crown), (-out, -drop))
    overhang = -building.sheets.overhang / steel.cos
    for hand, u, side in (("left", 0.0, 1.0), ("right", gable.width, -1.0)):
        # x into the building on the left, out of it on the right; y off the roof; z up the slope.
        x, y = (0.0, 0.0, -side), (-side * steel.sin, steel.cos, 0.0)
        frame = gable.frame @ Place((u, building.eave_height, 0.0), x, y)
        apex = steel.rafter_length
        # In the run's frame the ridge is an upright plane: square to (cos z - sin y).
        ridge = Plane((0.0, 0.0, apex), (0.0, -steel.sin, steel.cos))
        yield TrimRun(
            name=f"{gable.name} {hand} rake trim",
            role=Role.RAKE_TRIM,
            group=("trims", gable.name),
            labels=_labels(lines, gable.name),
            frame=frame,
            line=inner if side > 0 else mirrored(inner),
            thickness=t,
            start=Plane((0.0, 0.0, overhang), ALONG),
            end=ridge,
            nest=(side * -t, t),
        )


def ridge_run(lines: TrimLines) -> TrimRun:
    """Along the ridge, over the rake trims, its legs past the upper purlins' screws.

    Laid towards the wind: each piece's start lies on the one before, and its edge faces away from it.
    """
    building, steel, t = lines.building, lines.steel, lines.thickness
    past = lines.profile("ridge").in_plane + lines.ridge * steel.rise  # as much its legs lose over the crowns
    reach = (steel.rafter_length - steel.purlins[-1] + past) * steel.cos
    apex = lines.ridge / steel.cos
    # Inner face, its height measured from the ridge of the steel planes.
    line = ((reach, apex - reach * steel.rise), (0.0, apex), (-reach, apex - reach * steel.rise))
    out = lines.gable + lines.lap_room
    middle, peak = building.width / 2, building.eave_height + building.width / 2 * steel.rise
    from_back = Place((middle, building.length + out, peak), (1.0, 0.0, 0.0), UP)
    from_front = Place((middle, -out, peak), (-1.0, 0.0, 0.0), UP)
    return TrimRun(
        name="ridge cap",
        role=Role.RIDGE_CAP,
        group=("trims", "ridge"),
        labels=_labels(lines, "ridge"),
        frame=from_back if building.trim.wind == "front" else from_front,
        line=line,
        thickness=t,
        start=Plane((0.0, 0.0, 0.0), ALONG),
        end=Plane((0.0, 0.0, building.length + 2 * out), ALONG),
        nest=(0.0, t / steel.cos),
    )


def _labels(lines: TrimLines, face: str) -> tuple[tuple[str, str], ...]:
    trim = lines.building.trim
    return (("face", face), ("gauge", trim.gauge), ("colour", trim.colour), ("material", "steel"))
