"""Bite: every screw goes through what it is to hold, square into steel, its washer flat, clear of edges.

A screw fastens what its axis passes from under its washer to the first steel, layer on layer. Where no
steel is, two sheets on each other are what a lap screw holds.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from functools import lru_cache
from itertools import pairwise

import numpy as np
import shapely
from OCP.TopoDS import TopoDS_Solid

from ..findings import Code, Finding
from ..measure.faces import Vectors
from ..measure.sheet import measure_sheet
from ..place import Point3
from ..solids.properties import REMEMBERED
from .driven import SEATED, Driven, Layer
from .found import Named, found
from .limits import over, under
from .rays import across
from .shadow import shadow
from .site import Site, overlapping, point

LEAST_BITE = 5.0
"""mm past the face of the steel: the drill point through it and a few threads. Common practice, no source."""
ALONG = 8.0
"""mm of metal in one layer of steel; more is a wall that the screw runs down. No flange here is as thick."""
AIR = 1.0
"""mm between one layer and the next, more than the thickest trim: where none lies between sheet and steel,
the sheet stands off by one."""
HOLLOW, LAID = 38.0, 4
"""mm under a trim's leg, which lies on the crowns of ribs and spans the pans between: the highest rib is
35 mm, and sheets lap on it; and how many thicknesses of trim may lie between, where lengths of runs lap."""
FLAT = 0.8
"""mm that the metal under a washer's rim may fall away or rise; its rubber takes that up. Ours."""
EDGE, APART = 1.5, 3.0
"""Diameters from a screw's middle to an edge or end, and from screw to screw (AISI S100)."""


def bites(site: Site, screws: Sequence[Driven], standing: Mapping[str, float]) -> Iterator[Finding]:
    """Every fault of a screw with what it holds, with edges and with other screws. standing: how far off
    their face sheets stand that lie on the heads of others (mm), by name."""
    edges = _edges(site, screws)
    for screw, near in zip(screws, edges, strict=True):
        yield from _one(site, screw, near, standing)
    yield from _near_each_other(screws)


def least_bite(site: Site, screw: Driven) -> float | None:
    """How far a screw's point reaches past the face of the steel it meets (mm); None if it meets none."""
    held = screw.held
    if not held or site.lists[held[-1].body] != "members":
        return None
    return screw.shape.length - held[-1].start


def _one(
    site: Site, screw: Driven, edges: list[tuple[int, float]], standing: Mapping[str, float]
) -> Iterator[Finding]:
    held = screw.held
    if not held:
        yield _finding(site, screw, Code.SCREW_IN_AIR)
        return
    first, last = held[0], held[-1]
    if over(first.start, SEATED):
        yield _finding(site, screw, Code.WASHER_OFF, first.body, first.start, SEATED)
        return
    low, high = (min(screw.rim[k.body][i] for k in held if k.body in screw.rim) for i in (0, 1))
    ride = max(-low, high)
    edge = min((distance for _, distance in edges), default=screw.shape.rim)
    if over(ride, FLAT) and edge >= screw.shape.rim:
        yield _finding(site, screw, Code.WASHER_RIDES, first.body, min(ride, screw.shape.rim), FLAT)
    wrapped = {layer.body for layer in screw.layers if layer.end <= -SEATED} & {layer.body for layer in held}
    if wrapped:
        yield _finding(site, screw, Code.HEAD_BEHIND, min(wrapped))
    if site.lists[last.body] == "members":
        yield from _in_steel(site, screw, held, standing)
    elif sum(site.lists[layer.body] == "sheets" for layer in held) < 2:
        yield _finding(site, screw, Code.SCREW_MISSES, first.body)
    limit = EDGE * 2 * screw.shape.radius
    run_down = {layer.body for layer in held if over(layer.end - layer.start, ALONG)}
    for body, distance in edges:
        if under(distance, limit) and body not in run_down:
            yield _finding(site, screw, Code.EDGE_NEAR, body, distance, limit)


def _in_steel(
    site: Site, screw: Driven, held: tuple[Layer, ...], standing: Mapping[str, float]
) -> Iterator[Finding]:
    steel = held[-1]
    bite, metal = screw.shape.length - steel.start, steel.end - steel.start
    wide = [(air, body, limit) for air, body, limit in _airs(site, held, standing) if over(air, limit)]
    if over(metal, ALONG):
        yield _finding(site, screw, Code.SCREW_ALONG, steel.body, metal, ALONG)
    elif wide:
        air, body, limit = wide[0]
        yield _finding(site, screw, Code.SCREW_GAP, body, air, limit)
    elif under(bite, LEAST_BITE):
        yield _finding(site, screw, Code.BITE_SHORT, steel.body, bite, LEAST_BITE)


