"""Random rips, rakes, peaks, holes and notches: measured = laid out, whichever way the sheet is drawn."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st
from ribwright.measure.blank import End
from ribwright.measure.sheet import MeasuredSheet, measure_sheet
from ribwright.place import Place
from ribwright.solids import realise
from shapely.geometry import Polygon, box
from shapely.geometry.base import BaseGeometry
from support.bodies import LEFT, LOWER, PROFILE, RIGHT, THICKNESS, UPPER, sheet_over, volume_between
from support.poses import posed

CENTRES = [k * PROFILE.pitch for k in range(round(PROFILE.cover / PROFILE.pitch) + 1)]
BENDS = sorted({u for u, _ in (*LOWER, *UPPER)})
COLUMNS, ROWS = 3, 3


@dataclass(frozen=True)
class Cut:
    """A sheet laid out in the profile's frame: its blank, and the rectangles cut out, some past its edges."""

    full: Polygon
    boxes: tuple[Polygon, ...]
    foot: End
    head: End

    @property
    def blank(self) -> Polygon:
        """What a sheet of the piece's overall size has of it: a corner that is notched away is no loss."""
        return self.full.intersection(box(*self.outline.bounds))

    @property
    def outline(self) -> Polygon:
        return self.full.difference(shapely.union_all(self.boxes)) if self.boxes else self.full

    @property
    def missing(self) -> list[Polygon]:
        return [self.blank.intersection(cut) for cut in self.boxes]


@st.composite
def edges(draw: st.DrawFn) -> tuple[float, float]:
    """Left and right edge of a rip: whole, anywhere, or just at a bend of the section."""
    anywhere = st.floats(LEFT, RIGHT).map(lambda u: round(u, 3))
    places = anywhere | st.sampled_from(BENDS)
    left = draw(st.just(LEFT) | places)
    right = draw(st.just(RIGHT) | places)
    if right - left < 3:
        left, right = max(LEFT, left - 40), min(RIGHT, right + 40)
    return (left, right) if right - left >= 3 else (LEFT, RIGHT)


@st.composite
def ends(draw: st.DrawFn, left: float, right: float) -> tuple[list[tuple[float, float]], End]:
    """The line of an end, how far it falls back at points from left to right; and what to read of it."""
    drop = draw(st.floats(0.1, 0.3)) * (right - left)
    match draw(st.sampled_from(["square", "high left", "high right", "peak", "bent", "hollow"])):
        case "high left":
            return [(left, 0.0), (right, drop)], End("rake", 0.0, drop)
        case "high right":
            return [(left, drop), (right, 0.0)], End("rake", drop, 0.0)
        case "peak":
            at = left + draw(st.floats(0.3, 0.7)) * (right - left)
            other = draw(st.floats(0.5, 1.5)) * drop
            return [(left, drop), (at, 0.0), (right, other)], End("peak", drop, other, at - left)
        case "bent":
            at = left + draw(st.floats(0.3, 0.7)) * (right - left)
            bend = draw(st.floats(0.2, 0.8)) * drop * (at - left) / (right - left)
            return [(left, 0.0), (at, bend), (right, drop)], End("bent", 0.0, drop, at - left, bend)
        case "hollow":
            at = left + draw(st.floats(0.3, 0.7)) * (right - left)
            even = (at - left) / (right - left)
            bend = (even + draw(st.floats(0.2, 0.8)) * (1 - even)) * drop
            return [(left, 0.0), (at, bend), (right, drop)], End("bent", 0.0, drop, at - left, bend)
    return [(left, 0.0), (right, 0.0)], End("square")


def hollow(line: list[tuple[float, float]]) -> bool:
    """Whether an end falls steeply first: that is told where nothing else is cut out of it."""
    (u0, v0), (u1, v1), (u2, v2) = (line[0], line[1], line[-1])
    return v1 > max(v0 + (v2 - v0) * (u1 - u0) / (u2 - u0), min(v0, v2)) + 1e-9


