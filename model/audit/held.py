"""Held: along every cut edge of the skin that has steel behind it, screws no farther apart than asked; every
piece of trim by one at least."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import numpy as np
import shapely

from ..findings import Code, Finding
from ..measure.faces import Vectors
from ..measure.laid_sheets import LaidSheet
from ..roles import Role
from .clad import Clad
from .driven import Driven
from .found import found
from .headwalls import headwalls, sheltered
from .limits import over
from .site import Site

NEAR = 177.8
"""mm in from an edge (7 in) in which a screw holds it: less than a rib's pitch and a leg, so that a bare last
rib is seen. Ours."""
REACHED = 101.6
"""mm in from an edge (4 in) in which steel backs it; what begins farther in, such as the jamb of an opening
near a corner, does not, though a rail joins them. Common practice, no source."""
HOLDS = 317.5
"""mm of edge either way (12 1/2 in) that a screw holds: screws 24 in apart, and a little. Common practice."""
LEAST = 15.0
"""mm of edge; steel that backs less of it is passed by."""
NARROW = 16.0
"""mm; steel narrower than this, such as a section's cut end, takes no screw."""
BARE = (Role.BASE_PLATE,)
"""Steel whose edge lies behind sheets, into which nobody drives a screw."""
SHORT = 150.0
"""mm; shorter straight stretches of an edge are corners of it."""


def held(site: Site, faces: Sequence[Clad], screws: Sequence[Driven]) -> Iterator[Finding]:
    """Every stretch of cut edge that has steel behind it and no screw."""
    through: dict[str, list[Vectors]] = {}
    for screw in screws:
        for layer in screw.held:
            through.setdefault(site.bodies[layer.body].name, []).append(screw.seat)
    ends = list(headwalls(faces))
    for face in faces:
        shelter = sheltered(ends, face)
        rim = face.plane.outline.boundary.buffer(0.3)
        shapely.prepare(rim)
        flat = shapely.union_all([one.shape for one in face.steel if site.bodies[one.body].role not in BARE])
        wide = flat.buffer(-NARROW / 2, join_style="mitre").buffer(NARROW / 2, join_style="mitre")
        steel = shapely.STRtree(shapely.get_parts(wide))
        for sheet in face.plane.sheets:
            seats = np.array(through.get(sheet.piece.name, [])).reshape(-1, 3) @ face.axes[:2].T
            for start, end in _raw(sheet, rim):
                if abs(end[0] - start[0]) < 1.0 and shelter.covers(shapely.Point((start + end) / 2)):
                    continue  # up a rafter that comes through, a few inches of a sheet held on both sides
                yield from _edge(face, sheet, steel, start, end, seats)


def trims_held(site: Site, screws: Sequence[Driven]) -> Iterator[Finding]:
    """Every piece of trim that no screw holds to anything, where there are screws; a downspout's straps are
    not drawn. A J is gripped between sheet and steel: it is only to be tacked."""
    if not screws:
        return
    holding = {layer.body for screw in screws if len(screw.held) > 1 for layer in screw.held}
    for number in site.listed("trims").tolist():
        piece = site.bodies[number]
        if piece.role != Role.DOWNSPOUT and number not in holding:
            code = Code.TRIM_TO_TACK if piece.role == Role.J_TRIM else Code.TRIM_LOOSE
            yield found(code, (piece,), (site.low[number] + site.high[number]) / 2)


def _raw(sheet: LaidSheet, rim: shapely.Geometry) -> Iterator[tuple[Vectors, Vectors]]:
    """The straight stretches of a sheet's edge that are edges of the whole skin; the sheet to their left."""
    ring = shapely.geometry.polygon.orient(sheet.outline)
    for loop in (ring.exterior, *ring.interiors):
        corners = np.array(loop.coords)
        sides = np.stack([corners[:-1], corners[1:]], axis=1)
        sides = sides[np.hypot(*(sides[:, 1] - sides[:, 0]).T) > SHORT]
        on_rim = shapely.intersection(shapely.linestrings(sides), rim)
        parts, side = shapely.get_parts(on_rim, return_index=True)
        long = shapely.length(parts) > SHORT
        for part, (start, end) in zip(parts[long], sides[side[long]], strict=True):
            ends = np.array(part.coords)[[0, -1]]
            first = int(np.argmin(ends @ (end - start)))
            yield ends[first], ends[1 - first]


def _edge(
    face: Clad, sheet: LaidSheet, steel: shapely.STRtree, start: Vectors, end: Vectors, seats: Vectors
) -> Iterator[Finding]:
    """What of one stretch has steel behind it and no screw."""
    along = (end - start) / np.hypot(*(end - start))
    axes = np.array([along, (-along[1], along[0])])
    length = float((end - start) @ along)
    at = (seats - start) @ axes.T
    along_edge = np.sort(at[(at[:, 1] > 0) & (at[:, 1] < NEAR), 0])
    if not any(over(high - low, LEAST) for low, high in _without(0.0, length, along_edge)):
        return  # held all along, whatever is behind it
    band = shapely.transform(shapely.box(0.0, 0.0, length, REACHED), lambda points: points @ axes + start)
    for region in _regions(steel, band.intersection(sheet.outline)):
        backed = shapely.transform(region, lambda points: (points - start) @ axes.T)
        left, _, right, _ = backed.bounds
        if right - left < LEAST:
            continue
        for low, high in _without(left, right, along_edge):
            if over(high - low, LEAST):
                yield _loose(face, sheet, start + along * (low + high) / 2, high - low)


def _without(left: float, right: float, screws: Vectors) -> Iterator[tuple[float, float]]:
    """The stretches from left to right that no screw holds; screws: where they stand, ascending."""
    free = left
    for u in screws.tolist():
        if u - HOLDS > free:
            yield free, min(u - HOLDS, right)
        free = max(free, u + HOLDS)
        if free >= right:
            return
    yield free, right


def _regions(steel: shapely.STRtree, band: shapely.Geometry) -> Iterator[shapely.Geometry]:
    """The connected parts of the steel behind a band."""
    behind = [band.intersection(steel.geometries[k]) for k in steel.query(band, predicate="intersects")]
    if behind:
        yield from (part for part in shapely.get_parts(shapely.union_all(behind)) if part.area > 0)


def _loose(face: Clad, sheet: LaidSheet, where: Vectors, length: float) -> Finding:
    at = np.array(face.plane.point(float(where[0]), float(where[1])))
    return found(Code.EDGE_LOOSE, (sheet.piece,), at, length, LEAST)
