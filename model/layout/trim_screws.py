"""Screws that hold the trims: through legs into framing, in straight rows.

Corner trim: 1 in screws at base rail and girts, in both legs (trade practice). Overhead-door angles:
about 24 in apart; the drip over the door: pan heads. Rake trims: at every purlin, and 24 in apart down
the gable. Ridge cap: at every major rib, into the upper purlin. Base, eave and J-trims are held by the
sheets' own screws, which pass through them.
"""

from __future__ import annotations

from collections.abc import Iterator
from math import ceil

from ..place import Place, Point3
from ..recipe import Part, Turned, grid
from ..roles import Role
from .faces import Face, head_angle
from .screw_kinds import INCH, NUMBER_10, NUMBER_12, hex_screw, pan_screw
from .trim_lines import TrimLines

STEEL = 5.0
"""mm; a screw's point reaches at least this far past the steel line."""


def corner_screws(lines: TrimLines, face: Face) -> Iterator[Part]:
    """A row in each corner leg on this face, one at every framing line below the head."""
    steel = lines.steel
    gable = face.name in ("front", "back")
    seat = (lines.crown if gable else lines.side) + lines.thickness
    legs = lines.profile("corner")
    # Half way along the leg's lap onto this face.
    inset = (legs.in_plane - lines.side) / 2 if gable else (legs.out_of_plane - lines.crown) / 2
    heights = [lines.building.framing.base_rail.depth / 2, *steel.side_girts]
    screw = _reaching(seat)
    for hand, u in (("left", inset), ("right", face.width - inset)):
        row = tuple((grid(u), grid(v), grid(seat)) for v in heights)
        yield _row(lines, f"{face.name} corner trim {hand}", face, screw, face.frame, row)


def door_screws(lines: TrimLines, face: Face) -> Iterator[Part]:
    """In the angles and drips of a face's overhead doors."""
    depth, t = lines.building.framing.jamb.depth, lines.thickness
    number_10, pan = hex_screw(NUMBER_10, INCH), pan_screw(NUMBER_10, 0.75 * INCH)
    for number, o in enumerate(face.openings, 1):
        if o.kind != "overhead door":
            continue
        name = f"{face.name} {o.kind} {number}"
        apart = lines.building.screws.apart
        up, across = _spread(o.height, 2 * INCH, apart), _spread(o.width, 2 * INCH, apart)
        # z of a screw's own frame points from steel to head: out of the reveal, into the opening.
        for hand, u, into in (("left", o.from_left + t, 1.0), ("right", o.from_left + o.width - t, -1.0)):
            frame = face.frame @ Place((u, o.sill, -depth / 2), (0.0, into, 0.0), (0.0, 0.0, 1.0))
            row = tuple((grid(into * v), 0.0, 0.0) for v in up)
            yield _row(lines, f"{name} jamb {hand}", face, number_10, frame, row)
        head = face.frame @ Place(
            (o.from_left, o.sill + o.height - t, -depth / 2), (1.0, 0.0, 0.0), (0.0, 0.0, 1.0)
        )
        yield _row(lines, f"{name} head", face, number_10, head, tuple((grid(u), 0.0, 0.0) for u in across))
        v = o.sill + o.height + head_angle(lines.building, o) + lines.profile("j").in_plane / 2
        frame = face.frame @ Place((o.from_left, v, t))
        yield _row(lines, f"{name} drip", face, pan, frame, tuple((grid(u), 0.0, 0.0) for u in across))


def rake_screws(lines: TrimLines, gable: Face) -> Iterator[Part]:
    """Down the gable, 24 in apart, into the rake angles."""
    steel = lines.steel
    seat = lines.gable + lines.thickness
    down = min(lines.profile("rake").out_of_plane, steel.rake_leg) / 2
    length = steel.rafter_length - steel.strut_stop / steel.cos
    spots = _spread(length, 3 * INCH, lines.building.screws.apart)
    for hand, u, side in (("left", 0.0, 1.0), ("right", gable.width, -1.0)):
        start = steel.strut_stop / steel.cos
        x, y = (side * steel.cos, steel.sin, 0.0), (-side * steel.sin * side, steel.cos * side, 0.0)
        frame = gable.frame @ Place((u, lines.building.eave_height, seat), x, y)
        row = tuple((grid(start + s), grid(-side * down), 0.0) for s in spots)
        yield _row(lines, f"{gable.name} {hand} rake trim", gable, _reaching(seat), frame, row)


def slope_screws(lines: TrimLines, slope: Face) -> Iterator[Part]:
    """Through the rake trims' top legs into every purlin, and through the ridge cap's leg at every rib."""
    steel, sheets = lines.steel, lines.building.sheets
    seat = lines.crown + lines.thickness
    screw = _reaching(seat)
    inset = 0.6 * lines.profile("rake").in_plane
    for hand, u in (("left", inset), ("right", slope.width - inset)):
        row = tuple((grid(u), grid(v), grid(seat)) for v in steel.purlins[:-1])
        if row:
            yield _row(lines, f"{slope.name} rake trim {hand}", slope, screw, slope.frame, row)
    top = lines.ridge + lines.thickness
    pitch, rake = sheets.profile.pitch, lines.profile("rake").in_plane
    count = int((slope.width - 2 * rake) / pitch)
    start = (slope.width - count * pitch) / 2
    ribs = tuple((grid(start + k * pitch), grid(steel.purlins[-1]), grid(top)) for k in range(count + 1))
    yield _row(lines, f"{slope.name} ridge cap", slope, _reaching(top), slope.frame, ribs)


def _reaching(seat: float) -> Turned:
    """A sheet screw long enough to pass from its seat into the steel: whole quarter inches."""
    return hex_screw(NUMBER_12, ceil((seat + STEEL) / (INCH / 4)) * INCH / 4)


def _spread(length: float, margin: float, apart: float) -> list[float]:
    """Evenly along a length, no further apart than told, the first and last at a margin from its ends."""
    count = max(1, ceil((length - 2 * margin) / apart))
    return [margin + (length - 2 * margin) * k / count for k in range(count + 1)]


def _row(
    lines: TrimLines, name: str, face: Face, screw: Turned, frame: Place, row: tuple[Point3, ...]
) -> Part:
    labels = (("face", face.name), ("colour", lines.building.trim.colour), ("material", "screw"))
    first = row[0]
    moved = tuple((grid(p[0] - first[0]), grid(p[1] - first[1]), grid(p[2] - first[2])) for p in row)
    return Part(
        f"{name} screws", Role.TRIM_SCREW, ("screws", face.name), screw, frame @ Place(first), labels, moved
    )
