"""Whether purlins that are to nest where they are spliced can."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from itertools import pairwise
from math import ceil, inf

from ..catalog.sections import SectionShape, spelled
from ..description.reading.positions import Path
from ..description.said_limits import at_least, at_most, exactly, over, under
from ..description.steel import LAP_DEPTHS
from ..units import INCH, Units
from .nesting import least_wider, nest_of
from .steel_lines import SteelLines

Objection = tuple[Path, str]

APART = 304.8
"""mm; between the laps at both ends of a bay (1 ft). Ours."""


def nest_misfits(lines: SteelLines) -> Iterator[Objection]:
    """Purlins that are to nest and cannot, and laps that are too short or meet."""
    framing, zee = lines.building.framing, lines.building.framing.purlin
    if not framing.nested:
        return
    if zee.shape != "zee":
        yield ("framing", "purlin_splices"), f'"butted": only zees nest, a {zee.shape} lies in no other'
        return
    yield from _flanges(zee, lines.building.units)
    yield from _laps(lines)


def _flanges(zee: SectionShape, units: Units) -> Iterator[Objection]:
    """One flange is wider by what the other's lip takes, and both have room for one row of screws."""
    flat = nest_of(zee).flat
    if under(zee.wider, least := least_wider(zee)):
        unit, step = ("mm", 1.0) if units == "mm" else ("in", INCH / 16)
        would = replace(zee, wider=ceil(least / step - 1e-9) * step)
        remedy = f'wider above than below by at least {at_least(least, units)}, as "{spelled(would, unit)}"'
        yield ("framing", "purlin"), f'{remedy}, or their lips meet; or purlin_splices "butted"'
    elif under(flat, 0.0):
        least = zee.breadth - flat
        remedy = (
            f"a zee with flanges at least {at_least(least, units)} wide: one row of screws goes through two"
        )
        yield ("framing", "purlin"), remedy


def _laps(lines: SteelLines) -> Iterator[Objection]:
    """A lap is as long as the depth asks, and ends before the next begins."""
    framing, units = lines.building.framing, lines.building.units
    least = LAP_DEPTHS * framing.purlin.depth
    bays = [b - a for slope in lines.slopes for a, b in pairwise(lines.splice_points(slope)[1:-1])]
    most = (min(bays, default=inf) - APART) / 2
    if under(framing.arm, least):
        remedy = (
            f"at least {at_least(least, units)}, {LAP_DEPTHS} times the purlins' depth, past a frame's centre"
        )
        yield ("framing", "purlin_lap"), remedy
    elif over(framing.arm, most):
        bay = exactly(min(bays), units)
        remedy = f"at most {at_most(most, units)}: in a bay of {bay} the laps at both its ends meet"
        yield ("framing", "purlin_lap"), remedy
