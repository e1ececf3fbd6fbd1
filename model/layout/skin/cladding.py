"""Sheets laid on a face, region by region: which, where, and cut how. Knows faces, not walls."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass

import shapely
from shapely.geometry import Polygon
from shapely.geometry.polygon import orient

from ...catalog.profiles import RibProfile
from ...description.building import Building
from ...description.opening import Opening
from ...envelope.end_laps import EndLap
from ...envelope.face import Face, Region
from ...envelope.headwall import headwall_slots
from ...envelope.light_sheets import light_columns
from ...envelope.sheet_runs import Lay, laid
from ...envelope.skin_lines import DRIP_PAST, SHELF_FALL, head_angle, lap_room, over_shelf, plane
from ...envelope.sliding import rails_of
from ...place import Place, Point2
from ...recipe import Part, Sheet, grid
from ...roles import Role
from ..screws.screw_kinds import EDGE
from ..trim.trim_lines import TrimLines
from .ribs import graphs, rise_of_lap

CLEAR = 0.8
"""mm; between a drip and the sheets cut around it (1/32 in). Ours."""

SLIVER = 0.5
"""mm; a strip of sheet narrower than this is not cut, it is swarf."""


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
        wanted, gaps = clad_of(lines.building, face, region), _holes(lines.building, face)
        profile, courses = region.skin.profile, courses_of(lines, face, region)
        for column, within in laid(lines.steel, face, region):
            start, end = (min(max(u, within[0]), within[1]) for u in column.reach(profile))
            legs = shapely.union_all(list(_legs(gaps, start, end, 2 * profile.leg)))
            pieces: list[tuple[Course, Polygon]] = []
            for course in courses:
                cut = shapely.union(legs, _lap_corner(course, column, profile, within))
                box = shapely.box(start, course.foot, end, course.head) - cut
                pieces += [(course, piece) for piece in sound(shapely.intersection(wanted, box))]
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
    laps = lines.steel.laps_of(face, region)
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
    """The part that a tile is. A light sheet is drawn as thick as the steel ones that it nests with; how
    thick it is bought is its maker's to say, so that it has no gauge."""
    skin, tree = tile.region.skin, "roof" if face.sloped else "walls"
    role = Role.ROOF_SHEET if face.sloped else Role.WALL_SHEET
    own: tuple[tuple[str, str], ...]
    own = (("gauge", skin.gauge), ("colour", skin.colour), ("material", "steel"))
    if light := light_columns(lines.steel, face, tile.region).get(tile.column.number):
        role = Role.ROOF_LIGHT if face.sloped else Role.WALL_LIGHT
        own = (("colour", light.colour), ("material", "translucent plastic"))
    return Part(
        name=name_of(face, tile),
        role=role,
        group=(tree, face.name),
        recipe=Sheet(*graphs(skin.profile, skin.thickness), tile.ring, tile.holes),
        place=face.frame
        @ Place((0.0, 0.0, plane(lines.building.sheets, skin) + tile.course.rise))
        @ tile.place,
        labels=(("face", face.name), ("profile", skin.profile.name), *own),
    )


def covered(building: Building, face: Face) -> shapely.Geometry:
    """Where a screw on the face has sheet around it: what is clad, 1.5 diameters in from its edges."""
    whole = [clad_of(building, face, region) for region in face.regions]
    return shapely.union_all([one.buffer(-EDGE, join_style="mitre") for one in whole])


def clad_of(building: Building, face: Face, region: Region) -> Polygon:
    """What the sheets of a region cover: all of it less its face's openings."""
    cuts = [*_holes(building, face), *(_slot(building, opening) for opening in face.openings)]
    cuts += _under_covers(building, face)
    cuts += (shapely.box(*slot) for slot in headwall_slots(building, face.name, face.frame))
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


def _under_covers(building: Building, face: Face) -> list[Polygon]:
    """What the covers over rails take of the sheets: from the heads under a shelf to the feet over it."""
    return [
        shapely.box(rail.cover[0] - CLEAR, rail.seam.head, rail.cover[1] + CLEAR, rail.seam.foot)
        for rail in rails_of(building, face.name)
    ]


def _legs(gaps: list[Polygon], start: float, end: float, lap: float) -> Iterator[Polygon]:
    """What openings would leave of a sheet beside them that is less than its lap: cut away, since no screw
    holds it and its neighbour covers it. Common practice, no source."""
    for gap in gaps:
        left, low, right, high = gap.bounds
        if 0 < end - right < lap:
            yield shapely.box(right, low, end, high)
        if 0 < left - start < lap:
            yield shapely.box(start, low, left, high)


def sound(region: Polygon) -> list[Polygon]:
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
    return place, *rings_at(outline, lambda u, v: (sign * (u - lay.rib), sign * (v - base)))


def rings_at(
    outline: Polygon, moved: Callable[[float, float], Point2]
) -> tuple[tuple[Point2, ...], tuple[tuple[Point2, ...], ...]]:
    """A sheet's outline and holes where they are moved to, as recipes write them: from the leftmost point on,
    the lowest of those."""

    def ring_at(ring: shapely.LinearRing) -> tuple[Point2, ...]:
        points = [(grid(x), grid(y)) for x, y in (moved(u, v) for u, v in ring.coords[:-1])]
        first = points.index(min(points))
        return tuple(points[first:] + points[:first])

    return ring_at(outline.exterior), tuple(sorted(map(ring_at, outline.interiors)))
