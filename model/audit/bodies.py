"""Bodies: every solid closed, right side out, with a volume; none in the air."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from ..findings import Code, Finding
from ..solids.properties import is_valid
from .clash import NEAR, alike, apart, closed_mesh
from .driven import Driven
from .found import found
from .site import Site, overlapping


def bodies(site: Site, kernel: bool = False) -> Iterator[Finding]:
    """Every distinct solid that is none. kernel: also as its own checks see it, which takes long."""
    import manifold3d  # noqa: PLC0415  # loaded only when something is audited

    first = {piece.solid: piece for piece in (*site.bodies, *site.screws)[::-1]}
    for solid, piece in reversed(first.items()):
        mesh = closed_mesh(solid)
        code = None
        if mesh.status() != manifold3d.Error.NoError or not mesh.num_tri():
            code = Code.BODY_OPEN
        elif mesh.volume() <= 0:
            code = Code.BODY_HOLLOW
        elif kernel and not is_valid(solid):
            code = Code.BODY_INVALID
        if code:
            yield found(code, (piece,), np.array(piece.place.origin))


def floating(site: Site, screws: list[Driven]) -> Iterator[Finding]:
    """Bodies that touch no other body, and no screw."""
    loose = np.ones(len(site.bodies), np.bool_)
    loose[[layer.body for screw in screws for layer in screw.layers]] = False
    first, second = overlapping(site.low, site.high, -NEAR)
    asked = loose[first] | loose[second]
    first, second = first[asked], second[asked]
    for group, turn, shift in alike(site, first, second):
        a, b = (site.bodies[int(numbers[group[0]])].solid for numbers in (first, second))
        if not apart(a, b, turn, shift[None], NEAR):
            loose[first[group]] = loose[second[group]] = False
    for k in np.flatnonzero(loose).tolist():
        yield found(Code.FLOATING, (site.bodies[k],), np.asarray((site.low[k] + site.high[k]) / 2))
