"""Framing lines of walls: base rail, girts and eave strut.

All are written in the frame of their face (u right, v up, w outward, 0 on the steel line), once for
every wall. Members stop at openings, at what stands in their way, and are mitred where two walls'
members meet at a corner.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from math import atan, degrees

from ...catalog.sections import strut_section
from ...envelope.face import Face
from ...envelope.headwall import rafter_band, rafter_spans
from ...envelope.opening_lines import OpeningLines
from ...envelope.roof_lines import Eave
from ...envelope.splices import SPLICE, in_stock
from ...envelope.steel_lines import SteelLines
from ...envelope.stretches import SHORTEST, Span, remaining
from ...place import Place, Point3
from ...recipe import Part, Recipe, Section
from ...roles import Role
from ..role_colours import FRAMING
from .in_line_ends import under_roof_steel
from .straight_member import Plane, member, square, under_roof

RIGHT: Point3 = (1.0, 0.0, 0.0)
LEFT: Point3 = (-1.0, 0.0, 0.0)
UP: Point3 = (0.0, 1.0, 0.0)
OUT: Point3 = (0.0, 0.0, 1.0)

INWARD = (("left", 1.0), ("right", -1.0))

HEADWALL = "headwall"
"""Where a lean-to's ledger is listed: its own wall there has no other name."""


def wall_framing(lines: OpeningLines, face: Face) -> Iterator[Part]:
    """Base rail, girts and, on a side wall, the eave strut; of an open wall what its roof ends on."""
    if not face.open:
        if face.hung is None:
            yield from _base_rail(lines, face)
        yield from _girts(lines, face)
        yield from _end_jambs(lines, face)
    if eave := lines.eaves.get(face.name):
        yield from _eave_strut(lines, face, eave)


def spliced(lines: SteelLines, face: Face, role: Role, spans: Sequence[Span]) -> list[Span]:
    """Spans of a line in pieces that can be bought, butted on frames or posts, or lapped over frames."""
    found: list[Span] = []
    for span in spans:
        pieces = in_stock(span, lines.backs(face), max(lines.building.framing.sticks(role)), lines.arm(face))
        if lines.arm(face):
            found += pieces
            continue
        inner = [half for end, _ in pieces[1:] for half in (end - SPLICE / 2, end + SPLICE / 2)]
        ends = [span[0], *inner, span[1]]
        found += zip(ends[::2], ends[1::2], strict=True)
    return found


def framing_part(face: Face, name: str, role: Role, recipe: Recipe, place: Place) -> Part:
    """A part of a face's framing, where it stands on that face."""
    label = (("face", face.name), *FRAMING)
    return Part(f"{face.name} {name}", role, ("framing", face.name), recipe, face.frame @ place, label)


def _blocked(lines: SteelLines, face: Face, depth: float) -> list[Span]:
    """Where columns and posts interrupt a member that reaches in as far as they stand."""
    if not lines.reaches_frames(depth):
        return []
    return [(u - half, u + half) for u, half in lines.uprights(face)]


def _rafters(lines: SteelLines, face: Face, depth: float, top: float) -> list[Span]:
    """Where rafters wider than their columns interrupt what reaches up beside them on a side wall."""
    eave = lines.eaves.get(face.name)
    if eave is None or not lines.reaches_frames(depth) or top <= lines.rafter_foot(eave):
        return []
    return list(lines.rafters(face))


def _lean_to_rafters(lines: SteelLines, face: Face, heights: Span) -> list[Span]:
    """Where the rafters of a lean-to come through between two heights."""
    band = rafter_band(lines.building, face.name)
    if band is None or heights[0] >= band[1] or heights[1] <= band[0]:
        return []
    return list(rafter_spans(lines.building, face.name, face.frame))


def _knees(lines: SteelLines, face: Face, depth: float, top: float) -> list[Span]:
    """Where the end frame's knees stand in the plane of a gable's girts."""
    left, right = (lines.knee_reach(face, hand, top, depth) for hand in ("left", "right"))
    return [(0.0, left)] * bool(left) + [(face.width - right, face.width)] * bool(right)


def ends_of(span: Span, whole: tuple[Plane, Plane], full: Span) -> tuple[Plane, Plane]:
    """End planes of a piece of a line: the line's own where it reaches its ends, else square."""
    start = whole[0] if span[0] <= full[0] else square((span[0], 0.0, 0.0), RIGHT)
    end = whole[1] if span[1] >= full[1] else square((span[1], 0.0, 0.0), RIGHT)
    return start, end


def _corner_mitre(face: Face, hand: str) -> Plane:
    """The upright plane through a corner that halves the angle between two walls."""
    across, out = face.beside(hand).mitre
    if hand == "left":
        return Plane((0.0, 0.0, 0.0), (across, 0.0, out))
    return Plane((face.width, 0.0, 0.0), (across, 0.0, -out))


