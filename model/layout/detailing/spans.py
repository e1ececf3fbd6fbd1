"""How far girts and purlins run free. Not strength: what makes one ask an engineer first."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from ...description.building import Limits
from ...envelope.face import HAIR, Face
from ...findings import Code, Finding
from ...units import INCH
from ..trim.trim_lines import TrimLines


def usual(limits: Limits, depth: float) -> float:
    """The span (mm) from which a section that deep (mm) is asked about: that at 4 in, that at 8 in, and in
    proportion between and beyond."""
    low, high = limits.span_of_4_in, limits.span_of_8_in
    return low + (depth / INCH - 4) * (high - low) / 4


def spans(lines: TrimLines) -> Iterator[Finding]:
    """A note for the walls, and one for the slopes, whose spans are unusual."""
    framing = lines.building.framing
    walls = [wall for wall in lines.steel.walls if not wall.open]
    yield from _beyond(lines, walls, framing.girt.depth, Code.GIRT_SPAN)
    yield from _beyond(lines, lines.steel.slopes, framing.purlin.depth, Code.PURLIN_SPAN)


def _beyond(
    lines: TrimLines, faces: list[Face] | tuple[Face, ...], depth: float, code: Code
) -> Iterator[Finding]:
    found = {face.name: _span(lines, face) for face in faces}
    most = usual(lines.building.limits, depth)
    far = {name: span for name, span in found.items() if span > most + HAIR}
    if far:
        yield Finding(code, tuple(far), (), None, max(far.values()), most, "length")


def _span(lines: TrimLines, face: Face) -> float:
    """From upright to upright, or rafter to rafter; an opening's jambs carry no girt on."""
    points = (0.0, *lines.steel.backs(face), face.width)
    return max(b - a for a, b in pairwise(points))
