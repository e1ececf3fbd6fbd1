"""The shell of a description: the only place that knows which roof a building has."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from math import radians, tan

from ..description.building import Building
from ..description.walls_around import around
from ..place import Point2
from .shell import Loop, Shell


def shell_of(building: Building) -> Shell:
    """Walls around a rectangle, under slopes that run from gable to gable.

    Loops in the order in which the model lists its parts: side walls, back gable, front gable, slopes.
    """
    line = roof_line(building)
    length, count = building.length, len(line)
    plan = (line[0], line[-1])
    feet = [(x, y, 0.0) for y in (0.0, length) for x, _ in plan]
    tops = [(x, y, z) for y in (0.0, length) for x, z in line]
    left, right, back_left, back_right = 0, 1, 2, 3
    front, back = range(4, 4 + count), range(4 + count, 4 + 2 * count)
    slopes = []
    names = around(building.joined)
    for number, name in enumerate(_slopes(line, names)):
        a, b = front[number], front[number + 1]
        c, d = back[number], back[number + 1]
        slopes.append(Loop(name, (c, a, b, d) if line[number + 1][1] > line[number][1] else (b, d, c, a)))
    return Shell(
        tuple(feet + tops),
        (
            Loop(names[3], (back_left, left, front[0], back[0])),
            Loop(names[1], (right, back_right, back[-1], front[-1])),
            Loop(names[2], (back_right, back_left, *back)),
            Loop(names[0], (left, right, *reversed(front))),
            *slopes,
        ),
    )


def roof_line(building: Building) -> tuple[Point2, ...]:
    """The steel line over the width, (x, z) from the left eave to the right one."""
    width, eave, roof = building.width, building.eave_height, building.roof
    rise = tan(radians(building.pitch))
    if roof.shape == "single slope":
        line = ((0.0, eave), (width, eave + width * rise))
        return line if roof.falls_to == "left" else tuple((width - x, z) for x, z in reversed(line))
    if roof.break_at is not None and roof.lower_pitch is not None:
        at, broken = roof.break_at, eave + roof.break_at * tan(radians(roof.lower_pitch))
        peak = (width / 2, broken + (width / 2 - at) * rise)
        return ((0.0, eave), (at, broken), peak, (width - at, broken), (width, eave))
    right = eave if roof.right_eave_height is None else roof.right_eave_height
    ridge = (width + (right - eave) / rise) / 2 if roof.ridge is None else roof.ridge
    return ((0.0, eave), (ridge, eave + ridge * rise), (width, right))


def _slopes(line: tuple[Point2, ...], walls: Sequence[str]) -> list[str]:
    """The slopes' names, by the wall they fall to; where two fall to one wall the higher is its upper one."""
    left = [b[1] > a[1] for a, b in pairwise(line)]
    names = []
    for number, falls_left in enumerate(left):
        hand, lowest = (walls[3], 0) if falls_left else (walls[1], len(left) - 1)
        names.append(f"{hand} slope" if number == lowest else f"{hand} upper slope")
    return names
