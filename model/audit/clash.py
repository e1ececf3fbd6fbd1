"""Clash: no two bodies share volume. Boxes first, then planes between, then closed meshes.

Pairs that stand to each other alike are judged once. A body may lie on another: what is shared must be
more than VOLUME and thicker than DEPTH, so that touching faces of many square metres stay silent.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

import numpy as np
from numpy.typing import NDArray
from OCP.TopoDS import TopoDS_Solid

from ..findings import Code, Finding
from ..measure.faces import Vectors, flats
from ..solids.properties import REMEMBERED, triangles
from .found import found
from .known import SHIFT, TURN, rounded, vectors
from .limits import over
from .site import Numbers, Site, overlapping

VOLUME = 0.05
"""mm3 that two bodies may share."""
DEPTH = 0.02
"""mm; mean thickness of what they may share: twice its volume by its surface."""
TOUCHING = 1e-3
"""mm; boxes and planes that overlap by less only touch."""
NEAR = 1.0
"""mm; bodies with more air between them do not touch: layers of trim may lean off each other by less."""
PAIRS = 32768
"""Relative stands of two bodies that are remembered; a building has a thousand."""


@dataclass(frozen=True, slots=True)
class Shared:
    """What two bodies share: volume (mm3), mean thickness (mm), and its middle in the first one's frame."""

    volume: float
    depth: float
    middle: Vectors

    @property
    def counts(self) -> bool:
        """Whether it is more than touching."""
        # Depth first: what places are rounded by is a film of no depth, of any volume over a wide face.
        return over(self.depth, DEPTH) and over(self.volume, VOLUME)


CLEAR = Shared(0.0, 0.0, np.zeros(3))


def clashes(site: Site) -> Iterator[Finding]:
    """Every pair of bodies that share space, screws left aside."""
    for i, j, shared in _shared(site):
        at = site.turns[i] @ shared.middle + site.origins[i]
        yield found(Code.CLASH, (site.bodies[i], site.bodies[j]), at, shared.volume, VOLUME, "volume")


def _shared(site: Site) -> Iterator[tuple[int, int, Shared]]:
    """Pairs whose boxes overlap and that really share more than touching."""
    first, second = overlapping(site.low, site.high, TOUCHING)
    for group, turn, shift in alike(site, first, second):
        a, b = (site.bodies[int(numbers[group[0]])].solid for numbers in (first, second))
        (shared,) = shared_space(a, b, turn, shift[None])
        if shared.counts:
            yield from ((int(first[k]), int(second[k]), shared) for k in group)


def alike(site: Site, first: Numbers, second: Numbers) -> Iterator[tuple[Numbers, Vectors, Vectors]]:
    """Pairs of bodies in groups that stand to each other alike, each with the second's turn (3, 3) and
    origin (3,) in the first one's frame, rounded as they are known by."""
    if not len(first):
        return
    numbers = {piece.solid: k for k, piece in enumerate(site.bodies)}
    solid = np.array([numbers[piece.solid] for piece in site.bodies])
    back = site.turns.transpose(0, 2, 1)
    turns = rounded(back[first] @ site.turns[second], TURN)
    shifts = np.einsum("kij,kj->ki", back[first], site.origins[second] - site.origins[first])
    shifts = rounded(shifts, SHIFT)
    keys = np.column_stack(
        [solid[first], solid[second], np.round(turns.reshape(-1, 9), 7), np.round(shifts, 4)]
    )
    _, inverse = np.unique(keys + 0.0, axis=0, return_inverse=True)
    group = inverse.reshape(-1)
    order = np.argsort(group, kind="stable")
    for members in np.split(order, np.cumsum(np.bincount(group))[:-1]):
        yield members, turns[members[0]], shifts[members[0]]


def apart(a: TopoDS_Solid, b: TopoDS_Solid, turn: Vectors, shifts: Vectors, air: float) -> NDArray[np.bool_]:
    """(k,) whether a plane through a flat side of one body has the other beyond it by more than `air` mm.

    turn: of b in a's frame; shifts (k, 3): where it stands. False proves nothing.
    """
    normals, rooms = _sides(a, b, turn.tobytes())
    return np.asarray((shifts @ normals.T + rooms > air).any(axis=1))


@lru_cache(maxsize=REMEMBERED)
def _sides(a: TopoDS_Solid, b: TopoDS_Solid, turn: bytes) -> tuple[Vectors, Vectors]:
    """The outer planes of two bodies, b turned as it is in a's frame: normals (n, 3) there, away from the
    body, and the air (n,) before each to the other body, where b stands at a's origin."""
    turned = vectors(turn)
    (sides_a, points_a), (sides_b, points_b) = supports(a), supports(b)
    normals_a, normals_b = sides_a[:, :3], sides_b[:, :3] @ turned.T
    before_a = (normals_a @ (points_b @ turned.T).T).min(axis=1) - sides_a[:, 3]
    before_b = (normals_b @ points_a.T).min(axis=1) - sides_b[:, 3]
    return np.concatenate([normals_a, -normals_b]), np.concatenate([before_a, before_b])


@lru_cache(maxsize=REMEMBERED)
def supports(solid: TopoDS_Solid) -> tuple[Vectors, Vectors]:
    """The planes (n, 4: normal, height) of flat faces with the whole body behind them, and its corners."""
    points = triangles(solid)[0]
    normals, heights, _ = flats(solid)
    outer = (normals @ points.T).max(axis=1) <= heights + TOUCHING / 10
    return np.unique(np.column_stack([normals, heights])[outer].round(9), axis=0), points


def shared_space(a: TopoDS_Solid, b: TopoDS_Solid, turn: Vectors, shifts: Vectors) -> tuple[Shared, ...]:
    """What two bodies share, b standing at turn (3, 3) and each of shifts (k, 3) in a's frame, both rounded.

    Remembered: in a building, and from one to the next, most pairs stand to each other as others do.
    """
    return _shared_at(a, b, turn.tobytes(), shifts.tobytes())


@lru_cache(maxsize=PAIRS)
def _shared_at(a: TopoDS_Solid, b: TopoDS_Solid, turn: bytes, shifts: bytes) -> tuple[Shared, ...]:
    turned, stands = vectors(turn), vectors(shifts)
    parted = apart(a, b, turned, stands, -TOUCHING)
    return tuple(
        CLEAR if far else _common(a, b, turned, shift) for far, shift in zip(parted, stands, strict=True)
    )


def _common(a: TopoDS_Solid, b: TopoDS_Solid, turn: Vectors, shift: Vectors) -> Shared:
    common = closed_mesh(a) ^ closed_mesh(b).transform(np.column_stack([turn, shift]))
    if common.is_empty():
        return CLEAR
    volume, box = common.volume(), np.array(common.bounding_box())
    return Shared(volume, 2 * volume / common.surface_area(), (box[:3] + box[3:]) / 2)


@lru_cache(maxsize=REMEMBERED)
def closed_mesh(solid: TopoDS_Solid) -> Any:  # manifold3d.Manifold, which carries no types
    """The solid as a closed mesh in double precision; empty where its triangles do not close."""
    import manifold3d  # noqa: PLC0415  # loaded only when something is audited

    points, faces = triangles(solid)
    mesh = manifold3d.Mesh64(np.array(points, order="C"), np.array(faces, np.uint64, order="C"))
    return manifold3d.Manifold(mesh)
