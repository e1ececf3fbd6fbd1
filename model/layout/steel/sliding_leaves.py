"""What hangs before a wall: a rail on the ribs of its sheets, leaves under it, a guide at their foot.

Stand-ins for the door that is bought, drawn so that they look like what they are: hangers, brackets and what
holds them are its maker's. Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator
from math import ceil

from ...description.building import Building
from ...description.opening import Opening
from ...envelope.face import Face
from ...envelope.skin_lines import FOAM
from ...envelope.sliding import HUNG, RAIL_DEEP, RAIL_HIGH, drip_out, rail_back, rails_of
from ...place import Place, Point2, Point3
from ...recipe import Part, Prism, Section, grid
from ...roles import Role
from ..role_colours import LEAF, RAIL

OFF_FOOT = 12.7
"""mm; a leaf hangs so far (1/2 in) over the slab's top."""
OFF_TRIMS = 6.35
"""mm; and so far (1/4 in) before the drip over its opening, the outermost thing behind it."""
PANEL, RIB = 34.0, 9.5
"""mm; of a leaf: how thick its pan is drawn, and how far its ribs stand out of it."""
PITCH, CROWN, BASE = 228.6, 15.9, 38.1
"""mm; from rib to rib at the most (9 in), how wide one is out there and at its foot."""
METAL = 3.0
"""mm; how thick a rail and a guide are drawn."""
SLOT = 25.4
"""mm; how wide the slot in a rail's underside is, through which its hangers reach (1 in)."""
GUIDE, LIP = 101.6, 38.1
"""mm; how long a guide is (4 in), and how high."""

LEFT: Point3 = (-1.0, 0.0, 0.0)
UP: Point3 = (0.0, 1.0, 0.0)
OUT: Point3 = (0.0, 0.0, 1.0)


def sliding_parts(building: Building, face: Face) -> Iterator[Part]:
    """Of every sliding door of a wall its rail, its leaves, its guides."""
    out = rail_back(building, face)
    back = out - FOAM + drip_out(building) + OFF_TRIMS
    for rail in rails_of(building, face.name):
        door = rail.opening
        name = f"{face.name} {door.kind} {rail.number}"
        group, on_wall = ("openings", name), ("face", face.name)
        bought = (on_wall, *RAIL)
        start, end = rail.span
        at = face.frame @ Place((start, rail.foot, out), UP, OUT)
        yield Part(f"{name} rail", Role.RAIL, group, _along(_channel(), end - start), at, bought)
        colour = {"colour": door.colour} if door.colour else {}
        labels = tuple({"face": face.name, **dict(LEAF), **colour}.items())
        hands = ("",) if len(rail.leaves) == 1 else (" left", " right")
        for hand, (left, right) in zip(hands, rail.leaves, strict=True):
            leaf = _along(_ribbed(right - left), rail.foot - HUNG - OFF_FOOT)
            at = face.frame @ Place((right, OFF_FOOT, back), LEFT, OUT)
            yield Part(f"{name} leaf{hand}", Role.LEAF, group, leaf, at, labels)
        for number, u in enumerate(_beside(door), 1):
            at = face.frame @ Place((u, 0.0, back - HUNG - METAL), UP, OUT)
            yield Part(f"{name} guide {number}", Role.GUIDE, group, _along(_trough(), GUIDE), at, bought)


def _beside(door: Opening) -> Iterator[float]:
    """u where guides begin: beside the opening, on each side where a leaf stays when it is open."""
    if door.slides in ("left", "apart"):
        yield door.from_left - GUIDE
    if door.slides in ("right", "apart"):
        yield door.from_left + door.width


def _channel() -> list[Point2]:
    """Of a rail, x up and y outward: a box with a slot in its underside."""
    side = (RAIL_DEEP - SLOT) / 2
    high, deep, t = RAIL_HIGH, RAIL_DEEP, METAL
    outside = [(0.0, side), (0.0, 0.0), (high, 0.0), (high, deep), (0.0, deep), (0.0, deep - side)]
    inside = [(t, deep - side), (t, deep - t), (high - t, deep - t), (high - t, t), (t, t), (t, side)]
    return outside + inside


def _trough() -> list[Point2]:
    """Of a guide, likewise: open above, round the foot of a leaf."""
    deep, t = PANEL + RIB + 2 * (HUNG + METAL), METAL
    return [
        *((0.0, 0.0), (LIP, 0.0), (LIP, t), (t, t)),
        *((t, deep - t), (LIP, deep - t), (LIP, deep), (0.0, deep)),
    ]


def _ribbed(wide: float) -> list[Point2]:
    """Of a leaf, x to the left and y outward: even ribs on a pan."""
    count = ceil(wide / PITCH)
    front = []
    for middle in (wide * (k + 0.5) / count for k in range(count)):
        foot, crown = BASE / 2, CROWN / 2
        front += [(middle - foot, PANEL), (middle - crown, PANEL + RIB)]
        front += [(middle + crown, PANEL + RIB), (middle + foot, PANEL)]
    return [(0.0, 0.0), (wide, 0.0), (wide, PANEL), *reversed(front), (0.0, PANEL)]


def _along(outline: list[Point2], length: float) -> Prism:
    points = Section(tuple((grid(x), grid(y), 0.0) for x, y in outline))
    return Prism(points, (0.0, 0.0, 0.0), (0.0, 0.0, grid(length)))
