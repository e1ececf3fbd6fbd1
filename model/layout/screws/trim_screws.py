"""Screws that hold the trims: through legs into framing, past the sheets' pans, in rows.

Corner trim: at base rail and girts, in both legs (trade practice); up the upright where a wall ends at an
open stretch, or the column that girts are flush with. Rake trims: at every purlin, and 24 in apart down the
gable. Ridge cap: in every pan, into the upper purlin. Eave trim: along the strut of an open wall. Base, other
eave and J-trims are held by the sheets' own screws, which pass through them.

A screw stands clear of the laps of a run; where it must stand in one, it keeps its distance from the ends
of both pieces and goes through both, its head on the outer one.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import ceil

import shapely

from ...envelope.face import Face, rakes
from ...envelope.pitch_break import break_over, break_under
from ...envelope.roof_lines import Eave
from ...place import Point2, dot
from ...recipe import Part, Turned
from ...roles import Role
from ..trim.break_lines import rake_end_at, rake_start
from ..trim.corner_trims import hung_leg
from ..trim.trim_lines import PAST_STEEL
from ..trim.trim_run import TrimRun
from .cap_screws import cap_screws
from .corner_screws import corner_screws
from .door_screws import door_screws
from .fastening import Missed
from .inside_corner_screws import inside_corner_screws
from .room import pans
from .screw_kinds import CLEAR, EDGE, INCH, NUMBER_12, PAST_EDGE, hex_screw
from .trimmed import ROW, Spots, Trimmed, Wanted, row_of, spread, up_a_leg

STEEL = 5.0
"""mm; a screw's point reaches at least this far past the steel line."""


def trim_screws(on: Trimmed) -> tuple[list[Part], list[Missed]]:
    """The rows of a face's trims, and those of their screws that would miss."""
    face, missed = on.plan.face, []
    rows: list[Part] = []
    flats = _flats(on)
    wanted = _on_slope(on) if face.sloped else _on_wall(on)
    for name, run, seat, spots in wanted:
        screw = _reaching(seat + on.lines.lap_room + on.lines.steel.under(face))
        laps, ends = _barred(on, run, on.laps(run)), _barred(on, run, on.bars(run))
        row = []
        for at, where in spots:
            spot = at if _free(on, flats, where, laps, at) else _beside(on, flats, where, (laps, ends), at)
            if spot is None:
                missed.append(Missed(name, face.name, at))
                continue
            on.plan.room.taken.add(spot)
            z = run.frame.seen(face.frame.point((*spot, 0.0)))[2]
            row.append((*spot, seat + on.lift(run, z) * _rise(run, face)))
        if row:
            rows.append(row_of(run, name, face, screw, face.frame, row))
    if not face.sloped:
        rows += door_screws(on)
    return rows, missed


def _free(
    on: Trimmed, flats: shapely.STRtree, where: shapely.Geometry, laps: shapely.Geometry, at: Point2
) -> bool:
    """Whether a screw may stand right where it is wanted, well inside of all that it must stand on."""
    room = on.plan.room
    if not room.is_apart(at) or shapely.intersects_xy(laps, *at):
        return False
    if not (shapely.contains_xy(where, *at) and shapely.contains_xy(room.steel, *at)):
        return False
    return len(flats.query(shapely.Point(at), predicate="within")) > 0


def _beside(
    on: Trimmed,
    flats: shapely.STRtree,
    where: shapely.Geometry,
    barred: Sequence[shapely.Geometry],
    at: Point2,
) -> Point2 | None:
    """The nearest place to one that is taken: clear of what is barred first, else of what is barred next."""
    pieces = flats.geometries[flats.query(where)]
    room = shapely.union_all(shapely.intersection(pieces, on.plan.room.steel & where))
    spots = (on.plan.room.spot(at, room - bars) for bars in barred)
    return next((spot for spot in spots if spot), None)


def _rise(run: TrimRun, face: Face) -> float:
    """How far out of a face a piece of a run stands off the one it laps: nothing where it is moved up it."""
    moved = (
        dot(axis, face.frame.z) * by for axis, by in zip((run.frame.x, run.frame.y), run.nest, strict=True)
    )
    return run.thickness if abs(sum(moved)) > run.thickness / 2 else 0.0


