"""Openings that cut sheets where they should not be cut, and the nearest place where they would not."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

import shapely

from ...description.building import Building
from ...description.opening import Opening
from ...envelope.face import Region
from ...envelope.fit_checks import misfits
from ...envelope.sheet_runs import Lay, laid
from ...findings import Code, Finding
from ...place import Point2
from ..screws.room import lip_reach
from ..screws.screw_kinds import EDGE, INCH, RIM
from ..trim.trim_lines import TrimLines

ROOM = 3.0
"""mm of a pan before a jamb that a column of screws needs: a flange's bend may take a little of it. Ours."""
LaidOn = list[tuple[Region, list[Lay]]]
"""The regions of a wall, each with its sheets' places."""
STEPS = {"ft-in": INCH / 4, "mm": 5.0}
"""mm; openings are moved by whole ones."""
WIDER = {"ft-in": 2 * INCH, "mm": 50.0}
"""mm; openings are made wider or narrower by whole ones. Common practice, no source."""
WIDTHS = 9
"""So many of them either way are tried."""


@dataclass(frozen=True, slots=True)
class Cut:
    """What an opening does to the sheets beside it: whether an edge runs along a rib, which leaves no flat to
    screw into the jamb; the narrowest strip it leaves of a sheet (mm), None where none is too narrow."""

    on_rib: bool
    strip: float | None

    @property
    def bad(self) -> bool:
        """Whether a detailer would move it."""
        return self.on_rib or self.strip is not None


@dataclass(frozen=True, slots=True)
class Beside:
    """An opening with what it does to the sheets beside it: its wall's name and its number there.

    better: the nearest from_left (mm) where it would do well; width: without one, the width (mm) about the
    same middle with which it would. None without any.
    """

    wall: str
    number: int
    opening: Opening
    cut: Cut
    better: float | None
    width: float | None

    @property
    def code(self) -> Code:
        """What is found, by what would do."""
        moved, resized, neither = STRIPS if self.cut.strip is not None else RIBS
        if self.better is not None:
            return moved
        return neither if self.width is None else resized


RIBS = (Code.OPENING_ON_RIB, Code.OPENING_ON_RIBS, Code.OPENING_RIBS_STAY)
STRIPS = (Code.STRIP_BESIDE, Code.STRIPS_BESIDE, Code.STRIP_STAYS)


def beside_openings(lines: TrimLines) -> Iterator[Finding]:
    """A note for each opening with an edge on a rib, or a strip beside it."""
    for beside in _beside(lines):
        name = f"{beside.wall} {beside.opening.kind} {beside.number}"
        better, measured = beside.better, beside.cut.strip
        if measured is None and better is not None:
            measured = abs(better - beside.opening.from_left)
        would_do = beside.width if better is None else better
        yield Finding(beside.code, (name,), (), None, measured, would_do, "length")


def clear_places(building: Building) -> tuple[float, ...]:
    """from_left (mm) of each opening, or the nearest one where sheets are cut well, if there is one."""
    found = {id(beside.opening): beside.better for beside in _beside(TrimLines(building))}
    return tuple(
        better if (better := found.get(id(one))) is not None else one.from_left for one in building.openings
    )


def _beside(lines: TrimLines) -> Iterator[Beside]:
    for wall in (wall for wall in lines.steel.walls if wall.openings):
        laid_on = [(region, [lay for lay, _ in laid(lines.steel, wall, region)]) for region in wall.regions]
        for number, opening in enumerate(wall.openings, 1):
            cut = _cut(lines, laid_on, opening)
            if cut.bad:
                better = _better(lines, laid_on, opening)
                width = _width(lines, laid_on, opening) if better is None else None
                yield Beside(wall.name, number, opening, cut, better, width)


def _better(lines: TrimLines, laid_on: LaidOn, opening: Opening) -> float | None:
    """The nearest from_left within a rib's pitch at which sheets are cut well and everything still fits."""
    step = STEPS[lines.building.units]
    for at in _nearby(opening.from_left, step, round(laid_on[-1][0].skin.profile.pitch / step)):
        if _does(lines, laid_on, opening, replace(opening, from_left=at)):
            return at
    return None


