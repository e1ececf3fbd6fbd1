"""Screws in the legs that inside corner trims have on the wall that a lean-to stands out from."""

from __future__ import annotations

from collections.abc import Iterator
from math import copysign

from ...envelope.headwall import headwall_of
from ...roles import Role
from .screw_kinds import EDGE, INCH
from .trimmed import Trimmed, Wanted, up_a_leg

BESIDE_LEG = 0.75 * INCH
"""mm; a screw stands so far from the leg beside it (3/4 in), so that a driver finds room. Ours."""


def inside_corner_screws(on: Trimmed) -> Iterator[Wanted]:
    """One at every framing line of the main wall that reaches such a leg, under the lean-to's roof. Those of
    the other leg are the lean-to's own, as at its corners."""
    lines, face = on.lines, on.plan.face
    if (headwall := headwall_of(lines.building, face.name)) is None:
        return
    for run in (run for run in on.runs if run.role is Role.INSIDE_CORNER_TRIM):
        places = [face.frame.seen(run.frame.point((*at, 0.0))) for at in run.line]
        # Of its three corners the bend is the middle one, the one farthest out is the other leg's edge.
        bend, out = places[1][0], min(w for _, _, w in places)
        if out < 0.0:
            continue  # at the wall opposite
        edge = max((u for u, _, _ in places), key=lambda u: abs(u - bend))
        into, middle = copysign(1.0, edge - bend), (bend + edge) / 2
        strip = sorted((bend + into * BESIDE_LEG, edge - into * (lines.ride + EDGE)))
        spots = up_a_leg(middle, strip, on.level_rows(middle, headwall.head))
        yield run.name, run, out + lines.thickness, spots
