"""Sheets laid on a face, region by region: which, where, and cut how. Knows faces, not walls."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from math import ceil

import shapely
from shapely.geometry import Polygon
from shapely.geometry.polygon import orient

from ...catalog.profiles import RibProfile
from ...description.building import Building, Hand, Opening, Run
from ...envelope.end_laps import EndLap
from ...envelope.face import Face, Region
from ...envelope.skin_lines import DRIP_PAST, SHELF_FALL, head_angle, lap_room, over_shelf
from ...envelope.steel_lines import SteelLines
from ...place import Place, Point2
from ...recipe import Part, Sheet, grid
from ...roles import Role
from ..screws.screw_kinds import EDGE
from ..steel.framing import remaining
from ..trim.trim_lines import TrimLines
from .ribs import graphs, rise_of_lap

CLEAR = 0.8
"""mm; between a drip and the sheets cut around it (1/32 in). Ours."""

SLIVER = 0.5
"""mm; a strip of sheet narrower than this is not cut, it is swarf."""


@dataclass(frozen=True, slots=True)
class Lay:
    """One sheet's place in its run: its overlap rib's centre at u = rib, the sheet on `side` of it.

    number: in the order of laying, from 1.
    """

    number: int
    rib: float
    hand: Hand

    @property
    def sign(self) -> float:
        """1 where u of its bench runs as the face's does, -1 where it is turned end for end."""
        return 1.0 if self.hand == "left" else -1.0

    def reach(self, profile: RibProfile) -> tuple[float, float]:
        """The u range of the whole sheet, legs included."""
        if self.hand == "left":
            return (self.rib - profile.leg, self.rib + profile.cover + profile.leg)
        return (self.rib - profile.cover - profile.leg, self.rib + profile.leg)


def run(profile: RibProfile, plan: Run, clad: Point2, steel: Point2, centre: float) -> list[Lay]:
    """The sheets of a face, in the order of laying.

    clad: the u range that may be covered, where a run from a corner begins. steel: the range between
    the corners, which must be; on a gable the end sheets run past it by what their leg gives.

    From a corner the first sheet's overlap leg lies on that corner. From the centre the first sheet's
    underlap rib stands at `centre`, and all sheets of the face keep one hand, with their overlap rib
    towards the half that is laid first: there each sheet is slipped under the one before, in the other
    half it laps over it. Common practice, no source.
    """
    cover, leg = profile.cover, profile.leg
    anchor = {"left": clad[0] + leg, "right": clad[1] - leg, "centre": centre}[plan.start]
    tiny = 1e-9
    lefts = ceil((anchor - leg - steel[0]) / cover - tiny)
    rights = ceil((steel[1] - anchor - leg) / cover - tiny)
    leftward = [anchor - (k + 1) * cover for k in range(lefts)]
    rightward = [anchor + k * cover for k in range(rights)]
    order = leftward + rightward if plan.first == "left" else rightward + leftward
    shift = 0.0 if plan.first == "left" else cover
    return [Lay(number, rib + shift, plan.first) for number, rib in enumerate(order, 1)]


def laid(lines: SteelLines, face: Face, region: Region) -> Iterator[tuple[Lay, Point2]]:
    """The sheets of a region in the order of laying, each with the u range that it covers its part of: past
    an open bay begins a run of its own."""
    low, high = face.reach()
    plan, number = lines.run(face), 0
    stretches = remaining(region.span, face.gaps)
    for start, end in stretches if plan.first == "left" else stretches[::-1]:
        between = (max(low, start), min(high, end))
        for lay in run(region.skin.profile, plan, (start, end), between, run_centre(lines, face, region)):
            yield replace(lay, number=number + lay.number), (start, end)
        number += lay.number


def run_centre(lines: SteelLines, face: Face, region: Region) -> float:
    """Where the first sheet's underlap rib stands in a run from the centre.

    On the centre line, its edge a leg past it; where a post stands there, its edge is flush with the
    post's, so that the next sheet has steel too. Common practice, no source.
    """
    building, middle = lines.building, face.width / 2
    posts = [u for u, foot in lines.standing_posts(face) if foot is None]
    if not any(abs(u - middle) < 1.0 for u in posts):
        return middle
    past = building.frame.post.width / 2 - region.skin.profile.leg
    return middle + (past if lines.run(face).first == "left" else -past)


