"""What a model is made of, as the steps need it: marked pieces, planes of sheets, frames."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cached_property

from ..measure.clad_planes import CladPlane, clad_planes
from ..measure.congruent import groups
from ..measure.nested import MemberLap, member_laps
from ..measure.placing import FacePlan, face_plans
from ..measure.standing import standing_box
from ..measure.told_by_shape import told_by_shape
from ..pieces import Model, Piece
from ..roles import Role
from .frames import Frame, bay_of, frames
from .hosts import roof_under, wall_of

BETWEEN = (Role.TIER_TRIM, Role.FLASHING, Role.RAIL_COVER)
"""Trims under whose sheets others end: between tiers, where another roof ends at a wall, over rails."""


@dataclass(frozen=True, eq=False)
class Survey:
    """A model surveyed. planes, plans: of its sheets, in one order. stations: its frames, from the front.
    turns: when each of them is stood, counted from nought: the two of the first braced bay, those behind
    them, then those before. seams: how high (mm) trims between sheets over each other lie, from the lowest,
    by the number of their plane. lower: the numbers of slopes whose heads end under a break of the pitch."""

    pieces: tuple[Piece, ...]
    planes: tuple[CladPlane, ...]
    plans: tuple[FacePlan, ...]
    stations: tuple[Frame, ...]
    turns: tuple[int, ...]
    seams: Mapping[int, tuple[float, ...]]
    lower: frozenset[int] = frozenset()

    @property
    def first(self) -> int:
        """The number of the frame that is stood first; 0 without frames."""
        return self.turns.index(0) if self.turns else 0

    @cached_property
    def laps(self) -> tuple[MemberLap, ...]:
        """Where members nest."""
        return member_laps(self.pieces)

    @property
    def braced(self) -> bool:
        """Whether bracing is drawn."""
        return bool(self.of(Role.BRACE))

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
    stations = frames(pieces)
    braced = [bay for piece in pieces if piece.role == Role.BRACE for bay in bay_of(stations, piece)]
    turns = _turns(len(stations), min((bay[0] for bay in braced), default=0))
    breaks = (roof_under(planes, piece) for piece in pieces if piece.role == Role.BREAK_TRIM)
    lower = frozenset(number for number in breaks if number is not None)
    return Survey(pieces, planes, plans, stations, turns, _seams(pieces, planes), lower)


def _turns(count: int, first: int) -> tuple[int, ...]:
    """From a first frame on to the last, then from before it back to the front."""
    order = [*range(first, count), *reversed(range(first))]
    return tuple(order.index(number) for number in range(count))


def _seams(pieces: Sequence[Piece], planes: Sequence[CladPlane]) -> Mapping[int, tuple[float, ...]]:
    heights: dict[tuple[int, str], list[float]] = defaultdict(list)
    for piece in pieces:
        if piece.role in BETWEEN and (number := wall_of(planes, piece)) is not None:
            heights[number, piece.role].append(height(piece))
    found: dict[int, tuple[float, ...]] = {}
    for (number, _), of_one in heights.items():
        found[number] = tuple(sorted((*found.get(number, ()), sum(of_one) / len(of_one))))
    return found


def height(piece: Piece) -> float:
    """mm: of the middle of a piece's box."""
    return float(standing_box(piece)[:, 2].mean())
