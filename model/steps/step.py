"""A step of the raising: the pieces put up in it, what is checked before going on, what is minded."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from ..pieces import Piece
from ..roles import list_of


@dataclass(frozen=True, slots=True)
class Dimension:
    """What a tape must read before the work goes on (mm).

    what: is measured. at: where. size: as measured off the solids. within: how far the tape may differ,
    None where nothing is published or common. source: of `within`.
    """

    what: str
    at: str
    size: float
    within: float | None = None
    source: str = ""


@dataclass(frozen=True, slots=True)
class Caution:
    """What to mind in a step. source: where it is published, or "common practice"."""

    text: str
    source: str


@dataclass(frozen=True, slots=True)
class Step:
    """One step. pieces: in the order in which they are placed, screws last; none for a step that only
    checks. Every piece of a model stands in exactly one step."""

    name: str
    pieces: tuple[Piece, ...]
    dimensions: tuple[Dimension, ...]
    cautions: tuple[Caution, ...]

    @property
    def counts(self) -> Mapping[str, int]:
        """How many of each mark are put up, screws left out; what has no mark by its role."""
        return _counted(piece for piece in self.pieces if list_of(piece.role) != "screws")

    @property
    def screws(self) -> Mapping[str, int]:
        """How many screws of each mark."""
        return _counted(piece for piece in self.pieces if list_of(piece.role) == "screws")


def _counted(pieces: Iterable[Piece]) -> Mapping[str, int]:
    counts: Counter[str] = Counter()
    for piece in pieces:
        counts[piece.mark or piece.role or "unknown"] += piece.count
    return counts