@dataclass(frozen=True, slots=True)
class Tile:
    """One sheet as it is cut and laid.

    region: of the face. column: its place in the run. course: which up the face, where sheets lap up it.
    letter: tells the pieces apart that openings and end laps make of one column; "" of a whole one. place: of
    its bench on the face. ring, holes: its outline on that bench, (n, 2).
    """

    region: Region
    column: Lay
    course: Course
    letter: str
    place: Place
    ring: tuple[Point2, ...]
    holes: tuple[tuple[Point2, ...], ...]


def tiles(lines: TrimLines, face: Face) -> Iterator[Tile]:
    """The sheets of a face, region by region, each in the order of laying."""
    for region in face.regions:
        wanted, gaps = _with_holes(lines.building, face, region), _holes(lines.building, face)
        profile, courses = region.skin.profile, courses_of(lines, face, region)
        for column, within in laid(lines.steel, face, region):
            start, end = (min(max(u, within[0]), within[1]) for u in column.reach(profile))
            legs = shapely.union_all(list(_legs(gaps, start, end, 2 * profile.leg)))
            pieces: list[tuple[Course, Polygon]] = []
            for course in courses:
                cut = shapely.union(legs, _lap_corner(course, column, profile, within))
                box = shapely.box(start, course.foot, end, course.head) - cut
                pieces += [(course, piece) for piece in _sound(shapely.intersection(wanted, box))]
            for letter, (course, outline) in zip("abcdefghijklmnopqrstuvwxyz", pieces, strict=False):
                name = letter if len(pieces) > 1 else ""
                yield Tile(region, column, course, name, *_on_bench(outline, column))


@dataclass(frozen=True, slots=True)
class Course:
    """Sheets side by side, from foot to head (v). rise: how far they stand off the face, on the ones under
    them. below, above: the end laps at their feet and their heads."""

    foot: float
    head: float
    rise: float = 0.0
    below: EndLap | None = None
    above: EndLap | None = None


def courses_of(lines: TrimLines, face: Face, region: Region) -> list[Course]:
    """The courses of a region, from its foot up: one where no sheets lap up it."""
    laps = lines.steel.laps_of(face) if region is face.upper else ()
    rise = rise_of_lap(region.skin.profile, region.skin.thickness) if laps else 0.0
    feet, heads = [region.foot, *(lap.foot for lap in laps)], [*(lap.head for lap in laps), region.head]
    below: list[EndLap | None] = [None, *laps]
    above: list[EndLap | None] = [*laps, None]
    ends = zip(feet, heads, below, above, strict=True)
    return [
        Course(foot, head, number * rise, under, over)
        for number, (foot, head, under, over) in enumerate(ends)
    ]


def _lap_corner(course: Course, column: Lay, profile: RibProfile, within: Point2) -> Polygon:
    """What is cut off a sheet's overlap leg under an end lap, where four sheets would meet: the corner that
    the sheets over it hide, so that the neighbour's upper sheet lies on its lower one. Common practice, no
    source."""
    clear = 2 * profile.leg
    if course.above is None or not within[0] + clear < column.rib < within[1] - clear:
        return Polygon()
    left, right = column.rib - profile.leg, column.rib + profile.leg
    return shapely.box(left, course.above.foot - CLEAR, right, course.head)


def name_of(face: Face, tile: Tile) -> str:
    """What a sheet is called."""
    return " ".join(filter(None, (face.name, tile.region.tier, f"{tile.column.number}{tile.letter}")))


def sheet_of(lines: TrimLines, face: Face, tile: Tile) -> Part:
    """The part that a tile is."""
    skin = tile.region.skin
    role, tree = (Role.ROOF_SHEET, "roof") if face.sloped else (Role.WALL_SHEET, "walls")
    labels = (
        ("face", face.name),
        ("profile", skin.profile.name),
        ("gauge", skin.gauge),
        ("colour", skin.colour),
        ("material", "steel"),
    )
    return Part(
        name=name_of(face, tile),
        role=role,
        group=(tree, face.name),
        recipe=Sheet(*graphs(skin.profile, skin.thickness), tile.ring, tile.holes),
        place=face.frame @ Place((0.0, 0.0, lines.building.sheets.flange + tile.course.rise)) @ tile.place,
        labels=labels,
    )


