"""What a crew reads off an elevation: walls rebuilt from the page alone, distances as they measure."""

from __future__ import annotations

import io
from collections import Counter
from dataclasses import replace

import pytest
from ezdxf import recover
from ribwright.drawing.dxf import dxf
from ribwright.drawing.values import Dimension, RunningDimension
from ribwright.intake import starters
from ribwright.measure.clad_planes import clad_planes
from ribwright.measure.placing import FacePlan, PlacedSheet
from ribwright.order.lists.schedule import schedule
from ribwright.units import INCH, parse_length
from support.drawn import page_called, starter_pages
from support.read_elevation import Laid, listed, rebuilt, rows
from support.starter_buildings import starter_model

HALF = INCH / 32
"""mm: half the step that lengths are shown in."""
FEWEST = 0.7  # share of a wall's sheets that have room for their mark
ACROSS = 64  # flag of an ordinate DIMENSION that tells a place across, not a height


WALLS = (
    *(("workshop", "left"), ("workshop", "right"), ("workshop", "back"), ("workshop", "left slope")),
    *(("garage", "left"), ("garage", "back"), ("machine-shed", "left"), ("single-slope", "front")),
)


def solids(name: str, face: str) -> list[PlacedSheet]:
    """A face's sheets off their solids, read from where the run starts."""
    return list(plan_of(name, face).sheets)


def plan_of(name: str, face: str) -> FacePlan:
    return next(plan for plan in schedule(starter_model(name)).plans if plan.face == face)


def is_one_of(sheet: Laid, real: list[PlacedSheet]) -> bool:
    """Whether a sheet as read stands where one of the model does, to half the step lengths are shown in."""
    half = 0.5 if sheet.metric else HALF
    return any(
        (one.mark, not one.head_up) == (sheet.mark, sheet.turned)
        and (one.rib is None or abs(one.rib - sheet.rib) <= half)
        and abs(one.edge - sheet.edge) <= half
        for one in real
    )


@pytest.mark.parametrize(("name", "face"), WALLS)
def test_a_wall_can_be_rebuilt_from_its_page(name: str, face: str) -> None:
    """Every sheet whose mark stands on the drawing is where the solids are; the others are listed."""
    _, read = page_called(name, f"{face}: sheets")
    built, real = rebuilt(read, plan_of(name, face).start), solids(name, face)
    assert [sheet for sheet in built if not is_one_of(sheet, real)] == []
    drawn, absent = Counter(sheet.mark for sheet in built), Counter(mark for _, mark, _ in listed(read))
    assert drawn + absent == Counter(sheet.mark for sheet in real)
    assert len(built) > FEWEST * len(real)


def test_a_page_without_one_of_its_dimensions_does_not_give_the_wall() -> None:
    _, read = page_called("workshop", "right: sheets")
    real, (below, above) = solids("workshop", "right"), rows(read)
    for gone in (*below[2:-2], *above[2:-2]):
        spoilt = replace(read, texts=tuple(one for one in read.texts if one is not gone))
        assert [sheet for sheet in rebuilt(spoilt, "right") if not is_one_of(sheet, real)], gone.text


def test_leaders_of_leading_edges_lead_to_the_edges_of_solids() -> None:
    page, _ = page_called("workshop", "left: sheets")
    (plane,) = [plane for plane in clad_planes(starter_model("workshop")) if plane.name == "left"]
    ends = {round(float(sheet.outline.bounds[2]), 3) for sheet in plane.sheets}
    rows = [one for one in page.views[0].shapes if isinstance(one, RunningDimension) and not one.turn]
    above = max(rows, key=lambda row: row.at[1])
    assert {round(point[0], 3) for point in above.points} <= ends


@pytest.mark.parametrize("name", starters())
def test_every_distance_says_what_it_measures(name: str) -> None:
    """On every page of every starter, and again in the DXF of its elevations."""
    metric = starter_model(name).units == "mm"
    for page in starter_pages(name):
        shapes = [shape for view in page.views for shape in view.shapes]
        for shape in (shape for shape in shapes if isinstance(shape, Dimension)):
            axis = 1 if shape.turn else 0
            said = float(shape.text) if metric else parse_length(shape.text)
            assert abs(abs(shape.end[axis] - shape.start[axis]) - said) <= (0.5 if metric else HALF) + 1e-4
        for shape in (shape for shape in shapes if isinstance(shape, RunningDimension)):
            axis = 1 if shape.turn else 0
            for point, text in zip(shape.points, shape.texts, strict=True):
                said = float(text) if metric else parse_length(text)
                off = abs(abs(point[axis] - shape.zero[axis]) - said)
                assert off <= (0.5 if metric else HALF) + 1e-4, (page.title, text)


def test_the_dxf_of_a_page_measures_what_it_says() -> None:
    page, _ = page_called("workshop", "front: sheets")
    document, auditor = recover.read(io.BytesIO(dxf(page)))
    assert (auditor.errors, auditor.fixes) == ([], [])
    found = list(document.modelspace().query("DIMENSION"))
    rows = [one for one in page.views[0].shapes if isinstance(one, RunningDimension)]
    assert len(found) == sum(len(row.texts) + row.hooked for row in rows)
    for one in found:
        x, y, _ = one.get_measurement()
        assert (
            abs(abs(x if one.dxf.dimtype & ACROSS else y) * INCH - parse_length(one.dxf.text)) <= HALF + 1e-4
        )
