"""Screws that hold the trims: through legs into framing, past the sheets' pans, in rows.

Corner trim: at base rail and girts, in both legs (trade practice). Overhead-door angles: about 24 in
apart; the drip over the door: pan heads under the ribs of the sheets above. Rake trims: at every purlin,
and 24 in apart down the gable. Ridge cap: in every pan, into the upper purlin. Base, eave and J-trims are
held by the sheets' own screws, which pass through them.

A screw stands clear of the laps of a run; where it must stand in one, it keeps its distance from the ends
of both pieces and goes through both, its head on the outer one.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from math import ceil

import shapely

from ...description.building import Opening
from ...envelope.face import Face, rakes
from ...envelope.skin_lines import head_angle
from ...place import Place, Point2, Point3, dot
from ...recipe import Part, Sheet, Turned, grid
from ...roles import Role
from ..trim.tier_trims import corner_leg
from ..trim.trim_lines import TrimLines
from ..trim.trim_run import TrimRun, joints, lift
from .room import pans
from .screw_kinds import CLEAR, EDGE, INCH, NUMBER_10, NUMBER_12, SHANK, hex_screw, pan_screw
from .screw_lines import clear_of
from .sheet_screws import Fastening, Missed

STEEL = 5.0
"""mm; a screw's point reaches at least this far past the steel line."""
ROW = 25.0
"""mm; how far a screw may leave its row, up or down. Ours."""


@dataclass(frozen=True)
class Trimmed:
    """A face with its sheets fastened, and the runs of trim that are to be."""

    lines: TrimLines
    plan: Fastening
    steel: Sequence[Part]
    sheets: Sequence[Part]
    runs: Sequence[TrimRun]

    def run(self, name: str) -> TrimRun:
        """The run of a name."""
        return next(run for run in self.runs if run.name == name)

    def lift(self, run: TrimRun, z: float) -> float:
        """How far, in thicknesses, a run's outermost piece at z rides on the ones before."""
        return lift(run, self.lines.building.trim.stock, self.lines.building.trim.lap, z)

    def bars(self, run: TrimRun) -> list[Point2]:
        """Where along a run no screw stands: beside the ends of its pieces."""
        found = joints(run, self.lines.building.trim.stock, self.lines.building.trim.lap)
        near = EDGE + 1.5  # pieces lean by a thickness, and their ends with them
        return [bar for a, b in found for bar in ((a - near, a + near), (b - near, b + near))]

    def laps(self, run: TrimRun) -> list[Point2]:
        """The laps of a run whole, where a screw stands only for want of a better place."""
        ends = iter(self.bars(run))
        return [(low, high) for (low, _), (_, high) in zip(ends, ends, strict=True)]


def trim_screws(on: Trimmed) -> tuple[list[Part], list[Missed]]:
    """The rows of a face's trims, and those of their screws that would miss."""
    face, missed = on.plan.face, []
    rows: list[Part] = []
    flats = _flats(on)
    wanted = _on_slope(on) if face.sloped else _on_wall(on)
    for name, run, seat, spots in wanted:
        screw = _reaching(seat + on.lines.lap_room)
        laps, ends = _barred(on, run, on.laps(run)), _barred(on, run, on.bars(run))
        row = []
        for at, where in spots:
            pieces = flats.geometries[flats.query(where)]
            room = shapely.union_all(shapely.intersection(pieces, on.plan.room.steel & where))
            spot = on.plan.room.spot(at, room - laps) or on.plan.room.spot(at, room - ends)
            if spot is None:
                missed.append(Missed(name, face.name, at))
                continue
            on.plan.room.taken.append(spot)
            z = run.frame.seen(face.frame.point((*spot, 0.0)))[2]
            row.append((*spot, seat + on.lift(run, z) * on.lines.thickness))
        if row:
            rows.append(_row(run, name, face, screw, face.frame, row))
    if not face.sloped:
        rows += door_screws(on)
    return rows, missed


def _flats(on: Trimmed) -> shapely.STRtree:
    """The sheets' pans: a shank through a rib would leave air under it."""
    flats = [pans(on.plan.face, sheet, SHANK + 0.3) for sheet in on.sheets]
    return shapely.STRtree(shapely.get_parts(flats))


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


Spots = list[tuple[Point2, shapely.Geometry]]
Wanted = tuple[str, TrimRun, float, Spots]
"""A row's name, the run it holds, where its heads sit, and each screw's place with the region it may take."""


