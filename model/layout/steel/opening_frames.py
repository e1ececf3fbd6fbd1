"""What frames an opening and what fills it: jambs, header, sill; simple leaves, sashes and panes."""

from __future__ import annotations

from collections.abc import Iterator

from ...catalog.sections import SectionShape
from ...description.building import Opening
from ...envelope.face import Face
from ...envelope.opening_lines import LEAF_GAP, LEAF_THICKNESS, OpeningLines
from ...envelope.top_line import TopLine
from ...place import Place, Point3
from ...recipe import Cut, Part
from ...roles import Role
from ..role_colours import FRAMING, LEAF, PANE, SASH
from .blocks import block
from .framing import LEFT, OUT, RIGHT, UP
from .straight_member import Plane, head_under, member, square

SASH_WIDTH, PANE_THICKNESS = 50.8, 6.35


def opening_parts(lines: OpeningLines, face: Face) -> Iterator[Part]:
    """The parts of every opening of a face."""
    for number, opening in enumerate(face.openings, 1):
        name = f"{face.name} {opening.kind} {number}"
        yield from _frame(lines, face, name, opening)
        yield from _filling(lines, face, name, opening)


def _frame(lines: OpeningLines, face: Face, name: str, opening: Opening) -> Iterator[Part]:
    """Jambs with their webs to the opening, header and sill likewise."""
    framing = lines.building.framing
    left, right = opening.from_left, opening.from_left + opening.width
    top = opening.sill + opening.height
    low, high = lines.jamb_reach(opening)
    half = framing.jamb.width / 2
    for side, u, along in (("left", left - half, UP), ("right", right + half, (0.0, -1.0, 0.0))):
        start: Plane = square((u, low, 0.0), UP)
        end = head_under(_under_rake(lines, face), u, half) if high is None else square((u, high, 0.0), UP)
        planes = (start, end) if side == "left" else (end, start)
        yield _steel(face, name, f"jamb {side}", Role.JAMB, framing.jamb, (u, 0.0), along, planes)
    across = (square((left, 0.0, 0.0), RIGHT), square((right, 0.0, 0.0), RIGHT))
    header = framing.header
    yield _steel(face, name, "header", Role.HEADER, header, (0.0, top + header.width / 2), RIGHT, across)
    if opening.sill > 0:
        sill = framing.sill
        line = (0.0, opening.sill - sill.width / 2)
        yield _steel(face, name, "sill", Role.SILL, sill, line, LEFT, across[::-1])


def _under_rake(lines: OpeningLines, face: Face) -> TopLine:
    """What jambs that run up to the rake stop at."""
    return face.top.lowered(lines.rake_limit(lines.building.framing.jamb.depth))


def _steel(
    face: Face,
    opening: str,
    name: str,
    role: Role,
    shape: SectionShape,
    line: tuple[float, float],
    along: Point3,
    ends: tuple[Plane, Plane],
) -> Part:
    recipe, place = member(shape.section(), (*line, -shape.depth / 2), along, OUT, *ends)
    label = (("face", face.name), *FRAMING)
    return Part(f"{opening} {name}", role, ("openings", opening), recipe, face.frame @ place, label)


def _filling(lines: OpeningLines, face: Face, name: str, opening: Opening) -> Iterator[Part]:
    """A walk door's leaf, or a sash with its pane, in the middle of the jambs' depth, or from the steel
    line in where they are thinner; an overhead door's leaf behind the jambs, as wide as the opening, clear
    of the screws in the reveals."""
    if opening.kind == "framed opening":
        return
    thick = LEAF_THICKNESS[opening.kind]
    back = -lines.leaf_back(opening.kind)
    label = ("face", face.name)
    group = ("openings", name)
    if opening.kind == "overhead door":
        stand = face.frame @ Place((opening.from_left, opening.sill, back))
        whole = block(opening.width, opening.height, thick)
        yield Part(f"{name} leaf", Role.LEAF, group, whole, stand, (label, *LEAF))
        return
    width, height = opening.width - 2 * LEAF_GAP, opening.height - (2 if opening.sill > 0 else 1) * LEAF_GAP
    lift = LEAF_GAP if opening.sill > 0 else 0.0
    at = face.frame @ Place((opening.from_left + LEAF_GAP, opening.sill + lift, back))
    whole = block(width, height, thick)
    if opening.kind != "window":
        yield Part(f"{name} leaf", Role.LEAF, group, whole, at, (label, *LEAF))
        return
    light = block(width - 2 * SASH_WIDTH, height - 2 * SASH_WIDTH, thick + 2)
    sash = Cut(whole, ((light, Place((SASH_WIDTH, SASH_WIDTH, -1.0))),))
    yield Part(f"{name} sash", Role.SASH, group, sash, at, (label, *SASH))
    pane = block(width - 2 * SASH_WIDTH, height - 2 * SASH_WIDTH, PANE_THICKNESS)
    inside = at @ Place((SASH_WIDTH, SASH_WIDTH, (thick - PANE_THICKNESS) / 2))
    yield Part(f"{name} pane", Role.PANE, group, pane, inside, (label, *PANE))
