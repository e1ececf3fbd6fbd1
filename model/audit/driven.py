"""Every screw as it was driven: what its axis passes, what lies under its washer, what is before its head."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache

import numpy as np
from OCP.TopoDS import TopoDS_Solid

from ..measure.faces import Vectors
from ..pieces import Piece
from ..solids.properties import REMEMBERED, triangles
from .rays import spans
from .site import Site, axes

RIM = 8
"""Rays around a washer's rim."""
WITHIN = 0.92
"""Share of the washer's radius at which they stand."""
REACHED = 1.5
"""mm before a washer in which the layer that it sits on may begin: it may lean into it."""
SEATED = 0.6
"""mm that the middle of a washer may stand off what is under it: a flange's lean."""
BEFORE = 60.0
"""mm; how far before the head something is still looked for that it could be behind."""


@dataclass(frozen=True, slots=True)
class Shape:
    """A screw's own measures (mm), in its solid's frame.

    seat: the middle under its washer (3,). axis: (3,), from head to tip. radius: of the shank. length:
    under the head. rim: the washer's radius. head: its height.
    """

    seat: Vectors
    axis: Vectors
    radius: float
    length: float
    rim: float
    head: float


@lru_cache(maxsize=REMEMBERED)
def shape_of(solid: TopoDS_Solid) -> Shape:
    """A turned body with a head, off its corners alone."""
    points, _ = triangles(solid)
    centre = points.mean(axis=0)
    sizes, ways = np.linalg.eigh(np.cov((points - centre).T))
    axis = ways[:, 0 if sizes[1] - sizes[0] > sizes[2] - sizes[1] else 2]
    heights = points @ axis
    radii = np.linalg.norm((points - centre) - np.outer((points - centre) @ axis, axis), axis=1)
    rim = float(radii.max())
    widest = heights[radii > 0.98 * rim]
    before, behind = radii[heights < widest.min() - 1e-3], radii[heights > widest.max() + 1e-3]
    if behind.max(initial=0.0) > before.max(initial=0.0):  # the head is wider than the shank
        axis, heights = -axis, -heights
    seat = float(heights[radii > 0.98 * rim].max())
    shank = float(radii[heights > seat + 1.0].max(initial=0.0))
    middle = centre + axis * (seat - centre @ axis)
    return Shape(middle, axis, shank, float(heights.max()) - seat, rim, seat - float(heights.min()))


@dataclass(frozen=True, slots=True)
class Layer:
    """A stretch of a body along a screw's axis: from, to (mm past the seat), and the body's number."""

    start: float
    end: float
    body: int


@dataclass(frozen=True, slots=True)
class Driven:
    """One screw in the building.

    number: in its piece's row, from 1. seat (3,), axis (3,): in the building. layers: all that its axis
    passes, from before its head to its tip, in order. held: those it holds together, from its washer to
    the first steel, or all without it. rim: for every body, the least and the greatest depth at which
    rays around the washer meet it; rays that miss it count as infinitely deep.
    """

    piece: Piece
    number: int
    shape: Shape
    seat: Vectors
    axis: Vectors
    layers: tuple[Layer, ...]
    held: tuple[Layer, ...]
    rim: dict[int, tuple[float, float]]

    @property
    def name(self) -> str:
        """Its piece and its number in the row."""
        return f"{self.piece.name} {self.number}" if self.piece.row else self.piece.name

    @property
    def mark(self) -> str:
        """Its piece's."""
        return self.piece.mark


def driven(site: Site) -> Iterator[Driven]:
    """All screws of a model, piece by piece."""
    remembered: dict[object, list[_Met]] = {}
    for piece in site.screws:
        yield from _row(site, piece, remembered)


_Met = tuple[int, list[tuple[float, float]], tuple[float, float]]
"""A screw's number in its row, its axis' stretches in a body, and its rim's least and greatest depth."""


