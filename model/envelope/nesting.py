"""Zee purlins that nest where they are spliced: each runs on past the frame, its web beside the next one's.

Of two the lower is turned over about its length, so that its wider flange is below, outside the other's
narrower one, and its narrower one inside the other's wider one: no other way do lips pass that are alike. The
pair is a thickness deeper than a zee. All are drawn level: the upper ones lie against the sheets and stand a
thickness off the rafters where none is under them, the lower ones lie on the rafters, a thickness off the
sheets. Common practice, no source; in steel a little tilt takes that up.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import radians, tan

from ..catalog.sections import SectionShape
from .tiers import flat_of


@dataclass(frozen=True, slots=True)
class Nest:
    """How the lower of two zees lies (mm). deep: how far under the upper one. aside: how far its centre lies
    towards the upper one's top flange. row: that way from the upper one's centre to the middle of what the
    flats of both have in common; flat: how wide that is, without what screws keep clear of."""

    deep: float
    aside: float
    row: float
    flat: float


def nest_of(zee: SectionShape) -> Nest:
    """How zees of a section lie in each other: web beside web, flange against flange."""
    aside = zee.thickness - zee.wider
    (wide, upper), (narrow, lower) = flat_of(zee), flat_of(zee, turned=True)
    low = max(upper - wide / 2, aside + lower - narrow / 2)
    high = min(upper + wide / 2, aside + lower + narrow / 2)
    return Nest(zee.thickness, aside, (low + high) / 2, high - low)


def least_wider(zee: SectionShape) -> float:
    """How much wider one flange of a zee has to be (mm), for its lip to pass outside the other's: a thickness
    for the web beside which it lies, and what the lip's bend takes of one."""
    return zee.thickness * (1 + tan(radians(zee.angle) / 2)) if zee.lip else 0.0
