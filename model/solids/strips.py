"""A plane region cut along lines of constant u, so that neighbours share every corner.

No point is computed twice: crossings are put into the rings first (`noded`), then the strips are
read off the rings (`pieces`). Points are (u, v); rings are not closed by repeating; a region lies
to the left of its rings: outer ones run counter-clockwise, holes clockwise.
"""

from __future__ import annotations

import math
from bisect import bisect_left, bisect_right
from collections.abc import Sequence
from itertools import pairwise
from typing import NamedTuple

from ..place import Point2

FLAT = 1e-7  # mm; a corner nearer than this to the line through its neighbours is none


class Piece(NamedTuple):
    """One part of a region in one strip. strip: index of the cut on its left. rings: outer first."""

    strip: int
    rings: list[list[Point2]]


def area(ring: Sequence[Point2]) -> float:
    """Signed area (mm2): positive when the ring runs counter-clockwise."""
    return 0.5 * sum(p[0] * q[1] - q[0] * p[1] for p, q in zip(ring, [*ring[1:], ring[0]], strict=True))


def turned_to(ring: Sequence[Point2], sign: int) -> list[Point2]:
    """The ring, counter-clockwise for sign 1 and clockwise for -1."""
    return list(ring) if area(ring) * sign > 0 else list(reversed(ring))


def corners(ring: Sequence[Point2]) -> list[Point2]:
    """The ring without points that lie on the line between their neighbours."""
    kept = list(ring)
    for point in ring:
        i = kept.index(point)
        if len(kept) > 3 and off_line(kept[i - 1], point, kept[(i + 1) % len(kept)]) < FLAT:
            del kept[i]
    return kept


def off_line(a: Point2, p: Point2, b: Point2) -> float:
    """Distance (mm) of p from the line a b, from a when both are the same."""
    du, dv = b[0] - a[0], b[1] - a[1]
    length = math.hypot(du, dv)
    pu, pv = p[0] - a[0], p[1] - a[1]
    return abs(du * pv - dv * pu) / length if length > FLAT else math.hypot(pu, pv)


def crossed(p: Point2, q: Point2, cuts: Sequence[float]) -> list[Point2]:
    """p, then where p q crosses the cuts (ascending u) between its ends; q itself is left out."""
    if p[0] == q[0]:
        return [p]
    low, high = min(p[0], q[0]), max(p[0], q[0])
    between = cuts[bisect_right(cuts, low) : bisect_left(cuts, high)]
    slope = (q[1] - p[1]) / (q[0] - p[0])
    points = [(u, p[1] + slope * (u - p[0])) for u in between]
    return [p, *(points if p[0] < q[0] else reversed(points))]


def noded(ring: Sequence[Point2], cuts: Sequence[float]) -> list[Point2]:
    """The ring with a point wherever it crosses a cut."""
    return [point for p, q in zip(ring, [*ring[1:], ring[0]], strict=True) for point in crossed(p, q, cuts)]


def pieces(rings: Sequence[Sequence[Point2]], cuts: Sequence[float]) -> list[Piece]:
    """The parts of a region between neighbouring cuts.

    rings: noded at the cuts. cuts: ascending, the first and last at the region's ends in u. Each
    piece has a point wherever another piece or ring touches its sides along a cut.
    """
    on_cut: dict[float, list[float]] = {u: [] for u in cuts}
    for ring in rings:
        for u, v in ring:
            if u in on_cut:
                on_cut[u].append(v)
    nodes = {u: sorted(set(vs)) for u, vs in on_cut.items()}
    strips: list[list[list[Point2]]] = [[] for _ in cuts[1:]]
    islands: list[tuple[int, list[Point2]]] = []
    for ring in rings:
        for chain in _chains(ring, nodes):
            strip = bisect_right(cuts, min(chain[0][0], chain[1][0])) - 1
            if chain[-1][0] in nodes:
                strips[strip].append(chain)
            else:
                islands.append((strip, chain))
    found = [Piece(strip, [loop]) for strip, chains in enumerate(strips) for loop in _loops(chains, nodes)]
    for strip, island in islands:
        _around(island, [piece for piece in found if piece.strip == strip]).rings.append(island)
    return found


def _chains(ring: Sequence[Point2], nodes: dict[float, list[float]]) -> list[list[Point2]]:
    """A ring taken apart at the cuts it touches, sides along a cut left out; whole if it touches none."""
    stops = [i for i, point in enumerate(ring) if point[0] in nodes]
    if not stops:
        return [list(ring)]
    around = [*ring[stops[0] :], *ring[: stops[0] + 1]]
    stops = [i - stops[0] for i in stops] + [len(ring)]
    chains = [around[i : j + 1] for i, j in pairwise(stops)]
    return [chain for chain in chains if len(chain) > 2 or chain[0][0] != chain[1][0]]


def _loops(chains: list[list[Point2]], nodes: dict[float, list[float]]) -> list[list[Point2]]:
    """Chains of one strip closed along its two cuts.

    Along a cut, going up, the region is entered where a chain arrives on the right side (leaves on
    the left side) and left at the next chain that does the other; so arrivals and departures of a
    side pair up in order.
    """
    following: dict[int, int] = {}
    for side in {chain[end][0] for chain in chains for end in (0, -1)}:
        arriving = [i for i, chain in enumerate(chains) if chain[-1][0] == side]
        leaving = [i for i, chain in enumerate(chains) if chain[0][0] == side]
        arriving.sort(key=lambda i: chains[i][-1][1])
        leaving.sort(key=lambda i: chains[i][0][1])
        following.update(zip(arriving, leaving, strict=True))
    loops = []
    while following:
        loop: list[Point2] = []
        i = next(iter(following))
        while i in following:
            after = following.pop(i)
            loop += chains[i]
            loop += _along(chains[i][-1], chains[after][0], nodes)
            i = after
        loops.append(loop)
    return loops


def _along(p: Point2, q: Point2, nodes: dict[float, list[float]]) -> list[Point2]:
    """The points between p and q on their cut."""
    u, vs = p[0], nodes[p[0]]
    low, high = min(p[1], q[1]), max(p[1], q[1])
    between = vs[bisect_right(vs, low) : bisect_left(vs, high)]
    return [(u, v) for v in (between if p[1] < q[1] else reversed(between))]


def _around(island: list[Point2], found: list[Piece]) -> Piece:
    """The piece an island lies in."""
    return next(piece for piece in found if _inside(island[0], piece.rings[0]))


def _inside(point: Point2, ring: list[Point2]) -> bool:
    """Whether a point, not on the ring, lies inside it: it crosses the ring an odd number of times."""
    u, v = point
    inside = False
    for (pu, pv), (qu, qv) in zip(ring, [*ring[1:], ring[0]], strict=True):
        if (pv > v) != (qv > v) and u < pu + (qu - pu) * (v - pv) / (qv - pv):
            inside = not inside
    return inside
