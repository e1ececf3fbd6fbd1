"""Screws in the angles and the drip of an overhead door: the angles about 24 in apart, the drip with pan
heads under the ribs of the sheets above (trade practice)."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

import shapely

from ...description.opening import Opening
from ...envelope.skin_lines import head_angle
from ...place import Place, Point3
from ...recipe import Part
from ..trim.trim_run import TrimRun
from .screw_kinds import EDGE, INCH, NUMBER_10, hex_screw, pan_screw
from .screw_lines import clear_of
from .trimmed import Trimmed, row_of, spread


def door_screws(on: Trimmed) -> Iterator[Part]:
    """In the angles and drips of a face's overhead doors."""
    face, lines = on.plan.face, on.lines
    depth, t = lines.building.framing.jamb.depth, lines.thickness
    number_10 = hex_screw(NUMBER_10, INCH)
    for number, o in enumerate(face.openings, 1):
        if not o.overhead:
            continue
        name = f"{face.name} {o.kind} {number}"
        # z of a screw's own frame points from steel to head: out of the reveal, into the opening.
        for hand, u, into in (("left", o.from_left, 1.0), ("right", o.from_left + o.width, -1.0)):
            frame = face.frame @ Place((u, o.sill, -depth / 2), (0.0, into, 0.0), (0.0, 0.0, 1.0))
            run = on.run(f"{name} jamb angle {hand}")
            row = [(into * z, 0.0, t * (1 + on.lift(run, z))) for z in _along(on, run, o.height)]
            yield row_of(run, f"{name} jamb {hand}", face, number_10, frame, row)
        inward = min(depth, lines.building.framing.header.depth) / 2
        head = face.frame @ Place((o.from_left, o.sill + o.height, -inward), (1.0, 0.0, 0.0), (0.0, 0.0, 1.0))
        run = on.run(f"{name} head angle")
        row = [(z, 0.0, t * (1 + on.lift(run, z))) for z in _along(on, run, o.width)]
        yield row_of(run, f"{name} head", face, number_10, head, row)
        if under := list(_under_ribs(on, o, on.run(f"{name} drip"))):
            yield row_of(run, f"{name} drip", face, pan_screw(NUMBER_10, 0.75 * INCH), face.frame, under)


def _along(on: Trimmed, run: TrimRun, length: float) -> Iterable[float]:
    """Evenly along a door's edge, clear of the ends of its trim's pieces."""
    bars = on.bars(run)
    for z in spread(length, 2 * INCH, on.lines.building.screws.apart):
        yield clear_of(z, (INCH, length - INCH), bars)


def _under_ribs(on: Trimmed, opening: Opening, run: TrimRun) -> Iterator[Point3]:
    """On the drip's back leg, in the hollows of the sheets' ribs, where low heads find room."""
    lines, screws = on.lines, on.lines.building.screws
    shelf = opening.sill + opening.height + head_angle(lines.building, opening)
    above = on.plan.face.region_at(shelf)
    step = max(1, int(screws.apart // above.skin.profile.pitch))
    left, right = opening.from_left + INCH, opening.from_left + opening.width - INCH
    half = above.skin.profile.crown / 2
    for rib in [rib for rib in on.ribs(above) if left < rib < right][::step]:
        top = shelf + lines.profile("drip").in_plane - EDGE
        where = shapely.box(rib - half, shelf + EDGE, rib + half, top) & on.plan.room.steel
        if spot := on.plan.room.spot((rib, shelf + EDGE), where):
            on.plan.room.taken.add(spot)
            yield (*spot, lines.thickness)