def covered(building: Building, face: Face) -> shapely.Geometry:
    """Where a screw on the face has sheet around it: what is clad, 1.5 diameters in from its edges."""
    whole = [_with_holes(building, face, region) for region in face.regions]
    return shapely.union_all([one.buffer(-EDGE, join_style="mitre") for one in whole])


def _with_holes(building: Building, face: Face, region: Region) -> Polygon:
    """A region less its face's openings."""
    cuts = [*_holes(building, face), *(_slot(building, opening) for opening in face.openings)]
    return shapely.difference(Polygon(region.clad), shapely.union_all(cuts))


def _holes(building: Building, face: Face) -> list[Polygon]:
    """The openings, each larger by the clearance, and over its drip by what feet hang over a shelf; one
    without a sill is cut to the foot."""
    if not face.regions:
        return []
    clearance, foot = building.sheets.cut_clearance, face.regions[0].foot
    return [
        shapely.box(
            opening.from_left - clearance,
            opening.sill - clearance if opening.sill > 0 else foot - 1,
            opening.from_left + opening.width + clearance,
            opening.sill + opening.height + head_angle(building, opening) + over_shelf(building),
        )
        for opening in face.openings
    ] + [
        *(shapely.box(low, foot - 1, high, face.upper.head + 1) for low, high in face.gaps),
        *(shapely.box(*cut) for cut in face.cuts),
    ]


def _slot(building: Building, opening: Opening) -> Polygon:
    """What the drip over an opening takes of the sheets, at its ends too."""
    past, bend = DRIP_PAST + CLEAR, opening.sill + opening.height + head_angle(building, opening)
    low = bend - SHELF_FALL - lap_room(building) - CLEAR
    left, right = opening.from_left - past, opening.from_left + opening.width + past
    return shapely.box(left, low, right, bend + over_shelf(building))


def _legs(gaps: list[Polygon], start: float, end: float, lap: float) -> Iterator[Polygon]:
    """What openings would leave of a sheet beside them that is less than its lap: cut away, since no screw
    holds it and its neighbour covers it. Common practice, no source."""
    for gap in gaps:
        left, low, right, high = gap.bounds
        if 0 < end - right < lap:
            yield shapely.box(right, low, end, high)
        if 0 < left - start < lap:
            yield shapely.box(start, low, left, high)


def _sound(region: Polygon) -> list[Polygon]:
    """The separate pieces of a region, without slivers, from the lowest left one on."""
    opened = region.buffer(-SLIVER / 2, join_style="mitre", mitre_limit=1e3).buffer(
        SLIVER / 2, join_style="mitre", mitre_limit=1e3
    )
    kept = region if abs(opened.area - region.area) < SLIVER**2 else opened
    pieces = [p for p in shapely.get_parts(kept) if p.geom_type == "Polygon" and p.area > SLIVER**2]
    return sorted((orient(shapely.simplify(p, GRAIN)) for p in pieces), key=lambda p: p.bounds[:2])


GRAIN = 1e-5
"""mm; points closer than this to the line between their neighbours are dropped from an outline."""


def _on_bench(outline: Polygon, lay: Lay) -> tuple[Place, tuple[Point2, ...], tuple[tuple[Point2, ...], ...]]:
    """The bench's place on the face, and the outline and holes as they lie on the bench.

    The bench has the overlap rib on its left. A sheet that has it on the right of the wall is the same
    sheet turned end for end.
    """
    _, low, _, high = outline.bounds
    sign, base = (1.0, low) if lay.hand == "left" else (-1.0, high)
    place = Place((lay.rib, base, 0.0), (sign, 0.0, 0.0), (0.0, sign, 0.0))

    def moved(ring: shapely.LinearRing) -> tuple[Point2, ...]:
        points = [(grid(sign * (u - lay.rib)), grid(sign * (v - base))) for u, v in ring.coords[:-1]]
        first = points.index(min(points))
        return tuple(points[first:] + points[:first])

    return place, moved(outline.exterior), tuple(sorted(moved(ring) for ring in outline.interiors))
