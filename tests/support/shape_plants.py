"""Faults that only some shapes can have, by code, at three places each of a sound building of that shape."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
from ribwright.findings import Code
from ribwright.pieces import Model
from ribwright.place import Point3
from support.planted import braced, broken, gabled, lapped, leaned, nested, tiered
from support.plants import Plant, asked, drop, move, without_row

Plants = dict[Code, list[Plant]]

TIERED: Plants = {
    Code.SEAM_OPEN: [
        drop("left tier trim 1"),
        drop("back tier trim 1 2"),
        # Before the upper sheets' feet, where water runs in behind it.
        move("right tier trim 1", (25.0, 0.0, 0.0)),
    ],
    Code.SEAM_HANG: [
        move("left 3", (0.0, 0.0, 8.0)),
        move("back 3", (0.0, 0.0, -2.0)),
        move("right tier trim 1", (0.0, 0.0, -8.0)),
    ],
    Code.SEAM_OFF_STEEL: [drop("left girt 1"), drop("back girt 1"), drop("right girt 3")],
}

BRACED: Plants = {
    Code.BRACE_LOOSE: [
        move("left bay 1 brace 1", (0.0, 3.0, 0.0)),
        move("frame 4 right column", (0.0, 5.0, 0.0)),
        drop("frame 3 left rafter"),
    ],
    Code.CLASH: [
        # The two of an X in one plane, and one that goes through a girt.
        move("right bay 3 brace 1", (-22.0, 0.0, 0.0)),
        move("left bay 3 brace 1", (-12.0, 0.0, 0.0)),
        move("left slope bay 1 brace 1", (0.0, 0.0, 8.0)),
    ],
}

LEANED: Plants = {
    Code.HEADWALL_OPEN: [
        drop("lean-to headwall flashing 1"),
        drop("lean-to headwall flashing 3"),
        # Before the feet of the sheets above, where water runs in behind it.
        move("lean-to headwall flashing 2", (25.0, 0.0, 0.0)),
    ],
    Code.HEADWALL_HANG: [
        move("right 3", (0.0, 0.0, 20.0)),
        move("right 5", (0.0, 0.0, -8.0)),
        move("right 7", (0.0, 0.0, -8.0)),
    ],
    Code.SEAM_OFF_STEEL: [
        drop("right girt 2"),
        drop("right girt 5"),
        drop("right girt 3"),
    ],
    Code.RIDGE_BARE: [
        drop("lean-to headwall flashing 1"),
        drop("lean-to headwall flashing 2"),
        move("lean-to headwall flashing 3", (-90.0, 0.0, 0.0)),
    ],
}

GABLED: Plants = {
    Code.HEADWALL_OPEN: [
        drop("lean-to headwall flashing 1"),
        drop("lean-to headwall flashing 2"),
        move("lean-to headwall flashing 2", (0.0, -25.0, 0.0)),
    ],
    Code.HEADWALL_HANG: [
        move("front 2", (0.0, 0.0, 20.0)),
        move("front 3", (0.0, 0.0, -8.0)),
        move("front 5", (0.0, 0.0, -8.0)),
    ],
    Code.SEAM_OFF_STEEL: [
        drop("front girt 3"),
        drop("front girt 4"),
        drop("front girt 5"),
    ],
}

BROKEN: Plants = {
    Code.BREAK_OPEN: [
        drop("left slope pitch break trim 1"),
        drop("right slope pitch break trim 2"),
        # Before the feet of the sheets above.
        move("left slope pitch break trim 3", (-200.0, 0.0, -133.0)),
    ],
    Code.BREAK_HANG: [
        # Down and up the plane of the upper sheets.
        move("left slope pitch break trim 2", (-20.0, 0.0, -5.0)),
        move("right slope pitch break trim 1", (20.0, 0.0, -5.0)),
        move("left slope pitch break trim 3", (10.0, 0.0, 2.5)),
    ],
}

SLOPE = 145**0.5
LEFT: Point3 = (-1 / SLOPE, 0.0, 12 / SLOPE)
RIGHT: Point3 = (1 / SLOPE, 0.0, 12 / SLOPE)


def off_roof(name: str, normal: Point3, by: float) -> Plant:
    """A roof sheet moved square to its slope."""
    return move(name, (by * normal[0], by * normal[1], by * normal[2]))


def up_roof(name: str, normal: Point3, by: float) -> Plant:
    """A roof sheet moved up its slope."""
    return move(name, (-by * normal[2] * np.sign(normal[0]), 0.0, by * abs(normal[0])))


LAPPED: Plants = {
    # By twice what a sheet stands off the one that it lies on, so that it lies under it.
    Code.END_LAP_TURNED: [
        off_roof("left slope 2c", LEFT, -1.118),
        off_roof("left slope 3c", LEFT, -1.118),
        off_roof("right slope 1c", RIGHT, -1.118),
    ],
    Code.END_LAP_SHORT: [
        asked(end_lap=330.0),
        up_roof("left slope 2c", LEFT, 60.0),
        up_roof("right slope 3c", RIGHT, 60.0),
    ],
    Code.END_LAP_LOOSE: [
        without_row("left slope 2c", 2438.0),
        without_row("left slope 1b", 2238.0),
        without_row("right slope 3b", 2238.0),
    ],
    Code.LAP_OPEN: [
        off_roof("left slope 2c", LEFT, 0.5),
        off_roof("left slope 4c", LEFT, 0.3),
        off_roof("right slope 3c", RIGHT, 0.1),
    ],
    Code.LAP_PRESSED: [
        off_roof("left slope 2c", LEFT, -0.2),
        off_roof("left slope 3c", LEFT, -0.1),
        off_roof("right slope 1c", RIGHT, -0.4),
    ],
}

NESTED: Plants = {
    Code.MEMBER_LAP_SHORT: [
        move("left slope purlin 1a", (0.0, 30.0, 0.0)),
        move("left slope purlin 2b", (0.0, -1.0, 0.0)),
        move("right slope purlin 1b", (0.0, 130.0, 0.0)),
    ],
}

SHAPES: dict[str, tuple[Callable[[], Model], Plants]] = {
    "seam": (tiered, TIERED),
    "bracing": (braced, BRACED),
    "headwall": (leaned, LEANED),
    "headwall at a gable": (gabled, GABLED),
    "pitch break": (broken, BROKEN),
    "end lap": (lapped, LAPPED),
    "nested purlin": (nested, NESTED),
}
"""Where such faults stand: a sound building, and what is planted in it."""
