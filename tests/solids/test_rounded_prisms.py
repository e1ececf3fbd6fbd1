"""Rounded prisms against their boolean twins, and their topology as the kernel's own analysis sees it."""

from __future__ import annotations

import math
import os
from collections.abc import Iterator
from pathlib import Path

import gmsh
import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st
from OCP.BRepAdaptor import BRepAdaptor_Curve
from OCP.GeomAbs import GeomAbs_Circle, GeomAbs_Ellipse, GeomAbs_Line
from OCP.ShapeAnalysis import ShapeAnalysis_ShapeTolerance, ShapeAnalysis_Shell
from OCP.TopAbs import TopAbs_EDGE, TopAbs_FACE, TopAbs_VERTEX
from OCP.TopExp import TopExp
from OCP.TopoDS import TopoDS, TopoDS_Shape, TopoDS_Solid
from OCP.TopTools import TopTools_IndexedMapOfShape
from ribwright.catalog.sections import parse_section, sections, strut_section
from ribwright.exchange.step import read_step, write_step
from ribwright.measure.section_shape import measure_section
from ribwright.pieces import Model, Piece
from ribwright.place import Place, Point3
from ribwright.recipe import Prism, Section, round_hole
from ribwright.solids import realise
from ribwright.solids.planar import faces_of
from ribwright.solids.prism import prism
from ribwright.solids.properties import is_valid, volume
from ribwright.solids.section_sides import is_sharp
from support.bodies import watertight
from support.twins import boolean_twin

LONG = bool(os.environ.get("LONG"))
"""More of them, other ones at every run."""
KINDS = (TopAbs_FACE, TopAbs_EDGE, TopAbs_VERTEX)
TYPED = [
    "cee 6x2x0.059 lip 0.5",
    "cee 4x2x0.105 lip 0",
    "zee 8x2.5x0.075 lip 0.9 angle 50",
    "zee 4x3x0.135 lip 0",
]
TYPED += ["hat 1.5x1.25x0.0346", "angle 3x2x0.075", "tube 2x6x0.12", "tube 6x6x0.25"]
STRUT, PITCHES = parse_section("9CS2.5x059"), (-45.0, -14.036243, 1.2, 14.036243, 45.0)
PLATE = Section(
    ((-60, -40, 12), (60, -40, 0), (60, 40, 5), (-60, 40, 0)),
    (round_hole((20, 0), 9), round_hole((-20, 5), 4.5)),
)
SECTIONS = [
    *(shape.section() for shape in sections().values() if not is_sharp(shape.section())),
    *(parse_section(typed).section() for typed in TYPED),
    *(strut_section(STRUT, pitch) for pitch in PITCHES),
    PLATE,
]
SLOPES = st.one_of(st.floats(-2.0, 2.0), st.sampled_from([0.0, 1.0, -0.25, 1e-9, -1e-7]))
ENDS = ((0.7, -0.4, 0.0), (-0.3, 1.1, 1500.0))


def distinct(shape: TopoDS_Shape, kind: object) -> list[TopoDS_Shape]:
    numbers = TopTools_IndexedMapOfShape()
    TopExp.MapShapes_s(shape, kind, numbers)
    return [numbers.FindKey(i + 1) for i in range(numbers.Extent())]


def counts(shape: TopoDS_Shape) -> list[int]:
    return [len(distinct(shape, kind)) for kind in KINDS]


def off_its_surfaces(solid: TopoDS_Solid) -> float:
    """How far (mm) the edges in space stand off those drawn on their faces, at equal parameters."""
    return max(
        curve.Value(t).Distance(drawn.Value(t))
        for face in faces_of(solid)
        for edge in map(TopoDS.Edge_s, distinct(face, TopAbs_EDGE))
        for curve, drawn in [(BRepAdaptor_Curve(edge), BRepAdaptor_Curve(edge, face))]
        for t in stations(curve.FirstParameter(), curve.LastParameter())
    )


def stations(first: float, last: float) -> Iterator[float]:
    return (first + (last - first) * k / 22 for k in range(23))


def curves(solid: TopoDS_Solid) -> set[object]:
    return {BRepAdaptor_Curve(TopoDS.Edge_s(edge)).GetType() for edge in distinct(solid, TopAbs_EDGE)}


def assert_clean(solid: TopoDS_Solid) -> None:
    """Valid, closed, turned outward, each edge in two faces, none off its surface, all tight."""
    assert is_valid(solid)
    shell = ShapeAnalysis_Shell()
    assert not shell.CheckOrientedShells(solid, True, True)
    assert not shell.HasBadEdges()
    assert not shell.HasFreeEdges()
    assert off_its_surfaces(solid) < 1e-9
    assert ShapeAnalysis_ShapeTolerance().Tolerance(solid, 1) == pytest.approx(1e-7)


@settings(max_examples=300 if LONG else 30, derandomize=not LONG, deadline=None)
@example(PLATE, (0.0, 0.0), (0.0, 0.0))
@example(PLATE, (1.0, 0.3), (-0.5, 0.0))
@given(st.sampled_from(SECTIONS), st.tuples(SLOPES, SLOPES), st.tuples(SLOPES, SLOPES))
def test_a_rounded_prism_is_its_boolean_twin(
    section: Section, low: tuple[float, float], high: tuple[float, float]
) -> None:
    recipe = Prism(section, (*low, 0.0), (*high, 2000.0))
    solid, twin = prism(recipe), boolean_twin(recipe)
    assert_clean(solid)
    assert volume(solid) == pytest.approx(volume(twin), rel=1e-9)
    assert all(ours <= theirs for ours, theirs in zip(counts(solid), counts(twin), strict=True))
    assert watertight(solid).volume() == pytest.approx(volume(solid), rel=2e-2)


