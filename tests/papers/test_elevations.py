"""What a crew reads off an elevation: by hand for one starter, and rebuilt for walls from the page alone."""

from __future__ import annotations

import io
import re
from bisect import bisect_left
from collections import Counter
from dataclasses import dataclass, replace
from math import hypot

import pytest
from ezdxf import recover
from ribwright.drawing.dxf import dxf
from ribwright.drawing.values import Dimension, RunningDimension
from ribwright.intake import starters
from ribwright.measure.laps import clad_planes
from ribwright.measure.placing import FacePlan, PlacedSheet
from ribwright.order.lists.schedule import schedule
from ribwright.units import INCH, Unreadable, parse_length
from shapely.geometry import Point
from support.drawn import page_called, starter_pages
from support.read_pdf import Read, Written
from support.starter_buildings import starter_model

HALF = INCH / 32
"""mm: half the step that lengths are shown in."""
NEAR = 2.0  # mm on paper
FEWEST = 0.7  # share of a wall's sheets that have room for their mark
ACROSS = 64  # flag of an ordinate DIMENSION that tells a place across, not a height
MARK = re.compile(r"([WR]\d+)(↓?)(?: #(\d+))?$")


def test_the_garages_left_wall_by_hand() -> None:
    """26 ft: sheets of 36 in cover from the left steel corner, overlap ribs 1 in in. ceil((312 - 2) / 36) is
    9; the last starts at 1 + 8 x 36 = 289 in and its rip ends with the wall, where the far leg would."""
    _, read = page_called("garage", "left: sheets")
    below, above = rows(read)
    ribs = ["0", '1"', *(f"{n}' 1\"" for n in (3, 6, 9, 12, 15, 18, 21, 24)), "26'"]
    assert [one.text for one in below] == ribs
    edges = ["0", *(f"{n}' 2\"" for n in (3, 6, 9, 12, 15, 18, 21, 24)), "26'"]
    assert [one.text for one in above] == edges
    assert any('Side laps 2": the right sheet is on top' in one.text for one in read.texts)
    assert [one.text for one in read.texts if one.text.startswith("10' 10")] == ["10' 10\" to 14' 10\""]


def rows(read: Read) -> tuple[list[Written], list[Written]]:
    """The upright texts that are lengths, below and above the drawing, from left to right."""
    found = [one for one in read.texts if abs(one.turn - 90) < 0.1 and is_length(one.text)]
    middle = (min(one.ink.bounds[1] for one in found) + max(one.ink.bounds[3] for one in found)) / 2
    parts: tuple[list[Written], list[Written]] = ([], [])
    for one in sorted(found, key=lambda text: text.ink.centroid.x):
        parts[one.ink.centroid.y > middle].append(one)
    return parts


def length(text: str) -> float:
    """mm of a length as pages say it."""
    return float(text) if text.isdigit() else parse_length(text)


def is_length(text: str) -> bool:
    try:
        length(text)
    except Unreadable:
        return False
    return True


@dataclass(frozen=True)
class Laid:
    """A sheet as the page tells: mark, turned or not, and where its rib and leading edge are (mm)."""

    mark: str
    turned: bool
    rib: float
    edge: float
    metric: bool = False


def station(read: Read, text: Written) -> float:
    """x on paper of the place that a text's leader leads to: the far end of the line that starts at it."""
    best, place = 1e9, 0.0
    for line, _ in read.lines:
        first, last = line.coords[0], line.coords[-1]
        for near, far in ((first, last), (last, first)):
            box = text.ink.distance(Point(near))
            if box < min(best, NEAR) and hypot(far[0] - near[0], far[1] - near[1]) > NEAR:
                best, place = box, far[0]
    assert best < NEAR, f"no leader at {text.text}"
    return place


def rebuilt(read: Read, start: str) -> list[Laid]:
    """The sheets of a wall, from the page alone: a mark belongs to the leading edge that is next to it in
    the direction of the run, and to the overlap rib that is next on the side that lies on its neighbour."""
    below, above = rows(read)
    metric = all(one.text.isdigit() for one in below)
    edges = sorted((station(read, one), length(one.text)) for one in above)
    ribs = sorted((station(read, one), length(one.text)) for one in below)
    zero = next(station(read, one) for one in (*below, *above) if one.text == "0")
    xs = [x for x, _ in edges]
    side = -1 if any("the right sheet is on top" in one.text for one in read.texts) else 1
    found = []
    for one in read.texts:
        said = MARK.match(one.text)
        if not said:
            continue
        x = one.ink.centroid.x
        outward = {"left": 1, "right": -1}.get(start) or (1 if x > zero else -1)
        i = bisect_left(xs, x)
        edge = edges[i] if outward > 0 else edges[i - 1]
        lapped = [rib for rib in ribs if (rib[0] - x) * side > 0]
        rib = min(lapped, key=lambda rib: rib[0] * side)
        found.append(Laid(said[1], bool(said[2]), rib[1], edge[1], metric))
    return found


def listed(read: Read) -> list[str]:
    """The marks of the sheets that had no room on the drawing."""
    text = " ".join(one.text for one in read.texts)
    found = re.search(r"No room on the drawing for: ([^.]*)\.", text)
    return re.findall(r"[WR]\d+", found[1]) if found else []


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
    drawn, absent = Counter(sheet.mark for sheet in built), Counter(listed(read))
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
