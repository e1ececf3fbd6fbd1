"""Doors asked for by their number: placed between the columns, as the text of a description."""

from __future__ import annotations

import re
from collections.abc import Iterable
from itertools import pairwise

from ..description.building import Building
from ..description.keys.tables import OPENING
from ..description.opening import OpeningKind, Wall
from ..description.reading.draft import MOST_OPENINGS
from ..envelope.headwall import headwalls
from ..envelope.opening_lines import OpeningLines
from ..errors import DescriptionError, Problem
from ..units import FOOT, INCH, format_exact

TURN: tuple[Wall, ...] = ("front", "back", "right", "left")
"""The first clad one takes the overhead doors, the last one the walk doors."""
SHARE = 0.8
"""Of the room between two columns that overhead doors may take. Ours."""


def doors(building: Building, walk: int, overhead: int) -> str:
    """Tables of overhead doors in the front gable and walk doors in the left wall, spread over the bays; in
    another wall where that one is open.

    Of usual sizes, smaller where the building is. Raises DescriptionError for an impossible number.
    """
    if min(walk, overhead) < 0 or walk + overhead > MOST_OPENINGS:
        remedy = f"a number of each, at most {MOST_OPENINGS} in all"
        raise DescriptionError([Problem("doors", str(walk + overhead), remedy)])
    clad = clad_walls(building)
    if walk + overhead and not clad:
        raise DescriptionError([Problem("doors", str(walk + overhead), "0: all walls are open")])
    text = _row(building, "overhead door", clad[0], overhead) if overhead else ""
    return text + (_row(building, "walk door", clad[-1], walk) if walk else "")


def clad_walls(building: Building) -> list[Wall]:
    """The walls that can have doors, in the order in which they are given them: those under the roof of a
    lean-to come last, where it is low for overhead doors."""
    bare = building.open_walls | building.hung_walls | building.half_walls
    low = {one.wall for one in headwalls(building)}
    return sorted((wall for wall in TURN if wall not in bare), key=lambda wall: wall in low)


def _row(building: Building, kind: OpeningKind, wall: Wall, count: int) -> str:
    """`count` doors of a wall, as even over its bays as they go, with even gaps within a bay."""
    lines = OpeningLines(building)
    usual, tall = (10 * FOOT, 8 * FOOT) if kind == "overhead door" else (3 * FOOT, 80 * INCH)
    face = lines.named[wall]
    height = min(tall, lines.strut_foot(lines.low_eave) - building.framing.header.width)
    # Between the knees of the front frame, where the doors' leaves stand.
    left, right = (lines.knee_reach(face, hand, height, lines.leaf_back(kind)) for hand in ("left", "right"))
    ends = [(a + half, b - other) for (a, half), (b, other) in pairwise(lines.uprights(face))]
    bays = [(max(a, left), min(b, face.width - right) if right else b) for a, b in ends]
    chosen = [(2 * number + 1) * len(bays) // (2 * count) for number in range(count)]
    text = ""
    for number, bay in enumerate(chosen):
        (start, end), among, place = bays[bay], chosen.count(bay), number - chosen.index(bay)
        width = min(usual, SHARE * (end - start) / among) if kind == "overhead door" else usual
        gap = (end - start - among * width) / (among + 1)
        sizes = {"width": width, "height": height, "from_left": start + gap + place * (gap + width)}
        text += f"\n[[{OPENING.name}]]\nkind = {quoted(kind)}\nwall = {quoted(wall)}\n"
        text += "".join(f"{key} = {quoted(_typed(mm, building))}\n" for key, mm in sizes.items())
    return text


def put_at(text: str, places: Iterable[float], building: Building) -> str:
    """The text of a description whose doors `doors` wrote, with them at other places from the left (mm)."""
    left = iter(places)
    return re.sub(
        r'(?m)^from_left = ".*"$',
        lambda _: f"from_left = {quoted(spelled(format_exact(next(left), building.units)))}",
        text,
    )


def _typed(mm: float, building: Building) -> str:
    """A length cut to whole inches or centimetres, at least one."""
    step = 10.0 if building.units == "mm" else INCH
    return spelled(format_exact(max(mm // step, 1) * step, building.units))


def spelled(length: str) -> str:
    """A length with its marks spelled out, so that it needs no care within quotes."""
    return length.replace("'", " ft").replace('"', " in")


def quoted(text: str) -> str:
    """A text as a TOML value."""
    safe = "".join(
        f"\\u{ord(c):04X}" if ord(c) < 32 or ord(c) == 127 else c
        for c in text.replace("\\", "\\\\").replace('"', '\\"')
    )
    return f'"{safe}"'
