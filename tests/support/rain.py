"""Rain on a model: drops land on what the sky sees, run down it, along folds, and drip off edges.

Shares no code with layout, measure or audit. Without cling, pressure and splash it shows where water stands
like in a cup, or gets in where nothing stops a falling drop; never that a building is tight.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import cached_property
from math import cos, radians, sin
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray
from ribwright.pieces import Piece
from ribwright.roles import Role
from support.rays import NUDGE, standing_triangles
from vtkmodules.util.numpy_support import numpy_to_vtk, numpy_to_vtkIdTypeArray
from vtkmodules.vtkCommonCore import mutable, vtkPoints
from vtkmodules.vtkCommonDataModel import vtkCellArray, vtkGenericCell, vtkPolyData, vtkStaticCellLocator

Vector = NDArray[np.float64]

DOWN = np.array([0.0, 0.0, -1.0])
OFF = 0.05
"""mm; a drop runs this far before its surface, so that it meets what stands on it."""
LEVEL = 1e-3
"""Slope under which water has no way down of its own: it is let run outward."""
END = 25.0
"""mm; in a level fold water spreads as far as this, and stands where neither way ends within it."""
STEPS = 400
SKY = 1e5
"""mm; how far a drop may have come."""
SLANTS = (0.0, 15.0)
"""Degrees off the plumb."""
AROUND = range(0, 360, 45)


class Standing(NamedTuple):
    """Where a drop came to stand: between what it ran on and what holds it, or on what should be dry."""

    ran_on: str
    held_by: str
    at: Vector


@dataclass(frozen=True)
class Weather:
    """Pieces as triangles in one room. corners (n, 3, 3), mm; normals (n, 3), outward; beside (n, 3): the
    triangle over the edge from corner k to the next; owner (n,): which piece."""

    pieces: tuple[Piece, ...]
    corners: Vector
    normals: Vector
    beside: NDArray[np.int64]
    owner: NDArray[np.int64]
    finder: vtkStaticCellLocator

    def wet(self, roles: Iterable[str], drops: int, seed: int) -> Iterator[tuple[int, Vector]]:
        """Places on pieces of these roles that see the sky along a way that rain falls: triangle and point;
        of so many tried at random on each piece."""
        chance, of = np.random.default_rng(seed), frozenset(roles)
        for number, piece in enumerate(self.pieces):
            own = np.flatnonzero(self.owner == number) if piece.role in of else ()
            for on in chance.choice(own, drops, p=self._shares(own)) if len(own) else ():
                u, v = chance.random(2)
                u, v = (u, v) if u + v < 1 else (1 - u, 1 - v)
                a, b, c = self.corners[on]
                point = a + u * (b - a) + v * (c - a)
                tilt, turn = radians(chance.choice(SLANTS)), radians(int(chance.choice(AROUND)))
                up = np.array([sin(tilt) * cos(turn), sin(tilt) * sin(turn), cos(tilt)])
                if (
                    self.normals[on] @ up > LEVEL
                    and self.met(point + OFF * self.normals[on], up, SKY) is None
                ):
                    yield int(on), point

    def _shares(self, own: NDArray[np.int64]) -> Vector:
        """Of the area of some triangles, each one's."""
        a, b, c = (self.corners[own, k] for k in range(3))
        areas = np.linalg.norm(np.cross(b - a, c - a), axis=1)
        return areas / areas.sum()

    def met(self, start: Vector, way: Vector, reach: float) -> tuple[int, float] | None:
        """The first triangle along a way, and how far off."""
        share, at, inside = mutable(0.0), [0.0] * 3, [0.0] * 3
        piece, cell = mutable(0), mutable(0)
        start = start + 1e-4 * NUDGE
        if not self.finder.IntersectWithLine(
            start, start + reach * way, 0.0, share, at, inside, piece, cell, vtkGenericCell()
        ):
            return None
        return int(cell), float(share) * reach

    @cached_property
    def ends(self) -> tuple[Vector, Vector]:
        """The least and the greatest corner of the whole (3,), mm."""
        return self.corners.min(axis=(0, 1)), self.corners.max(axis=(0, 1))

    def outward(self, point: Vector) -> Vector:
        """The level way out to the nearest side of the whole."""
        low, high = self.ends
        rooms = np.array([point - low, high - point])[:, :2]
        side, axis = np.unravel_index(rooms.argmin(), rooms.shape)
        return np.eye(3)[axis] * (-1.0, 1.0)[side]

    def name(self, triangle: int) -> str:
        return self.pieces[self.owner[triangle]].name

    def role(self, triangle: int) -> str:
        return self.pieces[self.owner[triangle]].role


def weather(pieces: Iterable[Piece]) -> Weather:
    """The weather on pieces; rows of screws and closures are left out."""
    chosen = tuple(piece for piece in pieces if not piece.row)
    corners, beside, owner = [], [], []
    for number, piece in enumerate(chosen):
        points, faces = standing_triangles(piece)
        before = sum(map(len, owner))
        over = {(face[k], face[(k + 1) % 3]): t for t, face in enumerate(faces) for k in range(3)}
        beside += [[before + over[face[(k + 1) % 3], face[k]] for k in range(3)] for face in faces]
        corners.append(points[faces])
        owner.append(np.full(len(faces), number))
    whole = np.concatenate(corners)
    normals = np.cross(whole[:, 1] - whole[:, 0], whole[:, 2] - whole[:, 0])
    normals /= np.maximum(np.linalg.norm(normals, axis=1), 1e-12)[:, None]
    return Weather(chosen, whole, normals, np.array(beside), np.concatenate(owner), _finder(whole))