@pytest.mark.parametrize("pitch", PITCHES)
def test_a_mitred_strut_is_its_boolean_twin(pitch: float) -> None:
    recipe = Prism(strut_section(STRUT, pitch), *ENDS)
    solid, twin = prism(recipe), boolean_twin(recipe)
    assert_clean(solid)
    assert volume(solid) == pytest.approx(volume(twin), rel=1e-9)
    assert counts(solid) == counts(twin)


def test_square_ends_have_circles_and_oblique_ends_ellipses() -> None:
    section = sections()["HSS4X4X1/4"].section()
    assert curves(prism(Prism(section, (0, 0, 0), (0, 0, 900)))) == {GeomAbs_Line, GeomAbs_Circle}
    assert curves(prism(Prism(section, *ENDS))) == {GeomAbs_Line, GeomAbs_Ellipse}


RADIUS = 9.0
ROUND_BODIES = {
    "a rod": (Section(round_hole((30, -7), RADIUS)), [3, 3, 2], math.pi * RADIUS**2),
    "a slotted plate": (
        Section(
            ((-60, -40, 0), (60, -40, 0), (60, 40, 0), (-60, 40, 0)),
            (((-30, -9, 9), (30, -9, 9), (30, 9, 9), (-30, 9, 9)),),
        ),
        [10, 24, 16],
        120 * 80 - 42 * 18 - math.pi * RADIUS**2,
    ),
    "a plate with a corner on a straight side": (
        Section(((-60, -40, 5), (0, -40, 3), (60, -40, 0), (60, 40, 0), (-60, 40, 0))),
        [7, 15, 10],
        120 * 80 - 25 * (1 - math.pi / 4),
    ),
    "a pipe": (
        Section(round_hole((0, 0), 2 * RADIUS), (round_hole((0, 0), RADIUS),)),
        [4, 6, 4],
        3 * math.pi * RADIUS**2,
    ),
}


@pytest.mark.parametrize("ends", [((0.0, 0.0, 0.0), (0.0, 0.0, 1500.0)), ENDS])
@pytest.mark.parametrize("name", ROUND_BODIES)
def test_neighbours_on_one_line_or_one_circle_are_one_side(name: str, ends: tuple[Point3, Point3]) -> None:
    section, expected, area = ROUND_BODIES[name]
    solid = prism(Prism(section, *ends))
    assert_clean(solid)
    assert counts(solid) == expected
    if not any(ends[0]):
        assert volume(solid) == pytest.approx(area * 1500.0, rel=1e-9)
    assert watertight(solid).volume() == pytest.approx(volume(solid), rel=3e-2)


@pytest.mark.parametrize("gap", [9e-8, -9e-8, 1e-12, -1e-12])
def test_arcs_that_all_but_meet_or_all_but_overlap_meet(gap: float) -> None:
    section = Section(((0, 0, 5), (9 + gap, 0, 4), (9 + gap, 50, 0), (0, 50, 0)))
    for ends in (((0.0, 0.0, 0.0), (0.0, 0.0, 900.0)), ENDS):
        solid = prism(Prism(section, *ends))
        assert is_valid(solid)
        assert counts(solid)[0] == 7


def test_end_planes_that_meet_on_a_rounded_section_are_refused() -> None:
    section = Section(((0, 0, 5), (60, 0, 0), (60, 40, 0), (0, 40, 5)))
    with pytest.raises(ValueError, match="no length"):
        prism(Prism(section, (0.5, 0.0, 0.0), (0.0, 0.0, 30.0)))


def test_step_gives_the_same_bodies_back(tmp_path: Path) -> None:
    """As read by ourselves: valid, of the same volume and section; and of that volume by gmsh.

    A file holds no curves drawn on cylinders; readers draw them again, to their 1e-7 mm.
    """
    bodies = [realise(Prism(section, *ENDS)) for section in SECTIONS]
    path = tmp_path / "model.step"
    pieces = [
        Piece(f"girt {i}", "girt", (), solid, Place((0.0, 500.0 * i, 0.0))) for i, solid in enumerate(bodies)
    ]
    write_step(Model("bodies", "mm", tuple(pieces)), path)
    for solid, piece in zip(bodies, read_step(path).pieces, strict=True):
        assert is_valid(piece.solid)
        assert ShapeAnalysis_ShapeTolerance().Tolerance(piece.solid, 1) < 1e-6
        assert counts(piece.solid) == counts(solid)
        assert volume(piece.solid) == pytest.approx(volume(solid), rel=1e-8)
        (words, sizes), (read_words, read_sizes) = measured(solid), measured(piece.solid)
        assert read_words == words
        assert read_sizes == pytest.approx(sizes, abs=1e-6)
    assert by_gmsh(path) == pytest.approx(sorted(map(volume, bodies)), rel=1e-8)


def measured(solid: TopoDS_Solid) -> tuple[str, list[float]]:
    """The section as measured: its shape and corners; its sizes (mm, degrees) and pitch."""
    found = measure_section(solid)
    if found is None:
        return "", []
    shape = found.shape
    lengths = [shape.depth, shape.breadth, shape.thickness, shape.lip, shape.radius, shape.flange]
    return f"{shape.shape} {found.corners}", [*lengths, shape.angle, found.pitch]


def by_gmsh(path: Path) -> list[float]:
    gmsh.initialize(interruptible=False)
    try:
        gmsh.option.setNumber("General.Terminal", 0)
        gmsh.option.setString("Geometry.OCCTargetUnit", "MM")
        gmsh.option.setNumber("Geometry.OCCImportLabels", 0)
        found = [tag for dim, tag in gmsh.model.occ.importShapes(str(path)) if dim == 3]
        return sorted(gmsh.model.occ.getMass(3, tag) for tag in found)
    finally:
        gmsh.finalize()
