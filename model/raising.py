"""From a building, or a file, to its model of marked pieces."""

from __future__ import annotations

from collections.abc import Callable

from .description.building import Building
from .layout import lay_out
from .measure import marked
from .pieces import Model, Piece
from .solids import realise

Progress = Callable[[str, int, int], None]
"""Called with what is being done, how many are done, how many there are."""


def quiet(what: str, done: int, total: int) -> None:
    """Progress for nobody."""


def raise_building(building: Building, progress: Progress = quiet) -> Model:
    """The building as solids: laid out, realised, measured and marked; pieces in the order they go up."""
    parts = lay_out(building)
    pieces = []
    for done, part in enumerate(parts):
        progress("solids", done, len(parts))
        solid = realise(part.recipe)
        pieces.append(Piece(part.name, part.role, part.group, solid, part.place, part.labels))
    progress("measuring", len(parts), len(parts))
    return marked(Model(building.name, building.units, tuple(pieces)))
