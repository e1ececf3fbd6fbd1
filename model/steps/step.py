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
class Laid:
    """Columns that are laid one after the other, alike and equally far apart (mm).

    first, last: their numbers in the order of laying. marks: of a column, from below. read_from: where
    distances are read from. rib, edge: of the first column's overlap rib, None where it has none, and of its
    leading edge. every: from each to the next; 0 for one alone.
    """

    first: int
    last: int
    marks: tuple[str, ...]
    read_from: str
    rib: float | None
    edge: float
    every: float = 0.0

    @property
    def count(self) -> int:
        """How many columns."""
        return self.last - self.first + 1


@dataclass(frozen=True, slots=True)
class Step:
    """One step. pieces: in the order in which they are placed, screws last; none for a step that only
    checks. Every piece of a model stands in exactly one step. laid: where sheets go, in a step of sheets.
    folded: trims whose ends are folded over when all of them stand."""

    name: str
    pieces: tuple[Piece, ...]
    dimensions: tuple[Dimension, ...]
    cautions: tuple[Caution, ...]
    laid: tuple[Laid, ...] = ()
    folded: tuple[Piece, ...] = ()

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
