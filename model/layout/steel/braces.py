"""Braces in X between frames, and lines of struts, as `envelope/bracing.py` has them stand."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from ...envelope.bracing import BraceLines, Cross, ends
from ...envelope.face import Face
from ...place import add, unit
from ...recipe import Part
from ...roles import Role
from ..role_colours import BRACE
from .framing import OUT, RIGHT
from .straight_member import member, square


def braces(lines: BraceLines | None) -> Iterator[Part]:
    """Both braces of every X of a building, then its struts; none where it has no bracing."""
    numbers: Counter[tuple[str, int]] = Counter()
    if lines is None:
        return
    for cross in lines.crosses():
        where = (cross.face.name, cross.bay)
        for rising in (True, False):
            numbers[where] += 1
            name = f"{cross.face.name} bay {cross.bay} brace {numbers[where]}"
            yield _brace(lines, cross, name, rising=rising)
    for slope in lines.steel.slopes:
        yield from _struts(lines, slope)


def _struts(lines: BraceLines, slope: Face) -> Iterator[Part]:
    """From frame to frame, in the middle of the rafters' depth, on each line that the slope's X end at."""
    shape, deep = lines.strut, sum(lines.roof_room()) / 2
    if shape is None:
        return
    for line, v in enumerate(lines.divided(slope), 1):
        for bay in lines.tied():
            left, right = lines.along_slope(slope, bay)
            ends = (square((left, v, -deep), RIGHT), square((right, v, -deep), RIGHT))
            recipe, place = member(shape.section(), (left, v, -deep), RIGHT, OUT, *ends)
            labels = (("face", slope.name), *BRACE)
            name = f"{slope.name} bay {bay} strut {line}"
            yield Part(name, Role.STRUT, ("bracing", f"bay {bay}"), recipe, slope.frame @ place, labels)


def _brace(lines: BraceLines, cross: Cross, name: str, *, rising: bool) -> Part:
    """One of them, in the face's frame, cut square. The one that rises to the right lies outside."""
    face, shape = cross.face, lines.brace
    deep = -cross.depths[0 if rising else 1]
    low, high = ((*end, deep) for end in ends(cross, shape.depth, rising=rising))
    along = unit(add(high, low, -1.0))
    across = (-along[1], along[0], 0.0)
    recipe, place = member(shape.section(), low, along, across, square(low, along), square(high, along))
    labels = (("face", face.name), *BRACE)
    return Part(name, Role.BRACE, ("bracing", f"bay {cross.bay}"), recipe, face.frame @ place, labels)
