"""Several buildings in one picture: each beside the other as the eye sees them."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from ..pieces import Model
from ..place import Place, Point3, add, dot
from ..terms import Terms
from .surroundings import bounds_of_pieces, ground_level
from .views import corners, toward_eye

GAP = 2500.0  # mm between them


def side_by_side(models: Sequence[Model], view: str) -> list[Model]:
    """The models moved into a row across the picture, on one level, their nearest corners in line."""
    x, y, _ = toward_eye(view)
    level = (x, y, 0.0) if abs(x) + abs(y) > 0.1 else (0.0, -1.0, 0.0)
    right: Point3 = (-level[1], level[0], 0.0)
    moved, edge = [], 0.0
    for model in models:
        box = corners(bounds_of_pieces(model.pieces))
        across = [dot(corner, right) for corner in box]
        near = max(dot(corner, level) for corner in box)
        down = (0.0, 0.0, -ground_level(model.pieces))
        moved.append(_moved(model, add(add(down, right, edge - min(across)), level, -near)))
        edge += max(across) - min(across) + GAP
    return moved


def named_together(models: Sequence[Model]) -> tuple[str, Terms]:
    """What stands over several buildings: their names; address and date if they are one job's."""
    terms = models[0].terms if len(models) == 1 else Terms()
    return ", ".join(model.name for model in models), terms


def _moved(model: Model, by: Point3) -> Model:
    def stood(place: Place) -> Place:
        return replace(place, origin=add(place.origin, by))

    return replace(model, pieces=tuple(replace(piece, place=stood(piece.place)) for piece in model.pieces))
