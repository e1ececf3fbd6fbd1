"""Cover: every face sheeted once, twice at a lap, never in an opening; nothing open; no raw edge in sight."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

import numpy as np
import shapely

from ..findings import Code, Finding, Quantity
from ..measure.faces import Vectors
from ..measure.laid_sheets import LaidSheet
from ..measure.laps import EndLap, SideLap
from ..terms import Terms
from .breaks import Break, open_breaks
from .clad import EAVE, HAIRLINE, Clad
from .found import found
from .headwalls import OUT, headwalls, open_heads, sheltered
from .limits import over
from .seams import closed_by, ends_of, off_steel, open_seams, seams
from .shadow import seen
from .site import Box, Site
from .unclad import unclad

THIN = 0.05
"""mm; what vanishes when its rim is drawn in by this is noise."""
GAP, RIDE = 1.2, 1.6
"""mm, and thicknesses of trim: hairlines up to the larger are no gap, for trims of a run ride on each other,
short ones that lap far by so much more than a thickness."""
STRIP = 5.0
"""mm, half the width of a bare strip along an edge, such as a trim leaves that is missing."""
POCKET = 25.0
"""mm about an opening in which the sheet's edge lies in the trim's pocket."""
SEAL = 5.0
"""mm; a leaf or sash may stand this far off its opening all round."""
BARE = 5.0
"""mm of raw edge, or of an eave, that may show: where two trims meet."""
SPECK = 10.0
"""mm across; a bare place no larger is where trims meet: at a corner in an open gap over a gable."""
BROUGHT = 100.0
"""mm about a fault in which others come of it."""
CLOSE = 30.0
"""mm; walls and steel nearer to each other in plan enclose one building."""


def covers(
    site: Site,
    faces: Sequence[Clad],
    laps: Sequence[Sequence[SideLap]],
    breaks: Sequence[Break],
    terms: Terms,
) -> Iterator[Finding]:
    """Every fault of cover; laps: the side laps of each face; breaks: of the pitch. What a fault
    brings with it is not said again: a missing sheet's neighbours have raw edges, a missing ridge cap leaves
    the heads bare."""
    said: list[Box] = []
    yield from _new(unclad(site, faces, terms), said)
    for face in faces:
        yield from _new(open_seams(face), said)
        yield from off_steel(face, ends_of(seams(face)))
    ends = list(headwalls(faces))
    for headwall in ends:
        yield from _new(open_heads(headwall), said)
        yield from off_steel(headwall.wall, headwall.ends(), OUT)
    for one in breaks:
        yield from _new(open_breaks(one), said)
    upper = [one.upper for one in breaks]
    under = [sheltered(ends, face) for face in faces]
    bare = [_uncovered(face, shelter) for face, shelter in zip(faces, under, strict=True)]
    for face, of_face, shelter, parts in zip(faces, laps, under, bare, strict=True):
        yield from _too_often(face, of_face)
        yield from _too_often(face, face.plane.end_laps)
        yield from _new(_in_openings(face), said)
        yield from _new(_holes(face, shelter), said)
        yield from _new(_bare(face, parts, wide=True), said)
    yield from _new(_open_to_sky(site, faces), said)
    for face in (face for face in faces if face not in upper):
        yield from _new(_eave(face), said)
    for face, shelter in zip(faces, under, strict=True):
        yield from _new(_raw_edges(face, shelter), said)
    for face, parts in zip(faces, bare, strict=True):
        yield from _new(_bare(face, parts, wide=False), said)


def _new(found: Iterable[tuple[Finding, Box]], said: list[Box]) -> Iterator[Finding]:
    """Findings whose place lies in none of those said before, whose places are then said."""
    for finding, (low, high) in list(found):
        if not any((low > a - BROUGHT).all() and (high < b + BROUGHT).all() for a, b in said):
            said.append((low, high))
            yield finding


def _box(face: Clad, shape: shapely.Geometry) -> Box:
    left, low, right, high = shape.bounds
    corners = np.array([face.plane.point(u, v) for u in (left, right) for v in (low, high)])
    return corners.min(axis=0), corners.max(axis=0)


def _thick(shape: shapely.Geometry, by: float = THIN) -> list[shapely.Geometry]:
    """The parts of a shape that are not slivers, drawn in by half their least width."""
    drawn = shape.buffer(-by, join_style="mitre")
    return [part for part in shapely.get_parts(drawn) if not part.is_empty]


def _found(
    face: Clad,
    code: Code,
    bodies: Sequence[int | LaidSheet],
    shape: shapely.Geometry,
    measured: float,
    quantity: Quantity = "area",
) -> Finding:
    pieces = [one.piece if isinstance(one, LaidSheet) else face.site.bodies[one] for one in bodies]
    inside = shape.representative_point()
    at = np.array(face.plane.point(inside.x, inside.y))
    return found(code, pieces, at, measured, None, quantity)


def _too_often(face: Clad, laps: Sequence[SideLap | EndLap]) -> Iterator[Finding]:
    """Where laps of one kind lie over each other: three sheets on one place, other than where an end lap
    crosses a side lap."""
    regions = [lap.region for lap in laps]
    if not regions:
        return
    tree = shapely.STRtree(regions)
    for i, j in zip(*tree.query(regions, predicate="intersects"), strict=True):
        if i < j:
            for part in _thick(regions[i].intersection(regions[j])):
                sheets = dict.fromkeys((laps[i].upper, laps[i].under, laps[j].upper, laps[j].under))
                yield _found(face, Code.COVERED_TWICE, tuple(sheets), part, part.area)


def _in_openings(face: Clad) -> Iterator[tuple[Finding, Box]]:
    """Sheets that reach into an opening."""
    for hole in face.openings:
        for sheet in face.plane.sheets:
            for part in _thick(hole.shape.intersection(sheet.outline)):
                left, low, right, high = part.bounds
                reach = min(right - left, high - low)
                finding = _found(face, Code.IN_OPENING, (sheet, hole.body), part, reach, "length")
                yield finding, _box(face, part)


def _uncovered(face: Clad, shelter: shapely.Geometry) -> list[shapely.Geometry]:
    """Steel's hull, as far up as sheets go, less sheets, trims, openings and what is sheltered."""
    open_ = [hole.shape.buffer(SEAL, join_style="mitre") for hole in face.openings]
    closed = shapely.union_all([face.plane.outline, face.trimmed, shelter, *open_])
    due = face.whole.intersection(shapely.box(*face.plane.outline.bounds))
    parts = _thick(due.difference(closed), _gap(face) / 2)
    return [part for part in parts if shapely.minimum_bounding_radius(part) > SPECK / 2]