def _flats(on: Trimmed) -> shapely.STRtree:
    """The sheets' pans: a shank through a rib would leave air under it. All of a wall that has none."""
    if on.plan.face.open:
        return shapely.STRtree([shapely.box(*shapely.total_bounds(on.plan.room.steel))])
    flats = [pans(on.plan.face, sheet, PAST_EDGE) for sheet in on.sheets]
    flats += [shapely.box(low, 0.0, high, on.plan.face.top.peak[1]) for low, high in on.plan.face.gaps]
    if hung := on.plan.face.hung:
        flats.append(shapely.box(0.0, 0.0, on.plan.face.width, hung.shelf))
    if half := on.plan.face.half:
        flats.append(shapely.box(0.0, half.shelf, on.plan.face.width, on.plan.face.top.peak[1]))
    parts = shapely.get_parts(flats)
    ends = _lapped_ends(on, shapely.total_bounds(parts))
    return shapely.STRtree(parts if ends.is_empty else shapely.get_parts(parts - ends))


def _lapped_ends(on: Trimmed, bounds: Sequence[float]) -> shapely.Geometry:
    """Strips, between the left and right of bounds, about the heads of sheets that lie under others and the
    feet of those: beside an edge a shank would cut into it, through its sheet it stands clear of it."""
    left, _, right, _ = bounds
    heads = [(lap.head - EDGE, lap.head + PAST_EDGE) for lap in on.end_laps]
    feet = [(lap.foot - PAST_EDGE, lap.foot + EDGE) for lap in on.end_laps]
    return shapely.union_all([shapely.box(left, low, right, high) for low, high in heads + feet])


def _barred(on: Trimmed, run: TrimRun, bars: Sequence[Point2]) -> shapely.Geometry:
    """Stretches of a run across the face."""
    frame = on.plan.face.frame
    along = (dot(run.frame.z, frame.x), dot(run.frame.z, frame.y))
    across = (-along[1] * 1e3, along[0] * 1e3)
    found = []
    for bar in bars:
        (u0, v0, _), (u1, v1, _) = (frame.seen(run.frame.point((0.0, 0.0, z))) for z in bar)
        found.append(
            shapely.Polygon(
                [
                    (u0 - across[0], v0 - across[1]),
                    (u1 - across[0], v1 - across[1]),
                    (u1 + across[0], v1 + across[1]),
                    (u0 + across[0], v0 + across[1]),
                ]
            )
        )
    return shapely.union_all(found)


def _on_wall(on: Trimmed) -> Iterator[Wanted]:
    if not on.plan.face.verge:
        yield from corner_screws(on)
        yield from inside_corner_screws(on)
    yield from _gap_ends(on)
    eave = on.lines.steel.eaves.get(on.plan.face.name)
    if eave and on.plan.face.open_above and eave.wall != on.lines.building.joined:
        yield _strut(on, eave)
    yield from cap_screws(on)
    if on.plan.face.raked and on.lines.steel.verge(on.plan.face) is on.plan.face:
        yield from _rakes(on)


def _gap_ends(on: Trimmed) -> Iterator[Wanted]:
    """Up the trims at the ends of open bays, through the sheets into the uprights behind them."""
    lines, wall = on.lines, on.plan.face
    leg = lines.end_leg
    for number, (end, into) in enumerate(wall.gap_ends(), 1):
        strip = sorted((end + into * EDGE, end + into * (leg - lines.ride - EDGE)))
        top = lines.under_eave(lines.steel.eaves[wall.name])
        heights = spread(top, 3 * INCH, lines.building.screws.apart)
        spots = up_a_leg(end + into * leg / 2, strip, heights)
        name = f"{wall.name} end trim {number}"
        yield name, on.run(name), lines.side + lines.thickness, spots


def _strut(on: Trimmed, eave: Eave) -> Wanted:
    """Along an open wall's eave, in the middle of the trim's drop, into the strut behind it."""
    lines, wall = on.lines, on.plan.face
    name, out = f"{wall.name} eave trim", lines.head(wall)
    foot = eave.height - out * eave.rise - lines.eave_drop(eave)
    low, high = foot + PAST_STEEL + EDGE, eave.height - max(0.0, out * eave.rise) - EDGE
    spots: Spots = [
        ((u, (low + high) / 2), shapely.box(u - 3 * INCH, low, u + 3 * INCH, high))
        for u in spread(wall.width, 3 * INCH, lines.building.screws.apart)
    ]
    return name, on.run(name), out + lines.thickness, spots


