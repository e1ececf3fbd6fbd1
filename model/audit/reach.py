"""Reach: whether each piece can still be put where it belongs, for an order in which they are put up.

A piece is taken away again from what stood before it: straight off its face, or after a short slide along
it, as sheets are slipped into a pocket. Points just under the surface of both bodies are followed along the
way; where one runs into the other the way is blocked. That proves blocking and never freedom: silence
means that no blocking was found on the ways tried. Pieces are rigid but for a sheet's lap, which is lifted
by hand to slip the next one under, for foam, which is pressed in, and for the ends of trims, which are flat
until they are folded over where the trim is.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from functools import lru_cache

import numpy as np
from OCP.TopoDS import TopoDS_Solid

from ..findings import Code, Finding
from ..measure.faces import Vectors, flats
from ..measure.member import measure_member
from ..measure.sheet import measure_sheet
from ..pieces import Model
from ..solids.properties import REMEMBERED, triangles
from .found import found
from .rays import spans
from .site import Numbers, Site, site
from .unfolded import unfolded

FAR = 400.0
"""mm that a piece is taken along a way: past the deepest trim. Ours."""
SLIDES = (40.0, 80.0, 300.0, 600.0, 1000.0)
"""mm that a piece is slid along its face before it is taken off, up to the width of a sheet. Ours."""
UNDER = 0.04
"""mm under the surface that a point is followed from: what only touches is not met."""
CLEAR = 0.05
"""mm; less than this of a body in the way is a rounding edge that was met."""
SPACING = 120.0
"""mm between points along an edge."""
MOST = 1200
"""Points of one body that are followed."""
LAP = 100.0
"""mm; sheets of one face that lie over each other on less than this are lapped, and their laps lift."""
ALIKE = 1 - 1e-6
Shape = Callable[[TopoDS_Solid], tuple[Vectors, Numbers]]
"""Corners (n, 3) and triangles (m, 3) of a body, its ends folded over or not."""
AWAY, FLAT, FOLDED = range(3)
"""How a piece stands: not yet, with the tabs at its ends flat, with them folded over."""


def reach(model: Model, sequence: Sequence[str]) -> tuple[Finding, ...]:
    """Pieces that cannot be put where they belong once what comes before them in a sequence of names stands.

    A name that comes a second time: there the ends of the trim are folded over, and from then on they are
    in the way. Pieces that the sequence does not name, and screws, are left aside. Nothing found proves
    nothing; whether a tab can be turned over is not tried.
    """
    whole = site(model)
    numbers = {piece.name: k for k, piece in enumerate(whole.bodies) if whole.lists[k] != "closures"}
    standing = np.full(len(whole.bodies), AWAY)
    findings = []
    for k in (numbers[name] for name in sequence if name in numbers):
        blockers = _blockers(whole, k, standing) if standing[k] == AWAY else None
        if blockers is not None:
            named = (whole.bodies[k], *(whole.bodies[j] for j in blockers))
            findings.append(found(Code.OUT_OF_REACH, named, (whole.low[k] + whole.high[k]) / 2))
        standing[k] = FLAT if standing[k] == AWAY else FOLDED
    return tuple(findings)


def _blockers(whole: Site, k: int, standing: Numbers) -> list[int] | None:
    """What stands in the way of a body on every way tried, nearest first; None where a way is free."""
    ways = _ways(whole, k)
    met: list[int] = []
    for way in ways:
        hit = _first_met(whole, k, way, FAR, np.zeros(3), standing)
        if hit is None:
            return None
        met.append(hit)
    for aside in _asides(whole, k, ways[0]):
        for far in SLIDES:
            hit = _first_met(whole, k, aside, far, np.zeros(3), standing)
            if hit is not None:
                met.append(hit)
                break
            hit = _first_met(whole, k, ways[0], FAR, aside * far, standing)
            if hit is None:
                return None
            met.append(hit)
    return list(dict.fromkeys(met))


def _ways(whole: Site, k: int) -> list[Vectors]:
    """The ways a body is taken off, the likeliest first: sheets square off their face, others along each of
    their own directions, and halfway between two of those, away from the building first."""
    axes = _axes(whole, k)
    if whole.lists[k] == "sheets":
        off = axes[2]
        return [off if off @ ((whole.low[k] + whole.high[k]) / 2 - whole.centre) > 0 else -off]
    plain = [sign * axis for axis in axes for sign in (1.0, -1.0)]
    between = [a + b for i, a in enumerate(plain) for b in plain[i + 1 :] if abs(a @ b) < 0.1]
    out = (whole.low[k] + whole.high[k]) / 2 - whole.centre
    return sorted(
        [way / np.linalg.norm(way) for way in (*plain, *between)], key=lambda way: -float(way @ out)
    )


def _asides(whole: Site, k: int, off: Vectors) -> list[Vectors]:
    """The ways a body is slid along its face."""
    axes = _axes(whole, k)
    return [sign * axis for axis in axes if abs(axis @ off) < 0.1 for sign in (1.0, -1.0)]


def _axes(whole: Site, k: int) -> Vectors:
    """(3, 3) rows: the directions of a body in the building, the one that most of its face has last."""
    solid, sheet = whole.bodies[k].solid, whole.lists[k] == "sheets"
    turn: Vectors = whole.turns[k] @ (_bench_axes(solid) if sheet else _own_axes(solid)).T
    return turn.T


@lru_cache(maxsize=REMEMBERED)
def _bench_axes(solid: TopoDS_Solid) -> Vectors:
    """Of a sheet: across its ribs, along them, off its face."""
    bench = measure_sheet(solid).bench
    return np.array([bench.x, bench.y, bench.z])


@lru_cache(maxsize=REMEMBERED)
def _own_axes(solid: TopoDS_Solid) -> Vectors:
    """Of any other body: across, along it, and off its largest face."""
    normals, _, rings = flats(solid)
    if not rings:  # a round bar
        bench = measure_member(solid).ways[0].bench
        return np.array([bench.x, bench.y, bench.z])
    sizes = np.array([_size(ring) for ring in rings])
    off = normals[int(sizes.argmax())]
    points = unfolded(solid)[0] - unfolded(solid)[0].mean(axis=0)
    flat = points - np.outer(points @ off, off)
    along = np.linalg.svd(flat, full_matrices=False)[2][0]
    along = along - (along @ off) * off
    along = along / np.linalg.norm(along)
    return np.array([np.cross(along, off), along, off])


def _size(ring: tuple[Vectors, ...]) -> float:
    if not ring:
        return 0.0
    points = ring[0]
    doubled = np.cross(points - points[0], np.roll(points, -1, axis=0) - points[0]).sum(axis=0)
    return float(np.linalg.norm(doubled)) / 2


def _first_met(
    whole: Site, k: int, way: Vectors, far: float, shift: Vectors, standing: Numbers
) -> int | None:
    """The first standing body that one meets on its way from its place, shifted."""
    low, high = whole.low[k] + shift, whole.high[k] + shift
    low, high = np.minimum(low, low + way * far) + CLEAR, np.maximum(high, high + way * far) - CLEAR
    near = (standing != AWAY) & (whole.low < high).all(axis=1) & (whole.high > low).all(axis=1)
    near[k] = False
    own = _placed(whole, k, unfolded) + shift
    for j in np.flatnonzero(near).tolist():
        if _lapped(whole, k, j):
            continue
        as_it_is = triangles if standing[j] == FOLDED else unfolded
        if _runs_into(own, way, far, _mesh(whole, j, as_it_is)):
            return j
        if _runs_into(_placed(whole, j, as_it_is) - shift, -way, far, _mesh(whole, k, unfolded)):
            return j
    return None


def _lapped(whole: Site, k: int, j: int) -> bool:
    """Whether two are sheets of one face that share no more than a lap across their ribs."""
    if whole.lists[k] != "sheets" or whole.lists[j] != "sheets":
        return False
    axes, other = _axes(whole, k), _axes(whole, j)
    if abs(axes[2] @ other[2]) < ALIKE:
        return False
    (a, b), (c, d) = whole.reach(k, axes[0]), whole.reach(j, axes[0])
    return bool(min(b, d) - max(a, c) < LAP)


def _runs_into(points: Vectors, way: Vectors, far: float, mesh: Vectors) -> bool:
    """Whether one of some points (n, 3) enters a mesh from its outside within a distance."""
    low, high = mesh.min(axis=(0, 1)), mesh.max(axis=(0, 1))
    ends = points + way * far
    inside = (np.minimum(points, ends) < high).all(axis=1) & (np.maximum(points, ends) > low).all(axis=1)
    if not inside.any():
        return False
    _, enters, leaves = spans(mesh, points[inside], way, np.zeros((1, 2)))
    return bool(((enters > 0.0) & (enters < far) & (leaves - enters > CLEAR)).any())


def _mesh(whole: Site, k: int, shape: Shape) -> Vectors:
    """(m, 3, 3) the triangles of a body in the building."""
    points, corners = shape(whole.bodies[k].solid)
    found: Vectors = (points @ whole.turns[k].T + whole.origins[k])[corners]
    return found


def _placed(whole: Site, k: int, shape: Shape) -> Vectors:
    found: Vectors = _points(whole.bodies[k].solid, shape) @ whole.turns[k].T + whole.origins[k]
    return found


@lru_cache(maxsize=REMEMBERED)
def _points(solid: TopoDS_Solid, shape: Shape) -> Vectors:
    """(n, 3) points just under the surface of a body, beside the edges of its triangles."""
    points, corners = shape(solid)
    mesh = points[corners]
    normals = np.cross(mesh[:, 1] - mesh[:, 0], mesh[:, 2] - mesh[:, 0])
    sizes = np.linalg.norm(normals, axis=1)
    mesh, normals = mesh[sizes > 1e-6], normals[sizes > 1e-6] / sizes[sizes > 1e-6, None]
    found = np.concatenate(list(_along_edges(mesh, normals)))
    if len(found) > MOST:
        found = found[np.random.default_rng(0).permutation(len(found))[:MOST]]
    return found


def _along_edges(mesh: Vectors, normals: Vectors) -> Iterator[Vectors]:
    middles = mesh.mean(axis=1)
    for corner in range(3):
        start, end = mesh[:, corner], mesh[:, (corner + 1) % 3]
        counts = np.maximum(np.ceil(np.linalg.norm(end - start, axis=1) / SPACING), 1)
        for step in range(int(counts.max())):
            kept = counts > step
            at = (start + (end - start) * ((step + 0.013) / counts)[:, None])[kept]
            inward = middles[kept] - at
            size = np.maximum(np.linalg.norm(inward, axis=1), 1e-9)
            yield at + inward * np.minimum(0.02, 0.15 / size)[:, None] - normals[kept] * UNDER
