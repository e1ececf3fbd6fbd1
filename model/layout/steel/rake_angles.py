"""Angles along the rakes: they close the purlins' ends, and back the raked edges of a gable's sheets."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from math import hypot

from ...envelope.face import Face
from ...envelope.steel_lines import SteelLines
from ...envelope.stretches import Span
from ...place import Point3, way
from ...recipe import Part, Section
from ...roles import Role
from .framing import RIGHT, framing_part
from .straight_member import Plane, member


def rake_angles(lines: SteelLines, face: Face) -> Iterator[Part]:
    """Those of a gable, and of the roof's end where it runs on over it; none of another face."""
    if face.sloped:
        return
    yield from _closing(lines, lines.verge(face))
    if lines.run_on and lines.setback and not face.open:
        yield from _hung(lines, face)


def _closing(lines: SteelLines, face: Face) -> Iterator[Part]:
    """Angles along the rakes, so that the cut edges of the gable's sheets have steel behind them.

    The upright leg closes the ends of the purlins; the other turns in under them. With flush girts the
    end rafter lies there, and a flat strip as deep as the purlins is left.
    """
    shape = lines.building.framing.rake_angle
    leg = lines.rake_leg
    section = shape.section() if lines.setback else _strip(leg, shape.thickness)
    inward = shape.width / 2 if lines.setback else shape.thickness / 2
    for name, foot, along, depth, ends in _along_rakes(face, (lines.strut_stop, lines.strut_stop)):
        centre = (foot[0] - depth[0] * leg / 2, foot[1] - depth[1] * leg / 2, -inward)
        yield framing_part(face, name, Role.RAKE_ANGLE, *member(section, centre, along, depth, *ends))


def _hung(lines: SteelLines, face: Face) -> Iterator[Part]:
    """The same angles turned over, under purlins that run on over a clad gable: their lying legs against the
    purlins, their upright ones behind the heads of its sheets."""
    shape = lines.building.framing.rake_angle
    top, below = lines.rake_back[0], sum(lines.rake_back) / 2
    inside = _beside_jambs(lines, face, "left"), _beside_jambs(lines, face, "right")
    for name, foot, along, depth, ends in _along_rakes(face, inside, top):
        centre = (foot[0] - depth[0] * below, foot[1] - depth[1] * below, -shape.width / 2)
        made = member(shape.section(), centre, _turned(along), _turned(depth), *ends[::-1])
        yield framing_part(face, f"hung {name}", Role.RAKE_ANGLE, *made)


def _beside_jambs(lines: SteelLines, face: Face, hand: str) -> float:
    """From a gable's corner, what the uprights there take: its own, and that of the next wall's end."""
    jamb, other = lines.building.framing.jamb, lines.named[face.beside(hand).other]
    deep = lines.end_jamb(face, hand) or lines.hung_jamb(face, hand)
    wide = face.hung and lines.end_jamb(other, "right" if hand == "left" else "left")
    return jamb.depth * deep + (lines.past_upright if deep else jamb.width) * bool(wide)


Raked = tuple[str, Span, Point3, Point3, tuple[Plane, Plane]]
"""What runs along a rake: its name, the rake's foot (u, v), its way to the right, square to that upward, and
the planes that end it."""


def _along_rakes(face: Face, inside: Span, below: float = 0.0) -> Iterator[Raked]:
    """Each rake of a gable. inside: from its left and right corner, how far in what runs there stops. below:
    how far under the roof's steel plane (square) it runs: where two slopes' meet. Those of two that climb one
    way are mitred, as the rafters there."""
    points, low = face.top.points, face.top.lowered(below).points
    places = {one[0]: other[0] for one, other in zip(points, low, strict=True)}
    places |= {points[0][0]: points[0][0] + inside[0], points[-1][0]: points[-1][0] - inside[1]}
    ends = {at: Plane((u, 0.0, 0.0), RIGHT) for at, u in places.items()}
    for before, at, after in zip(points, points[1:], points[2:], strict=False):
        one, other = way(before, at), way(at, after)
        if one[1] * other[1] > 0.0:
            ends[at[0]] = Plane((*at, 0.0), (one[0] + other[0], one[1] + other[1], 0.0))
    hands: Counter[str] = Counter()
    for (u0, v0), (u1, v1) in face.raking:
        size = hypot(u1 - u0, v1 - v0)
        along = ((u1 - u0) / size, (v1 - v0) / size, 0.0)
        planes = (ends[u0], ends[u1])
        hand = "left" if v1 > v0 else "right"
        hands[hand] += 1
        name = f"rake angle {hand}" + (f" {hands[hand]}" if hands[hand] > 1 else "")
        foot = (u0, v0) if v1 > v0 else (u1, v1)
        yield name, foot, along, (-along[1], along[0], 0.0), planes


def _strip(depth: float, thickness: float) -> Section:
    """A flat strip standing on edge, centred."""
    x, y = thickness / 2, depth / 2
    return Section(((-x, -y, 0.0), (x, -y, 0.0), (x, y, 0.0), (-x, y, 0.0)))


def _turned(way: Point3) -> Point3:
    return (-way[0], -way[1], -way[2])
