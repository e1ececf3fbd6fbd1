"""The bays of a lean-to: its rafters stand on the main frames' columns, at a gable on the posts and the
corner columns there. Along some of these bays its ends stand in from the corners."""

from __future__ import annotations

from dataclasses import replace

from ..description.building import Building
from ..description.walls_around import around, opposite
from .beside import at_gable
from .headwall import frame_planes
from .opening_lines import OpeningLines
from .shell_checks import roof_misfits, shell_misfits


def with_lean_tos_in_bays(building: Building) -> Building:
    """A building whose lean-tos have frames at its posts where they stand at gables, and are as long as the
    bays that they stand along; as it was where it makes no shell."""
    if any(map(at_gable, building.lean_tos)):
        if any(roof_misfits(building)):
            return building
        lines = OpeningLines(building)
        if any(shell_misfits(lines)):
            return building
        building = replace(building, lean_tos=tuple(_on_posts(lines, one) for one in building.lean_tos))
    return replace(building, lean_tos=tuple(map(_along_bays, building.lean_tos)))


def _on_posts(lines: OpeningLines, lean_to: Building) -> Building:
    if lean_to.joined is None or not at_gable(lean_to):
        return lean_to
    gable = lines.named[opposite(lean_to.joined)]
    # Its front is at the gable's right end, as seen from outside.
    stations = sorted(gable.width - u for u, _ in lines.standing_posts(gable))
    return replace(lean_to, frame=replace(lean_to.frame, stations=tuple(stations)))


def bay_count(lean_to: Building) -> int:
    """How many bays the main wall has that a lean-to stands at, as long as that."""
    return len(lean_to.frame.stations) + 1


def in_a_row(lean_to: Building) -> bool:
    """Whether the bays that it is to stand along are there, side by side."""
    bays = lean_to.bays or (1,)
    return bays == tuple(range(bays[0], bays[-1] + 1)) and bays[-1] <= bay_count(lean_to)


def _along_bays(whole: Building) -> Building:
    """A lean-to as long as its bays, its end frames at the main ones: it ends past them as far as at a
    corner."""
    if whole.bays is None or not in_a_row(whole):
        return whole
    first, last = _from_front(whole)
    planes, ends = frame_planes(whole), around(whole.joined)[::2]
    low = 0.0 if first == 0 else planes[first] - planes[0]
    high = whole.length if last == len(planes) - 1 else planes[last] + planes[0]
    stations = tuple(y - low for y in whole.frame.stations if planes[first] < y < planes[last])
    bracing = whole.bracing and replace(
        whole.bracing, bays=tuple(bay - first for bay in whole.bracing.bays if first < bay <= last)
    )
    short = ((ends[0], low > 0.0), (ends[1], high < whole.length))
    return replace(
        whole,
        length=high - low,
        along=low,
        inset=frozenset(wall for wall, is_short in short if is_short),
        frame=replace(whole.frame, stations=stations),
        bracing=bracing if bracing and bracing.bays else None,
    )


def _from_front(whole: Building) -> tuple[int, int]:
    """The numbers of its first and last frame, from 0 at its own front."""
    assert whole.bays is not None
    first, last = whole.bays[0] - 1, whole.bays[-1]
    count = bay_count(whole)
    return (count - last, count - first) if at_gable(whole) else (first, last)
