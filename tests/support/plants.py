"""Plants: faults as functions from a sound model to a faulty one. Sizes in mm."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from functools import reduce

import numpy as np
from OCP.BRep import BRep_Builder, BRep_Tool
from OCP.BRepBuilderAPI import BRepBuilderAPI_Copy
from OCP.gp import gp_Pnt
from OCP.TopAbs import TopAbs_FACE, TopAbs_VERTEX
from OCP.TopExp import TopExp_Explorer
from OCP.TopoDS import TopoDS, TopoDS_Shell, TopoDS_Solid
from ribwright.layout.screws.screw_kinds import NUMBER_12, hex_screw
from ribwright.measure.sheet import measure_sheet
from ribwright.pieces import Model, Piece
from ribwright.place import Point3
from ribwright.solids import realise
from ribwright.solids.placed import stood
from ribwright.solids.properties import triangles
from support.planted import (
    FULL,
    THICKNESS,
    both_raised,
    box,
    moved,
    named,
    none_raised,
    of,
    screw_at,
    sheet_of,
    single,
    with_piece,
)

Plant = Callable[[Model], Model]
OUT: dict[str, Point3] = {
    "left": (-1.0, 0.0, 0.0),
    "right": (1.0, 0.0, 0.0),
    "back": (0.0, 1.0, 0.0),
    "front": (0.0, -1.0, 0.0),
}


def out(face: str, by: float) -> Point3:
    x, y, z = OUT[face]
    return (x * by, y * by, z * by)


def move(name: str, by: Point3) -> Plant:
    return lambda model: with_piece(model, name, moved(named(model, name), by))


def drop(name: str) -> Plant:
    return lambda model: with_piece(model, name)


def drop_all(*names: str) -> Plant:
    """Without several pieces."""
    return lambda model: reduce(with_piece, names, model)


def drop_one(role: str, start: str, number: int = 0) -> Plant:
    return lambda model: with_piece(model, of(model, role, start)[number].name)


def undressed(face: str) -> Plant:
    """A face without its sheets and what goes through them."""
    gone = ("wall sheet", "roof sheet", "sheet screw", "lap screw")

    def plant(model: Model) -> Model:
        kept = (piece for piece in model.pieces if piece.role not in gone or piece.label("face") != face)
        return replace(model, pieces=tuple(kept))

    return plant


def whole(name: str) -> Plant:
    """The sheet without its cutouts."""
    return lambda model: with_piece(model, name, sheet_of(named(model, name), _ring(named(model, name))))


def holed(name: str) -> Plant:
    hole = box(300.0, 900.0, 460.0, 1060.0)[::-1]
    return lambda model: with_piece(
        model, name, sheet_of(named(model, name), _ring(named(model, name)), (hole,))
    )


def narrowed(name: str, by: float) -> Plant:
    """Cut off the underlap leg."""
    return lambda model: with_piece(model, name, sheet_of(named(model, name), _ring(named(model, name), by)))


def thick(name: str, by: float) -> Plant:
    return lambda model: with_piece(
        model, name, sheet_of(named(model, name), _ring(named(model, name)), thickness=THICKNESS + by)
    )


def _ring(piece: Piece, less: float = 0.0) -> tuple[tuple[float, float], ...]:
    left, low, right, high = measure_sheet(piece.solid).outline.bounds
    return box(FULL[0], 0.0, FULL[0] + right - left - less, high - low)


def screw(sheet: str, chosen: Callable[[np.ndarray], float], by: Point3) -> Plant:
    """One screw of a sheet moved."""
    return lambda model: single(model, *screw_at(model, sheet, chosen), by)


def near(u: float, v: float, axis: int) -> Callable[[np.ndarray], float]:
    """How far a screw of a wall stands from u along the wall and v up."""
    return lambda place: float(np.hypot(place[axis] - u, place[2] - v))


def again(sheet: str, chosen: Callable[[np.ndarray], float], by: Point3) -> Plant:
    """A second screw beside one of a sheet."""

    def plant(model: Model) -> Model:
        name, number = screw_at(model, sheet, chosen)
        row = named(model, name)
        alone = named(single(model, name, number, by), f"{name}, one")
        return with_piece(model, name, row, alone)

    return plant


def down_the_web(sheet: str, chosen: Callable[[np.ndarray], float]) -> Plant:
    """A screw of a sheet, into a cee girt's web: the plate along the top of its box, 0.059 in thick."""

    def plant(model: Model) -> Model:
        name, number = screw_at(model, sheet, chosen)
        row = named(model, name)
        at = row.place.point(row.row[number - 1])
        girts = [stood(triangles(piece.solid)[0], piece.place) for piece in of(model, "girt")]
        (top,) = {
            round(float(points[:, 2].max()), 3)
            for points in girts
            if abs(points[:, 2].mean() - at[2]) < 30 and np.ptp(points, axis=0).max() > 1500
        }
        return single(model, name, number, (0.0, 0.0, top - 0.75 - at[2]))

    return plant


