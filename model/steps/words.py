"""What the lists of steps say of pieces and sizes."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from ..measure.member import measure_member
from ..measure.screw import head_kind, shank
from ..pieces import Piece
from ..roles import Role, list_of
from ..units import INCH, Units, format_length
from .step import Step

FOLD = "tabs at the ends, over, when all of this is on"
"""What is done with the ends of trims that are cut flat."""


def put_up(step: Step) -> Iterator[tuple[int, str, str]]:
    """(how many, mark, what) of each mark of a step, screws left out."""
    for mark, count in step.counts.items():
        yield count, mark, _first(step, mark).role or "unknown"


def driven(step: Step, units: Units) -> Iterator[tuple[int, str, str]]:
    """(how many, mark, what) of each kind of screw of a step."""
    for mark, count in step.screws.items():
        yield count, mark, screw_words(_first(step, mark), units)


def bent(step: Step) -> Iterator[tuple[int, str, str]]:
    """(how many, mark, what) of each mark of trim whose ends are folded over in a step."""
    found = Counter((piece.mark, piece.role or "unknown") for piece in step.folded)
    yield from ((count, mark, role) for (mark, role), count in found.items())


def _first(step: Step, mark: str) -> Piece:
    return next(piece for piece in step.pieces if mark in (piece.mark, piece.role or "unknown"))


def screw_words(screw: Piece, units: Units) -> str:
    """`sheet screw, hex head with washer, 0.216 x 1.25 in, gainsboro`: shank and length under the head."""
    size = ""
    if list_of(screw.role) == "screws" and screw.role != Role.SCREW:
        measured = measure_member(screw.solid)
        unit, digits = (1.0, 1) if units == "mm" else (INCH, 3)
        sizes = (f"{round(value / unit, digits):g}" for value in shank(measured))
        size = f"{head_kind(measured)}, {' x '.join(sizes)} {'mm' if units == 'mm' else 'in'}".strip(", ")
    return ", ".join(filter(None, (screw.role, size, screw.label("colour"))))


def length(mm: float, units: Units) -> str:
    """A length with its unit."""
    return f"{format_length(mm, units)}{' mm' if units == 'mm' else ''}"