def _gap(face: Clad) -> float:
    """mm; how wide a hairline may be."""
    return max(GAP, RIDE * face.site.thickest_trim)


def _bare(face: Clad, parts: Sequence[shapely.Geometry], *, wide: bool) -> Iterator[tuple[Finding, Box]]:
    """Those of the uncovered parts that are wide, or the strips."""
    for part in (part for part in parts if bool(_thick(part, STRIP)) == wide):
        yield _found(face, Code.UNCOVERED, _nearest(face, part), part, part.area), _box(face, part)


def _nearest(face: Clad, shape: shapely.Geometry) -> tuple[LaidSheet, ...]:
    sheets = sorted(face.plane.sheets, key=lambda sheet: float(sheet.outline.distance(shape)))
    return tuple(sheets[:1])


def _holes(face: Clad, shelter: shapely.Geometry) -> Iterator[tuple[Finding, Box]]:
    """Holes in the skin that neither an opening explains nor a trim that sheds, as over a rail, nor a roof
    that ends in them behind its trims."""
    for part in shapely.get_parts(face.plane.outline):
        for ring in part.interiors:
            hole = shapely.Polygon(ring)
            closed = closed_by(face, hole) | (shelter | face.trimmed if hole.intersects(shelter) else shelter)
            if not _thick(hole.difference(closed), _gap(face) / 2):
                continue
            if all(hole.distance(opening.shape) > POCKET for opening in face.openings):
                yield _found(face, Code.HOLE, _nearest(face, hole), hole, hole.area), _box(face, hole)


