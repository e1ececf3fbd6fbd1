"""What stands over every list and picture: the job, the units, and what this is not."""

from __future__ import annotations

from collections.abc import Iterable

from .roles import Role
from .terms import Terms
from .units import Units, area_unit, weight_unit

LENGTHS = {"ft-in": "feet and inches to 1/16", "mm": "mm"}
UNBRACED = (
    "Geometry, not engineering: member sizes are placeholders until a licensed engineer's drawings replace "
    "them; local code governs. No bracing is drawn: a frame without it does not stand.",
    "Geometry, not engineering; local code governs; no bracing is drawn.",
)
BRACED = (
    "Geometry, not engineering: member sizes and bracing are placeholders until a licensed engineer's "
    "drawings replace them; local code governs. Bracing is drawn where it may stand, not shown to be enough.",
    "Geometry, not engineering; local code governs; bracing is a placeholder.",
)


def is_braced(roles: Iterable[str]) -> bool:
    """Whether bracing is drawn, by the roles of the pieces there are."""
    return Role.BRACE in roles


def note(*, braced: bool) -> str:
    """What this is not."""
    return (BRACED if braced else UNBRACED)[0]


def short(*, braced: bool) -> str:
    """The same where there is room for a line."""
    return (BRACED if braced else UNBRACED)[1]


def job(name: str, terms: Terms) -> str:
    """The job's name, with the address and the date where they were given."""
    return ", ".join(filter(None, (name, terms.address, terms.date)))


def units_said(units: Units) -> str:
    """What figures are in."""
    return f"Lengths in {LENGTHS[units]}; areas in {area_unit(units)}; weights in {weight_unit(units)}."


def heading(name: str, terms: Terms, units: Units, *, braced: bool) -> tuple[str, str, str]:
    """The job, the units, and what this is not, a line each."""
    return job(name, terms), units_said(units), note(braced=braced)
