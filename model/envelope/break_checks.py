"""Whether a roof can change its pitch as a description says: with what else, where, and by how much."""

from __future__ import annotations

from collections.abc import Iterator
from math import asin, degrees

from ..description.building import Building
from ..description.reading.positions import Path
from ..description.said_limits import at_least, at_most, over, under
from ..units import format_pitch, parse_length
from .lengths import SHORTEST
from .pitch_break import over_crowns

Objection = tuple[Path, str]

FARTHEST = parse_length("6 in")
"""mm; the trim's bend lies no farther from where the steel planes meet: there it lies on no steel. Ours."""
STEEPEST, FLATTEST = 56.31, 2.39
"""Degrees; as a pitch may be (18/12, 0.5/12), rounded inward."""


def break_misfits(building: Building) -> Iterator[Objection]:
    """What keeps a roof's keys from changing its pitch."""
    roof = building.roof
    for key, other in (("break_at", "lower_pitch"), ("lower_pitch", "break_at")):
        if getattr(roof, key) is not None and getattr(roof, other) is None:
            yield ("roof", key), f"with it [roof] {other}, or neither"
    if roof.break_at is None or roof.lower_pitch is None:
        return
    yield from _with_others(building)
    yield from _place(building, roof.break_at)
    yield from _turn(building, roof.lower_pitch)


def _with_others(building: Building) -> Iterator[Objection]:
    """What a roof that changes its pitch cannot have yet."""
    roof, nearest = building.roof, "not yet possible where a roof changes its pitch; what comes nearest:"
    if roof.shape != "gable":
        yield ("roof", "shape"), f'{nearest} "gable"'
    for key in ("right_eave_height", "ridge"):
        if getattr(roof, key) is not None:
            yield ("roof", key), f"{nearest} leave it out, both sides alike"
    if roof.gable_overhang:
        yield ("roof", "gable_overhang"), f"{nearest} 0, the roof ending at the gables"
    if building.lean_tos:
        yield ("lean_to", 0), f"{nearest} a flatter lower slope, [roof] lower_pitch, over a wider building"
    if building.bracing:
        yield ("bracing",), f"{nearest} leave [bracing] out; the engineer's is drawn nowhere then"


def _place(building: Building, at: float) -> Iterator[Objection]:
    most = building.width / 2 - SHORTEST
    if under(at, SHORTEST) or over(at, most):
        limits = f"at least {at_least(SHORTEST, building.units)} and at most {at_most(most, building.units)}"
        where = f"{limits}: no mill makes shorter sheets"
        if most < SHORTEST:
            where = "left out, each slope with one pitch: a building this narrow has no room for two"
        yield ("roof", "break_at"), where


def _turn(building: Building, lower: float) -> Iterator[Objection]:
    """The pitches differ by so much that the trim between them stays near to the steel."""
    least = degrees(asin(min(1.0, over_crowns(building) / FARTHEST)))
    if not under(abs(lower - building.pitch), least):
        return
    ways = []
    if (steep := building.pitch + least) < STEEPEST:
        ways.append(f"at least {format_pitch(steep + 0.05, building.units)}")
    if (flat := building.pitch - least) > FLATTEST:
        ways.append(f"at most {format_pitch(flat - 0.05, building.units)}")
    wanted = " or ".join(ways)
    yield ("roof", "lower_pitch"), f"{wanted}: with less between the pitches the trim there lies on no steel"