def _finder(corners: Vector) -> vtkStaticCellLocator:
    points, cells, mesh = vtkPoints(), vtkCellArray(), vtkPolyData()
    points.SetData(numpy_to_vtk(corners.reshape(-1, 3), deep=True))
    ends = np.arange(0, 3 * len(corners) + 1, 3)
    cells.SetData(
        numpy_to_vtkIdTypeArray(ends, deep=True),
        numpy_to_vtkIdTypeArray(np.arange(3 * len(corners)), deep=True),
    )
    mesh.SetPoints(points)
    mesh.SetPolys(cells)
    finder = vtkStaticCellLocator()
    finder.SetDataSet(mesh)
    finder.BuildLocator()
    return finder


def standing(weather: Weather, start: tuple[int, Vector], dry: frozenset[str]) -> Standing | None:
    """Where a drop that landed comes to stand; None if it gets away, or to the slab, which is let
    run off. dry: roles that should stay so."""
    at: tuple[int, Vector] | None = start
    for _ in range(STEPS):
        if at is None or weather.role(at[0]) == Role.SLAB:
            return None
        on, point = at
        if weather.role(on) in dry:
            return Standing("the sky", weather.name(on), point)
        moved = _moved(weather, on, point)
        if isinstance(moved, Standing):
            return moved
        at = moved
    return None


def _fallen(weather: Weather, point: Vector) -> tuple[int, Vector] | None:
    """Where a drop lands that lets go at a point."""
    landed = weather.met(point, DOWN, SKY)
    return None if landed is None else (landed[0], point + landed[1] * DOWN)


def _moved(weather: Weather, on: int, point: Vector) -> tuple[int, Vector] | Standing | None:
    """Where a drop on a triangle gets next: over its edge, onto what stands on it, down to what is under."""
    normal = weather.normals[on]
    if normal[2] < -1e-6:
        return _fallen(weather, point + OFF * normal)
    way = _downhill(normal)
    if np.linalg.norm(way) < LEVEL:
        way = weather.outward(point)
    way /= max(float(np.linalg.norm(way)), 1e-12)
    far, side = _way_out(weather.corners[on], normal, point, way)
    against = weather.met(point + OFF * normal, way, far)
    if against is not None and weather.normals[against[0]] @ way > 0:
        against = None  # the back of what the drop ran down on
    onto = int(weather.beside[on, side]) if against is None else against[0]
    point = point + way * (far if against is None else against[1])
    other = weather.normals[onto]
    if against is None and other @ way >= -1e-9:
        return _over(weather, on, onto, side, point, way)
    if _downhill(other) @ normal >= -1e-6 and other[2] >= -1e-6:
        return onto, point
    return _along_fold(weather, on, onto, point)


def _over(
    weather: Weather, on: int, onto: int, side: int, point: Vector, way: Vector
) -> tuple[int, Vector] | None:
    """Past an edge that stands out: on along the next face where that leads down, else off it."""
    normal, other = weather.normals[on], weather.normals[onto]
    corners = weather.corners[on]
    inward = np.cross(corners[(side + 1) % 3] - corners[side], other)
    inward /= max(float(np.linalg.norm(inward)), 1e-12)
    same = normal @ other > 1 - 1e-6
    if other[2] >= -1e-6 and (same or other[2] > 1 - 1e-6 or _downhill(other) @ inward > -1e-9):
        return onto, point + (1e-3 * way if same else 0)
    return _fallen(weather, point + OFF * way * [1, 1, 0] + 0.01 * normal)


def _along_fold(weather: Weather, on: int, onto: int, point: Vector) -> tuple[int, Vector] | Standing | None:
    """Down the fold between two faces that water can't leave; it stands in a level one that does not end."""
    normal, other = weather.normals[on], weather.normals[onto]
    fold = np.cross(normal, other)
    size = float(np.linalg.norm(fold))
    fold = fold / max(size, 1e-12) * (-1 if fold[2] > 0 else 1)
    if size < 1e-6 or abs(fold[2]) < 2 * LEVEL:
        off = point + OFF * (normal + other)
        faces = [(off + way * fold, -face) for way in (END, -END) for face in (normal, other)]
        closed = all(weather.met(start, back, 3 * OFF) for start, back in faces)
        return Standing(weather.name(on), weather.name(onto), point) if closed else None
    far = min(_way_out(weather.corners[t], weather.normals[t], point, fold)[0] for t in (on, onto))
    return _fallen(weather, point + fold * (far + 1e-3) + 1e-3 * (normal + other))


def _downhill(normal: Vector) -> Vector:
    return DOWN - (DOWN @ normal) * normal


def _way_out(corners: Vector, normal: Vector, point: Vector, way: Vector) -> tuple[float, int]:
    """How far along a way a triangle is left, and over which of its edges."""
    outward = np.cross(np.roll(corners, -1, axis=0) - corners, normal)
    outward /= np.maximum(np.linalg.norm(outward, axis=1), 1e-12)[:, None]
    speed, room = outward @ way, -np.einsum("ij,ij->i", outward, point - corners)
    with np.errstate(divide="ignore", invalid="ignore"):
        far = np.where(speed > 1e-6, np.maximum(room, 0) / speed, np.inf)
    side = int(far.argmin())
    return min(float(far[side]), SKY), side
