"""The trim at a seam between tiers: a back leg up behind the upper sheets' feet, a shelf that falls outward,
a front leg down over the lower sheets' heads. It meets the next wall's at a mitre in the corner, where the
corner trim stands before both tiers and the front leg is notched around it."""

from __future__ import annotations

from collections.abc import Iterator

from ...description.opening import Opening
from ...envelope.face import Face
from ...envelope.stretches import remaining
from ...envelope.tiers import tiered
from ...place import Place, Point2, Point3
from ...roles import Role
from ..steel.straight_member import Plane
from .shelves import Shelf
from .trim_lines import TrimLines
from .trim_run import SNIP_PAST, Box, TrimRun

ALONG: Point3 = (0.0, 0.0, 1.0)


def tier_runs(lines: TrimLines, face: Face) -> Iterator[TrimRun]:
    """Along a wall's seam, less the openings that it meets."""
    seam = lines.steel.seam
    if seam is None or not tiered(lines.building, face.name):
        return
    legs = lines.profile("tier")
    section = Shelf(legs.in_plane, legs.out_of_plane, lines.seam, lines.thickness)
    (left, first), (right, last) = (_end(lines, face, hand) for hand in ("left", "right"))
    met = crossed_by(lines, face)
    notches = [(a, b, section.flange) for opening in met for a, b in _flanges(lines, opening)]
    notches += _under_legs(lines, face, section.edge)
    taken = [*(beside(lines, opening) for opening in met), *face.gaps]
    for number, (a, b) in enumerate(remaining((left, right), taken), 1):
        yield TrimRun(
            name=f"{face.name} tier trim {number}",
            role=Role.TIER_TRIM,
            group=("trims", face.name),
            labels=lines.labels(face.name, "tier"),
            # x up, y out of the wall, z to the right.
            frame=face.frame @ Place((0.0, seam.shelf, 0.0), (0.0, 1.0, 0.0), (0.0, 0.0, 1.0)),
            line=section.line,
            thickness=lines.thickness,
            start=first if a <= left else Plane((0.0, 0.0, a), ALONG),
            end=last if b >= right else Plane((0.0, 0.0, b), ALONG),
            nest=(section.nest, 0.0),
            snips=section.snips,
            notches=tuple(notches),
        )


def _end(lines: TrimLines, face: Face, hand: str) -> tuple[float, Plane]:
    """How far the trim reaches at one end of a wall, and the plane that ends it: mitred in the corner where
    it meets another; square before an open wall, behind the whole sheets of a wall that covers this one's
    ends, and on the corner trim past those of one that it covers."""
    side = face.beside(hand)
    corner, into = (0.0, 1.0) if hand == "left" else (face.width, -1.0)
    if face.open_at(hand) or side.open:
        return corner, Plane((0.0, 0.0, corner), ALONG)
    if not tiered(lines.building, side.other):
        past = lines.corner(lines.steel.named[side.other], "right" if hand == "left" else "left")
        end = corner - into * past * side.covers
        return end, Plane((0.0, 0.0, end), ALONG)
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
    past = lines.building.sheets.cut_clearance if opening.overhead else lip
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
    """Where an opening's trim lies on the steel, and what a notch in a leaning trim needs beside it."""
    wide = lines.profile("jamb angle" if opening.overhead else "j").in_plane + SNIP_PAST
    left, right = opening.from_left, opening.from_left + opening.width
    yield from ((left - wide, left), (right, right + wide))


Leg = tuple[float, float, float]
"""A leg of upright trim that stands before a seam, at a corner or the end of an open bay: from the end of the
sheets, which way (1, -1) it reaches over them, and how far."""


def legs_over(lines: TrimLines, face: Face) -> list[tuple[Leg, float]]:
    """Those of a wall, each with w of its inner face."""
    found = [
        ((end, into, lines.corner_leg(face, hand)), lines.corner(face, hand))
        for hand, end, into in (("left", 0.0, 1.0), ("right", face.width, -1.0))
        if not face.open_at(hand)
    ]
    return found + [((end, into, lines.end_leg), lines.side) for end, into in face.gap_ends()]


def covered(leg: Leg) -> Point2:
    """What a leg covers of a wall, from left to right."""
    end, into, reach = leg
    return min(end, end + into * reach), max(end, end + into * reach)


def _under_legs(lines: TrimLines, face: Face, lip: float) -> Iterator[tuple[float, float, Box]]:
    """What upright trims take of it: all of its front leg, and of its shelf what would reach out past this
    wall's leg, or at a corner past the next wall's."""
    t, past = lines.thickness, 2 * lines.seam

    def cut(end: float, into: float, edge: float, inner: float) -> tuple[float, float, Box]:
        low, high = sorted((end - into * past, end + into * edge))
        return low, high, (lip - 3 * t, inner, 3 * t, lines.seam + t + 1)

    for (end, into, reach), inner in legs_over(lines, face):
        yield cut(end, into, reach, inner)
    for hand, end, into in (("left", 0.0, 1.0), ("right", face.width, -1.0)):
        if not face.open_at(hand):
            next_wall = lines.steel.named[face.beside(hand).other]
            other = lines.corner(next_wall, "right" if hand == "left" else "left")
            yield cut(end, into, -other, other - 1)
