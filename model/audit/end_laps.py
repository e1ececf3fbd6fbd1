"""End laps: the higher sheet on top, far enough, close, and screwed through both into steel at every rib."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from itertools import pairwise

import numpy as np

from ..findings import Code, Finding
from ..measure.faces import Vectors
from ..measure.laid_sheets import LaidSheet
from ..measure.laps import EndLap
from ..terms import Terms
from .clad import Clad
from .driven import Driven
from .found import found
from .limits import over, under
from .sheet_laps import NESTED
from .site import Site

STEEP = 3 / 12
"""Rise in one of run from which on the shorter lap does."""
ON_STEEP, ON_FLAT, ON_WALL = 152.4, 304.8, 101.6
"""mm; the least end lap (6 in, 12 in; 4 in on walls) where nobody asked for another. Common practice, no
source."""
SHY = 0.5
"""mm that a lap may be short by: less than a tape shows."""
ROW = 101.6
"""mm up from the upper sheet's foot (4 in) in which its row of screws stands. Common practice, no source."""
HALF = 0.5
"""Share of the distance between ribs within which each has a screw. Ours."""


def end_laps(site: Site, faces: Sequence[Clad], screws: Sequence[Driven], terms: Terms) -> Iterator[Finding]:
    """Every fault of the end laps of faces."""
    through = _through_two(site, screws)
    for face in faces:
        for lap in face.plane.end_laps:
            fault = _fault(face, lap, terms)
            yield from (fault,) if fault else _loose(face, lap, through)


def least_lap(face: Clad, terms: Terms) -> float:
    """How far sheets of a face lap up it at the least (mm)."""
    if not face.plane.sloped:
        return terms.end_lap or ON_WALL
    up = float(face.axes[1][2])
    rise = up / max(1e-9, float(np.sqrt(1 - up * up)))
    return terms.end_lap or (ON_STEEP if rise > STEEP - 1e-6 else ON_FLAT)


def _fault(face: Clad, lap: EndLap, terms: Terms) -> Finding | None:
    least = least_lap(face, terms)
    if not lap.sheds:
        return _of(face, Code.END_LAP_TURNED, lap)
    if under(lap.length, least - SHY):
        return _of(face, Code.END_LAP_SHORT, lap, lap.length, least)
    if over(-lap.air[0], NESTED):
        return _of(face, Code.LAP_PRESSED, lap, -lap.air[0], NESTED)
    if over(lap.air[0], NESTED):
        return _of(face, Code.LAP_OPEN, lap, lap.air[0], NESTED)
    return None


def _through_two(site: Site, screws: Sequence[Driven]) -> Mapping[frozenset[str], list[Vectors]]:
    """The places of the screws that hold two sheets to steel, by the sheets' names."""
    kept: dict[frozenset[str], list[Vectors]] = {}
    for screw in screws:
        lists = [site.lists[layer.body] for layer in screw.held]
        if lists.count("sheets") > 1 and lists[-1] == "members":
            names = [
                site.bodies[layer.body].name for layer in screw.held if site.lists[layer.body] == "sheets"
            ]
            for pair in pairwise(names):
                kept.setdefault(frozenset(pair), []).append(screw.seat)
    return kept


def _loose(face: Clad, lap: EndLap, through: Mapping[frozenset[str], list[Vectors]]) -> Iterator[Finding]:
    """The rib of a lap that has no screw beside it through both sheets into steel, farthest from one."""
    left, foot, right, _ = lap.region.bounds
    seats = np.array(through.get(frozenset((lap.upper.piece.name, lap.under.piece.name)), []))
    places = seats.reshape(-1, 3) @ face.axes[:2].T
    row = places[(places[:, 1] > foot) & (places[:, 1] < foot + ROW), 0]
    ribs = [u for u in lap.upper.crowns if left < u < right]
    least = _pitch(face, lap.upper) or right - left
    away = [float(np.abs(row - u).min(initial=max(least, right - left))) for u in ribs]
    if over(max(away, default=0.0), HALF * least):
        yield _of(face, Code.END_LAP_LOOSE, lap, max(away), HALF * least)


def _pitch(face: Clad, sheet: LaidSheet) -> float:
    """The least from rib to rib of a sheet; of a strip of one rib that of those about it; 0 without any."""
    for sheets in ((sheet,), face.plane.sheets):
        if apart := [b - a for one in sheets for a, b in pairwise(one.crowns)]:
            return min(apart)
    return 0.0


def _of(
    face: Clad, code: Code, lap: EndLap, measured: float | None = None, limit: float | None = None
) -> Finding:
    middle = lap.region.representative_point()
    at = np.array(face.plane.point(middle.x, middle.y))
    return found(code, (lap.upper.piece, lap.under.piece), at, measured, limit)