def _line_end(lines: SteelLines, face: Face, hand: str) -> tuple[float, Plane]:
    """How far a line of steel that runs to a wall's corner reaches, and the plane that ends it: mitred with
    the next wall's, or square, on the upright before an open one."""
    corner, inward = lines.steel_end(face, hand), 1.0 if hand == "left" else -1.0
    if face.hung and lines.end_jamb(
        lines.named[face.beside(hand).other], "right" if hand == "left" else "left"
    ):
        # Beside the upright of the wall that is clad, and its girt, where that comes nearer to the corner.
        jamb, girt = lines.building.framing.jamb, lines.building.framing.girt.depth
        corner += inward * max(jamb.width, girt if jamb.depth < girt else 0.0)
        return corner, square((corner, 0.0, 0.0), RIGHT)
    if lines.setback and not face.beside(hand).open:
        return corner, _corner_mitre(face, hand)
    if lines.end_jamb(face, hand):
        corner += inward * lines.building.framing.jamb.depth
    return corner, square((corner, 0.0, 0.0), RIGHT)


def _end_jambs(lines: SteelLines, face: Face) -> Iterator[Part]:
    """Uprights where a wall ends at an open one, from slab to eave strut, or to a half wall's top: their webs
    behind the sheets, wide enough for a screw beside the corner rib, a flange towards the open wall."""
    shape = lines.building.framing.jamb
    half = shape.depth / 2
    stood = [(lines.steel_end(face, hand), into, hand) for hand, into in INWARD if lines.end_jamb(face, hand)]
    bays = face.gap_ends() if lines.setback else ()
    stood += [(u, into, f"of bay {number}") for number, (u, into) in enumerate(bays, 1)]
    hung = [(hand, into) for hand, into in INWARD if lines.hung_jamb(face, hand)]
    stood += [(lines.steel_end(face, hand) + into * lines.past_upright, into, hand) for hand, into in hung]
    foot = face.hung.girt + lines.building.framing.girt.width / 2 if face.hung else 0.0
    for end, into, name in stood:
        u, eave = end + into * half, lines.over_corner(face, "left" if end < face.width / 2 else "right")
        sides = (end, end + 2 * into * half)
        head = lines.strut_foot(eave) if face.raked else lines.corner_top(eave)
        head = min(head, under_roof_steel(lines, face, *sides))
        if face.raked and not lines.run_on:
            head = min(head, *(face.top.lowered(lines.rake_leg).height(u) for u in sides))
        if face.half:
            head = face.half.girt + lines.building.framing.girt.width / 2
        ends = square((u, foot, 0.0), UP), square((u, head, 0.0), UP)
        made = member(shape.section(), (u, 0.0, -shape.width / 2), UP, LEFT, *ends)
        yield framing_part(face, f"end jamb {name}", Role.JAMB, *made)


def _base_rail(lines: SteelLines, face: Face) -> Iterator[Part]:
    """An angle on the slab, its upright leg on the steel line; open at doors."""
    framing = lines.building.framing
    shape = framing.base_rail
    jamb = framing.jamb.width
    doors = [(o.from_left - jamb, o.from_left + o.width + jamb) for o in face.openings if o.sill == 0]
    (left, start), (right, end) = (_line_end(lines, face, hand) for hand in ("left", "right"))
    full, ends = (left, right), (start, end)
    taken = doors + lines.gap_spans(face) + _blocked(lines, face, shape.width)
    if not lines.setback and face.raked:
        # The corner columns' plates reach in along the gable.
        plate = lines.building.frame.column.depth + 2 * lines.building.frame.plate_reach
        taken += [(0.0, plate), (face.width - plate, face.width)]
    for number, span in enumerate(spliced(lines, face, Role.BASE_RAIL, remaining(full, taken)), 1):
        if span[1] - span[0] < shape.width + SHORTEST:
            continue  # a stub at a corner, shorter than its mitre
        centre = (0.0, shape.depth / 2, -shape.width / 2)
        # Depth up and the axis to the right leave the section's x, the lying leg, pointing inward.
        made = member(shape.section(), centre, RIGHT, UP, *ends_of(span, ends, full))
        yield framing_part(face, f"base rail {number}", Role.BASE_RAIL, *made)


