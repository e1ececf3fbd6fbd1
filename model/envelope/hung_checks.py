"""Whether hung sheets go with what is about them: eaves, openings, other walls."""

from __future__ import annotations

from collections.abc import Iterator

from ..description.building import Building
from ..description.opening import Wall
from ..description.said_limits import at_most, over
from .opening_lines import OpeningLines
from .steel_checks import Objection
from .tier_checks import UPPER


def hung_misfits(lines: OpeningLines) -> Iterator[Objection]:
    """Every place where sheets that hang over an open wall do not go with the rest."""
    building, units = lines.building, lines.building.units
    for wall in sorted(building.infill) if building.lean_tos else ():
        yield ("walls", wall), "not yet possible with a lean-to; what comes nearest: open, or clad"
    if building.skirt is None:
        return
    if building.lean_tos or building.infill:
        other = "a lean-to" if building.lean_tos else "the infill of a gable"
        yield ("skirt", "foot"), f"not yet possible with {other}; what comes nearest: walls open, or clad"
    most = lines.low_eave.height - UPPER
    if over(building.skirt.foot, most):
        yield ("skirt", "foot"), f"at most {at_most(most, units)}, to leave 2 ft of wall under the eave"
    hung = building.hung_walls
    yield from left_open(building, "skirt", hung)
    for number, opening in enumerate(building.openings):
        if opening.wall in hung:
            clad = [wall.name for wall in lines.walls if not wall.open and wall.hung is None]
            where = f"one that is clad to the slab ({', '.join(clad)})" if clad else "no opening"
            yield ("opening", number, "wall"), f"{where}; the {opening.wall} wall is open under its [skirt]"


def left_open(building: Building, table: str, walls: frozenset[Wall]) -> Iterator[Objection]:
    """Where a table is of walls that [walls] leaves open, if only in some bays."""
    gapped = sorted({wall for wall, _, _ in building.open_bays} & walls)
    if gapped or not walls:
        named = gapped[0] if gapped else "each"
        yield (table, "walls"), f"walls that are not open; by [walls] {named} is, at least in some bays"
