"""Clash of screws: what a screw's head or shank shares space with, beyond what it fastens together.

A blanket gives way: low heads on a trim behind one press into it.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import groupby

import numpy as np
from numpy.typing import NDArray

from ..findings import Code, Finding
from ..measure.faces import Vectors
from .clash import TOUCHING, VOLUME, shared_space
from .driven import Driven
from .found import found
from .known import SHIFT, TURN, rounded
from .site import Site, axes


def screw_clashes(site: Site, screws: Sequence[Driven]) -> Iterator[Finding]:
    """Every body that a screw runs into and does not hold."""
    hard = np.array([name != "insulation" for name in site.lists], dtype=np.bool_)
    for _, row in groupby(screws, key=lambda screw: id(screw.piece)):
        yield from _row(site, hard, list(row))


def _row(site: Site, hard: NDArray[np.bool_], row: list[Driven]) -> Iterator[Finding]:
    """The clashes of the screws of one piece. hard: which bodies do not give way."""
    seats = np.array([screw.seat for screw in row])
    low, high = _boxes(row[0], seats)
    near = (site.low < high.max(axis=0)) & (site.high > low.min(axis=0))
    about = np.flatnonzero(near.all(axis=1) & hard)
    meet = (site.low[about, None] < high - TOUCHING) & (site.high[about, None] > low + TOUCHING)
    meeting: NDArray[np.bool_] = np.all(meet, axis=2)
    holding = {(screw, layer.body) for screw, driven in enumerate(row) for layer in driven.held}
    for k, meets in zip(about.tolist(), meeting, strict=True):
        numbers = [screw for screw in np.flatnonzero(meets).tolist() if (screw, k) not in holding]
        if not numbers:
            continue
        body, screw = site.bodies[k], row[0]
        turn = site.turns[k].T @ axes(screw.piece.place)
        shifts = (seats[numbers] - site.origins[k]) @ site.turns[k] - turn @ screw.shape.seat
        stands = (rounded(turn, TURN), rounded(shifts, SHIFT))
        for number, shared in zip(numbers, shared_space(body.solid, screw.piece.solid, *stands), strict=True):
            if shared.counts:
                at = seats[number]
                yield found(Code.SCREW_CLASH, (row[number], body), at, shared.volume, VOLUME, "volume")


def _boxes(screw: Driven, seats: Vectors) -> tuple[Vectors, Vectors]:
    """Lowest and highest corners (n, 3) of boxes around the head and the shank, together, of screws driven
    as one is at some seats (n, 3)."""
    shape, axis = screw.shape, screw.axis
    rim = shape.rim * np.sqrt(np.maximum(1.0 - axis**2, 0.0))
    ends = np.array([-shape.head * axis, shape.length * axis])
    return seats + ends.min(axis=0) - rim, seats + ends.max(axis=0) + rim
