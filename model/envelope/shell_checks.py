"""Whether the sizes make a shell that can be clad: its roof line, its height, openings under it."""

from __future__ import annotations

from collections.abc import Iterator
from math import radians, tan

from ..description.building import Building
from ..description.opening_checks import COVER
from ..description.reading.positions import Path
from ..description.said_limits import at_least, at_most, exactly, over, under
from ..units import parse_length
from .break_checks import break_misfits
from .closing import unclosed
from .roof_lines import RoofLines

Objection = tuple[Path, str]

HIGHEST = parse_length("100 ft")
BESIDE_RIDGE = parse_length("2 ft")
"""mm; of slope on either side of a ridge, in plan: less is no roof to lay. Ours."""
FLATTEST, STEEPEST = 0.5 / 12, 18 / 12
"""Rise over run, as the pitch itself may be."""


def roof_misfits(building: Building) -> Iterator[Objection]:
    """What keeps the keys of the roof from making one."""
    roof, units, width = building.roof, building.units, building.width
    rise, eave = tan(radians(building.pitch)), building.eave_height
    yield from (broken := list(break_misfits(building)))
    if broken or roof.break_at is not None:
        return
    if roof.shape == "single slope":
        for key in ("right_eave_height", "ridge"):
            if getattr(roof, key) is not None:
                yield (
                    ("roof", key),
                    "left out: with a single slope the pitch says how high it ends",
                )
        return
    right = eave if roof.right_eave_height is None else roof.right_eave_height
    if roof.ridge is None:
        room = (width - 2 * BESIDE_RIDGE) * rise
        low, high = eave - room, eave + room
        if under(right, low) or over(right, high):
            limits = f"at least {at_least(low, units)} and at most {at_most(high, units)}"
            yield ("roof", "right_eave_height"), f"{limits}, or the ridge comes too near to a wall"
        return
    low = max(BESIDE_RIDGE, (right - eave + FLATTEST * width) / (rise + FLATTEST))
    high = min(width - BESIDE_RIDGE, (right - eave + STEEPEST * width) / (rise + STEEPEST))
    if under(roof.ridge, low) or over(roof.ridge, high):
        limits = f"at least {at_least(low, units)} and at most {at_most(high, units)}"
        yield ("roof", "ridge"), f"{limits} from the left wall, or the right slope is too flat or too steep"


def shell_misfits(lines: RoofLines) -> Iterator[Objection]:
    """What a shell has that cannot be built, or not be clad."""
    yield from unclosed(lines.named)
    building, units = lines.building, lines.building.units
    top = max(wall.top.peak[1] for wall in lines.walls)
    if over(top, HIGHEST):
        highest = f"a roof no higher than {exactly(HIGHEST, units)}; this one is at {exactly(top, units)}"
        yield ("pitch",), highest
    most = min(max(v for _, v in slope.outline) for slope in lines.slopes) / 10
    if over(building.sheets.ridge_gap, most):
        yield ("sheets", "ridge_gap"), f"at most {at_most(most, units)}, a tenth of the rafter"
    for number in (n for n, one in enumerate(building.openings) if one.wall in lines.named):
        yield from _under_roof(lines, number)


def _under_roof(lines: RoofLines, number: int) -> Iterator[Objection]:
    """Some sheet is left between an opening's top and the eave or the rake, all along its width."""
    building, opening = lines.building, lines.building.openings[number]
    wall = lines.named[opening.wall]
    ends = (opening.from_left, opening.from_left + opening.width)
    roof, u = min((wall.top.height(u), u) for u in ends)
    fall = lines.eaves[wall.name].rise if wall.name in lines.eaves else wall.top.slope(u)
    room = COVER + wall.skin.profile.height * abs(fall)
    most = roof - room - opening.sill
    if over(opening.height, most):
        line = "the eave" if wall.name in lines.eaves else "the rake at its lower corner"
        remedy = (
            f"at most {at_most(most, building.units)}, to end {at_least(room, building.units)} under {line}"
        )
        yield ("opening", number, "height"), remedy