@st.composite
def cuts(draw: st.DrawFn) -> Cut:
    """A blank and up to nine cutouts, each in a cell of its own, so that every edge keeps a part."""
    left, right = draw(edges())
    length = draw(st.floats(300.0, 6000.0))
    (foot, foot_end), (head, head_end) = draw(ends(left, right)), draw(ends(left, right))
    low, high = max(v for _, v in foot), length + 600 - max(v for _, v in head)
    ring = [*foot, *((u, length + 600 - v) for u, v in reversed(head))]
    full = Polygon([(round(u, 6), round(v, 6)) for u, v in ring])
    wide, tall = (right - left) / COLUMNS, (high - low) / ROWS
    boxes = []
    for column in range(COLUMNS) if wide > 20 else ():
        for row in range(ROWS):
            if not draw(st.booleans()):
                continue
            x, y = left + column * wide, low + row * tall
            inner = [x + draw(st.floats(0.15, 0.4)) * wide, y + draw(st.floats(0.15, 0.4)) * tall]
            outer = [x + draw(st.floats(0.55, 0.85)) * wide, y + draw(st.floats(0.55, 0.85)) * tall]
            if column == 0 and draw(st.booleans()):
                inner[0], outer[0] = left - 9999, inner[0]
            elif column == COLUMNS - 1 and draw(st.booleans()):
                inner[0], outer[0] = outer[0], right + 9999
            if row == 0 and not hollow(foot) and draw(st.booleans()):
                inner[1] = -9999
            elif row == ROWS - 1 and not hollow(head) and draw(st.booleans()):
                outer[1] = 99999
            boxes.append(box(*(round(c, 3) for c in (*inner, *outer))))
    return Cut(full, tuple(boxes), foot_end, head_end)


def from_bench(sheet: MeasuredSheet, frame: Place, shape: BaseGeometry) -> BaseGeometry:
    """What lies on the bench, in the frame it was laid out in: bench -> solid -> laid out."""
    axes = np.array([frame.x, frame.y, frame.z])

    def back(points: np.ndarray) -> np.ndarray:
        solid = np.array([sheet.bench.point((u, v, 0.0)) for u, v in points])
        return ((solid - frame.origin) @ axes.T)[:, :2]

    return shapely.transform(shape, back)


def same(one: BaseGeometry, other: BaseGeometry) -> bool:
    apart = shapely.hausdorff_distance(one.boundary, other.boundary)
    return bool(
        apart < 0.01 and one.symmetric_difference(other, grid_size=1e-5).area < 0.01 * one.length + 1e-3
    )


@settings(max_examples=60, deadline=None)
@given(cut=cuts(), seed=st.integers(0, 10**6))
def test_measured_is_laid_out(cut: Cut, seed: int) -> None:
    recipe = sheet_over(cut.outline)
    solid, frame = posed(realise(recipe), seed)
    sheet = measure_sheet(solid)

    assert same(from_bench(sheet, frame, sheet.outline), cut.outline)
    assert same(from_bench(sheet, frame, Polygon(sheet.blank.ring)), cut.blank)
    found = [from_bench(sheet, frame, Polygon(one.corners)) for one in sheet.cutouts]
    assert len(found) == len(cut.missing)
    assert all(any(same(one, missing) for one in found) for missing in cut.missing)
    assert abs(sheet.thickness - THICKNESS) < 1e-6
    assert abs(sheet.volume / volume_between(recipe) - 1) < 1e-6
    assert abs(sheet.plan_area - cut.outline.area) < 1e-2

    left, _, right, _ = cut.outline.bounds
    whole = [u for u in CENTRES if left < u - PROFILE.crown and right > u + PROFILE.crown]
    if CENTRES[0] in whole and len(whole) > 1:
        # the overlap rib and another to tell it by: only one way to lie, and that is the laid-out one
        assert len(sheet.ways) == 1
        for measured, laid in ((sheet.bench.x, frame.x), (sheet.bench.y, frame.y)):
            assert np.allclose(measured, laid, atol=1e-7)
        for measured_end, laid_end in ((sheet.foot, cut.foot), (sheet.head, cut.head)):
            assert measured_end.kind == laid_end.kind
            figures = [(end.left, end.right, end.at, end.bend) for end in (measured_end, laid_end)]
            assert np.allclose(*figures, atol=0.01)
