"""Details: what a cut lays bare is what the kernel's own cut does, and what they dimension is what stands."""

from __future__ import annotations

import numpy as np
import pytest
from OCP.BRepAlgoAPI import BRepAlgoAPI_Common
from OCP.BRepBuilderAPI import BRepBuilderAPI_MakeFace
from OCP.BRepGProp import BRepGProp
from OCP.gp import gp_Ax3, gp_Dir, gp_Pln, gp_Pnt
from OCP.GProp import GProp_GProps
from ribwright.drawing.values import Dimension, Page, Text
from ribwright.intake import parse, starters
from ribwright.measure.clad_planes import clad_planes
from ribwright.papers.detail import Detail
from ribwright.papers.details import laid_bare
from ribwright.papers.job import job_of
from ribwright.papers.places import details_of
from ribwright.pieces import Piece
from ribwright.raising import raise_building
from ribwright.roles import Role
from ribwright.solids.placing import moved
from ribwright.units import INCH, parse_length
from support.drawn import starter_pages
from support.starter_buildings import starter, starter_model

HALF = 25.4 / 32 + 1e-4  # mm: half the step that feet and inches are shown in


def kernel_area(detail: Detail, piece: Piece) -> float:
    """Of the kernel's common part of a body and the window of a cut, mm2."""
    frame, (left, low, right, high) = detail.frame, detail.window
    axes = gp_Ax3(gp_Pnt(*frame.origin), gp_Dir(*frame.z), gp_Dir(*frame.x))
    window = BRepBuilderAPI_MakeFace(gp_Pln(axes), left, right, low, high).Face()
    common = BRepAlgoAPI_Common(moved(piece.solid, piece.place), window).Shape()
    figures = GProp_GProps()
    BRepGProp.SurfaceProperties_s(common, figures)
    return float(figures.Mass())


@pytest.mark.parametrize("name", ["garage", "wainscot"])
def test_what_a_cut_lays_bare_is_what_the_kernel_cuts(name: str) -> None:
    one = job_of(starter_model(name))
    for detail in details_of(one):
        for bare in laid_bare(one, detail):
            real = kernel_area(detail, bare.piece)
            assert bare.area.area == pytest.approx(real, rel=2e-2, abs=0.5), (detail.name, bare.piece.name)


def details(name: str) -> list[Page]:
    return [page for page in starter_pages(name) if page.title.startswith("detail")]


def dimensions(name: str, view: str) -> list[Dimension]:
    views = [one for page in details(name) for one in page.views if one.name.startswith(view)]
    return [shape for one in views for shape in one.shapes if isinstance(shape, Dimension)]


FEET = [name for name in starters() if starter(name).units != "mm"]


@pytest.mark.parametrize("name", FEET)
def test_dimensions_of_details_are_those_of_the_building(name: str) -> None:
    """The overhang is the one asked for; side laps are as the solids lie."""
    model = starter_model(name)
    overhang = next(one for one in dimensions(name, "eave") if not one.turn)
    assert model.terms.overhang is not None
    assert abs(parse_length(overhang.text) - model.terms.overhang) <= HALF
    for plane in clad_planes(model):
        kind = "roof" if plane.sloped else "wall"
        widths = [lap.width for lap in plane.side_laps]
        said = dimensions(name, f"side lap, {kind}")
        assert said
        for one in said:
            assert np.abs(np.array(widths) - parse_length(one.text)).min() <= HALF


@pytest.mark.parametrize("name", starters())
def test_every_piece_of_a_detail_is_named(name: str) -> None:
    one = job_of(starter_model(name))
    views = {view.name: view for page in details(name) for view in page.views}
    for detail in details_of(one):
        said = [shape.text for shape in views[detail.name].shapes if isinstance(shape, Text)]
        full = [f"{bare.piece.role} {bare.piece.mark}" for bare in laid_bare(one, detail)]
        # A role of two long words is said by its last one.
        assert sorted(text.split()[-1] for text in said) == sorted(text.split()[-1] for text in full)
        assert all(text in full or any(one.endswith(f" {text}") for one in full) for text in said)


def test_the_kinds_of_details_follow_the_building() -> None:
    def kinds(name: str) -> set[str]:
        return {detail.name.split(":")[0].split(",")[0] for detail in details_of(job_of(starter_model(name)))}

    assert {"eave", "ridge", "rake", "base", "corner", "window", "overhead door", "side lap"} <= kinds(
        "workshop"
    )
    assert {"eave", "high eave"} <= kinds("single-slope")
    assert "ridge" not in kinds("single-slope")
    assert "tier" in kinds("wainscot")
    assert kinds("carport") & {"base", "corner", "tier"} == set()
    assert "headwall" in kinds("lean-to") and "high eave" not in kinds("lean-to")
    assert "splice" in kinds("long-store") and "splice" not in kinds("carport")
    assert "end lap" in kinds("hay-barn")


def test_the_end_of_cladding_at_an_open_bay_is_drawn_with_its_trim_over_the_sheets() -> None:
    """Its leg covers four inches of their end and more."""
    text = 'width = "18 ft"\nlength = "20 ft"\neave_height = "8 ft"\npitch = "3/12"\n'
    text += '[walls]\nleft = "open in bay 2"\n'
    one = job_of(raise_building(parse(text, "bay")).model)
    detail = next(detail for detail in details_of(one) if detail.name == "end of cladding")
    bare = {part.piece.role: part.area.bounds for part in laid_bare(one, detail)}
    sheet, trim = bare[Role.WALL_SHEET], bare[Role.CORNER_TRIM]
    assert min(sheet[2], trim[2]) - max(sheet[0], trim[0]) > 4 * INCH


def test_a_wall_sheets_foot_is_measured_to_the_slab() -> None:
    """In a detail at the base, off the solids: the lowest of the sheet, the highest of the slab."""
    one = job_of(starter_model("workshop"))
    detail = next(one for one in details_of(one) if one.name == "base")
    bare = {part.piece.role: part.area for part in laid_bare(one, detail)}
    gap = bare[Role.WALL_SHEET].bounds[1] - bare[Role.SLAB].bounds[3]
    (said,) = dimensions("workshop", "base")
    assert abs(parse_length(said.text) - gap) <= HALF
