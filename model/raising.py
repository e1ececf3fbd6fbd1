"""From a building, or a file, to its model of marked pieces."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from .description.building import Building
from .findings import Finding
from .intake import MOST, refuse_too_many
from .layout import Laid, lay_out
from .measure import in_tree_order, marked
from .pieces import Model, Piece
from .solids import realise

Progress = Callable[[str, int, int], None]
"""Called with what is being done, how many are done, how many there are."""


def quiet(what: str, done: int, total: int) -> None:
    """Progress for nobody."""


@dataclass(frozen=True, slots=True)
class Raised:
    """A building raised: its model of marked pieces, group by group, and what the layout has to say."""

    model: Model
    findings: tuple[Finding, ...]


def raise_building(
    building: Building,
    progress: Progress = quiet,
    most: int = MOST,
    lay: Callable[[Building], Laid] = lay_out,
) -> Raised:
    """The building as solids: laid out, realised, measured and marked.

    most: pieces; a building that is estimated to have more raises TooManyPieces at once. lay: what lays it
    out, for whoever remembers layouts.
    """
    refuse_too_many(building, most)
    laid = lay(building)
    parts, pieces = laid.parts, []
    for done, part in enumerate(parts):
        progress("solids", done, len(parts))
        solid = realise(part.recipe)
        role = part.role.value
        place = part.place.rounded()
        pieces.append(Piece(part.name, role, part.group, solid, place, part.labels, row=part.row))
    progress("measuring", len(parts), len(parts))
    model = Model(building.name, building.units, tuple(in_tree_order(pieces)), laid.terms)
    return Raised(marked(model), laid.findings)
