"""What frames an opening and what fills it: jambs, header, sill; simple leaves, sashes and panes."""

from __future__ import annotations

from collections.abc import Iterator

from ...catalog.sections import SectionShape
from ...description.opening import SLIDING, Opening
from ...envelope.face import Face
from ...envelope.opening_lines import LEAF_GAP, LEAF_THICKNESS, OpeningLines
from ...place import Place, Point2, Point3
from ...recipe import Cut, Part, Recipe
from ...roles import Role
from ..role_colours import FRAMING, LEAF, LOUVRE, PANE, SASH
from .blocks import block
from .framing import LEFT, OUT, RIGHT, UP
from .leaves import curtain, louvre, nosed, sections
from .sliding_leaves import sliding_parts
from .straight_member import Plane, head_under, member, square

SASH_WIDTH, PANE_THICKNESS = 50.8, 6.35

SWINGS = {
    f"{side} {way}".strip(): ", ".join(filter(None, (side and f"hinged {side}", f"opens {way}")))
    for side in ("left", "right", "")
    for way in ("in", "out")
}
"""A swing as it is told to people; sides are those of someone outside."""

Labels = tuple[tuple[str, str], ...]


def opening_parts(lines: OpeningLines, face: Face) -> Iterator[Part]:
    """The parts of every opening of a face."""
    for number, opening in enumerate(face.openings, 1):
        name = f"{face.name} {opening.kind} {number}"
        yield from _frame(lines, face, name, opening)
        yield from _filling(lines, face, name, opening)
    yield from sliding_parts(lines.building, face)


def _frame(lines: OpeningLines, face: Face, name: str, opening: Opening) -> Iterator[Part]:
    """Jambs with their webs to the opening, header and sill likewise."""
    framing = lines.building.framing
    left, right = opening.from_left, opening.from_left + opening.width
    top = opening.sill + opening.height
    low, high = lines.jamb_reach(opening)
    half = framing.jamb.width / 2
    for side, u, along in (("left", left - half, UP), ("right", right + half, (0.0, -1.0, 0.0))):
        start: Plane = square((u, low, 0.0), UP)
        end = head_under(lines.jamb_limit(face), u, half) if high is None else square((u, high, 0.0), UP)
        planes = (start, end) if side == "left" else (end, start)
        yield _steel(face, name, f"jamb {side}", Role.JAMB, framing.jamb, (u, 0.0), along, planes)
    across = (square((left, 0.0, 0.0), RIGHT), square((right, 0.0, 0.0), RIGHT))
    header = framing.header
    yield _steel(face, name, "header", Role.HEADER, header, (0.0, top + header.width / 2), RIGHT, across)
    if opening.sill > 0:
        sill = framing.sill
        line = (0.0, opening.sill - sill.width / 2)
        yield _steel(face, name, "sill", Role.SILL, sill, line, LEFT, across[::-1])


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
    """A walk door's leaf, or the two of a double door, a sash with its pane, or a louvre that stands on its
    sill, in the middle of the jambs' depth, or from the steel line in where they are thinner; a leaf that
    goes up behind the jambs, as wide as the opening, clear of the screws in the reveals."""
    if opening.kind in ("framed opening", SLIDING):
        return
    back, group = -lines.leaf_back(opening.kind), ("openings", name)
    if opening.overhead:
        leaf = sections(opening) if opening.kind == "overhead door" else curtain(opening)
        stand = face.frame @ Place((opening.from_left, opening.sill, back), UP, OUT)
        yield Part(f"{name} leaf", Role.LEAF, group, leaf, stand, _labels(face, opening, LEAF))
        return
    lift = LEAF_GAP if opening.sill > 0 and opening.kind != "vent" else 0.0
    size = (opening.width - 2 * LEAF_GAP, opening.height - LEAF_GAP - lift)
    at = face.frame @ Place((opening.from_left + LEAF_GAP, opening.sill + lift, back))

    def drained(body: Recipe) -> Recipe:
        if opening.sill <= 0:
            return body
        thick = LEAF_THICKNESS[opening.kind]
        return nosed(body, (size[0], thick), -back - thick, lift)

    if opening.kind == "window":
        ring, pane, inside = _window(size)
        yield Part(f"{name} sash", Role.SASH, group, drained(ring), at, _labels(face, opening, SASH))
        yield Part(f"{name} pane", Role.PANE, group, pane, at @ inside, _labels(face, opening, PANE))
        return
    if opening.kind == "vent":
        blades = drained(louvre(size, LEAF_THICKNESS[opening.kind]))
        yield Part(f"{name} louvre", Role.LOUVRE, group, blades, at, _labels(face, opening, LOUVRE))
        return
    hands = ("",) if opening.kind == "walk door" else (" left", " right")
    wide = (size[0] - LEAF_GAP * (len(hands) - 1)) / len(hands)
    for number, hand in enumerate(hands):
        leaf = block(wide, size[1], LEAF_THICKNESS[opening.kind])
        stand = at @ Place((number * (wide + LEAF_GAP), 0.0, 0.0))
        yield Part(f"{name} leaf{hand}", Role.LEAF, group, leaf, stand, _labels(face, opening, LEAF))


def _window(size: Point2) -> tuple[Recipe, Recipe, Place]:
    """A sash, the pane in it, and where that stands in the sash's frame."""
    (width, height), thick = size, LEAF_THICKNESS["window"]
    light = block(width - 2 * SASH_WIDTH, height - 2 * SASH_WIDTH, thick + 2)
    ring = Cut(block(width, height, thick), ((light, Place((SASH_WIDTH, SASH_WIDTH, -1.0))),))
    pane = block(width - 2 * SASH_WIDTH, height - 2 * SASH_WIDTH, PANE_THICKNESS)
    return ring, pane, Place((SASH_WIDTH, SASH_WIDTH, (thick - PANE_THICKNESS) / 2))


def _labels(face: Face, opening: Opening, usual: Labels) -> Labels:
    """What geometry cannot say of what fills an opening: its face, colour, material and swing."""
    own = {"colour": opening.colour} if opening.colour and usual is not PANE else {}
    labels = {"face": face.name, **dict(usual), **own}
    if opening.swing and usual is LEAF:
        labels["swing"] = SWINGS.get(opening.swing, opening.swing)
    return tuple(labels.items())
