"""Where members that nest lap each other: zees of one line, web beside web, off their solids."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from ..pieces import Piece
from ..roles import Role
from .faces import Vectors
from .member import measure_member
from .section_shape import measure_section
from .standing import standing_box

LAPPED = (Role.PURLIN, Role.GIRT)
"""What may nest."""
LEAST = 10.0
"""mm; members in line that reach less over each other butt. Ours."""
ALIKE = 1e-6
"""How far the cosine between two members in line may be off 1."""


@dataclass(frozen=True, slots=True, eq=False)
class MemberLap:
    """Two members that lap (mm).

    upper, lower: which of them lies higher. ends: (2, 3) of the lap, on a line along both. deep: how far the
    lower one lies under the upper. depth: of the upper's section; up: (3,) the way that its web stands.
    """

    upper: Piece
    lower: Piece
    ends: Vectors
    deep: float
    depth: float
    up: Vectors

    @property
    def length(self) -> float:
        """Of the lap."""
        return float(np.linalg.norm(self.ends[1] - self.ends[0]))


@dataclass(frozen=True, slots=True, eq=False)
class _Zee:
    """A member's axes (3, 3), rows: across its flanges' planes, along it, off its web; the middle of its box
    (3,), and half its sizes that way (3,)."""

    piece: Piece
    axes: Vectors
    middle: Vectors
    half: Vectors


def member_laps(pieces: Sequence[Piece]) -> tuple[MemberLap, ...]:
    """Every lap of nested members."""
    found = []
    for role in LAPPED:
        alike = [piece for piece in pieces if piece.role == role]
        for one, other in _near(alike):
            lap = _lap(_zee(one), _zee(other)) if _is_zee(one) and _is_zee(other) else None
            if lap is not None and lap.length > LEAST:
                found.append(lap)
    return tuple(found)


def _near(pieces: Sequence[Piece]) -> list[tuple[Piece, Piece]]:
    """Pairs whose boxes share space."""
    if not pieces:
        return []
    boxes = np.array([standing_box(piece) for piece in pieces])
    low, high = boxes[:, 0], boxes[:, 1]
    meet = ((low[:, None] + LEAST / 10 < high[None]) & (low[None] + LEAST / 10 < high[:, None])).all(axis=2)
    first, second = np.nonzero(np.triu(meet, 1))
    return [(pieces[i], pieces[j]) for i, j in zip(first.tolist(), second.tolist(), strict=True)]


def _is_zee(piece: Piece) -> bool:
    found = measure_section(piece.solid)
    return found is not None and found.shape.shape == "zee"


def _zee(piece: Piece) -> _Zee:
    lying = measure_member(piece.solid).ways[0]
    at, half = piece.place @ lying.bench, lying.points.max(axis=0) / 2
    axes = np.array([at.x, at.y, at.z])
    if axes[0][2] < 0:
        axes = axes * [[-1.0], [1.0], [1.0]]
    middle = np.array(at.origin) + half @ np.array([at.x, at.y, at.z])
    return _Zee(piece, axes, middle, half)


def _lap(one: _Zee, other: _Zee) -> MemberLap | None:
    """The lap of two zees; None where they do not run in one line, web beside web."""
    across, along, off = one.axes
    apart = other.middle - one.middle
    beside = abs(float(off @ apart)) < min(one.half[2], other.half[2]) / 2
    if (
        abs(float(along @ other.axes[1])) < 1 - ALIKE
        or not beside
        or abs(float(across @ apart)) > one.half[0]
    ):
        return None
    far = float(along @ apart)
    low, high = max(-one.half[1], far - other.half[1]), min(one.half[1], far + other.half[1])
    if high <= low or min(one.half[1], other.half[1]) * 2 - (high - low) < LEAST:
        return None  # one lies along all of the other
    upper, lower = (one, other) if float(across @ apart) < 0 else (other, one)
    ends = one.middle + np.outer([low, high], along)
    deep = abs(float(across @ apart))
    return MemberLap(upper.piece, lower.piece, ends, deep, 2 * float(upper.half[0]), across)