def _raw_edges(face: Clad, shelter: shapely.Geometry) -> Iterator[tuple[Finding, Box]]:
    """Cut edges that lie neither over nor under a trim, nor in shelter; a roof's feet are free by their
    nature."""
    edge = face.plane.outline.boundary
    if face.plane.sloped:
        left, low, right, high = face.plane.outline.bounds
        ends = [sheet.outline.bounds for sheet in face.plane.sheets]
        feet = max(foot for _, foot, _, _ in ends if foot < low + EAVE)
        edge = edge.difference(shapely.box(left - 1, low - 1, right + 1, feet + 1))
        if face.runs_out:
            heads = min(head for _, _, _, head in ends if head > high - EAVE)
            edge = edge.difference(shapely.box(left - 1, heads - 1, right + 1, high + 1))
    for part in shapely.get_parts(edge.difference(face.trimmed.buffer(0.3)).difference(shelter)):
        if over(part.length, BARE):
            finding = _found(face, Code.RAW_EDGE, _nearest(face, part), part, part.length, "length")
            yield finding, _box(face, part)


def _eave(face: Clad) -> Iterator[tuple[Finding, Box]]:
    """Trims under a roof's feet, all along them."""
    if not face.plane.sloped:
        return
    left, low, right, high = face.plane.outline.bounds
    line = shapely.LineString([(left, 0.0), (right, 0.0)])
    for at_head in (False, True) if face.runs_out else (False,):
        under = (shade.shape.bounds for shade in face.eave_trims(at_head))
        spans = [shapely.box(a, -1, b, 1) for a, _, b, _ in under]
        for part in shapely.get_parts(line.difference(shapely.union_all(spans))):
            if over(part.length, BARE + EAVE):  # beside the rake trims the eave trim ends with the walls
                ends = (part.bounds[0], part.bounds[2])
                where = shapely.LineString([(u, high if at_head else low) for u in ends])
                finding = _found(face, Code.BARE_EAVE, _nearest(face, where), where, part.length, "length")
                yield finding, _box(face, where.buffer(EAVE))


def _open_to_sky(site: Site, faces: Sequence[Clad]) -> Iterator[tuple[Finding, Box]]:
    """In plan: what walls and steel enclose, less roof sheets, trims and ridge vents over them."""
    roofs = [face for face in faces if face.plane.sloped]
    if not roofs:
        return
    walls = [face for face in faces if not face.plane.sloped]
    steel = [shapely.MultiPoint(site.corners(k)[:, :2]).convex_hull for k in site.listed("members").tolist()]
    feet = [_in_plan(face, shapely.box(*face.plane.outline.bounds)).envelope for face in walls]
    closed = shapely.union_all([*steel, *(foot.buffer(HAIRLINE) for foot in feet)])
    joined = closed.buffer(CLOSE, join_style="mitre").buffer(-CLOSE, join_style="mitre")
    inside = shapely.union_all([shapely.Polygon(part.exterior) for part in shapely.get_parts(joined)])
    trims = [seen(site, k, np.eye(3)) for k in site.listed("trims", "openings").tolist()]
    over = shapely.union_all([*trims, *(_in_plan(face, face.plane.outline) for face in roofs)])
    for part in _thick(inside.difference(over)):
        near = [sheet for face in roofs for sheet in face.plane.sheets]
        closest = min(near, key=lambda one: _away(one, part, roofs))
        face = next(face for face in roofs if closest in face.plane.sheets)
        at, box = part.representative_point(), shapely.box(*part.bounds)
        corners = np.array([_on_roof(face, *corner) for corner in box.exterior.coords])
        where = _on_roof(face, at.x, at.y)
        finding = found(Code.OPEN_TO_SKY, (closest.piece,), where, part.area, None, "area")
        yield finding, (corners.min(axis=0), corners.max(axis=0))


def _on_roof(face: Clad, x: float, y: float) -> Vectors:
    """The point of a roof's plane over a place in plan."""
    normal = face.axes[2]
    return np.array([x, y, (face.offset - normal[0] * x - normal[1] * y) / normal[2]])


def _in_plan(face: Clad, shape: shapely.Geometry) -> shapely.Geometry:
    """A shape of a plane (u, v) as it is seen from above."""
    across, start = face.axes[:2, :2], np.array(face.plane.frame.origin)[:2]
    return shapely.transform(shape, lambda points: points @ across + start)


def _away(sheet: LaidSheet, part: shapely.Geometry, roofs: Sequence[Clad]) -> float:
    """How far a sheet is from a place in plan."""
    face = next(face for face in roofs if sheet in face.plane.sheets)
    return float(_in_plan(face, sheet.outline).distance(part))
