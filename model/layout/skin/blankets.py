"""Blanket insulation between steel and sheets, as the trade hangs it: in strips from a roll, up each face.

A strip is drawn as thick as sheets press it on steel, all over; between the lines of steel it swells inward,
which no one cuts by. Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise
from math import ceil

import shapely

from ...description.skin import Insulation
from ...envelope.face import Face, Region
from ...place import Place, Point2
from ...recipe import Part, Sheet, grid
from ...roles import Role
from ..trim.trim_lines import TrimLines
from .cladding import clad_of, rings_at, sound

SLIVER = 50.8
"""mm; a face that whole rolls leave less of (2 in) has no strip of its own there: the last is stretched over
it. Ours."""
LABELS = (("colour", "white"), ("material", "glass fibre"))


def blankets(lines: TrimLines, face: Face) -> Iterator[Part]:
    """The strips of a face, region by region, in the order in which its sheets are laid."""
    insulation = lines.building.insulation
    if insulation is None:
        return
    thick = insulation.roof if face.sloped else insulation.walls
    for region in face.regions if thick else ():
        whole = clad_of(lines.building, face, region) & _over_steel(lines, face)
        for number, strip in enumerate(_strips(lines, face, insulation), 1):
            pieces = sound(whole & shapely.box(strip[0], -1e6, strip[1], 1e6))
            for letter, outline in zip("abcdefghijklmnopqrstuvwxyz", pieces, strict=False):
                which = f"{number}{letter if len(pieces) > 1 else ''}"
                name = " ".join(filter(None, (face.name, region.tier, "blanket", which)))
                yield _strip(lines, face, region, name, outline, thick)


def _over_steel(lines: TrimLines, face: Face) -> shapely.Geometry:
    """Where a face's steel is: neither over the slab's edge nor out over an eave."""
    left, right = face.reach()
    head = lines.steel.slope_length(face) if face.sloped else face.top.peak[1]
    return shapely.box(left, 0.0, right, head)


def _strips(lines: TrimLines, face: Face, insulation: Insulation) -> Iterator[Point2]:
    """From where the sheets start, each as wide as the roll, the last what is left."""
    (left, right), roll = face.reach(), insulation.roll
    count = max(1, ceil((right - left - SLIVER) / roll))
    ends = [*(number * roll for number in range(count)), right - left]
    for start, end in pairwise(ends):
        yield (
            (right - end, right - start)
            if lines.steel.run(face).start == "right"
            else (left + start, left + end)
        )


def _strip(
    lines: TrimLines, face: Face, region: Region, name: str, outline: shapely.Polygon, thick: str
) -> Part:
    left, low, right, _ = outline.bounds
    under, over = (((0.0, w), (grid(right - left), w)) for w in (0.0, grid(region.skin.off)))
    recipe = Sheet(under, over, *rings_at(outline, lambda u, v: (u - left, v - low)))
    place = face.frame @ Place((left, low, lines.building.sheets.flange))
    labels = (("face", face.name), ("gauge", thick), *LABELS)
    role = Role.ROOF_BLANKET if face.sloped else Role.WALL_BLANKET
    return Part(name, role, ("insulation", face.name), recipe, place, labels)
