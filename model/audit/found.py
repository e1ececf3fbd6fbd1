"""A finding about pieces of a model, with what was measured."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Protocol

from ..findings import Code, Finding, Quantity
from ..measure.faces import Vectors
from .limits import settled
from .site import point


class Named(Protocol):
    """What a finding can be about: a piece, or one screw of a row."""

    @property
    def name(self) -> str:
        """Its own name."""

    @property
    def mark(self) -> str:
        """The mark it shares with its like."""


def found(
    code: Code,
    about: Iterable[Named],
    at: Vectors,
    measured: float | None = None,
    limit: float | None = None,
    quantity: Quantity = "length",
) -> Finding:
    """A finding at a place of the building (3,), its measure without noise; no measure, no quantity."""
    named = tuple(about)
    names, marks = tuple(one.name for one in named), tuple(one.mark for one in named)
    if measured is None:
        return Finding(code, names, marks, point(at))
    return Finding(code, names, marks, point(at), settled(measured), limit, quantity)
