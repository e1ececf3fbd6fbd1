"""Vents on a ridge: where they stand along it, and whether they can.

Each is a hood over a slot in the ridge cap, through which the gap between sheets' heads airs what is below.
Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from ..description.building import Building
from ..description.said_limits import at_least, at_most, exactly, over, under
from ..place import Point2
from .face import Face
from .steel_checks import Objection
from .steel_lines import SteelLines

FROM_GABLE = 609.6
"""mm; from a gable's steel line to a vent (2 ft), clear of its rake trims. Ours."""
WITHIN = 3.175
"""mm; a slot's edge lies so far (1/8 in) within the heads of the sheets, which the cap still covers. Ours."""
LEAST_SLOT = 12.7
"""mm; on each side of the ridge (1/2 in): less airs nothing. Ours."""


def vent_spans(building: Building) -> tuple[Point2, ...]:
    """From y to y of each vent, front to back."""
    vents = building.ridge_vents
    return tuple((y, y + vents.length) for y in sorted(vents.places)) if vents else ()


def slot_half(lines: SteelLines, slope: Face) -> float:
    """How far to either side of a slope's ridge, in plan, the cap is cut open under a vent."""
    other = lines.named[slope.named(slope.sides[2].kind)[0].other]
    gaps = (lines.slope_length(one) - one.upper.head for one in (slope, other))
    levels = (one.sides[0].level for one in (slope, other))
    return min(gap * level for gap, level in zip(gaps, levels, strict=True)) - WITHIN


def vent_misfits(lines: SteelLines) -> Iterator[Objection]:
    """Every vent that has no ridge, or no room on it."""
    building, units = lines.building, lines.building.units
    spans, vents = vent_spans(building), building.ridge_vents
    if vents is None:
        return
    ridged = next((slope for slope in lines.slopes if lines.ridge_of(slope)), None)
    if ridged is None:
        yield ("ridge_vent", "places"), "none: this roof has no ridge"
        return
    if under(slot_half(lines, ridged), LEAST_SLOT):
        level = min(slope.sides[0].level for slope in lines.slopes)
        least = (
            LEAST_SLOT + WITHIN
        ) / level + building.sheets.step / 2  # the gap takes what sheets round off
        why = "a vent airs through the gap between the sheets' heads"
        yield ("sheets", "ridge_gap"), f"at least {at_least(least, units)}: {why}"
    first, last = FROM_GABLE, building.length - FROM_GABLE - vents.length
    if under(last, first):
        longest = building.length - 2 * FROM_GABLE
        yield ("ridge_vent", "length"), f"at most {at_most(longest, units)}, 2 ft clear of both gables"
    elif any(under(low, first) or over(low, last) for low, _ in spans):
        where = f"each from {at_least(first, units)} to {at_most(last, units)}"
        yield ("ridge_vent", "places"), f"{where}: vents stand 2 ft clear of both gables"
    for (low, end), (start, _) in pairwise(spans):
        if under(start, end):
            yield (
                ("ridge_vent", "places"),
                f"{exactly(end, units)} or more after the one at {exactly(low, units)}: vents stand apart",
            )
            return
