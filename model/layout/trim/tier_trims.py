"""The trim at a seam between tiers: a back leg up behind the upper sheets' feet, a shelf that falls outward,
a front leg down over the lower sheets' heads. It meets the next wall's at a mitre in the corner, where the
corner trim stands before both tiers and the front leg is notched around it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from math import hypot

from ...description.building import Opening
from ...envelope.face import Face
from ...envelope.skin_lines import SHELF_FALL
from ...envelope.tiers import tiered
from ...place import Place, Point2, Point3
from ...roles import Role
from ..steel.framing import remaining
from ..steel.straight_member import Plane
from .trim_lines import TrimLines
from .trim_run import Box, TrimRun

ALONG: Point3 = (0.0, 0.0, 1.0)


def tier_runs(lines: TrimLines, face: Face) -> Iterator[TrimRun]:
    """Along a wall's seam, less the openings that it meets."""
    seam = lines.steel.seam
    if seam is None or not tiered(lines.building, face.name):
        return
    t, legs, deep = lines.thickness, lines.profile("tier"), lines.seam
    leg, lip = legs.in_plane, -SHELF_FALL - legs.out_of_plane
    flange: Box = (-3 * t, -1.0, leg + 1, t)
    (left, first), (right, last) = (_end(lines, face, hand) for hand in ("left", "right"))
    met = crossed_by(lines, face)
    notches = [(a, b, flange) for opening in met for a, b in _flanges(lines, opening)]
    notches += _corners(lines, face, lip)
    for number, (a, b) in enumerate(remaining((left, right), [beside(lines, opening) for opening in met]), 1):
        yield TrimRun(
            name=f"{face.name} tier trim {number}",
            role=Role.TIER_TRIM,
            group=("trims", face.name),
            labels=lines.labels(face.name, "tier"),
            # x up, y out of the wall, z to the right.
            frame=face.frame @ Place((0.0, seam.shelf, 0.0), (0.0, 1.0, 0.0), (0.0, 0.0, 1.0)),
            line=((leg, 0.0), (0.0, 0.0), (-SHELF_FALL, deep), (lip, deep)),
            thickness=t,
            start=first if a <= left else Plane((0.0, 0.0, a), ALONG),
            end=last if b >= right else Plane((0.0, 0.0, b), ALONG),
            # At a lap only the shelves nest.
            nest=(t * hypot(SHELF_FALL, deep) / deep, 0.0),
            snips=(flange, (lip - 3 * t, deep, 3 * t, deep + t + 1)),
            notches=tuple(notches),
        )


def _end(lines: TrimLines, face: Face, hand: str) -> tuple[float, Plane]:
    """How far the trim reaches at one end of a wall, and the plane that ends it: mitred in the corner, or
    square behind the whole sheets of a wall that covers this one's ends."""
    side = face.beside(hand)
    corner, into = (0.0, 1.0) if hand == "left" else (face.width, -1.0)
    if not side.covers and not tiered(lines.building, side.other):
        return corner, Plane((0.0, 0.0, corner), ALONG)
    across, out = side.mitre
    mitre = Plane((0.0, 0.0, corner), (0.0, into * out, across))
    return corner - into * lines.seam * out / across, mitre


def crossed_by(lines: TrimLines, face: Face) -> list[Opening]:
    """The openings of a wall that its seam runs into."""
    seam = lines.steel.seam
    assert seam is not None
    return [o for o in face.openings if o.sill < seam.shelf < o.sill + o.height]


def beside(lines: TrimLines, opening: Opening) -> Point2:
    """What an opening takes of a seam: up to the lips of its trim, or the edges of the sheets beside it."""
    lip = lines.profile("j").out_of_plane + lines.lap_room
    past = lines.building.sheets.cut_clearance if opening.kind == "overhead door" else lip
    return opening.from_left - past, opening.from_left + opening.width + past


def under_lips(lines: TrimLines, face: Face) -> Iterator[Point2]:
    """Between the edges of the sheets beside openings and the trim at the seam: under the lips of the J's."""
    clear = lines.building.sheets.cut_clearance
    for opening in crossed_by(lines, face):
        (low, high), left, right = (
            beside(lines, opening),
            opening.from_left,
            opening.from_left + opening.width,
        )
        yield from ((a, b) for a, b in ((low, left - clear), (right + clear, high)) if b > a)


def _flanges(lines: TrimLines, opening: Opening) -> Iterator[Point2]:
    """Where an opening's trim lies on the steel."""
    wide = lines.profile("jamb angle" if opening.kind == "overhead door" else "j").in_plane
    left, right = opening.from_left, opening.from_left + opening.width
    yield from ((left - wide, left), (right, right + wide))


@dataclass(frozen=True, slots=True)
class CornerLeg:
    """A corner trim's leg on one wall: how far it reaches from the corner, and w of its inner face."""

    reach: float
    inner: float


def corner_leg(lines: TrimLines, face: Face, hand: str) -> CornerLeg:
    """The leg at a wall's left or right end."""
    legs = lines.profile("corner")
    if face.beside(hand).covers:
        return CornerLeg(legs.in_plane - lines.side, lines.crown(face))
    return CornerLeg(legs.out_of_plane - lines.gable_crown, lines.side)


def _corners(lines: TrimLines, face: Face, lip: float) -> Iterator[tuple[float, float, Box]]:
    """What the corner trims at a wall's ends take of it: all of its front leg, and of its shelf what would
    reach out past this wall's leg, or past the next wall's."""
    t, past = lines.thickness, 2 * lines.seam
    for hand, end, into in (("left", 0.0, 1.0), ("right", face.width, -1.0)):
        leg = corner_leg(lines, face, hand)
        next_wall = lines.steel.named[face.beside(hand).other]
        other = corner_leg(lines, next_wall, "right" if hand == "left" else "left")
        for inner, edge in ((leg.inner, leg.reach), (other.inner - 1, -other.inner)):
            low, high = sorted((end - into * past, end + into * edge))
            yield low, high, (lip - 3 * t, inner, 3 * t, lines.seam + t + 1)
