"""What a model is made of, as the steps need it: marked pieces, planes of sheets, frames."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from ..measure.congruent import groups
from ..measure.laps import CladPlane, clad_planes
from ..measure.placing import FacePlan, face_plans
from ..measure.standing import standing_box
from ..measure.told_by_shape import told_by_shape
from ..pieces import Model, Piece
from ..roles import Role
from .frames import Frame, frames
from .hosts import plane_of


@dataclass(frozen=True, eq=False)
class Survey:
    """A model surveyed. planes, plans: of its sheets, in one order. stations: its frames, from the front.
    seams: how high (mm) the trim between two tiers lies, by the number of its plane."""

    pieces: tuple[Piece, ...]
    planes: tuple[CladPlane, ...]
    plans: tuple[FacePlan, ...]
    stations: tuple[Frame, ...]
    seams: Mapping[int, float]

    def of(self, *roles: Role) -> Sequence[Piece]:
        """Its pieces of some roles."""
        return [piece for piece in self.pieces if piece.role in roles]


def survey(model: Model) -> Survey:
    """A model, marked by what its solids are; what has no role is told by its shape."""
    model = told_by_shape(model)
    told = {
        id(member.piece): (group.mark, member.head_up) for group in groups(model) for member in group.members
    }
    marks = [told.get(id(piece), ("", True)) for piece in model.pieces]
    pieces = tuple(replace(piece, mark=mark) for piece, (mark, _) in zip(model.pieces, marks, strict=True))
    placed = {id(piece): mark for piece, mark in zip(pieces, marks, strict=True)}
    known = replace(model, pieces=pieces)
    planes = clad_planes(known)
    plans = tuple(face_plans(known, planes, placed))
    return Survey(pieces, planes, plans, frames(pieces), _seams(pieces, planes))


def _seams(pieces: Sequence[Piece], planes: Sequence[CladPlane]) -> Mapping[int, float]:
    heights: dict[int, list[float]] = defaultdict(list)
    for piece in pieces:
        if piece.role == Role.TIER_TRIM and (number := plane_of(planes, piece)) is not None:
            heights[number].append(height(piece))
    return {number: sum(found) / len(found) for number, found in heights.items()}


def height(piece: Piece) -> float:
    """mm: of the middle of a piece's box."""
    return float(standing_box(piece)[:, 2].mean())