def _width(lines: TrimLines, laid_on: LaidOn, opening: Opening) -> float | None:
    """The nearest width about the same middle with which sheets are cut well and everything still fits."""
    middle = opening.from_left + opening.width / 2
    for width in _nearby(opening.width, WIDER[lines.building.units], WIDTHS):
        if _does(lines, laid_on, opening, replace(opening, width=width, from_left=middle - width / 2)):
            return width
    return None


def _nearby(size: float, step: float, most: int) -> Iterator[float]:
    """Whole steps beside a size, the nearest first, up to so many either way and over nought."""
    for count in range(1, most + 1):
        for way in (1, -1):
            if (number := round(size / step) + way * count) > 0:
                yield number * step


def _does(lines: TrimLines, laid_on: LaidOn, opening: Opening, other: Opening) -> bool:
    """Whether another opening in place of one does well."""
    return (
        other.from_left > 0 and not _cut(lines, laid_on, other).bad and _fits(lines.building, opening, other)
    )


def _fits(building: Building, opening: Opening, moved: Opening) -> bool:
    openings = tuple(moved if one is opening else one for one in building.openings)
    return not any(misfits(replace(building, openings=openings), even_bays=True))


def _cut(lines: TrimLines, laid_on: LaidOn, opening: Opening) -> Cut:
    on_rib, strips, least = False, [], lines.building.limits.strip
    for region, lays in laid_on:
        if not region.foot < opening.sill + opening.height or not opening.sill < region.head:
            continue
        ribs = [rib for lay in lays for rib in ribs_of(lay, region)]
        flats = _flats(region, lays, ribs)
        for edge, out in ((opening.from_left, -1.0), (opening.from_left + opening.width, 1.0)):
            cut = edge + out * lines.building.sheets.cut_clearance
            on_rib |= any(abs(cut - rib) < region.skin.profile.base / 2 for rib in ribs)
            on_rib |= not _screwed(lines, flats, opening, (edge, out))
            strips += [strip for lay in lays if 0 < (strip := _strip(region, lay, edge, out)) < least]
    return Cut(on_rib, min(strips, default=None))


def ribs_of(lay: Lay, region: Region) -> list[float]:
    """u of a sheet's major ribs."""
    profile, sign = region.skin.profile, lay.sign
    count = round(profile.cover / profile.pitch)
    return [lay.rib + sign * number * profile.pitch for number in range(count + 1)]


def _flats(region: Region, lays: Sequence[Lay], ribs: Sequence[float]) -> shapely.Geometry:
    """Where along a region a screw's washer lies on a pan, clear of ribs and of the low ones between them."""
    profile, span = region.skin.profile, region.span
    apart, within = profile.pitch / (profile.minors + 1), profile.minors + 1
    minors = [
        lay.rib + lay.sign * number * apart
        for lay in lays
        for number in range(round(profile.cover / profile.pitch) * within)
        if number % within
    ]
    raised = [(rib, profile.base / 2) for rib in ribs] + [(rib, profile.minor_base / 2) for rib in minors]
    taken = [shapely.box(rib - half - RIM, -1.0, rib + half + RIM, 1.0) for rib, half in raised]
    whole = shapely.LineString([(span[0], 0.0), (span[1], 0.0)])
    return whole.difference(shapely.union_all(taken))


def _screwed(lines: TrimLines, flats: shapely.Geometry, opening: Opening, edge: Point2) -> bool:
    """Whether a sheet that ends at an opening has a flat for its screws before the jamb. edge: u of the
    opening's, and which way (1, -1) the jamb lies."""
    (u, out), building = edge, lines.building
    nearest = max(building.sheets.cut_clearance + EDGE, lip_reach(lines, opening))
    ends = sorted((u + out * nearest, u + out * (building.framing.jamb.width - EDGE)))
    return bool(flats.intersection(shapely.box(ends[0], -1.0, ends[1], 1.0)).length > ROOM)


def _strip(region: Region, lay: Lay, edge: float, out: float) -> float:
    """How far a sheet that an opening's edge cuts reaches past it."""
    start, end = lay.reach(region.skin.profile)
    return (end - edge if out > 0 else edge - start) if start < edge < end else 0.0
