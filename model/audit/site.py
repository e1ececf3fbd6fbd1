"""The finished model as arrays: every body where it stands. All checks begin here; none sees a layout."""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import cached_property

import numpy as np
from numpy.typing import NDArray

from ..measure.faces import Vectors
from ..measure.member import measure_member
from ..measure.nested import MemberLap, member_laps
from ..pieces import Model, Piece
from ..place import Place, Point3
from ..roles import List, list_of
from ..solids.properties import triangles
from .limits import FINEST

Numbers = NDArray[np.intp]
Box = tuple[Vectors, Vectors]
"""Lowest and highest corner (3,) of a region of the building."""


@dataclass(frozen=True, eq=False)
class Site:
    """Every body of a model but its screws, and the rows of screws.

    bodies: pieces, each a single solid. lists: what each is listed as (None: unknown). turns (n, 3, 3),
    origins (n, 3): a point p of a body's own frame stands at turns @ p + origins. low, high (n, 3): its
    box in the building. screws: the pieces that are screws, a row of bodies each.
    """

    bodies: tuple[Piece, ...]
    lists: tuple[List | None, ...]
    turns: Vectors
    origins: Vectors
    low: Vectors
    high: Vectors
    screws: tuple[Piece, ...]

    def listed(self, *names: List) -> Numbers:
        """The numbers of the bodies on some of the lists."""
        return np.array([k for k, name in enumerate(self.lists) if name in names], dtype=np.intp)

    def corners(self, k: int) -> Vectors:
        """The corners (n, 3) of a body in the building."""
        points: Vectors = triangles(self.bodies[k].solid)[0] @ self.turns[k].T + self.origins[k]
        return points

    def reach(self, k: int, along: Vectors) -> tuple[float, float]:
        """How far a body reaches along a direction of the building, least and greatest (mm)."""
        heights = self.corners(k) @ along
        return float(heights.min()), float(heights.max())

    def spread(self, numbers: Numbers, along: Vectors) -> tuple[Vectors, Vectors]:
        """How far the boxes of bodies reach along a direction, least and greatest (n,)."""
        middles = (self.low[numbers] + self.high[numbers]) / 2 @ along
        halves = (self.high[numbers] - self.low[numbers]) / 2 @ np.abs(along)
        return middles - halves, middles + halves

    @cached_property
    def thickest_trim(self) -> float:
        """mm; 0 without trims."""
        solids = {self.bodies[k].solid for k in self.listed("trims").tolist()}
        return max((measure_member(solid).thickness for solid in solids), default=0.0)

    @cached_property
    def pressed(self) -> float:
        """mm; how thick the thickest blanket between steel and sheets is; 0 without any."""
        solids = {self.bodies[k].solid for k in self.listed("insulation").tolist()}
        return max((measure_member(solid).width for solid in solids), default=0.0)

    @cached_property
    def nests(self) -> tuple[MemberLap, ...]:
        """Where members nest."""
        return member_laps(self.bodies)

    @cached_property
    def nested(self) -> dict[str, float]:
        """How far members lie under those that they nest in (mm), no more than they are thick, by name."""
        lower = ((lap.lower, lap.deep) for lap in self.nests)
        return {piece.name: min(deep, measure_member(piece.solid).thickness) for piece, deep in lower}

    @cached_property
    def nested_pairs(self) -> frozenset[frozenset[str]]:
        """The names of members that nest in each other."""
        return frozenset(frozenset((lap.upper.name, lap.lower.name)) for lap in self.nests)

    @cached_property
    def centre(self) -> Vectors:
        """Middle of the whole building."""
        middle: Vectors = (self.low.min(axis=0) + self.high.max(axis=0)) / 2
        return middle


def site(model: Model) -> Site:
    """A model as arrays."""
    screws = tuple(piece for piece in model.pieces if list_of(piece.role) == "screws")
    bodies = tuple(one for piece in model.pieces if list_of(piece.role) != "screws" for one in _singly(piece))
    turns = np.array([axes(piece.place) for piece in bodies]).reshape(-1, 3, 3)
    origins = np.array([piece.place.origin for piece in bodies]).reshape(-1, 3)
    low, high = np.empty_like(origins), np.empty_like(origins)
    for solid, standing in _by_solid(bodies).items():
        points = np.einsum("kij,nj->kni", turns[standing], triangles(solid)[0]) + origins[standing, None]
        low[standing], high[standing] = points.min(axis=1), points.max(axis=1)
    lists = tuple(list_of(piece.role) for piece in bodies)
    return Site(bodies, lists, turns, origins, low, high, screws)


def _singly(piece: Piece) -> tuple[Piece, ...]:
    """A piece as single bodies, one for every point of its row."""
    if not piece.row:
        return (piece,)
    places = (Place(piece.place.point(point), piece.place.x, piece.place.y) for point in piece.row)
    return tuple(replace(piece, place=place, row=()) for place in places)


def _by_solid(bodies: tuple[Piece, ...]) -> dict[object, list[int]]:
    found: dict[object, list[int]] = {}
    for k, piece in enumerate(bodies):
        found.setdefault(piece.solid, []).append(k)
    return found


def axes(place: Place) -> Vectors:
    """A place's turn (3, 3): columns are its axes in the building."""
    return np.array([place.x, place.y, place.z]).T


def point(values: Vectors, decimals: int = FINEST) -> Point3:
    """An array (3,) as a point, to 0.001 mm or other decimals; never -0.0."""
    x, y, z = (round(value, decimals) + 0.0 for value in values.tolist())
    return (x, y, z)


def overlapping(low: Vectors, high: Vectors, more: float) -> tuple[Numbers, Numbers]:
    """Pairs (i, j) of boxes (n, 3) that share more than `more` mm on every axis; less than 0: that are near.

    Boxes are sorted along the axis on which they are spread most, then compared as arrays.
    """
    if not len(low):
        return np.empty(0, np.intp), np.empty(0, np.intp)
    axis = int(np.argmax(high.max(axis=0) - low.min(axis=0)))
    order = np.argsort(low[:, axis], kind="stable")
    low, high = low[order], high[order]
    last = np.searchsorted(low[:, axis], high[:, axis] - more)
    counts = np.maximum(last - np.arange(len(order)) - 1, 0)
    first = np.repeat(np.arange(len(order)), counts)
    second = np.arange(counts.sum()) - np.repeat(np.cumsum(counts) - counts, counts) + first + 1
    meet = np.all((low[first] < high[second] - more) & (high[first] > low[second] + more), axis=1)
    one, other = order[first[meet]], order[second[meet]]
    return np.minimum(one, other), np.maximum(one, other)
