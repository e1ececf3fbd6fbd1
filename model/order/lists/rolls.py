"""Blanket insulation as it is bought: every strip, as wide as the roll and as long as it lies."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from ...measure.congruent import Group
from ...measure.standing import lying_size
from ...roles import list_of


@dataclass(frozen=True, slots=True)
class Strip:
    """One strip. thick: how thick it is bought, as labelled. wide: as it lies; long: up its face (mm)."""

    role: str
    mark: str
    face: str
    thick: str
    wide: float
    long: float


def blanket_strips(groups: Iterable[Group]) -> Iterator[Strip]:
    """The strips of blanket among congruent pieces, mark by mark."""
    for group in groups:
        for piece in (member.piece for member in group.members if list_of(group.role) == "insulation"):
            size = lying_size(piece)
            yield Strip(group.role, group.mark, piece.label("face"), piece.label("gauge"), *size)
