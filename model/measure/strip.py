"""A section that is one strip of sheet, bent between its walls."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from .across import Loop
from .faces import Vectors

SAME = 0.01
"""mm; lengths that differ by less are equal."""
TURNED = 1e-3
"""Radians; bends that differ by less are equal."""
RIGHT = np.pi / 2


@dataclass(frozen=True, slots=True, eq=False)
class Strip:
    """A strip of one thickness, bent between its walls.

    walls: (k, 2) the lengths of each wall's two faces, between sharp corners. turns: (k - 1,) radians, as
    one walks the first face. radii: (k - 1, 2) inside and outside each bend. line: (k + 1, 2) the sharp
    corners of the first face, the steel on its left.
    """

    thickness: float
    walls: Vectors
    turns: Vectors
    radii: Vectors
    line: Vectors


def strip(loop: Loop) -> Strip | None:
    """The strip that a loop goes round, from one of its two square ends to the other; None if it is none."""
    count = len(loop.sides)
    ends = [
        i for i in range(count // 2) if count % 2 == 0 and _is_end(loop, i) and _is_end(loop, i + count // 2)
    ]
    for i in ends:
        there = np.roll(np.arange(count), -i - 1)[: count // 2 - 1]
        back = np.roll(np.arange(count), -i)[::-1][: count // 2 - 1]
        ways = np.roll(loop.corners, -1, axis=0)[there] - loop.corners[there]
        ways = ways / loop.sides[there][:, None]
        apart = loop.corners[there] - loop.corners[back]
        gaps = np.abs(ways[:, 0] * apart[:, 1] - ways[:, 1] * apart[:, 0])
        thickness = float(loop.sides[i])
        if float(np.abs(gaps - thickness).max()) > SAME:
            continue
        near, far = there[1:], back[:-1]  # corners: a side begins at the corner of its own number
        turns = loop.turns[near]
        radii = np.where((turns > 0)[:, None], loop.radii[[far, near]].T, loop.radii[[near, far]].T)
        line = loop.corners[[*there, (there[-1] + 1) % count]]
        return Strip(thickness, np.array([loop.sides[there], loop.sides[back]]).T, turns, radii, line)
    return None


def _is_end(loop: Loop, side: int) -> bool:
    """Whether a side is the square end of a strip: a sharp square corner before and after it."""
    both = [side, (side + 1) % len(loop.turns)]
    return not loop.radii[both].any() and float(np.abs(loop.turns[both] - RIGHT).max()) < TURNED
