"""Layout: from the building as described to parts as pure numbers. No kernel on this floor."""

from __future__ import annotations

from collections.abc import Iterator

from ..description.building import Building
from ..recipe import Part
from .cladding import clad
from .faces import faces
from .frames import framed
from .framing import roof_framing, wall_framing
from .openings import opening_parts
from .slab import slab
from .steel_lines import SteelLines


def lay_out(building: Building) -> list[Part]:
    """Every part of the building, in the order it goes up."""
    return list(_parts(building))


def _parts(building: Building) -> Iterator[Part]:
    around = faces(building)
    named = {face.name: face for face in around}
    lines = SteelLines(building)
    if hasattr(building, "frame"):  # TEMPORARY until the description carries frames
        yield slab(building, named)
        yield from framed(building, named)
        for face in around:
            yield from roof_framing(lines, face) if face.sloped else wall_framing(lines, face)
        for face in around:
            yield from opening_parts(lines, face)
    for face in around:
        yield from clad(building, face)
