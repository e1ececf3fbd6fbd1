"""What an upright stays under that a lean-to's end wall ends on, before the main wall."""

from __future__ import annotations

from math import inf

from ...envelope.edges import AT_ANOTHER
from ...envelope.face import Face
from ...envelope.steel_lines import SteelLines


def under_roof_steel(lines: SteelLines, face: Face, *sides: float) -> float:
    """Height (mm) that an upright with these sides (u) stays under: the ledger, and what lies on the rake.
    Of a wall that does not end at another building's no limit."""
    if not (found := face.named(*AT_ANOTHER)):
        return inf
    framing = lines.building.framing
    rake = face.top.lowered(lines.rake_limit(framing.jamb.width))
    ledger = lines.eaves[found[0].other].height - framing.roof_depth
    return min(ledger, *(rake.height(u) for u in sides))
