"""What a model is made of, as the steps need it: marked pieces, planes of sheets, frames."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from ..measure.congruent import groups
from ..measure.laps import CladPlane, clad_planes
from ..measure.placing import FacePlan, face_plans
from ..measure.told_by_shape import told_by_shape
from ..pieces import Model, Piece
from ..roles import Role
from .frames import Frame, frames


@dataclass(frozen=True, eq=False)
class Survey:
    """A model surveyed. planes, plans: of its sheets, in one order. stations: its frames, from the front."""

    pieces: tuple[Piece, ...]
    planes: tuple[CladPlane, ...]
    plans: tuple[FacePlan, ...]
    stations: tuple[Frame, ...]

    def of(self, *roles: Role) -> Sequence[Piece]:
        """Its pieces of some roles."""
        return [piece for piece in self.pieces if piece.role in roles]


def survey(model: Model) -> Survey:
    """A model, marked by what its solids are; what has no role is told by its shape."""
    model = told_by_shape(model)
    members = [(group.mark, member) for group in groups(model) for member in group.members]
    marks = {id(member.piece): mark for mark, member in members}
    pieces = tuple(replace(piece, mark=marks.get(id(piece), "")) for piece in model.pieces)
    placed = {member.piece.name: (mark, member.head_up) for mark, member in members}
    known = replace(model, pieces=pieces)
    planes = clad_planes(known)
    return Survey(pieces, planes, tuple(face_plans(known, planes, placed)), frames(pieces))
