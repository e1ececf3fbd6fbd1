"""A small shed and the faults that are planted in its model: edits of pieces, never of a layout."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from functools import cache

import numpy as np
from ribwright.catalog.profiles import profiles
from ribwright.intake import parse
from ribwright.layout.skin.ribs import Graph, graphs
from ribwright.pieces import Model, Piece
from ribwright.place import Place, Point2, Point3, add
from ribwright.raising import raise_building
from ribwright.recipe import Sheet, grid
from ribwright.solids import realise
from support.lean_tos import SHED as BESIDE

SHED = """
width = "20 ft"
length = "24 ft"
eave_height = "9 ft"
pitch = "3/12"

[trim]
stock = ["10 ft"]

[[opening]]
kind = "window"
wall = "left"
width = "3 ft"
height = "3 ft"
from_left = "8 ft 10 in"
sill = "3 ft"

[[opening]]
kind = "walk door"
wall = "front"
width = "3 ft"
height = "6 ft 8 in"
from_left = "3 ft 9 in"

[[opening]]
kind = "framed opening"
wall = "right"
width = "7 ft"
height = "7 ft"
from_left = "8 ft 5 in"
"""
PROFILE = profiles()["36 x 9 x 3/4"]
THICKNESS = 0.0172 * 25.4


@cache
def shed() -> Model:
    return raise_building(parse(SHED, "shed")).model


@cache
def braced() -> Model:
    return raise_building(parse(SHED + "[bracing]\nbays = [1, 3]\n", "shed")).model


@cache
def tiered() -> Model:
    return raise_building(parse(SHED + '[wainscot]\nheight = "45 in"\n', "shed")).model


@cache
def leaned() -> Model:
    lean_to = 'wall = "right"\nwidth = "6 ft"\npitch = "2/12"\neave_height = "6 ft"\n'
    text = SHED[: SHED.rindex("[[opening]]")].replace("9 ft", "10 ft")
    return raise_building(parse(f"{text}[[lean_to]]\n{lean_to}", "shed")).model


@cache
def broken() -> Model:
    """Slopes that are steeper below a break."""
    roof = '[roof]\nbreak_at = "5 ft"\nlower_pitch = "8/12"\n'
    return raise_building(parse(SHED.replace("[trim]", f"{roof}[trim]"), "shed")).model


@cache
def gabled() -> Model:
    """A lean-to along the front gable."""
    return raise_building(parse(BESIDE.replace('"left"', '"front"'), "shed")).model


LAPPED = """
width = "40 ft"
length = "12 ft"
eave_height = "7 ft"
pitch = "1/12"
[sheets]
longest = "11 ft"
"""


NESTED = (
    SHED
    + """
[framing]
stock = ["15 ft"]
purlin = "zee 4x2x0.059 wider 1/8"
purlin_splices = "nested"
"""
)


@cache
def nested() -> Model:
    """Purlins that lap over their frames."""
    return raise_building(parse(NESTED, "shed")).model


@cache
def lapped() -> Model:
    """Roof sheets in three courses."""
    return raise_building(parse(LAPPED, "shed")).model


def named(model: Model, name: str) -> Piece:
    (found,) = [piece for piece in model.pieces if piece.name == name]
    return found


def of(model: Model, role: str, start: str = "") -> list[Piece]:
    return [piece for piece in model.pieces if piece.role == role and piece.name.startswith(start)]


def with_piece(model: Model, name: str, *instead: Piece) -> Model:
    """The model with the piece of that name replaced by others, or by none."""
    assert any(piece.name == name for piece in model.pieces), name
    pieces: list[Piece] = []
    for piece in model.pieces:
        pieces += instead if piece.name == name else [piece]
    return replace(model, pieces=tuple(pieces))


def moved(piece: Piece, by: Point3) -> Piece:
    """The piece moved in the building, mm."""
    return replace(piece, place=replace(piece.place, origin=add(piece.place.origin, by)))


def moved_all(model: Model, by: Point3, chosen: Callable[[Piece], bool]) -> Model:
    pieces = tuple(moved(piece, by) if chosen(piece) else piece for piece in model.pieces)
    return replace(model, pieces=pieces)


def single(model: Model, name: str, number: int, by: Point3 = (0.0, 0.0, 0.0)) -> Model:
    """One screw of a row, from 1, on its own and moved in the building."""
    row = named(model, name)
    rest = replace(row, row=row.row[: number - 1] + row.row[number:])
    place = Place(row.place.point(row.row[number - 1]), row.place.x, row.place.y)
    alone = moved(replace(row, name=f"{name}, one", row=(), place=place), by)
    return with_piece(model, name, rest, alone)


def screw_at(model: Model, sheet: str, chosen: Callable[[np.ndarray], float]) -> tuple[str, int]:
    """The row of a sheet's screws, and the number of the one that is least by a figure of its place."""
    row = named(model, f"{sheet} screws")
    places = [np.array(row.place.point(point)) for point in row.row]
    return row.name, 1 + int(np.argmin([chosen(place) for place in places]))


def sheet_of(
    piece: Piece,
    outline: Sequence[Point2],
    holes: Sequence[Sequence[Point2]] = (),
    thickness: float = THICKNESS,
    graph: tuple[Graph, Graph] | None = None,
) -> Piece:
    """The piece as a sheet of another outline (bench u, v), thickness or section, at its own place."""
    lower, upper = graph or graphs(PROFILE, thickness)
    ring = tuple((grid(u), grid(v)) for u, v in outline)
    rings = tuple(tuple((grid(u), grid(v)) for u, v in hole) for hole in holes)
    return replace(piece, solid=realise(Sheet(lower, upper, ring, rings)))


def box(left: float, low: float, right: float, high: float) -> tuple[Point2, ...]:
    return ((left, low), (right, low), (right, high), (left, high))


FULL = (-PROFILE.leg, PROFILE.cover + PROFILE.leg)
"""u range of a whole sheet on its bench."""


def both_raised() -> tuple[Graph, Graph]:
    """The section with an overlap rib at both ends."""
    lower, upper = graphs(PROFILE, THICKNESS)
    return _halves(lower, _mirrored(lower)), _halves(upper, _mirrored(upper))


def none_raised() -> tuple[Graph, Graph]:
    """The section with an underlap rib at both ends."""
    lower, upper = graphs(PROFILE, THICKNESS)
    return _halves(_mirrored(lower), lower), _halves(_mirrored(upper), upper)


def _mirrored(line: Graph) -> Graph:
    return tuple((grid(PROFILE.cover - u), w) for u, w in reversed(line))


def _halves(left: Graph, right: Graph) -> Graph:
    """One section's left half and another's right one; both are level over a pan in between."""
    middle = PROFILE.cover / 2 + 3.0
    low = [p for p in left if p[0] < middle]
    high = [p for p in right if p[0] > middle]
    return (*low, *high)
