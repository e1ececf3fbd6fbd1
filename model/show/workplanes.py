"""A piece as a CadQuery workplane and a model as a CadQuery assembly, for those who go on with CadQuery.

CadQuery itself is loaded only when one of these is called; nothing else in ribwright needs it.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from ..pieces import Model, Piece
from ..solids.placing import location
from .paint import drawn_colour

if TYPE_CHECKING:
    import cadquery


def workplane(piece: Piece) -> cadquery.Workplane:
    """The piece where it stands in the building, mm; all bodies of a row."""
    import cadquery

    place = cadquery.Location(location(piece.place))
    return cadquery.Workplane().newObject([body.moved(place) for body in _bodies(piece)])


def assembly(model: Model) -> cadquery.Assembly:
    """The model's tree of groups with its pieces as leaves, by name, in their colours; solids stay shared."""
    import cadquery

    root = cadquery.Assembly(name=model.name)
    groups: dict[tuple[str, ...], cadquery.Assembly] = {(): root}
    for piece in model.pieces:
        for depth in range(1, len(piece.group) + 1):
            path = piece.group[:depth]
            if path not in groups:
                groups[path] = cadquery.Assembly(name=path[-1])
        red, green, blue = (part / 255.0 for part in drawn_colour(piece))
        bodies, group = _bodies(piece), groups[piece.group]
        group.add(
            bodies[0] if len(bodies) == 1 else cadquery.Compound.makeCompound(bodies),
            name=f"{piece.name} 1" if piece.name == group.name else piece.name,  # CadQuery wants them apart
            loc=cadquery.Location(location(piece.place)),
            color=cadquery.Color(red, green, blue, 1.0),
        )
    for path in sorted(groups, key=len, reverse=True):
        if path:
            groups[path[:-1]].add(groups[path])
    return root


def _bodies(piece: Piece) -> list[cadquery.Shape]:
    """The piece's solid at every point of its row, in the piece's own frame."""
    import cadquery

    body = cadquery.Shape.cast(piece.solid)
    return [body.moved(cadquery.Location(point)) for point in piece.row] or [body]
