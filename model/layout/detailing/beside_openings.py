"""Openings that cut sheets where they should not be cut, and the nearest place where they would not."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

import shapely

from ...description.building import Building, Opening
from ...envelope.face import Region
from ...envelope.fit_checks import misfits
from ...findings import Code, Finding
from ...place import Point2
from ..screws.screw_kinds import EDGE, INCH, RIM
from ..skin.cladding import Lay, laid
from ..trim.trim_lines import TrimLines

STRIP = 76.2
"""mm; a leg of a sheet beside an opening narrower than this (3 in) is cut away, or it flaps."""
LaidOn = list[tuple[Region, list[Lay]]]
"""The regions of a wall, each with its sheets' places."""
STEPS = {"ft-in": INCH / 4, "mm": 5.0}
"""mm; openings are moved by whole ones."""


@dataclass(frozen=True, slots=True)
class Cut:
    """What an opening does to the sheets beside it: whether an edge runs along a rib, which leaves no flat to
    screw into the jamb; the narrowest strip it leaves of a sheet (mm), None where that is STRIP or more."""

    on_rib: bool
    strip: float | None

    @property
    def bad(self) -> bool:
        """Whether a detailer would move it."""
        return self.on_rib or self.strip is not None


def beside_openings(lines: TrimLines) -> Iterator[Finding]:
    """A note for each opening with an edge on a rib, or a strip beside it."""
    for wall in (wall for wall in lines.steel.walls if wall.openings):
        laid_on = [(region, [lay for lay, _ in laid(lines.steel, wall, region)]) for region in wall.regions]
        for number, opening in enumerate(wall.openings, 1):
            cut = _cut(lines, laid_on, opening)
            if not cut.bad:
                continue
            name, better = f"{wall.name} {opening.kind} {number}", _better(lines, laid_on, opening)
            measured = None if better is None else abs(better - opening.from_left)
            if cut.strip is not None:
                code = Code.STRIP_BESIDE if better is not None else Code.STRIPS_BESIDE
                yield Finding(code, (name,), (), None, cut.strip, better, "length")
            else:
                code = Code.OPENING_ON_RIB if better is not None else Code.OPENING_ON_RIBS
                yield Finding(code, (name,), (), None, measured, better, "length")


def _better(lines: TrimLines, laid_on: LaidOn, opening: Opening) -> float | None:
    """The nearest from_left within a rib's pitch at which sheets are cut well and everything still fits."""
    step, building = STEPS[lines.building.units], lines.building
    pitch = laid_on[-1][0].skin.profile.pitch
    for count in range(1, round(pitch / step) + 1):
        for way in (1, -1):
            moved = replace(opening, from_left=_whole(opening.from_left, step, way, count))
            if (
                moved.from_left > 0
                and not _cut(lines, laid_on, moved).bad
                and _fits(building, opening, moved)
            ):
                return moved.from_left
    return None


def _whole(at: float, step: float, way: int, count: int) -> float:
    """A place so many whole steps to one side."""
    return (round(at / step) + way * count) * step


def _fits(building: Building, opening: Opening, moved: Opening) -> bool:
    openings = tuple(moved if one is opening else one for one in building.openings)
    return not any(misfits(replace(building, openings=openings), even_bays=True))


def _cut(lines: TrimLines, laid_on: LaidOn, opening: Opening) -> Cut:
    on_rib, strips = False, []
    for region, lays in laid_on:
        if not region.foot < opening.sill + opening.height or not opening.sill < region.head:
            continue
        ribs = [rib for lay in lays for rib in ribs_of(lay, region)]
        for edge, out in ((opening.from_left, -1.0), (opening.from_left + opening.width, 1.0)):
            on_rib |= not _screwed(lines, region, ribs, (edge, out))
            strips += [strip for lay in lays if 0 < (strip := _strip(region, lay, edge, out)) < STRIP]
    return Cut(on_rib, min(strips, default=None))


def ribs_of(lay: Lay, region: Region) -> list[float]:
    """u of a sheet's major ribs."""
    profile, sign = region.skin.profile, lay.sign
    count = round(profile.cover / profile.pitch)
    return [lay.rib + sign * number * profile.pitch for number in range(count + 1)]


def _screwed(lines: TrimLines, region: Region, ribs: Sequence[float], edge: Point2) -> bool:
    """Whether a sheet that ends at an opening has a flat for its screws before the jamb, and its edge is not
    cut along a rib. edge: u of the opening's, and which way (1, -1) the jamb lies."""
    u, out = edge
    building, profile = lines.building, region.skin.profile
    cut, half = building.sheets.cut_clearance, profile.base / 2
    ends = sorted((u + out * (cut + EDGE), u + out * (building.framing.jamb.width - EDGE)))
    flat = shapely.LineString([(ends[0], 0.0), (ends[1], 0.0)])
    taken = [shapely.box(rib - half - RIM, -1.0, rib + half + RIM, 1.0) for rib in ribs]
    along_rib = any(abs(u + out * cut - rib) < half for rib in ribs)
    return not along_rib and not flat.difference(shapely.union_all(taken)).is_empty


def _strip(region: Region, lay: Lay, edge: float, out: float) -> float:
    """How far a sheet that an opening's edge cuts reaches past it."""
    start, end = lay.reach(region.skin.profile)
    return (end - edge if out > 0 else edge - start) if start < edge < end else 0.0