def _rakes(on: Trimmed) -> Iterator[Wanted]:
    """Down the gable, into the rake angles, the drop's width from the sheets' heads to its edge."""
    lines, gable, steel = on.lines, on.plan.face, on.lines.steel
    drop = lines.rake_drop(gable)
    # Pieces of a run ride up on others. The corner trim's leg lies under the rake trim's foot.
    high, low = lines.head_clearance + EDGE, min(drop - lines.ride, steel.rake_leg) - EDGE
    apart = lines.building.screws.apart
    for rake in rakes(gable):
        foot, far = ("left", "right") if rake.side > 0 else ("right", "left")
        corner, end = (_past_leg(on, hand) / rake.cos for hand in (foot, far))
        start = steel.strut_stop / rake.cos
        stop = rake.length if rake.head else rake.length - start
        # Square to a slope, downwards, is also on towards its high end.
        last, on_by = (rake.length + apart, 0.0) if rake.head else (rake.length - end, rake.sin / rake.cos)
        if (begun := rake_start(lines, rake)) is not None:
            start = corner = max(begun, 0.0) + EDGE
        if (ended := rake_end_at(lines, rake)) is not None:
            last, on_by = ended[0] - EDGE, ended[1]
            stop = min(stop, last - low * on_by)
        places = [start + s for s in spread(stop - start, 3 * INCH, apart)]
        x, y = (rake.side * rake.cos, rake.sin), (-rake.side * rake.sin, rake.cos)

        def at(s: float, down: float, foot: Point2 = rake.foot, x: Point2 = x, y: Point2 = y) -> Point2:
            return (foot[0] + s * x[0] - down * y[0], foot[1] + s * x[1] - down * y[1])

        reach = apart / 3
        spots: Spots = [
            (
                at(s, (high + low) / 2),
                shapely.Polygon(
                    [
                        at(max(s - reach, corner), high),
                        at(min(max(s, corner) + reach, last - high * on_by), high),
                        at(min(max(s, corner) + reach, last - low * on_by), low),
                        at(max(s - reach, corner), low),
                    ]
                ),
            )
            for s in places
        ]
        name = f"{gable.name} {rake.name} rake trim"
        yield name, on.run(name), lines.head(gable) + lines.thickness, spots


def _past_leg(on: Trimmed, hand: str) -> float:
    """From a gable's corner, what the corner trim's leg and a screw clear of it take; 0 without one."""
    face, lines = on.plan.face, on.lines
    leg, end = 0.0 if face.verge else lines.corner_leg(face, hand), lines.steel.steel_end(face, hand)
    if face.hung or lines.steel.named[face.beside(hand).other].hung:
        leg = max(leg, hung_leg(lines, face, hand))
    return leg + min(end, face.width - end) + CLEAR if leg else 0.0


def _on_slope(on: Trimmed) -> Iterator[Wanted]:
    """Through the rake trims' top legs into every purlin, and through the ridge cap's leg in every pan."""
    lines, slope = on.lines, on.plan.face
    leg = lines.profile("rake").in_plane
    ridge = lines.steel.ridge_of(slope)
    # Of struts in pieces there are several at one height.
    rows = sorted({round(line.at, 3): line.at for line in on.plan.lines}.values())
    over, under = break_over(lines.building, slope), break_under(lines.building, slope)
    purlins = rows if under else rows[1:]
    for hand, end, into in (("left", 0.0, 1.0), ("right", slope.width, -1.0)):
        strip = sorted((end + into * EDGE, end + into * (leg - lines.ride - EDGE)))
        u = end + into * 0.6 * leg
        spots = up_a_leg(u, strip, purlins[:-1])
        yield f"{slope.name} rake trim {hand}", _rake_over(on, end), lines.roof_crown + lines.thickness, spots
    closing = lines.steel.closing_at_head(slope)
    if not closing.caps or closing.trim is None:
        return
    cap = closing.trim.value
    pitch, v = slope.skin.profile.pitch, purlins[-1]
    ribs = [rib for rib in on.ribs(slope.upper) if leg < rib and rib + pitch < slope.width - leg]
    down = ROW if ridge else 1.0  # under the flashing's row lie its closures
    spots = [((rib + pitch / 2, v), shapely.box(rib, v - down, rib + pitch, v + ROW)) for rib in ribs]
    run = on.run(f"{slope.name} {cap}" if over else cap)
    yield f"{slope.name} {cap}", run, lines.ridge + lines.thickness, spots


def _rake_over(on: Trimmed, end: float) -> TrimRun:
    """The rake trim over one end of a slope: the one whose foot is nearest."""
    foot = on.plan.face.frame.point((end, 0.0, 0.0))
    return min(
        (run for run in on.runs if run.role is Role.RAKE_TRIM),
        key=lambda run: sum((a - b) ** 2 for a, b in zip(run.frame.origin, foot, strict=True)),
    )


def _reaching(seat: float) -> Turned:
    """A sheet screw long enough to pass from its seat into the steel: whole quarter inches, half an inch at
    least."""
    return hex_screw(NUMBER_12, max(2, ceil((seat + STEEL) / (INCH / 4))) * INCH / 4)
