"""The main frames of a building, told by where their columns stand, and what hangs on how many of them."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise

import numpy as np

from ..measure.faces import Vectors
from ..measure.standing import standing_box
from ..pieces import Piece
from ..roles import Role

APART = 300.0
"""mm along the building; columns nearer than this stand in one frame. Ours."""
BESIDE = 150.0
"""mm; what ends so near before a frame still hangs on it. Ours."""


@dataclass(frozen=True, eq=False)
class Frame:
    """A frame. at: of its columns along the building (mm)."""

    at: float
    columns: tuple[Piece, ...]

    @cached_property
    def centres(self) -> Vectors:
        """(n, 2) mm: the middles of its columns in plan, from left to right."""
        middles = np.array([standing_box(column).mean(axis=0)[:2] for column in self.columns])
        sorted_: Vectors = middles[np.argsort(middles[:, 0])]
        return sorted_

    @cached_property
    def height(self) -> float:
        """mm: of its highest column."""
        return max(float(np.ptp(standing_box(column)[:, 2])) for column in self.columns)


def frames(pieces: Iterable[Piece]) -> tuple[Frame, ...]:
    """The frames, from the front gable to the back."""
    columns = sorted((along(piece), piece.name, piece) for piece in pieces if piece.role == Role.COLUMN)
    rows: list[list[tuple[float, Piece]]] = []
    for at, _, column in columns:
        if rows and at - rows[-1][-1][0] < APART:
            rows[-1].append((at, column))
        else:
            rows.append([(at, column)])
    return tuple(Frame(float(np.mean([at for at, _ in row])), tuple(one for _, one in row)) for row in rows)


def along(piece: Piece) -> float:
    """mm: the middle of a piece along the building."""
    return float(standing_box(piece)[:, 1].mean())


def nearest(stations: Sequence[Frame], piece: Piece) -> int:
    """The number of the frame that a piece stands in."""
    at = along(piece)
    return min(range(len(stations)), key=lambda k: abs(stations[k].at - at))


def under(stations: Sequence[Frame], piece: Piece) -> tuple[int, int] | None:
    """The numbers of the first and the last frame that a piece along the building hangs on; None for one
    that lies across it, or hangs on none."""
    low, high = standing_box(piece)
    if high[1] - low[1] < high[0] - low[0]:
        return None
    found = [k for k, one in enumerate(stations) if low[1] - BESIDE < one.at < high[1] + BESIDE]
    return (found[0], found[-1]) if found else None


def bay_of(stations: Sequence[Frame], brace: Piece) -> list[tuple[int, int]]:
    """The numbers of the two frames that a brace stands between; empty for one that is between none."""
    at = along(brace)
    return [(k, k + 1) for k, (one, other) in enumerate(pairwise(stations)) if one.at < at < other.at]


def on_post(posts: Iterable[Piece], columns: Iterable[Piece], plate: Piece) -> bool:
    """Whether a base plate is under a post, and not under a column."""

    def off(upright: Piece) -> float:
        apart = standing_box(upright).mean(axis=0) - standing_box(plate).mean(axis=0)
        return float(np.hypot(*apart[:2]))

    return min(map(off, posts), default=np.inf) < min(map(off, columns), default=np.inf)
