"""What a member's section is: rod, tube, angle, plate, cee, zee or hat, by its walls and how they turn."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from math import degrees, sin

import numpy as np
from OCP.TopoDS import TopoDS_Solid

from ..catalog.shapes import SectionShape
from .across import Loop, loops
from .faces import KEPT, Vectors, body
from .member import measure_member
from .round_bar import round_bar
from .strip import RIGHT, SAME, TURNED, Strip, strip

STEEPEST = np.pi / 3
"""Radians: no roof pitches an eave strut's flange more."""


@dataclass(frozen=True, slots=True)
class MeasuredSection:
    """A section as measured.

    shape: what a person would type for it, with the dimensions measured. pitch: of an eave strut, how
    far its upper flange is folded off square to its web, degrees; else 0. corners: "" where they are
    rounded as such a section's are when it is typed, "sharp" where none is rounded, else "rounded
    otherwise"; shape.radius is 0 then.
    """

    shape: SectionShape
    pitch: float = 0.0
    corners: str = ""


@lru_cache(maxsize=KEPT)
def measure_section(solid: TopoDS_Solid) -> MeasuredSection | None:
    """The section of a straight body, mitred, notched and holed as it may be; None for any other shape.

    Depth and breadth are set as `SectionShape` has them; where a turn of the section would swap them,
    depth is the larger.
    """
    if bar := round_bar(solid):
        return MeasuredSection(SectionShape("rod", bar.diameter, bar.diameter, bar.diameter))
    bench = measure_member(solid).ways[0].bench
    axes = np.array([bench.x, bench.y, bench.z])
    for outer, *inner in loops(body(solid), axes):
        found = _named(outer, inner)
        if found:
            return found
    return None


def _named(outer: Loop, inner: list[Loop]) -> MeasuredSection | None:
    if inner:
        return _tube(outer, inner[0]) if len(inner) == 1 else None
    if len(outer.sides) == 4:
        return _plate(outer)
    found = strip(outer)
    return _bent(found) if found else None


def _square(loop: Loop, turn: float) -> bool:
    return len(loop.turns) == 4 and bool(np.abs(loop.turns - turn).max() < TURNED)


def _plate(loop: Loop) -> MeasuredSection | None:
    if not _square(loop, RIGHT) or loop.radii.any():
        return None
    thickness, width = sorted(loop.sides[:2].tolist())
    return MeasuredSection(SectionShape("plate", width, thickness, thickness))


def _tube(outer: Loop, inner: Loop) -> MeasuredSection | None:
    if not _square(outer, RIGHT) or not _square(inner, -RIGHT):
        return None
    walls = np.abs([edge(outer.corners, axis=0) - edge(inner.corners, axis=0) for edge in (np.min, np.max)])
    wall = float(walls.mean())
    if float(np.ptp(walls)) > SAME:
        return None
    breadth, depth = sorted(outer.sides[:2].tolist())
    corners = _corners(np.array([*outer.radii, *inner.radii]), np.array([2 * wall] * 4 + [wall] * 4))
    return MeasuredSection(SectionShape("tube", depth, breadth, wall), corners=corners)


def _corners(radii: Vectors, typed: Vectors) -> str:
    """How corners are rounded, beside how those of a typed section are."""
    if float(np.abs(radii - typed).max()) < 2 * SAME:
        return ""
    return "rounded otherwise" if radii.any() else "sharp"


def _bent(bent: Strip) -> MeasuredSection | None:
    """What a strip is by its bends: one an angle; two, or four with lips, a cee, a zee, a hat."""
    ways = "".join("+" if turn * bent.turns[0] > 0 else "-" for turn in bent.turns)
    found = {"+": _angle, "++": _cee, "++++": _cee, "+-": _zee, "++--": _zee, "+--+": _hat}.get(ways)
    shape, pitch = (found and found(bent, bent.walls.max(axis=1).tolist())) or (None, 0.0)
    if shape is None:
        return None
    inside = float(bent.radii[0, 0])
    outside = 0.0 if shape.shape == "angle" else inside + bent.thickness
    corners = _corners(bent.radii, np.tile((inside, outside), (len(bent.radii), 1)))
    return MeasuredSection(shape if corners else replace(shape, radius=inside), pitch, corners)


_Found = tuple[SectionShape, float] | None


def _angle(bent: Strip, legs: list[float]) -> _Found:
    if not _equal(np.abs(bent.turns), RIGHT, TURNED):
        return None
    return SectionShape("angle", max(legs), min(legs), bent.thickness), 0.0


def _cee(bent: Strip, outside: list[float]) -> _Found:
    """Also one whose upper flange is folded to the pitch."""
    *lips, one, other = sorted(np.abs(bent.turns).tolist(), key=lambda turn: -turn)
    pitch = RIGHT - other
    if not _equal([*lips, one], RIGHT, TURNED) or not _alike(outside) or pitch > STEEPEST:
        return None
    lip, flange, web = _halves(outside)
    shape = SectionShape("cee", web, flange, bent.thickness, lip=lip, angle=90.0)
    return shape, 0.0 if pitch < TURNED else degrees(pitch)


def _zee(bent: Strip, outside: list[float]) -> _Found:
    turns = np.abs(bent.turns)
    middle = len(turns) // 2
    lips = [float(turns[0]), float(turns[-1])] if middle > 1 else []
    one, other = flanges = outside[middle - 1], outside[middle + 1]
    alike = [*outside[: middle - 1], min(flanges), outside[middle], min(flanges), *outside[middle + 2 :]]
    if not _equal(turns[middle - 1 : middle + 1], RIGHT, TURNED) or not _alike(alike):
        return None
    if lips and not _equal(lips, lips[0], TURNED):
        return None
    lip, flange, web = _halves(alike)
    angle, wider = degrees(sum(lips) / 2) if lips else 50.0, abs(one - other)
    depth = web + bent.thickness
    shape = SectionShape("zee", depth, flange, bent.thickness, lip=lip, angle=angle)
    return replace(shape, wider=wider if wider > SAME else 0.0), 0.0


def _hat(bent: Strip, outside: list[float]) -> _Found:
    turn = float(np.abs(bent.turns).mean())
    if not _equal(np.abs(bent.turns), turn, TURNED) or not _alike(outside):
        return None
    crown, side, flange = outside[2], outside[1], float(bent.walls[0].min())
    depth = side * sin(turn) + bent.thickness
    return SectionShape("hat", depth, crown, bent.thickness, flange=flange, angle=degrees(turn)), 0.0


def _halves(outside: list[float]) -> tuple[float, float, float]:
    """(lip, flange, web) of walls that are alike from both ends; lip 0 where there is none."""
    lip, flange, web = outside[:3] if len(outside) > 3 else (0.0, *outside[:2])
    return lip, flange, web


def _alike(walls: list[float]) -> bool:
    """Whether walls are the same from both ends."""
    return _equal(np.array(walls) - np.array(walls[::-1]), 0.0, SAME)


def _equal(values: Sequence[float] | Vectors, value: float, within: float) -> bool:
    return float(np.abs(np.asarray(values) - value).max()) < within