def _on_wall(on: Trimmed) -> Iterator[Wanted]:
    yield from _corners(on)
    if on.plan.face.raked:
        yield from _rakes(on)


def _corners(on: Trimmed) -> Iterator[Wanted]:
    """In each corner leg on a wall, one at every framing line that reaches it below the trim's head."""
    lines, face = on.lines, on.plan.face
    for hand, end, into in (("left", 0.0, 1.0), ("right", face.width, -1.0)):
        leg = corner_leg(lines, face, hand)
        seat, edge = leg.inner + lines.thickness, leg.reach
        eave = lines.steel.eaves.get(face.name) or lines.steel.eave_beside(face, hand)
        top = lines.steel.strut_foot(eave) if eave else face.upper.head
        corner = face.frame.point((end, 0.0, 0.0))
        run = min(
            (run for run in on.runs if run.role is Role.CORNER_TRIM),
            key=lambda run: sum((a - b) ** 2 for a, b in zip(run.frame.origin, corner, strict=True)),
        )
        u, strip = end + into * edge / 2, (end + into * EDGE, end + into * (edge - EDGE))
        heights = [
            line.at
            for line in on.plan.lines
            if not line.rise and line.left <= u <= line.right and line.at < top
        ]
        spots = [((u, v), shapely.box(min(strip), v - ROW, max(strip), v + ROW)) for v in heights]
        yield f"{face.name} corner trim {hand}", run, seat, spots


def _rakes(on: Trimmed) -> Iterator[Wanted]:
    """Down the gable, into the rake angles, the drop's width from the sheets' heads to its edge."""
    lines, gable, steel = on.lines, on.plan.face, on.lines.steel
    drop = lines.head_clearance + lines.profile("rake").out_of_plane
    # Pieces of a run lean by a thickness. The corner trim's leg lies under the rake trim's foot.
    high, low = lines.head_clearance + EDGE, min(drop - lines.thickness, steel.rake_leg) - EDGE
    apart = lines.building.screws.apart
    for rake in rakes(gable):
        corner = (lines.profile("corner").in_plane - lines.side + CLEAR) / rake.cos
        start = steel.strut_stop / rake.cos
        stop = rake.length if rake.head else rake.length - start
        places = [start + s for s in _spread(stop - start, 3 * INCH, apart)]
        last = rake.length + apart if rake.head else rake.length - corner
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
                        at(min(max(s, corner) + reach, last), high),
                        at(min(max(s, corner) + reach, last), low),
                        at(max(s - reach, corner), low),
                    ]
                ),
            )
            for s in places
        ]
        name = f"{gable.name} {rake.name} rake trim"
        yield name, on.run(name), lines.gable + lines.thickness, spots


def _on_slope(on: Trimmed) -> Iterator[Wanted]:
    """Through the rake trims' top legs into every purlin, and through the ridge cap's leg in every pan."""
    lines, slope = on.lines, on.plan.face
    leg = lines.profile("rake").in_plane
    ridge = lines.steel.ridge_of(slope)
    purlins = sorted(line.at for line in on.plan.lines)[1:]
    for hand, end, into in (("left", 0.0, 1.0), ("right", slope.width, -1.0)):
        strip = sorted((end + into * EDGE, end + into * (leg - EDGE)))
        u = end + into * 0.6 * leg
        spots = [((u, v), shapely.box(strip[0], v - ROW, strip[1], v + ROW)) for v in purlins[:-1]]
        yield f"{slope.name} rake trim {hand}", _rake_over(on, end), lines.roof_crown + lines.thickness, spots
    if ridge is None:
        return
    pitch, v = slope.upper.skin.profile.pitch, purlins[-1]
    ribs = [rib for rib in _ribs(on) if leg < rib and rib + pitch < slope.width - leg]
    spots = [((rib + pitch / 2, v), shapely.box(rib, v - ROW, rib + pitch, v + ROW)) for rib in ribs]
    yield f"{slope.name} ridge cap", on.run("ridge cap"), lines.ridge + lines.thickness, spots


def _rake_over(on: Trimmed, end: float) -> TrimRun:
    """The rake trim over one end of a slope: the one whose foot is nearest."""
    foot = on.plan.face.frame.point((end, 0.0, 0.0))
    return min(
        (run for run in on.runs if run.role is Role.RAKE_TRIM),
        key=lambda run: sum((a - b) ** 2 for a, b in zip(run.frame.origin, foot, strict=True)),
    )