def low_screw(sheet: str, chosen: Callable[[np.ndarray], float]) -> Plant:
    """A screw of a sheet's foot, 5.5 mm over the sheet's edge: 8.2 are asked (1.5 diameters of a #12)."""

    def plant(model: Model) -> Model:
        name, number = screw_at(model, sheet, chosen)
        row = named(model, name)
        at = row.place.point(row.row[number - 1])
        foot = stood(triangles(named(model, sheet).solid)[0], named(model, sheet).place)[:, 2].min()
        return single(model, name, number, (0.0, 0.0, float(foot) + 5.5 - at[2]))

    return plant


def without_row(sheet: str, height: float) -> Plant:
    """The sheet without its screws nearest to a height."""

    def plant(model: Model) -> Model:
        row = named(model, f"{sheet} screws")
        heights = [row.place.point(point)[2] for point in row.row]
        nearest = min(heights, key=lambda z: abs(z - height))
        kept = tuple(point for point, z in zip(row.row, heights, strict=True) if abs(z - nearest) > 1)
        return with_piece(model, row.name, replace(row, row=kept))

    return plant


def behind_a_lip(sheet: str, chosen: Callable[[np.ndarray], float], height: float) -> Plant:
    """A screw of a sheet under an opening, moved to a height behind the lip there."""

    def plant(model: Model) -> Model:
        name, number = screw_at(model, sheet, chosen)
        row = named(model, name)
        at = row.place.point(row.row[number - 1])
        return single(model, name, number, (0.0, 0.0, height - at[2]))

    return plant


def turned_lap(face: str, number: int = 7) -> Plant:
    """Two neighbours of a run: the first with its lap rib raised on both sides, the second on none."""

    def plant(model: Model) -> Model:
        before, last = named(model, f"{face} {number}"), named(model, f"{face} {number + 1}")
        raised, level = both_raised(), none_raised()
        model = with_piece(model, before.name, sheet_of(before, _ring(before), graph=raised))
        return with_piece(model, last.name, sheet_of(last, _ring(last), graph=level))

    return plant


def askew(solid: TopoDS_Solid) -> TopoDS_Solid:
    """A copy of the solid with one corner told to be half a millimetre from where its edges end."""
    copy = TopoDS.Solid_s(BRepBuilderAPI_Copy(solid).Shape())
    corner = TopoDS.Vertex_s(TopExp_Explorer(copy, TopAbs_VERTEX).Current())
    spot = BRep_Tool.Pnt_s(corner)
    BRep_Builder().UpdateVertex(corner, gp_Pnt(spot.X() + 0.5, spot.Y(), spot.Z()), 1e-7)
    return copy


def added(name: str, by: Point3, row: bool = False) -> Plant:
    """A second piece like one that is there."""

    def plant(model: Model) -> Model:
        piece = named(model, name)
        return with_piece(model, name, piece, replace(moved(piece, by), name=f"{name} again"))

    return plant


def relabelled(name: str, key: str, text: str) -> Plant:
    def plant(model: Model) -> Model:
        piece = named(model, name)
        labels = tuple((label, text if label == key else said) for label, said in piece.labels)
        return with_piece(model, name, replace(piece, labels=labels))

    return plant


def renamed(name: str) -> Plant:
    """The piece under a role that nobody knows."""
    return lambda model: with_piece(model, name, replace(named(model, name), role="gizmo"))


def with_solid(name: str, change: Callable[[TopoDS_Solid], TopoDS_Solid]) -> Plant:
    def plant(model: Model) -> Model:
        piece = named(model, name)
        return with_piece(model, name, replace(piece, solid=change(piece.solid)))

    return plant


def without_a_face(solid: TopoDS_Solid) -> TopoDS_Solid:
    builder, shell, opened = BRep_Builder(), TopoDS_Shell(), TopoDS_Solid()
    builder.MakeShell(shell)
    faces = TopExp_Explorer(solid, TopAbs_FACE)
    faces.Next()  # the first one is left out
    while faces.More():
        builder.Add(shell, faces.Current())
        faces.Next()
    builder.MakeSolid(opened)
    builder.Add(opened, shell)
    return opened


def inside_out(solid: TopoDS_Solid) -> TopoDS_Solid:
    return TopoDS.Solid_s(solid.Reversed())


def shorter(name: str, length: float) -> Plant:
    """The screws of a piece of another length."""
    return lambda model: with_piece(
        model, name, replace(named(model, name), solid=realise(hex_screw(NUMBER_12, length)))
    )


def end_moved(face: str, side: int) -> Plant:
    """A gable's end sheet, to the right of the building (1) or the left (-1), moved off its neighbour."""

    def plant(model: Model) -> Model:
        row = of(model, "wall sheet", f"{face} ")
        end = max(row, key=lambda piece: side * piece.place.origin[0])
        return with_piece(model, end.name, moved(end, (40.0 * side, 0.0, 0.0)))

    return plant


def asked(**terms: object) -> Plant:
    return lambda model: replace(model, terms=replace(model.terms, **terms))


def turned_round(normal: Point3) -> Plant:
    def plant(model: Model) -> Model:
        sides = tuple(
            (face, {"left": "right", "right": "left"}[side] if np.allclose(face, normal, atol=0.3) else side)
            for face, side in model.terms.overlap
        )
        return replace(model, terms=replace(model.terms, overlap=sides))

    return plant
