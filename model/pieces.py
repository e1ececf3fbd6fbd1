"""The model: named pieces, each a solid at a place, in a tree of groups.

Everything behind this floor (measure, order, audit, exchange, drawings, show) takes a Model and
nothing else, whether the model was just raised or was read back from a file.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from importlib import import_module
from typing import TYPE_CHECKING

from .place import Place, Point3
from .terms import Terms

if TYPE_CHECKING:
    from OCP.TopoDS import TopoDS_Solid


@dataclass(frozen=True, slots=True)
class Piece:
    """One placed part of the building.

    role: what it is, one of `ribwright.roles` or, from a file of other origin, whatever stood there.
    solid: the body in its own frame, shared between pieces (compare with `is`); mm.
    place: from the solid's frame to the building's.
    labels: what geometry cannot hold, such as gauge, profile, colour, material, face. Never a size.
    row: points of the piece's own frame at which the solid stands, all alike (the screws of one sheet
    are one piece); empty: once, at its origin. Equal rows are shared in files as the solids are.
    mark: the short name all congruent pieces share; empty until `ribwright.measure.marked`.
    """

    name: str
    role: str
    group: tuple[str, ...]
    solid: TopoDS_Solid
    place: Place
    labels: tuple[tuple[str, str], ...] = ()
    mark: str = ""
    row: tuple[Point3, ...] = ()

    @property
    def count(self) -> int:
        """How many bodies this piece stands for."""
        return max(1, len(self.row))

    def label(self, key: str) -> str:
        """The text of a label, empty when it has none."""
        return dict(self.labels).get(key, "")


@dataclass(frozen=True, slots=True)
class Model:
    """A whole building. units: how lengths are to be shown, "ft-in" or "mm" (a label, not a size).
    terms: what was asked and no solid can show."""

    name: str
    units: str
    pieces: tuple[Piece, ...] = field(default=())
    terms: Terms = field(default=Terms())

    @property
    def roles(self) -> frozenset[str]:
        """What its pieces are."""
        return frozenset(piece.role for piece in self.pieces)

    def _repr_html_(self) -> str:
        """What a notebook shows of it: its page, of a floor above, loaded by name when it is asked for."""
        text: str = import_module("ribwright.show.page.notebook").framed(self)
        return text
