"""Screws through the sheets, in the usual pattern (trade practice, no published source).

At each framing line next to a sheet's end or the edge of a cutout across its ribs: a pair straddling
every major rib. At the lines between: one at every major rib, always on the same side. A lap rib
counts once, since each pan's screws belong to its own sheet. Where the run's end leaves a rib no outer
flat there is no pan to screw through, and the outer one is left out.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cache
from itertools import pairwise
from math import ceil

import shapely
from shapely.geometry import LineString, Point, Polygon

from ..catalog.profiles import RibProfile
from ..description.building import Screws
from ..place import Place, Point2, Point3
from ..recipe import Part, Sheet, Turned, grid
from ..roles import Role
from .backing import seen
from .faces import Face
from .screw_kinds import INCH, NUMBER_12, hex_screw
from .screw_lines import FROM_EDGE, ScrewLine

LEAST_APART = 3 * NUMBER_12
"""Screws stand at least 3 diameters apart (AISI S100)."""

STITCH = hex_screw(NUMBER_12, 0.75 * INCH)
"""Of lap screws, which hold sheet to sheet on a rib's crown and reach no steel."""


@dataclass(frozen=True, slots=True)
class Fastening:
    """What a face's sheets are screwed with: its lines, and where steel lies behind them (u, v)."""

    screws: Screws
    face: Face
    lines: Sequence[ScrewLine]
    backing: shapely.Geometry


@dataclass(frozen=True, slots=True)
class Missed:
    """A screw that the pattern asks for and that would find no steel: on a sheet, at (u, v) of a face."""

    sheet: str
    face: str
    at: Point2


def sheet_screws(profile: RibProfile, plan: Fastening, sheet: Part) -> tuple[Part | None, list[Missed]]:
    """One row of all the screws of a sheet, and those that would miss."""
    assert isinstance(sheet.recipe, Sheet)
    frame = plan.face.frame
    row: list[Point3] = []
    missed = []
    for bench in sorted(set(_pattern(profile, plan, sheet))):
        u, v = _on_face(frame, sheet, bench)
        if not 0.0 <= u <= plan.face.width:
            continue  # past the corner, where the run's end leaves a rib no outer flat over steel
        if shapely.intersects(plan.backing, Point(u, v)):
            row.append((bench[0], bench[1], _top(sheet.recipe, bench[0])))
        else:
            missed.append(Missed(sheet.name, plan.face.name, (grid(u), grid(v))))
    if not row:
        return None, missed
    body = hex_screw(NUMBER_12, plan.screws.length)
    return _part(f"{sheet.name} screws", Role.SHEET_SCREW, plan, body, sheet, tuple(row)), missed


def stitch_screws(profile: RibProfile, plan: Fastening, sheet: Part) -> Part | None:
    """Lap screws along a roof sheet's overlap rib, where it lies on a neighbour and they are asked for."""
    assert isinstance(sheet.recipe, Sheet)
    apart, face = plan.screws.stitch, plan.face
    rib = _on_face(face.frame, sheet, (0.0, 0.0))[0]
    ends = [u for u, _ in face.outline]
    if not (apart and face.sloped and min(ends) + 2 * profile.leg < rib < max(ends) - 2 * profile.leg):
        return None
    _, low, _, high = Polygon(sheet.recipe.outline).bounds
    count = max(1, ceil((high - low) / apart) - 1)
    step = (high - low) / (count + 1)
    w = _top(sheet.recipe, 0.0)
    row = tuple((0.0, grid(low + step * k), w) for k in range(1, count + 1))
    return _part(f"{sheet.name} lap screws", Role.LAP_SCREW, plan, STITCH, sheet, row)


def _part(name: str, role: Role, plan: Fastening, body: Turned, sheet: Part, row: tuple[Point3, ...]) -> Part:
    labels = (("face", plan.face.name), ("colour", sheet.label("colour")), ("material", "screw"))
    return Part(name, role, ("screws", plan.face.name), body, sheet.place, labels, row)


def _pattern(profile: RibProfile, plan: Fastening, sheet: Part) -> Iterator[Point2]:
    """Where screws go, on the bench."""
    count = round(profile.cover / profile.pitch)
    beside = profile.base / 2 + plan.screws.beside_rib
    for k in range(count + 1):
        if k < count:
            yield from _column(plan, sheet, k * profile.pitch + beside, second=False)
        if k > 0:
            yield from _column(plan, sheet, k * profile.pitch - beside, second=True)


def _column(plan: Fastening, sheet: Part, u: float, second: bool) -> Iterator[Point2]:
    """The screws beside one rib, on one side: on the end lines of every stretch of sheet and those between.

    second: the side that only pairs have.
    """
    assert isinstance(sheet.recipe, Sheet)
    for stretch in _stretches(sheet.recipe, u):
        heights = _crossings(plan, sheet, u, stretch)
        for number, v in enumerate(heights):
            at_end = number in (0, len(heights) - 1)
            if not second or (plan.screws.ends if at_end else plan.screws.between) == "pair":
                yield (grid(u), grid(v))


@cache
def _stretches(recipe: Sheet, u: float) -> tuple[Point2, ...]:
    """The v ranges of a sheet's outline over u, apart from its edges."""
    inside = _inset(recipe)
    if inside.is_empty:
        return ()
    _, low, _, high = inside.bounds
    found = shapely.intersection(inside, LineString(((u, low - 1), (u, high + 1))))
    lines = [part for part in shapely.get_parts(found) if part.length > 0]
    return tuple(sorted((line.bounds[1], line.bounds[3]) for line in lines))


@cache
def _inset(recipe: Sheet) -> shapely.Geometry:
    outline = Polygon(recipe.outline, recipe.holes)
    return outline.buffer(-FROM_EDGE * 0.9, join_style="mitre")


def _crossings(plan: Fastening, sheet: Part, u: float, stretch: Point2) -> list[float]:
    """v (bench) of the framing lines within a stretch, from the foot up, none closer than allowed."""
    found: list[float] = []
    frame = plan.face.frame
    zero, one = _on_face(frame, sheet, (u, 0.0)), _on_face(frame, sheet, (u, 1.0))
    flip = one[1] - zero[1]  # 1, or -1 for a sheet turned end for end
    heights = sorted(flip * (h - zero[1]) for line in plan.lines if (h := line.height(zero[0])) is not None)
    inside = [v for v in heights if stretch[0] <= v <= stretch[1]]
    for v in inside:
        if not found or v - found[-1] >= LEAST_APART:
            found.append(v)
    if inside and found[-1] != inside[-1]:
        found[-1] = inside[-1]
    return found


def _on_face(frame: Place, sheet: Part, bench: Point2) -> Point2:
    u, v, _ = seen(frame, sheet.place.point((bench[0], bench[1], 0.0)))
    return u, v


def _top(recipe: Sheet, u: float) -> float:
    """w of the sheet's upper face at u: where a washer sits."""
    for (u0, w0), (u1, w1) in pairwise(recipe.upper):
        if u0 <= u <= u1:
            return grid(w0 + (w1 - w0) * (u - u0) / (u1 - u0))
    return 0.0
