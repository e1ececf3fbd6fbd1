"""What is measured how: for each role of a piece, its measure and the letter of its marks."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Any, Protocol

from OCP.TopoDS import TopoDS_Solid

from ..place import Place
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


@dataclass(frozen=True, slots=True)
class Kind:
    """How the pieces of a role are measured. prefix: of their marks."""

    prefix: str
    measure: Callable[[TopoDS_Solid], Measured]


SHEETS = {"wall sheet": "W", "roof sheet": "R", "sheet": "S"}
MEMBERS = {
    "column": "C",
    "rafter": "RA",
    "knee": "K",
    "post": "PO",
    "base plate": "BP",
    "base rail": "BR",
    "girt": "G",
    "eave strut": "ES",
    "purlin": "P",
    "rake angle": "RK",
    "jamb": "J",
    "header": "H",
    "sill": "SI",
    "member": "M",
}
TRIMS = {
    "base trim": "TB",
    "corner trim": "TC",
    "eave trim": "TE",
    "rake trim": "TR",
    "ridge cap": "TP",
    "j trim": "TJ",
    "jamb angle": "TA",
    "head angle": "TH",
}
CLOSURES = {"outside closure": "CO", "inside closure": "CI"}
SCREWS = {"sheet screw": "SS", "lap screw": "SL", "trim screw": "ST", "screw": "SW"}
FILLINGS = {"leaf": "D", "sash": "WS", "pane": "WP"}
SLAB = {"slab": "SB"}
UNKNOWN = {"unknown": "U"}
"""Roles of each list of a schedule, in order, each with the letters of its marks. Sheets, members and
screws that are no more than that, and what is unknown, are told by shape (`told_by_shape`)."""

AS_BODIES = {"screw", "unknown"}
"""Roles that may be curved all round."""

KINDS: dict[str, Kind] = {role: Kind(prefix, measure_sheet) for role, prefix in SHEETS.items()} | {
    role: Kind(prefix, measure_body if role in AS_BODIES else measure_member)
    for roles in (MEMBERS, TRIMS, CLOSURES, SCREWS, FILLINGS, SLAB, UNKNOWN)
    for role, prefix in roles.items()
}
"""By role, in the order of a schedule. A role that is not here gets no mark."""
