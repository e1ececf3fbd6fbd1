"""Sheets measured off their solids, against what was laid out: in any pose, and after STEP."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field
from itertools import pairwise
from math import dist
from pathlib import Path

import numpy as np
import pytest
import shapely
from OCP.BRepPrimAPI import BRepPrimAPI_MakeBox, BRepPrimAPI_MakeSphere
from OCP.TopoDS import TopoDS_Solid
from ribwright.exchange.step import read_step, write_step
from ribwright.measure.blank import End
from ribwright.measure.faces import body
from ribwright.measure.sheet import MeasuredSheet, measure_sheet
from ribwright.measure.sheet_axes import NotASheet
from ribwright.pieces import Model, Piece
from ribwright.place import Place
from ribwright.solids import realise
from ribwright.solids.properties import volume
from shapely.geometry import Polygon, box
from support.bodies import LEFT, LOWER, PROFILE, RIGHT, THICKNESS, UPPER, sheet_over, volume_between
from support.poses import moved

COVER, PITCH, HEIGHT = PROFILE.cover, PROFILE.pitch, PROFILE.height
WIDE = RIGHT - LEFT
Box = tuple[float, float, float, float]


@dataclass(frozen=True)
class Laid:
    """What is laid out in the profile's frame (u, v), and what must be read off the solid.

    cuts: (x, y, width, height, sides opened) from the lower left corner. centres: of major ribs, from
    the left edge.
    """

    outline: Polygon
    head: End
    centres: tuple[float, ...]
    cuts: tuple[tuple[Box, tuple[str, ...]], ...] = ()
    foot: End = field(default_factory=lambda: End("square"))
    overlap: bool = True


WHOLE = (25.4, 25.4 + PITCH, 25.4 + 2 * PITCH, 25.4 + 3 * PITCH, 25.4 + 4 * PITCH)
RAKE = Polygon([(LEFT, 0), (RIGHT, 0), (RIGHT, 3000), (LEFT, 3000 - 241.3)])
BENT = Polygon(
    [(LEFT, 0), (RIGHT, 0), (RIGHT, 3000), (RIGHT - 635, 3000 - 211.6667), (LEFT, 3000 - 459.3167)]
)
HOLLOW = Polygon([(LEFT, 0), (RIGHT, 0), (RIGHT, 2000), (LEFT + 400, 2200), (LEFT, 2500)])
NICKED = Polygon([(LEFT, 0), (RIGHT, 0), (RIGHT, 3000 - 6.35), (COVER, 3000), (LEFT, 3000 - 234.95)])

LAID = {
    "square": Laid(box(LEFT, 0, RIGHT, 3000), End("square"), WHOLE),
    # 3/12 over 38 in is 9 1/2 in; a peak 1 in from the edge leaves 9 1/4 and 1/4 (arithmetic)
    "rake": Laid(RAKE, End("rake", 241.3, 0.0), WHOLE),
    "peak": Laid(NICKED, End("peak", 234.95, 6.35, WIDE - 25.4), WHOLE),
    # 25 in at 4/12, then 13 in at 9/12 (arithmetic)
    "bent": Laid(BENT, End("bent", 459.3167, 0.0, WIDE - 635, 211.6667), WHOLE),
    "hollow": Laid(HOLLOW, End("bent", 0.0, 500.0, 400, 300), WHOLE),
    "hollow over a door": Laid(
        HOLLOW.difference(box(300, -1, 700, 1500)),
        End("bent", 0.0, 500.0, 400, 300),
        WHOLE,
        (((325.4, 0, 400, 1500), ("foot",)),),
    ),
    "raked at the foot": Laid(
        Polygon([(LEFT, 0), (RIGHT, 120), (RIGHT, 2000), (LEFT, 2000)]),
        End("square"),
        WHOLE,
        foot=End("rake", 0.0, 120.0),
    ),
    "hole": Laid(
        RAKE.difference(box(200, 900, 700, 1800)),
        End("rake", 241.3, 0.0),
        WHOLE,
        (((225.4, 900, 500, 900), ()),),
    ),
    "corner notch and hole": Laid(
        RAKE.difference(box(500, -1, 2000, 1500)).difference(box(100, 1900, 400.123, 2300.7)),
        End("rake", 241.3, 0.0),
        WHOLE,
        (((525.4, 0, WIDE - 525.4, 1500), ("foot", "right")), ((125.4, 1900, 300.123, 400.7), ())),
    ),
    "edge notches": Laid(
        box(LEFT, 0, RIGHT, 2500)
        .difference(box(-99, 500, 60, 900))
        .difference(box(300.123456, -1, 600, 33.333333))
        .difference(box(310, 2400, 500, 9999)),
        End("square"),
        WHOLE,
        (
            ((325.523456, 0, 299.876544, 33.333333), ("foot",)),
            ((0, 500, 85.4, 400), ("left",)),
            ((335.4, 2400, 190, 100), ("head",)),
        ),
    ),
    # the last rip: right of the fourth rib a flank is left, no crown, so three ribs have a centre
    "ripped on a flank": Laid(box(LEFT, 0, 3 * PITCH - 20, 1500), End("square"), WHOLE[:3]),
    # without an overlap rib to tell, the edge that lies lower is drawn on the left: here the one in a pan
    "a leg and one rib": Laid(box(LEFT, 0, 45, 1500), End("square"), (45.0,), overlap=False),
    "ripped left": Laid(
        box(PITCH - 60, 0, RIGHT, 1500),
        End("square"),
        (60.0, 60.0 + PITCH, 60.0 + 2 * PITCH, 60.0 + 3 * PITCH),
        overlap=False,
    ),
}


def through_step(solid: TopoDS_Solid, folder: Path) -> TopoDS_Solid:
    file = folder / "sheet.step"
    write_step(Model("one", "mm", (Piece("one", "wall sheet", (), solid, Place()),)), file)
    (piece,) = read_step(file).pieces
    return piece.solid


Posed = Callable[[TopoDS_Solid, Path], TopoDS_Solid]
POSES: dict[str, Posed] = {
    "as made": lambda solid, _: solid,
    "moved": lambda solid, _: moved(solid),
    "moved, through STEP": lambda solid, folder: through_step(moved(solid), folder),
}


def same(one: Polygon, other: Polygon) -> bool:
    """Whether two outlines agree to 0.01 mm, as rims and as areas."""
    apart = shapely.hausdorff_distance(one.boundary, other.boundary)
    return apart < 0.01 and one.symmetric_difference(other, grid_size=1e-5).area < 0.01 * one.length


def on_bench(laid: Laid, sheet: MeasuredSheet) -> Polygon:
    """The laid outline, its lower left corner at (0, 0); turned end for end where only that fits."""
    left, low = laid.outline.bounds[:2]
    straight = shapely.transform(laid.outline, lambda points: points - (left, low))
    size = np.array(straight.bounds[2:])
    turned = shapely.transform(straight, lambda points: size - points)
    return straight if laid.overlap or same(straight, sheet.outline) else turned


@pytest.mark.parametrize("pose", POSES)
@pytest.mark.parametrize("name", LAID)
def test_measured_is_laid_out(name: str, pose: str, tmp_path: Path) -> None:
    laid = LAID[name]
    recipe = sheet_over(laid.outline)
    solid = POSES[pose](realise(recipe), tmp_path)
    sheet = measure_sheet(solid)
    outline = on_bench(laid, sheet)

    assert same(sheet.outline, outline)
    assert sheet.thickness == pytest.approx(THICKNESS, abs=1e-6)
    assert [rib.centre for rib in sheet.majors] == pytest.approx(laid.centres, abs=0.01)
    assert [rib.overlap for rib in sheet.majors] == [laid.overlap, *[False] * (len(laid.centres) - 1)]
    for end, expected in ((sheet.foot, laid.foot), (sheet.head, laid.head)):
        assert end.kind == expected.kind
        assert (end.left, end.right, end.at, end.bend) == pytest.approx(
            (expected.left, expected.right, expected.at, expected.bend), abs=0.01
        )
    assert [(cut.x, cut.y, cut.width, cut.height) for cut in sheet.cutouts] == [
        pytest.approx(cut, abs=1e-5) for cut, _ in laid.cuts
    ]
    assert [cut.sides for cut in sheet.cutouts] == [sides for _, sides in laid.cuts]
    assert sheet.cover == pytest.approx(laid.centres[-1] - laid.centres[0], abs=0.01)
    assert sheet.plan_area == pytest.approx(laid.outline.area, rel=1e-9)
    # 40 m from its origin a file's last digit is 1e-9 mm, and a sheet is half a millimetre thick
    assert sheet.volume == pytest.approx(volume_between(recipe), rel=1e-7)
    assert sheet.weight == pytest.approx(volume_between(recipe) * 7850e-9, rel=1e-7)


@pytest.mark.parametrize("name", LAID)
def test_the_bench_stands_where_the_solid_is(name: str) -> None:
    """Every corner of the measured outline, at the height of the top, is a corner of the moved solid."""
    solid = moved(realise(sheet_over(LAID[name].outline)), seed=len(name))
    sheet = measure_sheet(solid)
    us, ws = np.array(sheet.ways[0].upper).T
    for u, v in shapely.get_coordinates(sheet.outline):
        corner = sheet.bench.point((u, v, float(np.interp(u, us, ws))))
        assert np.linalg.norm(body(solid).corners - corner, axis=1).min() < 1e-6


@pytest.mark.parametrize("name", LAID)
def test_realised_sheets_lie_face_up_as_made(name: str) -> None:
    """Ribs stand up in the frame that sheets are realised in, so off the face is +z there."""
    bench = measure_sheet(realise(sheet_over(LAID[name].outline))).bench
    assert bench.z == pytest.approx((0, 0, 1), abs=1e-9)


@pytest.mark.parametrize(
    ("left", "right"),
    [(40.0, 75.0), (10.0, 30.0), (12.0, 20.0), (LEFT, -8.091), (LEFT, 0.0), (3.0, 60.0)],
    ids=["pan", "flank", "part of a flank", "flank, sliver of crown", "leg, half a crown", "half a rib"],
)
def test_a_rip_without_a_whole_rib_measures(left: float, right: float) -> None:
    """Nothing tells its ends apart, so its figures are all there is to say; the outline is a rectangle."""
    recipe = sheet_over(box(left, 0, right, 900))
    sheet = measure_sheet(moved(realise(recipe)))
    assert same(sheet.outline, box(0, 0, right - left, 900))
    assert sheet.thickness == pytest.approx(THICKNESS, abs=1e-6)
    assert (sheet.majors, sheet.cover) == ((), 0.0)
    assert (sheet.foot, sheet.head, sheet.cutouts) == (End("square"), End("square"), ())
    assert sheet.volume == pytest.approx(volume_between(recipe), rel=1e-7)


def test_a_rake_runs_on_where_its_high_corner_is_notched_away() -> None:
    """3/12 over 38 in is 9 1/2 in, whatever is cut out of the corner; the length is what is left."""
    sheet = measure_sheet(moved(realise(sheet_over(RAKE.difference(box(800, 2500, 9999, 9999))))))
    assert (sheet.head.kind, sheet.head.high) == ("rake", "right")
    assert sheet.head.drop == pytest.approx(241.3, abs=0.01)
    assert sheet.length == pytest.approx(2758.7 + (800 - LEFT) / 4, abs=0.01)
    (notch,) = sheet.cutouts
    assert (notch.x, notch.y) == pytest.approx((825.4, 2500), abs=0.01)
    assert notch.sides == ("head", "right")


def test_ribs_are_the_catalogue_s() -> None:
    """Underside figures as the catalogue has them; the overlap rib stands one thickness higher."""
    sheet = measure_sheet(moved(realise(sheet_over(box(LEFT, 0, RIGHT, 2000)))))
    first, *others = sheet.majors
    assert first.height == pytest.approx(HEIGHT + THICKNESS, abs=1e-6)
    assert [rib.height for rib in others] == pytest.approx([HEIGHT] * 4, abs=1e-6)
    assert [rib.crown for rib in others] == pytest.approx([PROFILE.crown] * 4, abs=1e-5)
    minors = [rib for rib in sheet.ribs if rib not in sheet.majors]
    assert len(minors) == 4 * PROFILE.minors
    assert {round(rib.height, 6) for rib in minors} == {round(PROFILE.minor_height, 6)}


def test_formed_area_is_the_developed_width_times_the_length() -> None:
    sheet = measure_sheet(realise(sheet_over(box(LEFT, 0, RIGHT, 2000))))
    developed = [sum(dist(a, b) for a, b in pairwise(line)) for line in (LOWER, UPPER)]
    assert sheet.formed_area == pytest.approx(2000 * sum(developed) / 2, rel=1e-9)


def test_volume_is_the_kernel_s() -> None:
    solid = moved(realise(sheet_over(LAID["corner notch and hole"].outline)))
    assert measure_sheet(solid).volume == pytest.approx(volume(solid), rel=1e-9)


@pytest.mark.parametrize(
    "solid",
    [BRepPrimAPI_MakeBox(50.0, 50.0, 50.0).Solid(), BRepPrimAPI_MakeSphere(30.0).Solid()],
    ids=["cube", "ball"],
)
def test_what_is_no_sheet_is_said_to_be_none(solid: TopoDS_Solid) -> None:
    with pytest.raises(NotASheet, match="is called a sheet is none"):
        measure_sheet(solid)


def test_curved_faces_are_counted_and_their_volume_kept() -> None:
    ball = body(BRepPrimAPI_MakeSphere(30.0).Solid())
    assert (ball.curved, ball.faces) == (1, ())
    assert ball.volume == pytest.approx(4 / 3 * np.pi * 30.0**3, rel=1e-9)