def _row(site: Site, piece: Piece, remembered: dict[object, list[_Met]]) -> Iterator[Driven]:
    """The screws of one piece."""
    shape, turn = shape_of(piece.solid), axes(piece.place)
    points = np.array(piece.row or ((0.0, 0.0, 0.0),)) + shape.seat
    seats, axis = points @ turn.T + np.array(piece.place.origin), turn @ shape.axis
    layers: list[list[Layer]] = [[] for _ in seats]
    rims: list[dict[int, tuple[float, float]]] = [{} for _ in seats]
    low = np.minimum(seats - BEFORE * axis, seats + shape.length * axis) - shape.rim
    high = np.maximum(seats - BEFORE * axis, seats + shape.length * axis) + shape.rim
    near = np.flatnonzero(((site.low < high.max(axis=0)) & (site.high > low.min(axis=0))).all(axis=1))
    for k in near.tolist():
        close = np.flatnonzero(((low < site.high[k]) & (high > site.low[k])).all(axis=1))
        if not len(close):
            continue
        for screw, stretches, rim in _met(site, k, piece, shape, seats[close], axis, remembered):
            layers[close[screw]] += [Layer(start, end, k) for start, end in stretches]
            rims[close[screw]][k] = rim
    for number, (seat, found, rim_of) in enumerate(zip(seats, layers, rims, strict=True), 1):
        found.sort(key=lambda layer: (layer.start, layer.body))
        yield Driven(piece, number, shape, seat, axis, tuple(found), _held(site, found), rim_of)


def _held(site: Site, layers: Sequence[Layer]) -> tuple[Layer, ...]:
    """The layers under the washer, to the first steel, or all without it."""
    under = [layer for layer in layers if layer.end > -SEATED and layer.start > -REACHED]
    steel = next((k for k, layer in enumerate(under) if site.lists[layer.body] == "members"), len(under))
    return tuple(under[: steel + 1])


def _met(
    site: Site,
    k: int,
    piece: Piece,
    shape: Shape,
    seats: Vectors,
    axis: Vectors,
    remembered: dict[object, list[_Met]],
) -> list[_Met]:
    """What screws of one piece meet of one body; those that stand alike to equal bodies are asked once."""
    turn = site.turns[k]
    starts, direction = (seats - site.origins[k]) @ turn, axis @ turn
    where = (np.round(starts, 4).tobytes(), np.round(direction, 7).tobytes())
    key = (site.bodies[k].solid, piece.solid, *where)
    if key not in remembered:
        remembered[key] = _crossed(site.bodies[k].solid, shape, starts, direction)
    return remembered[key]


def _crossed(solid: TopoDS_Solid, shape: Shape, seats: Vectors, direction: Vectors) -> list[_Met]:
    """The screws whose axis or washer meets a body, in the body's own frame."""
    points, faces = triangles(solid)
    turns = np.arange(RIM) * 2 * np.pi / RIM + 0.1  # off any symmetry, so that rays miss edges
    ring = WITHIN * shape.rim * np.column_stack([np.cos(turns), np.sin(turns)])
    bundle = np.vstack([np.zeros(2), ring])
    lines, starts, ends = spans(points[faces], seats, direction, bundle)
    keep = (starts < shape.length) & (ends > -BEFORE) & (ends - starts > 1e-6)
    found: dict[int, tuple[list[tuple[float, float]], dict[int, float]]] = {}
    for line, start, end in zip(
        lines[keep].tolist(), starts[keep].tolist(), ends[keep].tolist(), strict=True
    ):
        screw, ray = divmod(line, RIM + 1)
        axial, rim = found.setdefault(screw, ([], {}))
        if ray == 0:
            axial.append((start, end))
        elif end > -shape.head:
            rim.setdefault(ray, start)
    return [
        (
            screw,
            axial,
            (min(rim.values(), default=np.inf), max(rim.values()) if len(rim) == RIM else np.inf),
        )
        for screw, (axial, rim) in found.items()
    ]
