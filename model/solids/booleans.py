"""Bodies less tools, bodies made one: the kernel's booleans, each result checked to be one body."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Any

from OCP.BRepAlgoAPI import BRepAlgoAPI_Cut, BRepAlgoAPI_Fuse
from OCP.ShapeUpgrade import ShapeUpgrade_UnifySameDomain
from OCP.TopAbs import TopAbs_SOLID
from OCP.TopExp import TopExp_Explorer
from OCP.TopoDS import TopoDS, TopoDS_Shape, TopoDS_Solid
from OCP.TopTools import TopTools_ListOfShape

from ..place import Place
from .placing import moved
from .properties import volume

Placed = tuple[TopoDS_Solid, Place]


def cut(body: TopoDS_Solid, tools: Sequence[Placed]) -> TopoDS_Solid:
    """A body less tools, each at its place in the body's frame.

    Raises ValueError unless one body is left.
    """
    return one_body(less(body, [moved(tool, place) for tool, place in tools]))


def joined(parts: Sequence[Placed]) -> TopoDS_Solid:
    """Touching or overlapping parts as one body. Raises ValueError when they are apart."""
    first, *others = [moved(part, place) for part, place in parts]
    if not others:
        return first
    return one_body(_result(BRepAlgoAPI_Fuse(), [first], others))


def less(body: TopoDS_Shape, tools: Iterable[TopoDS_Shape]) -> TopoDS_Shape:
    """What is left of a body: any number of bodies, in a compound."""
    return _result(BRepAlgoAPI_Cut(), [body], tools)


def one_body(shape: TopoDS_Shape) -> TopoDS_Solid:
    """The single solid in a shape, its coplanar faces united. Raises ValueError for none or several."""
    bodies = solids_in(shape)
    if len(bodies) != 1:
        raise ValueError(f"one body was asked for, {len(bodies)} came out")
    uniting = ShapeUpgrade_UnifySameDomain(bodies[0], True, True, False)
    uniting.Build()
    (body,) = solids_in(uniting.Shape())
    if volume(body) <= 0.0:
        raise ValueError("the body is inside out")
    return body


def solids_in(shape: TopoDS_Shape) -> list[TopoDS_Solid]:
    """The solids of a shape, in the kernel's order."""
    found = []
    explorer = TopExp_Explorer(shape, TopAbs_SOLID)
    while explorer.More():
        found.append(TopoDS.Solid_s(explorer.Current()))
        explorer.Next()
    return found


def _result(
    operation: Any,  # one of the kernel's boolean classes, which carry no type information
    bodies: Iterable[TopoDS_Shape],
    tools: Iterable[TopoDS_Shape],
) -> TopoDS_Shape:
    operation.SetArguments(_shapes(bodies))
    operation.SetTools(_shapes(tools))
    operation.Build()
    if not operation.IsDone():
        raise ValueError("the kernel found no result")
    return operation.Shape()


def _shapes(shapes: Iterable[TopoDS_Shape]) -> TopTools_ListOfShape:
    listed = TopTools_ListOfShape()
    for shape in shapes:
        listed.Append(shape)
    return listed
