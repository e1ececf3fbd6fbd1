"""How a trim is folded, measured off its solid: legs, bends and girth, as a shop that bends it wants them."""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import lru_cache

import numpy as np
from OCP.TopoDS import TopoDS_Solid

from ..place import Place, Point2
from .across import loops
from .end_folds import EndFold, end_folds, over
from .faces import KEPT, Vectors, body
from .member import measure_member
from .strip import Strip, strip

HEM = 170.0
"""Degrees; an edge that turns back further lies on its leg, a hem."""


@dataclass(frozen=True, slots=True)
class Bends:
    """A folded section (mm, degrees).

    legs: (n,) outside, between sharp corners. turns: (n - 1,) by which each bend leaves the straight,
    positive to the left of someone who walks the line. inside: inside radius of its bends. girth: width
    of the flat strip it is bent from, along the middle of its thickness. line: (n + 1, 2) sharp corners
    of one face, the steel on its left, in x and z of the bench. bench: that frame in the solid's own. folds:
    ends that are folded over. over: mm of stick that they take past the near and the far end.
    """

    thickness: float
    legs: tuple[float, ...]
    turns: tuple[float, ...]
    inside: float
    girth: float
    line: tuple[Point2, ...]
    bench: Place
    folds: tuple[EndFold, ...] = ()
    over: Point2 = (0.0, 0.0)

    @property
    def angles(self) -> tuple[float, ...]:
        """Inside angles of the bends: 180 is flat, 90 square, 0 a hem."""
        return tuple(180.0 - abs(turn) for turn in self.turns)

    @property
    def outward(self) -> float:
        """1 where the line is the outside of the bend beside the longer of its end legs, -1 where it is the
        inside: the steel is on the line's left, and a line that turns left goes round the outside."""
        turn = self.turns[0] if self.legs[0] >= self.legs[-1] else self.turns[-1]
        return 1.0 if turn > 0 else -1.0

    @property
    def hems(self) -> int:
        """How many of its edges lie back on their leg."""
        return sum(abs(self.turns[end]) > HEM for end in {0, len(self.turns) - 1})


@lru_cache(maxsize=KEPT)
def measure_bends(solid: TopoDS_Solid) -> Bends | None:
    """The bends of a body that is one strip of sheet, notched and cut as it may be; None for any other."""
    member = measure_member(solid)
    bench = member.ways[0].bench
    axes = np.array([bench.x, bench.y, bench.z])
    for outer, *inner in loops(body(solid), axes):
        found = None if inner else strip(outer)
        if found is not None and len(found.turns):
            bent = _bends(found, bench, (axes @ np.array(bench.origin))[[0, 2]])
            folds = end_folds(solid, axes, np.array(bench.origin), np.array(bent.line), bent.thickness)
            return replace(bent, folds=tuple(folds), over=over(folds, member.length))
    return None


def _bends(found: Strip, bench: Place, origin: Vectors) -> Bends:
    """Its girth is its flats, and its arcs at half the thickness. origin: (2,) the bench's, as it is seen."""
    size, inside, rounded = np.abs(found.turns), found.radii.min(axis=1), found.radii.max(axis=1) > 0
    outside = np.where(rounded, inside + found.thickness, 0.0)
    left = found.turns > 0  # the steel is on the line's left, so that it goes round the outside of these
    taken = np.concatenate([[0.0], np.where(left, outside, inside) * np.tan(size / 2), [0.0]])
    flats = found.walls[:, 0] - taken[:-1] - taken[1:]
    mitre = found.thickness * np.tan(size / 2) * np.where(left, -1.0, 1.0)
    arcs = np.where(rounded, (inside + found.thickness / 2) * size, mitre)
    return Bends(
        found.thickness,
        tuple(found.walls.max(axis=1).tolist()),
        tuple(np.degrees(found.turns).tolist()),
        float(inside.min()),
        float(flats.sum() + arcs.sum()),
        tuple((float(x), float(z)) for x, z in found.line - origin),
        bench,
    )
