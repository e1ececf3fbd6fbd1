"""Half walls: clad up to a height and open above.

From the top down: a cap that falls outward, the sheets' heads under it, their row of screws in a girt that
runs along the top. Common practice throughout, no source, unless one is named.
"""

from __future__ import annotations

from ..description.building import Building
from .face import Half
from .lengths import stepped_down
from .skin_lines import HEAD_CLEARANCE, SHELF_FALL, foot, lap_room
from .tiers import SEAM_ROW, flat_of


def half_of(building: Building, wall: str) -> Half | None:
    """Where the sheets of a wall end; None where they reach its eave or its rakes, or there are none."""
    if building.half_wall is None or wall not in building.half_walls:
        return None
    low, shelf, girt = foot(building), building.half_wall.height, building.framing.girt
    head = low + stepped_down(shelf - SHELF_FALL - HEAD_CLEARANCE - low, building.sheets.step)
    flat, middle = flat_of(girt)
    centre = min(head - SEAM_ROW + middle, shelf - lap_room(building) - girt.width / 2)
    return Half(shelf, head, min(head - SEAM_ROW, centre - middle + flat / 2), centre)
