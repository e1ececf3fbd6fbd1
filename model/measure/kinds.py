"""What is measured how: for each role of a piece, its measure and the letter of its marks."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Any, Protocol

from OCP.TopoDS import TopoDS_Solid

from ..place import Place
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


@dataclass(frozen=True, slots=True)
class Kind:
    """How the pieces of a role are measured. prefix: of their marks."""

    prefix: str
    measure: Callable[[TopoDS_Solid], Measured]


KINDS: dict[str, Kind] = {
    "wall sheet": Kind("W", measure_sheet),
    "roof sheet": Kind("R", measure_sheet),
}
"""By role, in the order of a schedule. A role that is not here gets no mark."""
