"""By hand: `python tests/benchmarks/bench_sheet.py`. A sheet with rake and hole against its boolean twin."""

from __future__ import annotations

import sys
from pathlib import Path

from OCP.BRepAlgoAPI import BRepAlgoAPI_Common
from OCP.BRepBuilderAPI import BRepBuilderAPI_MakeFace, BRepBuilderAPI_MakePolygon
from OCP.BRepPrimAPI import BRepPrimAPI_MakePrism
from OCP.gp import gp_Pnt, gp_Vec
from OCP.TopoDS import TopoDS_Face, TopoDS_Shape
from ribwright.place import Point3
from ribwright.recipe import Sheet
from ribwright.solids.booleans import one_body
from ribwright.solids.properties import volume
from ribwright.solids.ribbed_sheet import sheet
from shapely import Polygon, box
from timing import in_turn, medians, seconds, told

sys.path.insert(0, str(Path(__file__).parents[1]))
from support.bodies import LEFT, LOWER, RIGHT, UPPER, sheet_over

PAIRS = 25
RAKE = Polygon([(LEFT, 0), (RIGHT, 0), (RIGHT, 3000), (LEFT, 3000 - 241.3)])
HOLE = box(200, 900, 700, 1800)


def face(*rings: list[Point3]) -> TopoDS_Face:
    wires = []
    for ring in rings:
        polygon = BRepBuilderAPI_MakePolygon()
        for point in ring:
            polygon.Add(gp_Pnt(*point))
        polygon.Close()
        wires.append(polygon.Wire())
    making = BRepBuilderAPI_MakeFace(wires[0], True)
    for wire in wires[1:]:
        making.Add(wire)
    return making.Face()


def boolean_twin(recipe: Sheet) -> TopoDS_Shape:
    """The profile drawn out, then all that is over the outline kept."""
    end = face([(u, 0.0, w) for u, w in (*LOWER, *reversed(UPPER))])
    whole = BRepPrimAPI_MakePrism(end, gp_Vec(0.0, 3000.0, 0.0)).Shape()
    region = face(*([(u, v, -50.0) for u, v in ring] for ring in (recipe.outline, *recipe.holes)))
    return BRepAlgoAPI_Common(whole, BRepPrimAPI_MakePrism(region, gp_Vec(0.0, 0.0, 150.0)).Shape()).Shape()


if __name__ == "__main__":
    recipe = sheet_over(RAKE - HOLE)
    assert abs(volume(sheet(recipe)) / volume(one_body(boolean_twin(recipe))) - 1) < 1e-9
    pairs = in_turn(
        PAIRS, lambda: seconds(lambda: sheet(recipe)), lambda: seconds(lambda: boolean_twin(recipe))
    )
    ratios = [boolean / direct for direct, boolean in pairs]
    told("boolean twin / sheet with rake and hole", ratios, "4 at least", medians(pairs))
