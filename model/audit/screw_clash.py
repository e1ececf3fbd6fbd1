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
from .clash import TOUCHING, VOLUME, Shared, apart, shared_space
from .driven import Driven
from .found import found
from .site import Site, axes

CLEAR = Shared(0.0, 0.0, np.zeros(3))


def screw_clashes(site: Site, screws: Sequence[Driven]) -> Iterator[Finding]:
    """Every body that a screw runs into and does not hold. Screws that stand alike are judged once."""
    remembered: dict[object, Shared] = {}
    hard = np.array([name != "insulation" for name in site.lists], dtype=np.bool_)
    for _, row in groupby(screws, key=lambda screw: id(screw.piece)):
        yield from _row(site, hard, list(row), remembered)


def _row(
    site: Site, hard: NDArray[np.bool_], row: list[Driven], remembered: dict[object, Shared]
) -> Iterator[Finding]:
    """The clashes of the screws of one piece. hard: which bodies do not give way."""
    lows, highs = (np.array(ends) for ends in zip(*(_box(screw) for screw in row), strict=True))
    near = (site.low < highs.max(axis=0)) & (site.high > lows.min(axis=0))
    about = np.flatnonzero(near.all(axis=1) & hard)
    meet = (site.low[about] < highs[:, None] - TOUCHING) & (site.high[about] > lows[:, None] + TOUCHING)
    meeting: NDArray[np.bool_] = np.all(meet, axis=2)
    for screw, bodies in zip(row, meeting, strict=True):
        held = {layer.body for layer in screw.held}
        for k in set(about[bodies].tolist()) - held:
            shared = _shared(site, screw, k, remembered)
            if shared.counts:
                both = (screw, site.bodies[k])
                yield found(Code.SCREW_CLASH, both, screw.seat, shared.volume, VOLUME, "volume")


def _box(screw: Driven) -> tuple[Vectors, Vectors]:
    """A box around the head and one around the shank, together."""
    shape, axis = screw.shape, np.abs(screw.axis)
    rim = shape.rim * np.sqrt(np.maximum(1.0 - axis**2, 0.0))
    ends = np.array([screw.seat - shape.head * screw.axis, screw.seat + shape.length * screw.axis])
    return ends.min(axis=0) - rim, ends.max(axis=0) + rim


def _shared(site: Site, screw: Driven, k: int, remembered: dict[object, Shared]) -> Shared:
    """What a screw shares with a body, the screw standing in the body's frame."""
    turn = site.turns[k].T @ axes(screw.piece.place)
    shift = (screw.seat - site.origins[k]) @ site.turns[k] - turn @ screw.shape.seat
    solid, body = screw.piece.solid, site.bodies[k].solid
    key = (body, solid, np.round(turn, 6).tobytes(), np.round(shift, 3).tobytes())
    if key not in remembered:
        parted = apart(body, solid, turn, shift, -TOUCHING)
        remembered[key] = CLEAR if parted else shared_space(body, solid, turn, shift)
    return remembered[key]
