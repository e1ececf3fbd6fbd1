"""Every screw as it was driven: what its axis passes, what lies under its washer, what is before its head."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache

import numpy as np
from OCP.TopoDS import TopoDS_Solid

from ..measure.faces import Vectors
from ..pieces import Piece
from ..solids.properties import REMEMBERED, triangles
from .known import SHIFT, TURN, Known, rounded, vectors
from .rays import spans
from .site import Numbers, Site, axes

RIM = 8
"""Rays around a washer's rim."""
WITHIN = 0.92
"""Share of the washer's radius at which they stand."""
REACHED = 1.5
"""mm before a washer in which the layer that it sits on may begin: it may lean into it."""
SEATED = 0.6
"""mm that the middle of a washer may stand off what is under it: a flange's lean."""
AT_ONCE = 500
"""Screws that are asked for together: as arrays, within a few MiB."""
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
    the first steel and what nests under that, or all without it. rim: for every body, the least and the
    greatest depth at which rays around the washer meet it; rays that miss it count as infinitely deep.
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
    rows = [_row(site, piece) for piece in site.screws]
    crossed = _all_crossed(near.ask for row in rows for near in row.near)
    for row in rows:
        yield from _driven(site, row, crossed)


_Met = tuple[int, list[tuple[float, float]], tuple[float, float]]
"""A screw's number among those asked for, its axis' stretches in a body, its rim's least and greatest
depth."""
_KNOWN: Known[Sequence[_Met]] = Known(16384)
"""Of a building's seven hundred asks, most come again from one building to the next."""


_Ask = tuple[TopoDS_Solid, TopoDS_Solid, bytes, bytes]
"""A body's solid, a screw's; in the body's frame the way that screws are driven (3,), their seats (n, 3)."""


@dataclass(frozen=True, slots=True, eq=False)
class _Near:
    """Screws of one piece that may meet one body: their numbers in the row, how they stand in its frame."""

    body: int
    screws: Numbers
    ask: _Ask


@dataclass(frozen=True, slots=True, eq=False)
class _Row:
    """The screws of one piece: their seats (n, 3) and axis (3,) in the building, and what is near them."""

    piece: Piece
    shape: Shape
    seats: Vectors
    axis: Vectors
    near: tuple[_Near, ...]


def _row(site: Site, piece: Piece) -> _Row:
    """The screws of one piece, and the bodies whose boxes they reach."""
    shape, turn = shape_of(piece.solid), axes(piece.place)
    points = np.array(piece.row or ((0.0, 0.0, 0.0),)) + shape.seat
    seats, axis = points @ turn.T + np.array(piece.place.origin), turn @ shape.axis
    low = np.minimum(seats - BEFORE * axis, seats + shape.length * axis) - shape.rim
    high = np.maximum(seats - BEFORE * axis, seats + shape.length * axis) + shape.rim
    about = np.flatnonzero(((site.low < high.max(axis=0)) & (site.high > low.min(axis=0))).all(axis=1))
    meet = ((low < site.high[about, None]) & (high > site.low[about, None])).all(axis=2)
    ways = rounded(axis @ site.turns[about], TURN)
    stands = rounded((seats - site.origins[about, None]) @ site.turns[about], SHIFT)
    near = tuple(
        _Near(
            k, np.flatnonzero(close), (site.bodies[k].solid, piece.solid, way.tobytes(), at[close].tobytes())
        )
        for k, close, way, at in zip(about.tolist(), meet, ways, stands, strict=True)
        if close.any()
    )
    return _Row(piece, shape, seats, axis, near)


def _all_crossed(asked: Iterable[_Ask]) -> dict[_Ask, Sequence[_Met]]:
    """What screws meet of bodies: what was asked before is known, and the others that look the same way at
    equal bodies are asked together."""
    crossed: dict[_Ask, Sequence[_Met]] = {}
    together: dict[object, list[_Ask]] = defaultdict(list)
    for ask in dict.fromkeys(asked):
        if (answer := _KNOWN.get(ask)) is not None:
            crossed[ask] = answer
        else:
            together[ask[:3]].append(ask)
    for alike in together.values():
        fresh = _asked_together(alike)
        crossed.update(fresh)
        for ask, met in fresh.items():
            _KNOWN.put(ask, met)
    return crossed


def _asked_together(alike: Sequence[_Ask]) -> dict[_Ask, list[_Met]]:
    """What screws meet of one body that all look at it the same way."""
    solid, screw, way, _ = alike[0]
    shape, direction = shape_of(screw), vectors(way)[0]
    crossed: dict[_Ask, list[_Met]] = {ask: [] for ask in alike}
    each = [vectors(ask[3]) for ask in alike]
    owners = [(ask, number) for ask, seats in zip(alike, each, strict=True) for number in range(len(seats))]
    every = np.concatenate(each)
    for start in range(0, len(every), AT_ONCE):
        part = every[start : start + AT_ONCE]
        for found, axial, rim in _crossed(solid, shape, part, direction):
            ask, number = owners[start + found]
            crossed[ask].append((number, axial, rim))
    return crossed


def _driven(site: Site, row: _Row, crossed: Mapping[_Ask, Sequence[_Met]]) -> Iterator[Driven]:
    """The screws of one piece with all they meet."""
    layers: list[list[Layer]] = [[] for _ in row.seats]
    rims: list[dict[int, tuple[float, float]]] = [{} for _ in row.seats]
    for near in row.near:
        for number, stretches, rim in crossed[near.ask]:
            screw = near.screws[number]
            layers[screw] += [Layer(start, end, near.body) for start, end in stretches]
            rims[screw][near.body] = rim
    for number, (seat, found, rim_of) in enumerate(zip(row.seats, layers, rims, strict=True), 1):
        found.sort(key=lambda layer: (layer.start, layer.body))
        yield Driven(row.piece, number, row.shape, seat, row.axis, tuple(found), _held(site, found), rim_of)


def _held(site: Site, layers: Sequence[Layer]) -> tuple[Layer, ...]:
    """The layers under the washer, to the first steel and what nests under that, or all without it."""
    under = [layer for layer in layers if layer.end > -SEATED and layer.start > -REACHED]
    steel = next((k for k, layer in enumerate(under) if site.lists[layer.body] == "members"), len(under))
    last = steel + 1
    if under[last:] and site.nests:
        pair = (site.bodies[under[k].body].name for k in (steel, last))
        last += frozenset(pair) in site.nested_pairs
    return tuple(under[:last])


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
