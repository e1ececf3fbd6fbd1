"""A small model with every case a file must carry: shared bodies, twins in two colours, rows, odd names."""

from __future__ import annotations

import math

from ribwright.pieces import Model, Piece
from ribwright.place import Place
from ribwright.recipe import Prism, Section, Turned
from ribwright.solids import realise
from shapely import Polygon, box
from support.bodies import LEFT, RIGHT, sheet_over, tube

SHEET = realise(
    sheet_over(Polygon([(LEFT, 0), (RIGHT, 0), (RIGHT, 2000), (LEFT, 1800)]) - box(200, 500, 700, 900))
)
POST = realise(Prism(tube(101.6, 101.6, 6.35), (0.0, 0.0, 0.0), (0.25, 0.0, 2438.4)))
BAR = realise(Prism(Section(((0, 0, 0), (50, 0, 0), (50, 5, 0), (0, 5, 0))), (0, 0, 0), (0, 0, 36576.123456)))
SCREW = realise(Turned(((0, -20), (2.4, -20), (2.4, 0), (6, 0), (6, 5), (0, 5)), 6))

HALF_TURN = Place((36576.0 / 7.0, 1e4 / 3.0, -0.1), (-1.0, 0.0, 0.0), (0.0, -1.0, 0.0))
C, S = math.cos(0.3), math.sin(0.3)
TILTED = Place((121920.0 / 7.0, 2.0, 3048.0), (C, S, 0.0), (-S * C, C * C, S))
ROW = tuple((44.45 + 228.6 * k, 100.0, 0.5) for k in range(4))


def small_model() -> Model:
    """Eight pieces; groups are entered, left, and entered again."""
    front, back, sheet = ("walls", "front"), ("walls", "back"), (("gauge", "29 ga"), ("colour", "crimson"))
    blue = (("gauge", "29 ga"), ("colour", "#1e90ff"), ("note", ""))
    return Model(
        "My shop: 9' 2-1/2\" \\ Große Halle \U0001f3e0",
        "ft-in",
        (
            Piece("front 1", "wall sheet", front, SHEET, Place(), (("face", "front"), *sheet), "P1"),
            Piece("post", "post", ("frame",), POST, TILTED, (("material", "steel"),), "M1"),
            Piece("front 2", "wall sheet", front, SHEET, HALF_TURN, (("face", "front"), *sheet), "P1"),
            Piece("back 1", "wall sheet", back, SHEET, TILTED, (("face", "back"), *sheet), "P1"),
            Piece("back 2", "wall sheet", back, SHEET, Place((914.4, 0.0, 0.0)), blue, "P2"),
            Piece("a long one; it's 'odd' #1", "purlin", (), BAR, HALF_TURN),
            Piece("front 1 screws", "sheet screw", front, SCREW, TILTED, sheet, "SS1", ROW),
            Piece("front 2 screws", "sheet screw", front, SCREW, HALF_TURN, sheet, "SS1", ROW),
        ),
    )
