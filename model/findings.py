"""What was found about a building that can be raised: faults to mend, and things done that must be said.

Findings are values, the same whoever made them: the layout's notes and the audit's faults. Their words
are made here, in one place, in the units of the person.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Literal

from .codes import CHECKS, Check, Code
from .place import Point3
from .units import INCH, Units, format_length

__all__ = ["CHECKS", "Check", "Code", "Finding", "amount", "in_order", "sentence", "where", "words"]

Quantity = Literal["", "length", "area", "volume", "count"]

FINE = 304.8
"""mm; shorter lengths are said in decimals, since sixteenths would swallow what matters."""
NAMED = 3
"""Pieces that a sentence names before it counts the rest."""


@dataclass(frozen=True, slots=True)
class Finding:
    """One finding.

    pieces: names of what it is about, the nearest to the fault first; marks: theirs. at: where in the
    building (mm); None for what has no place. measured, limit: of `quantity`, in mm, mm2, mm3 or pieces.
    """

    code: Code
    pieces: tuple[str, ...] = ()
    marks: tuple[str, ...] = ()
    at: Point3 | None = None
    measured: float | None = None
    limit: float | None = None
    quantity: Quantity = ""

    @property
    def fault(self) -> bool:
        """False for what was merely decided on the way and is worth knowing."""
        return self.code.fault


_RANK = {code: rank for rank, code in enumerate(Code)}


def in_order(findings: Iterable[Finding]) -> tuple[Finding, ...]:
    """Findings without repeats: faults first, then by code, pieces and place."""

    def key(finding: Finding) -> tuple[object, ...]:
        return (
            not finding.fault,
            _RANK[finding.code],
            finding.pieces,
            finding.at or (),
            finding.measured or 0.0,
        )

    return tuple(sorted(set(findings), key=key))


def words(finding: Finding, units: Units) -> str:
    """The finding as one sentence for whoever looks its code up."""
    return f"{sentence(finding, units)} [{finding.code.text}]"


def sentence(finding: Finding, units: Units) -> str:
    """The finding as one sentence for anyone, with its place in the building's axes."""
    names = [*finding.pieces, "", ""]
    said = finding.code.words.format(
        pieces=_listed(finding.pieces),
        one=names[0],
        other=names[1],
        measured=amount(finding.measured, finding.quantity, units),
        limit=amount(finding.limit, finding.quantity, units),
    )
    place = f" (at {where(finding.at, units)})" if finding.at else ""
    return said + place


def where(point: Point3, units: Units) -> str:
    """A point of the building: across, along, up."""
    return ", ".join(format_length(value, units) for value in point) + (" mm" if units == "mm" else "")


def amount(value: float | None, quantity: Quantity, units: Units) -> str:
    """A measured value with its unit; small lengths in decimals."""
    if value is None:
        return ""
    match quantity:
        case "length" if abs(value) < FINE:
            return f"{value:.2f} mm" if units == "mm" else f"{value / INCH:.3f} in"
        case "length":
            return format_length(value, units) + (" mm" if units == "mm" else "")
        case "area":
            return f"{value:.0f} mm2" if units == "mm" else f"{value / INCH**2:.3g} in2"
        case "volume":
            return f"{value:.3g} mm3" if units == "mm" else f"{value / INCH**3:.3g} in3"
    return f"{value:g}"


def _listed(pieces: tuple[str, ...]) -> str:
    if len(pieces) <= NAMED:
        return " and ".join(filter(None, [", ".join(pieces[:-1]), *pieces[-1:]]))
    return f"{', '.join(pieces[:NAMED])} and {len(pieces) - NAMED} more"
