"""A piece as a CadQuery workplane and a model as a CadQuery assembly, for those who go on with CadQuery.

CadQuery itself is loaded only when one of these is called; nothing else in ribwright needs it.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from ..pieces import Model, Piece
from ..solids.placing import location
from .colours import drawn_colour

if TYPE_CHECKING:
    import cadquery


def workplane(piece: Piece) -> cadquery.Workplane:
    """The piece where it stands in the building, mm."""
    import cadquery

    placed = cadquery.Shape.cast(piece.solid).moved(cadquery.Location(location(piece.place)))
    return cadquery.Workplane(obj=placed)


def assembly(model: Model) -> cadquery.Assembly:
    """The model's tree of groups with its pieces as leaves, by name, in their colours; solids stay shared."""
    import cadquery

    root = cadquery.Assembly(name=model.name)
    groups: dict[tuple[str, ...], cadquery.Assembly] = {(): root}
    for piece in model.pieces:
        for depth in range(1, len(piece.group) + 1):
            path = piece.group[:depth]
            if path not in groups:
                groups[path] = cadquery.Assembly(name="/".join(path))
        red, green, blue = (part / 255.0 for part in drawn_colour(piece))
        groups[piece.group].add(
            cadquery.Shape.cast(piece.solid),
            name=piece.name,
            loc=cadquery.Location(location(piece.place)),
            color=cadquery.Color(red, green, blue, 1.0),
        )
    for path in sorted(groups, key=len, reverse=True):
        if path:
            groups[path[:-1]].add(groups[path])
    return root