def _girts(lines: OpeningLines, face: Face) -> Iterator[Part]:
    """Girts, their webs above and toes down, so that they hold no dirt. Common practice, no source."""
    shape = lines.building.framing.girt
    number = 0
    for v in lines.girts(face):
        (left, start), (right, end) = (_girt_end(lines, face, hand, v) for hand in ("left", "right"))
        full, whole = (left, right), (start, end)
        top = v + shape.width / 2
        taken = _blocked(lines, face, shape.depth) + _knees(lines, face, shape.depth, top)
        taken += _rafters(lines, face, shape.depth, top) + lines.gap_spans(face)
        taken += _lean_to_rafters(lines, face, (v - shape.width / 2, top))
        taken += [span for o in face.openings for span in lines.interruption(o, v)]
        upper = [_at(plane, top) for plane in whole]
        for a, b in spliced(lines, face, Role.GIRT, remaining(full, taken)):
            # A square cut under a rake stands where the girt's upper edge still is under it.
            span = (a if a <= full[0] else max(a, upper[0]), b if b >= full[1] else min(b, upper[1]))
            start, end = ends_of(span, whole, full)
            edges = [(x, w) for x in (v - shape.width / 2, top) for w in (0.0, -shape.depth)]
            if min(_at(end, *edge) - _at(start, *edge) for edge in edges) < SHORTEST:
                continue  # a stub at a corner or under a rake, shorter than its mitre
            number += 1
            made = member(shape.section(), (0.0, v, -shape.depth / 2), LEFT, OUT, end, start)
            yield framing_part(face, f"girt {number}", Role.GIRT, *made)


def _at(plane: Plane, v: float, w: float = 0.0) -> float:
    """u of an end plane at height v and w out of the wall."""
    (u, v0, w0), (across, up, out) = plane.point, plane.normal
    return u - (up * (v - v0) + out * (w - w0)) / across


def _girt_end(lines: SteelLines, face: Face, hand: str, v: float) -> tuple[float, Plane]:
    """How far a girt's line reaches to one end of a wall, and the plane that ends it."""
    corner, inward = (0.0, 1.0) if hand == "left" else (face.width, -1.0)
    if lines.to_corner(face, hand, v):
        end, plane = _line_end(lines, face, hand)
        if lines.hung_jamb(face, hand) and face.hung and v > face.hung.girt:
            beside = lines.past_upright - lines.building.framing.jamb.width
            end += inward * (beside + lines.building.framing.jamb.depth)
            plane = square((end, 0.0, 0.0), RIGHT)
        return end, plane
    girt = lines.building.framing.girt
    top = face.top.lowered(lines.rake_limit(girt.depth))
    reach = top.reach(v, hand)
    half = abs(girt.width / 2 / top.slope(reach))
    strut = corner + inward * lines.strut_stop
    beside_jamb = lines.end_jamb(face, hand) and v - girt.width / 2 < lines.strut_foot(
        lines.over_corner(face, hand)
    )
    if beside_jamb:  # which is wider than what stands over it
        strut = corner + inward * max(lines.strut_stop, lines.building.framing.jamb.depth)
    edges = [top.reach(v + side * girt.width / 2, hand) for side in (-1.0, 1.0)]
    if len({top.stretch(u) for u in edges}) > 1:  # the roof changes its pitch over its end
        start = max(*edges, strut) if inward > 0 else min(*edges, strut)
        return start, square((start, v, 0.0), RIGHT)
    if inward * (reach - inward * half) > inward * strut:
        return reach - inward * half, under_roof(top, reach)
    start = inward * max(inward * (reach + inward * half), inward * strut)
    return start, square((start, v, 0.0), RIGHT)


def _eave_strut(lines: SteelLines, face: Face, eave: Eave) -> Iterator[Part]:
    """A cee on edge under the eave corner, its upper flange folded to the pitch. At another building's wall
    it is a ledger, as deep as the purlins, and lies on the rafters with them."""
    shape, role = lines.building.framing.eave_strut, Role.EAVE_STRUT
    if face.name == lines.building.joined:
        shape, role = replace(shape, depth=lines.building.framing.roof_depth), Role.LEDGER
    section: Section = strut_section(shape, degrees(atan(eave.rise)))
    centre, along = (*eave.left, 0.0), (*eave.along, 0.0)
    over_columns = eave.height - shape.depth >= eave.plane(lines.strut_stop, lines.rafter_top)
    taken = [] if over_columns else _rafters(lines, face, shape.width, eave.height)
    pieces = spliced(lines, face, role, remaining((-lines.run_on, face.width + lines.run_on), taken))
    for number, (a, b) in enumerate(pieces, 1):
        ends = (square((a, 0.0, 0.0), RIGHT), square((b, 0.0, 0.0), RIGHT))
        made = member(section, centre, along, UP, *ends)
        part = framing_part(face, f"{role.value} {number}", role, *made)
        if role is Role.LEDGER:
            labels = (("face", HEADWALL), *FRAMING)
            part = replace(part, name=f"ledger {number}", group=("framing", HEADWALL), labels=labels)
        yield part
