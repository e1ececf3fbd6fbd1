"""What is measured how: the measure of each role, and what all measures give."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Any, Protocol

from OCP.TopoDS import TopoDS_Solid

from ..place import Place
from ..roles import KINDS
from .member import measure_member
from .round_body import measure_body
from .sheet import measure_sheet


class Way(Protocol):
    """A measured body as it lies on the bench one way round."""

    @property
    def bench(self) -> Place:
        """The bench frame in the solid's own frame."""

    def fits(self, other: Any, /) -> bool:
        """Whether another body of the kind, lying so, is the same piece."""


class Measured(Protocol):
    """What every measure gives: the ways a body may lie, and figures to put bodies in order by."""

    @property
    def ways(self) -> Sequence[Way]:
        """Every way round that is as good as another; the first one is drawn."""

    @property
    def size(self) -> tuple[float, ...]:
        """mm, mm2: largest first in a schedule."""


MEASURES: dict[str, Callable[[TopoDS_Solid], Measured]] = {
    "sheet": measure_sheet,
    "member": measure_member,
    "body": measure_body,
}
"""By how the table of roles says a piece is measured."""


def measured(role: str, solid: TopoDS_Solid) -> Measured:
    """A solid as pieces of a role are measured."""
    return MEASURES[KINDS[role].measure](solid)
