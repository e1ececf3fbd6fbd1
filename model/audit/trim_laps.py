"""Laps of trims: as long as asked, the upper piece outside the lower one, level ones away from the wind, and
along an eave the piece outside that was asked.

Two trims are pieces of one run where they run along one line, have one section and meet end to end.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache

import numpy as np
from OCP.TopoDS import TopoDS_Solid

from ..findings import Code, Finding
from ..measure.faces import KEPT, Vectors, flats
from ..measure.member import ALONG, measure_member
from ..solids.properties import triangles
from ..terms import Terms
from .breaks import Break, closing
from .clad import Clad
from .found import found
from .limits import over, under
from .rays import spans
from .site import Site, overlapping

MEETING = 5.0
"""mm; ends of a run's pieces with more air between them belong to two runs."""
ALIGNED = 0.999
"""Cosine between two pieces of one run: they lean by their own thickness over a lap."""
BESIDE = 6.0
"""mm that the lines of two pieces of one run may lie apart: their lean, and what is snipped off one."""
SAME = 2.0
"""mm that the sections of two pieces of one run may differ, one of them snipped."""
WITHIN = 0.9
"""Share of the shorter piece; a longer lap is two trims side by side."""
SKIN = 2000.0
"""mm2; smaller faces are edges and folds."""
STACKED = 4.0
"""mm; parallel faces farther from each other are no lap: trims are up to 1/8 in thick."""
LOOKS_UP = 0.3
"""Rise of a normal over which water lies on a face, whatever is behind it."""
STEEP = 0.1
"""Rise of a run along its length from which water runs down it."""
PROBE = 150.0
"""mm; how far inward a trim's backing is looked for."""
TOLERANCE = 0.5
"""mm that a lap may fall short: pieces lean, and are cut square to their own length."""


@dataclass(frozen=True, slots=True, eq=False)
class TrimLap:
    """Two pieces of one run. one: the lower, or the nearer to the run's start; other: the upper. along:
    from one to the other (3,). length: of the lap; outside: how far one lies outside the other there, less
    than 0 where the other is outside; None where they have no face in common. at: its middle (3,). mm."""

    one: int
    other: int
    along: Vectors
    length: float
    outside: float | None
    at: Vectors


def trim_laps(site: Site) -> list[TrimLap]:
    """Every lap of two pieces of a run."""
    numbers = site.listed("trims")
    first, second = overlapping(site.low[numbers], site.high[numbers], -MEETING)
    pairs = zip(numbers[first].tolist(), numbers[second].tolist(), strict=True)
    return [lap for i, j in pairs if (lap := _lap(site, i, j)) is not None]


def trim_lap_faults(
    site: Site, laps: Sequence[TrimLap], faces: Sequence[Clad], breaks: Sequence[Break], terms: Terms
) -> Iterator[Finding]:
    """Laps that are short, or the wrong way round. breaks: of the pitch, whose trim is laid as a ridge's."""
    capping, at_eaves = {body for one in breaks for body in closing(one)}, _at_eaves(faces)
    for lap in laps:
        if terms.trim_lap is not None and under(lap.length, terms.trim_lap - TOLERANCE):
            yield _of(site, Code.TRIM_LAP_SHORT, lap, lap.length, terms.trim_lap)
        elif lap.outside is None:
            continue
        elif abs(lap.along[2]) > STEEP:
            if over(lap.outside, 0.0):
                yield _of(site, Code.TRIM_LAP_UPHILL, lap, abs(lap.outside), None)
        elif terms.wind is not None and (lap.one in capping or _on_roofs(site, lap, faces) > 1):
            edge = lap.along if lap.outside > 0 else -lap.along
            if float(edge @ np.array(terms.wind)) > STEEP:
                yield _of(site, Code.TRIM_LAP_WINDWARD, lap, None, None, swap=lap.outside < 0)
        elif terms.eave_lap is not None and lap.one in at_eaves:
            upper = -lap.along if lap.outside > 0 else lap.along
            if float(upper @ np.array(terms.eave_lap)) < -STEEP:
                yield _of(site, Code.TRIM_LAP_TURNED, lap, None, None, swap=lap.outside < 0)


def _lap(site: Site, i: int, j: int) -> TrimLap | None:
    one, other = _run(site, i), _run(site, j)
    if abs(float(one[0] @ other[0])) < ALIGNED or not _alike(site, i, j):
        return None
    along = one[0] if _ahead(one[0]) else -one[0]
    ends = [np.sort(site.corners(k) @ along)[[0, -1]] for k in (i, j)]
    if ends[0].sum() > ends[1].sum():
        i, j, ends, one, other = j, i, ends[::-1], other, one
    length = float(ends[0][1] - ends[1][0])
    if not -MEETING < length < WITHIN * min(float(np.ptp(end)) for end in ends):
        return None
    apart = other[1] - one[1]
    if np.linalg.norm(apart - (apart @ along) * along) > BESIDE:
        return None
    station = float(ends[0][1] + ends[1][0]) / 2
    at = one[1] + (station - one[1] @ along) * along
    outside = _outside(site, i, j, along, station) if length > 0 else None
    return TrimLap(i, j, along, length, outside, at)


def _run(site: Site, k: int) -> tuple[Vectors, Vectors]:
    """A trim's direction and the middle of its legs' box along it, in the building."""
    bench = measure_member(site.bodies[k].solid).ways[0].bench
    middle = _legs(site.bodies[k].solid).mean(axis=0)
    where = np.array(bench.point((float(middle[0]), float(middle[1]), float(middle[2]))))
    return site.turns[k] @ np.array(bench.y), site.turns[k] @ where + site.origins[k]


