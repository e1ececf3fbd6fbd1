"""Where members meet, and so where a clip or a joint holds them: counted off the boxes that they fill.

Which clip, and which bolts, is the engineer's to say; how many places want one the model shows. A box stands
for its member: what passes over a frame, or ends at it, meets it, whatever its section leaves open.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

import numpy as np

from ..pieces import Model, Piece
from ..roles import Role
from .faces import Vectors
from .member import measure_member
from .nested import member_laps
from .standing import standing_box

FRAME = (Role.COLUMN, Role.RAFTER, Role.POST)
JOINED = (*FRAME, Role.KNEE)
"""What a frame is made of."""
ON_FRAMES = (Role.PURLIN, Role.GIRT, Role.EAVE_STRUT, Role.STRUT, Role.LEDGER)
ON_JAMBS = (Role.GIRT, Role.EAVE_STRUT, Role.HEADER, Role.SILL)
NEAR = 5.0
"""mm; members no farther apart meet: two that butt on a frame leave 1/8 in. Ours."""
STRUT_NEAR = 75.0
"""mm; an eave strut stands so far off its frame, and a longer clip reaches it (3 in). Ours."""
ONE = 250.0
"""mm; members in line that meet a frame no farther apart share its clip (10 in). Ours."""
TRIED = 400
"""Points along a member at which one looks where it comes nearest to another."""


@dataclass(frozen=True, slots=True)
class Crossing:
    """One place where members meet. role: of those that are held. on: "frame", "jamb", in a frame itself
    "joint", or "lap" where nested ones do. ends: how many of them a clip holds there: two, where they butt or
    lap."""

    role: str
    on: str
    ends: int


@dataclass(frozen=True, slots=True, eq=False)
class _Box:
    """A member's: axes (3, 3) in rows, the second along it; middle (3,) and half (3,) its sizes."""

    piece: Piece
    axes: Vectors
    middle: Vectors
    half: Vectors

    def inside(self, points: Vectors) -> Vectors:
        """(n,) mm that points (n, 3) stand off it."""
        off = np.maximum(np.abs((points - self.middle) @ self.axes.T) - self.half, 0.0)
        found: Vectors = np.linalg.norm(off, axis=1)
        return found


@dataclass(frozen=True, slots=True, eq=False)
class _Meeting:
    """A member held at a place (3,)."""

    held: _Box
    at: Vectors


def crossings(model: Model) -> tuple[Crossing, ...]:
    """Every place where purlins, girts and struts are held on frames, where framing ends at jambs, where
    frames are joined in themselves, and where members lap."""
    boxes = {
        role: [_box(p) for p in model.pieces if p.role == role]
        for role in dict.fromkeys((*JOINED, *ON_FRAMES, *ON_JAMBS, Role.JAMB))
    }
    found: list[Crossing] = []
    frames = [box for role in FRAME for box in boxes[role]]
    for role in ON_FRAMES:
        found += _held(boxes[role], frames, "frame", STRUT_NEAR if role == Role.EAVE_STRUT else NEAR)
    for role in ON_JAMBS:
        found += _held(boxes[role], boxes[Role.JAMB], "jamb", NEAR)
    every = [box for role in JOINED for box in boxes[role]]
    joints = [(one, other) for one, other in _pairs(every, every, NEAR) if one < other]
    found += [Crossing(every[one].piece.role, "joint", 1) for one, _ in joints]
    return (*found, *(Crossing(lap.upper.role, "lap", 2) for lap in member_laps(model.pieces)))


def _held(held: Sequence[_Box], on: Sequence[_Box], name: str, near: float) -> Iterator[Crossing]:
    meetings = [_Meeting(held[i], _nearest(held[i], on[j])) for i, j in _pairs(held, on, near)]
    for group in _together(meetings):
        yield Crossing(group[0].held.piece.role, name, len({id(one.held) for one in group}))


def _together(meetings: Iterable[_Meeting]) -> list[list[_Meeting]]:
    """Meetings by the clip that holds them."""
    groups: list[list[_Meeting]] = []
    for one in meetings:
        for group in groups:
            if all(_share(one, other) for other in group):
                group.append(one)
                break
        else:
            groups.append([one])
    return groups


def _share(one: _Meeting, other: _Meeting) -> bool:
    """Whether they are in line, not beside each other, and at one place."""
    if float(np.linalg.norm(one.at - other.at)) > ONE:
        return False
    if one.held is other.held:
        return True
    along = one.held.axes[1]
    apart = abs(float(along @ (one.held.middle - other.held.middle)))
    in_line = abs(float(along @ other.held.axes[1])) > 0.99
    return in_line and apart > max(one.held.half[1], other.held.half[1])


def _box(piece: Piece) -> _Box:
    lying = measure_member(piece.solid).ways[0]
    at = piece.place @ lying.bench
    axes, half = np.array([at.x, at.y, at.z]), lying.points.max(axis=0) / 2
    return _Box(piece, axes, np.array(at.origin) + half @ axes, half)


def _nearest(held: _Box, other: _Box) -> Vectors:
    """(3,) where along a member the other comes nearest to its axis."""
    steps = np.linspace(-1.0, 1.0, TRIED)[:, None] * held.half[1] * held.axes[1]
    points = held.middle + steps
    off = other.inside(points)
    middle: Vectors = points[off <= off.min() + 1.0].mean(axis=0)
    return middle


def _pairs(some: Sequence[_Box], others: Sequence[_Box], near: float) -> list[tuple[int, int]]:
    """Which boxes of two lists stand no farther apart, as indices."""
    if not some or not others:
        return []
    low, high = _bounds(some)
    from_, to = _bounds(others)
    close = ((low[:, None] - near <= to[None]) & (from_[None] - near <= high[:, None])).all(axis=2)
    i, j = np.nonzero(close)
    apart = _apart([some[k] for k in i.tolist()], [others[k] for k in j.tolist()])
    return [(a, b) for a, b, gap in zip(i.tolist(), j.tolist(), apart.tolist(), strict=True) if gap <= near]


def _bounds(boxes: Sequence[_Box]) -> tuple[Vectors, Vectors]:
    corners = np.array([standing_box(box.piece) for box in boxes])
    return corners[:, 0], corners[:, 1]


def _apart(some: Sequence[_Box], others: Sequence[_Box]) -> Vectors:
    """(n,) mm between boxes, pair by pair, below nought where they share space: along the axis that parts
    them most, of their own six and the nine square to two of them."""
    if not some:
        return np.empty(0)
    a, b = (np.array([box.axes for box in boxes]) for boxes in (some, others))
    half_a, half_b = (np.array([box.half for box in boxes]) for boxes in (some, others))
    off = np.array([one.middle - other.middle for one, other in zip(some, others, strict=True)])
    crossed = np.cross(a[:, :, None, :], b[:, None, :, :]).reshape(-1, 9, 3)
    axes = np.concatenate([a, b, crossed], axis=1)
    size = np.linalg.norm(axes, axis=2, keepdims=True)
    axes = np.where(size > 1e-6, axes / np.maximum(size, 1e-6), 0.0)
    reach_a = (np.abs(axes @ a.transpose(0, 2, 1)) * half_a[:, None]).sum(axis=2)
    reach_b = (np.abs(axes @ b.transpose(0, 2, 1)) * half_b[:, None]).sum(axis=2)
    gaps = np.abs((axes * off[:, None]).sum(axis=2)) - reach_a - reach_b
    found: Vectors = np.where(size[:, :, 0] > 1e-6, gaps, -np.inf).max(axis=1)
    return found