def _ribs(on: Trimmed) -> list[float]:
    """u of every major rib of a face's sheets, each once, from the left."""
    profile, frame = on.plan.face.upper.skin.profile, on.plan.face.frame
    found = set()
    for sheet in on.sheets:
        assert isinstance(sheet.recipe, Sheet)
        right = max(u for u, _ in sheet.recipe.outline)
        for k in range(round(profile.cover / profile.pitch) + 1):
            if k * profile.pitch < right:
                found.add(round(frame.seen(sheet.place.point((k * profile.pitch, 0.0, 0.0)))[0], 3))
    return sorted(found)


def door_screws(on: Trimmed) -> Iterator[Part]:
    """In the angles and drips of a face's overhead doors."""
    face, lines = on.plan.face, on.lines
    depth, t = lines.building.framing.jamb.depth, lines.thickness
    number_10 = hex_screw(NUMBER_10, INCH)
    for number, o in enumerate(face.openings, 1):
        if o.kind != "overhead door":
            continue
        name = f"{face.name} {o.kind} {number}"
        # z of a screw's own frame points from steel to head: out of the reveal, into the opening.
        for hand, u, into in (("left", o.from_left, 1.0), ("right", o.from_left + o.width, -1.0)):
            frame = face.frame @ Place((u, o.sill, -depth / 2), (0.0, into, 0.0), (0.0, 0.0, 1.0))
            run = on.run(f"{name} jamb angle {hand}")
            row = [(into * z, 0.0, t * (1 + on.lift(run, z))) for z in _along(on, run, o.height)]
            yield _row(run, f"{name} jamb {hand}", face, number_10, frame, row)
        inward = min(depth, lines.building.framing.header.depth) / 2
        head = face.frame @ Place((o.from_left, o.sill + o.height, -inward), (1.0, 0.0, 0.0), (0.0, 0.0, 1.0))
        run = on.run(f"{name} head angle")
        row = [(z, 0.0, t * (1 + on.lift(run, z))) for z in _along(on, run, o.width)]
        yield _row(run, f"{name} head", face, number_10, head, row)
        if under := list(_under_ribs(on, o, on.run(f"{name} drip"))):
            yield _row(run, f"{name} drip", face, pan_screw(NUMBER_10, 0.75 * INCH), face.frame, under)


def _along(on: Trimmed, run: TrimRun, length: float) -> Iterable[float]:
    """Evenly along a door's edge, clear of the ends of its trim's pieces."""
    bars = on.bars(run)
    for z in _spread(length, 2 * INCH, on.lines.building.screws.apart):
        yield clear_of(z, (INCH, length - INCH), bars)


def _under_ribs(on: Trimmed, opening: Opening, run: TrimRun) -> Iterator[Point3]:
    """On the drip's back leg, in the hollows of the sheets' ribs, where low heads find room."""
    lines, screws = on.lines, on.lines.building.screws
    shelf = opening.sill + opening.height + head_angle(lines.building, opening)
    profile = on.plan.face.upper.skin.profile
    step = max(1, int(screws.apart // profile.pitch))
    left, right = opening.from_left + INCH, opening.from_left + opening.width - INCH
    half = profile.crown / 2
    for rib in [rib for rib in _ribs(on) if left < rib < right][::step]:
        top = shelf + lines.profile("drip").in_plane - EDGE
        where = shapely.box(rib - half, shelf + EDGE, rib + half, top) & on.plan.room.steel
        if spot := on.plan.room.spot((rib, shelf + EDGE), where):
            on.plan.room.taken.append(spot)
            yield (*spot, lines.thickness)


def _reaching(seat: float) -> Turned:
    """A sheet screw long enough to pass from its seat into the steel: whole quarter inches."""
    return hex_screw(NUMBER_12, ceil((seat + STEEL) / (INCH / 4)) * INCH / 4)


def _spread(length: float, margin: float, apart: float) -> list[float]:
    """Evenly along a length, no further apart than told, the first and last at a margin from its ends."""
    count = max(1, ceil((length - 2 * margin) / apart))
    return [margin + (length - 2 * margin) * k / count for k in range(count + 1)]


def _row(run: TrimRun, name: str, face: Face, screw: Turned, frame: Place, row: Sequence[Point3]) -> Part:
    labels = (("face", face.name), ("colour", dict(run.labels)["colour"]), ("material", "screw"))
    first = row[0]
    moved = tuple((grid(p[0] - first[0]), grid(p[1] - first[1]), grid(p[2] - first[2])) for p in row)
    return Part(
        f"{name} screws", Role.TRIM_SCREW, ("screws", face.name), screw, frame @ Place(first), labels, moved
    )
