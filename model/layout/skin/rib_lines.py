"""Where the ribs of a face stand, and how high its sheets come, for what is fitted to them."""

from __future__ import annotations

from collections.abc import Iterator

from ...catalog.profiles import RibProfile
from ...envelope.face import Face
from ...envelope.sheet_runs import Lay, laid
from ...envelope.skin_lines import over_others, plane
from ...place import Point2
from ..trim.trim_lines import TrimLines
from .ribs import graphs, height_at

EDGE = 1e-3
"""mm; ribs nearer to each other than this are one, where sheets lap."""

STUB = 10.0
"""mm; of a rib that the building's end cuts: less of it leaves no hollow to speak of. Ours."""


def major_ribs(lines: TrimLines, face: Face) -> Iterator[tuple[Lay, int]]:
    """Each major rib of a face once, as a sheet and the rib's number on it: a lap rib is the underlap rib
    of the sheet beneath; the overlap rib that lies on no other sheet is its own."""
    profile = face.skin.profile
    lays = [lay for lay, _ in laid(lines.steel, face, face.upper)]
    under = [lay.rib + lay.sign * profile.cover for lay in lays]
    for lay in lays:
        for rib in range(round(profile.cover / profile.pitch) + 1):
            at = lay.rib + lay.sign * rib * profile.pitch
            on_another = rib == 0 and any(abs(at - u) < EDGE for u in under)
            inside = min(at + profile.base / 2, face.width) - max(at - profile.base / 2, 0.0)
            if not on_another and inside > STUB:
                yield lay, rib


def past_first_rib(lines: TrimLines, slope: Face, hand: str) -> float | None:
    """From one end of a slope, how far in the inner foot of its first major rib is; None without one."""
    half, pitch = slope.skin.profile.base / 2, slope.skin.profile.pitch
    feet = [lay.rib + lay.sign * rib * pitch + half for lay, rib in major_ribs(lines, slope)]
    if hand == "right":
        feet = [slope.width - foot + 2 * half for foot in feet]
    return min((foot for foot in feet if foot > 0.0), default=None)


def crest(lines: TrimLines, face: Face, within: Point2) -> float:
    """w of the highest that a face's sheets come over a stretch of u."""
    found = [
        plane(lines.building.sheets, region.skin) + over_others(region.skin) + w
        for region in face.regions
        for lay, _ in laid(lines.steel, face, region)
        for w in _heights(lay, region.skin.profile, region.skin.thickness, within)
    ]
    return max(found, default=lines.thickness)


def _heights(lay: Lay, profile: RibProfile, thickness: float, within: Point2) -> Iterator[float]:
    """Of the top of one sheet over a stretch, at its corners and at the stretch's ends."""
    start, end = sorted(lay.sign * (u - lay.rib) for u in within)
    _, upper = graphs(profile, thickness)
    start, end = max(start, upper[0][0]), min(end, upper[-1][0])
    if start > end:
        return
    yield from (w for u, w in upper if start <= u <= end)
    yield from (height_at(upper, u) for u in (start, end))
