"""Laps of nested members: each reaches far enough past the middle of a frame, both ways."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from ..findings import Code, Finding
from ..measure.nested import MemberLap
from ..roles import Role
from .found import found
from .limits import under
from .site import Site

DEPTHS = 1.5
"""Depths of a member that it reaches past the frame's middle at the least (AISI S100, from memory)."""
SHY = 0.5
"""mm that a lap may be short by: less than a tape shows."""


def member_laps_past(site: Site) -> Iterator[tuple[MemberLap, float]]:
    """Every lap, and how far it reaches past the middle of the frame that it is on, the shorter way (mm);
    nought where it is on none."""
    rafters = [k for k, piece in enumerate(site.bodies) if piece.role == Role.RAFTER]
    for lap in site.nests:
        along = (lap.ends[1] - lap.ends[0]) / lap.length
        low, high = lap.ends.min(axis=0) - lap.depth, lap.ends.max(axis=0) + lap.depth
        past = [0.0]
        for k in rafters:
            if (site.low[k] < high).all() and (site.high[k] > low).all():
                middle = sum(site.reach(k, along)) / 2
                past.append(min(middle - float(lap.ends[0] @ along), float(lap.ends[1] @ along) - middle))
        yield lap, max(past)


def short_laps(site: Site) -> Iterator[Finding]:
    """Laps that are too short, or in a span."""
    for lap, past in member_laps_past(site):
        least = DEPTHS * lap.depth
        if under(past, least - SHY):
            yield found(Code.MEMBER_LAP_SHORT, (lap.upper, lap.lower), np.mean(lap.ends, axis=0), past, least)
