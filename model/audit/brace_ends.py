"""Braces and struts: each of their ends stands against a column or a rafter."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import numpy as np

from ..findings import Code, Finding
from ..measure.faces import Vectors
from ..measure.member import measure_member
from ..roles import Role
from .clash import NEAR, closed_mesh
from .found import found
from .limits import over
from .site import Site

FRAMES = (Role.COLUMN, Role.RAFTER)
BRACING = (Role.BRACE, Role.STRUT)
SEARCH = 300.0
"""mm about an end in which steel is looked for: more air than that is said as so much."""
STUB = 0.1
"""Share of a brace's length that is its end."""


def brace_ends(site: Site) -> Iterator[Finding]:
    """Every end of a brace or a strut with air between it and all steel of frames."""
    frames = [k for k, piece in enumerate(site.bodies) if piece.role in FRAMES]
    for k, piece in enumerate(site.bodies):
        if piece.role in BRACING:
            for at, stub in _ends(site, k):
                air = min((_gap(site, stub, other) for other in frames), default=SEARCH)
                if over(air, NEAR):
                    yield found(Code.BRACE_LOOSE, (piece,), at, air, NEAR)


def _ends(site: Site, k: int) -> Iterator[tuple[Vectors, Any]]:
    """The middle of each end of a body, and its mesh there, in the building."""
    solid, turn = site.bodies[k].solid, site.turns[k]
    axis = turn @ np.array(measure_member(solid).ways[0].bench.y)
    mesh = closed_mesh(solid).transform(np.column_stack([turn, site.origins[k]]))
    middle = (site.low[k] + site.high[k]) / 2
    for way in (axis, -axis):
        _, far = site.reach(k, way)
        least = far - STUB * (far - site.reach(k, way)[0])
        yield middle + way * (far - middle @ way), mesh.trim_by_plane(way.tolist(), least)


def _gap(site: Site, stub: Any, other: int) -> float:
    """Air between an end and a body (mm), SEARCH at most."""
    box = np.array(stub.bounding_box())
    if (site.low[other] > box[3:] + SEARCH).any() or (site.high[other] < box[:3] - SEARCH).any():
        return SEARCH
    stands = np.column_stack([site.turns[other], site.origins[other]])
    gap: float = stub.min_gap(closed_mesh(site.bodies[other].solid).transform(stands), SEARCH)
    return gap