@lru_cache(maxsize=KEPT)
def _legs(solid: TopoDS_Solid) -> Vectors:
    """Lowest and highest corner (2, 3) of a trim's legs on the bench, without what is folded at its ends."""
    bench = measure_member(solid).ways[0].bench
    axes = np.array([bench.x, bench.y, bench.z])
    normals, _, rings = flats(solid)
    along = np.abs(normals @ axes[1]) < ALONG
    wide = [ring[0] for ring, runs in zip(rings, along, strict=True) if runs and len(ring)]
    corners = [(points - np.array(bench.origin)) @ axes.T for points in wide]
    spans = [np.array([one.min(axis=0), one.max(axis=0)]) for one in corners]
    legs = [one for one in spans if one[1, 1] - one[0, 1] > STACKED] or spans
    return np.array([np.min([one[0] for one in legs], axis=0), np.max([one[1] for one in legs], axis=0)])


def _ahead(way: Vectors) -> bool:
    """Up; on a level run to the back, then to the right."""
    if abs(way[2]) > STEEP / 10:
        return bool(way[2] > 0)
    return bool(way[1] > 0 if abs(way[1]) > abs(way[0]) else way[0] > 0)


def _alike(site: Site, i: int, j: int) -> bool:
    one, other = (np.sort(np.ptp(_legs(site.bodies[k].solid), axis=0)[[0, 2]]) for k in (i, j))
    return bool((np.abs(one - other) < SAME).all())


def _outside(site: Site, i: int, j: int, along: Vectors, station: float) -> float | None:
    """How far the outer skin of one piece lies outside that of the other at a station along the run: along
    one normal, since they lean, and a little lean is much at a distance from the building's origin."""
    found = []
    ones, others = _crossing(site, i, along, station), _crossing(site, j, along, station)
    for one in ones:
        for other in others:
            outside = float(one.normal @ (one.middle - other.middle))
            if one.normal @ other.normal > 0.9999 and abs(outside) < STACKED:
                found.append((min(one.area, other.area), outside, one, other))
    found.sort(key=lambda pair: pair[:2], reverse=True)
    return next((outside for _, outside, *pair in found if all(_skin(site, face) for face in pair)), None)


@dataclass(frozen=True, slots=True, eq=False)
class _Crossing:
    """A face of a trim that crosses a station: its area, normal (3,), own middle and that at the station."""

    area: float
    normal: Vectors
    own: Vectors
    middle: Vectors


def _crossing(site: Site, k: int, along: Vectors, station: float) -> list[_Crossing]:
    turn, origin = site.turns[k], site.origins[k]
    normals, _, faces = flats(site.bodies[k].solid)
    outwards = normals @ turn.T
    found = []
    for face in np.flatnonzero(np.abs(outwards @ along) <= 0.1).tolist():
        outward = outwards[face]
        corners = faces[face][0] @ turn.T + origin
        across = corners @ along
        if not across.min() < station < across.max():
            continue
        area = float(np.ptp(across) * np.ptp(corners @ np.cross(along, outward)))
        if area < SKIN:
            continue
        own = corners.mean(axis=0)
        own = own - (outward @ (own - corners[0])) * outward
        found.append(_Crossing(area, outward, own, own + (station - own @ along) * along))
    return found


def _skin(site: Site, face: _Crossing) -> bool:
    """Whether a face looks away from the building. What is behind it is told at its own middle: at a lap may
    be the end of what it lies over."""
    up = face.normal[2]
    return bool(up > LOOKS_UP or (up > -LOOKS_UP and _backed(site, face.own, -face.normal)))


def _backed(site: Site, start: Vectors, inward: Vectors) -> bool:
    """Whether steel lies nearer on the inward side of a face than on the other."""
    depths = {1: np.inf, -1: np.inf}
    reach = np.abs(inward) * PROBE + 1.0
    numbers = site.listed("members")
    near = (site.low[numbers] < start + reach).all(axis=1) & (site.high[numbers] > start - reach).all(axis=1)
    for k in numbers[near].tolist():
        points, corners = triangles(site.bodies[k].solid)
        local = (start - site.origins[k]) @ site.turns[k]
        _, begins, ends = spans(
            points[corners], local[None], inward @ site.turns[k], np.array([[0.013, 0.017]])
        )
        for begin, end in zip(begins.tolist(), ends.tolist(), strict=True):
            if end > 0:
                depths[1] = min(depths[1], max(begin, 0.0))
            if begin < 0:
                depths[-1] = min(depths[-1], max(-end, 0.0))
    return depths[1] < depths[-1]


def _on_roofs(site: Site, lap: TrimLap, faces: Sequence[Clad]) -> int:
    """How many roofs a piece lies over."""
    return sum(
        any(
            shade.body == lap.one and shade.high > 1.0 and face.plane.outline.intersects(shade.shape)
            for shade in face.trims
        )
        for face in faces
        if face.plane.sloped
    )


def _at_eaves(faces: Sequence[Clad]) -> set[int]:
    """The bodies of eave trims."""
    return {shade.body for face in faces for at_head in (False, True) for shade in face.eave_trims(at_head)}


def _of(
    site: Site, code: Code, lap: TrimLap, measured: float | None, limit: float | None, swap: bool = False
) -> Finding:
    pair = (lap.other, lap.one) if swap else (lap.one, lap.other)
    return found(code, (site.bodies[k] for k in pair), lap.at, measured, limit)