def _airs(
    site: Site, held: tuple[Layer, ...], standing: Mapping[str, float]
) -> Iterator[tuple[float, int, float]]:
    """The air under each layer before the next, the layer's body, and how much there may be: a sheet that
    lies on another's head is screwed down by what it stands off, one over a nested purlin by what that lies
    under others."""
    over_ribs = True
    for before, after in pairwise(held):
        over_ribs = over_ribs and site.lists[before.body] == "trims"
        under_sheet = site.thickest_trim + AIR + standing.get(site.bodies[before.body].name, 0.0)
        under_sheet += site.nested.get(site.bodies[after.body].name, 0.0)
        hollow = HOLLOW + LAID * site.thickest_trim
        yield after.start - before.end, before.body, hollow if over_ribs else under_sheet


def _finding(
    site: Site,
    screw: Driven,
    code: Code,
    other: int | None = None,
    measured: float | None = None,
    limit: float | None = None,
) -> Finding:
    about: list[Named] = [screw] if other is None else [screw, site.bodies[other]]
    return found(code, about, screw.seat, measured, limit)


def _edges(site: Site, screws: Sequence[Driven]) -> list[list[tuple[int, float]]]:
    """For each screw every layer that it holds, with the distance to that body's nearest edge, mm.

    The edge is that of the body's shadow along the screw. Asked for all screws of a body at once.
    """
    asked: dict[tuple[int, Point3], list[tuple[int, Vectors]]] = defaultdict(list)
    one_of_row = {id(screw.piece): screw for screw in screws}
    ways = {piece: point(-screw.axis, 9) for piece, screw in one_of_row.items()}
    for number, screw in enumerate(screws):
        way = ways[id(screw.piece)]
        for layer in screw.held:
            if site.lists[layer.body] == "insulation":
                continue  # which no edge tears out of
            asked[layer.body, way].append((number, screw.seat))
    near: list[list[tuple[int, float]]] = [[] for _ in screws]
    for (body, way), places in asked.items():
        turn = site.turns[body]
        seats = (np.array([seat for _, seat in places]) - site.origins[body]) @ turn
        local = point(np.array(way) @ turn, 7)
        spots = shapely.points(seats @ across(np.array(local)).T)
        distances = shapely.distance(
            _rim(site.bodies[body].solid, local, site.lists[body] == "sheets"), spots
        )
        for (number, _), distance in zip(places, distances.tolist(), strict=True):
            near[number].append((body, distance))
    return near


@lru_cache(maxsize=REMEMBERED)
def _rim(solid: TopoDS_Solid, way: Point3, sheet: bool) -> shapely.Geometry:
    """The edge of a body seen along a screw; a sheet's is known without uniting its many faces."""
    rim = shapely.boundary(_flat(solid, way) if sheet else shadow(solid, way))
    shapely.prepare(rim)
    return rim


def _flat(solid: TopoDS_Solid, way: Point3) -> shapely.Geometry:
    lying = measure_sheet(solid).ways[0]
    bench = lying.bench
    axes = across(np.array(way)) @ np.array([bench.x, bench.y]).T
    start = across(np.array(way)) @ np.array(bench.origin)
    return shapely.transform(lying.outline, lambda points: points @ axes.T + start)


def _near_each_other(screws: Sequence[Driven]) -> Iterator[Finding]:
    """Screws driven side by side closer than APART."""
    if not screws:
        return
    seats = np.array([screw.seat for screw in screws])
    widest = max(APART * 2 * screw.shape.radius for screw in screws)
    for i, j in zip(*overlapping(seats - widest / 2, seats + widest / 2, 0.0), strict=True):
        one, other = screws[i], screws[j]
        limit = APART * 2 * max(one.shape.radius, other.shape.radius)
        distance = float(np.linalg.norm(seats[i] - seats[j]))
        if one.axis @ other.axis > 0.5 and under(distance, limit):
            yield found(Code.SCREWS_NEAR, (one, other), seats[i], distance, limit)
