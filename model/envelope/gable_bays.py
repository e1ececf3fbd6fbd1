"""The bays of a lean-to at a gable: between the posts and corner columns there, which carry its rafters."""

from __future__ import annotations

from dataclasses import replace

from ..description.building import Building
from ..description.walls_around import opposite
from .beside import at_gable
from .opening_lines import OpeningLines
from .shell_checks import roof_misfits, shell_misfits


def with_bays_on_posts(building: Building) -> Building:
    """A building whose lean-tos at gables have frames at its posts; as it was where it makes no shell."""
    if not any(map(at_gable, building.lean_tos)):
        return building
    if any(roof_misfits(building)):
        return building
    lines = OpeningLines(building)
    if any(shell_misfits(lines)):
        return building
    return replace(building, lean_tos=tuple(_on_posts(lines, one) for one in building.lean_tos))


def _on_posts(lines: OpeningLines, lean_to: Building) -> Building:
    if lean_to.joined is None or not at_gable(lean_to):
        return lean_to
    gable = lines.named[opposite(lean_to.joined)]
    # Its front is at the gable's right end, as seen from outside.
    stations = sorted(gable.width - u for u, _ in lines.standing_posts(gable))
    return replace(lean_to, frame=replace(lean_to.frame, stations=tuple(stations)))
