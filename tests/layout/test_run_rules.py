"""The run rules of the trade, worked by hand for two buildings of our own.

The rules are common practice, no published source. Figures in the comments are worked by hand in inches
or mm; the tests read them off the solids.
"""

from __future__ import annotations

from itertools import pairwise
from math import floor

import pytest
from ribwright.intake import parse
from ribwright.layout import lay_out
from ribwright.measure.sheet import MeasuredSheet, measure_sheet
from ribwright.pieces import Model, Piece
from ribwright.raising import raise_building

INCH = 25.4
CLEAR = 1 / 8  # heads stop this far short
FLANGE, SHEET = 0.0217, 0.0172  # in: trim and 29 ga sheet, galvanised

BARN = """
width = "30 ft"
length = "40 ft"
eave_height = "10 ft"
pitch = "3/12"
[frame]
back_posts = "none"
"""

SHED = """
units = "mm"
width = "9 m"
length = "15 m"
eave_height = "4 m"
pitch = "10 deg"
[sheets]
profile = "1000 x 250 x 35"
thickness = "0.6 mm"
[runs]
front = "right"
back = "left"
left = "front"
"""


@pytest.fixture(scope="module")
def barn() -> Model:
    return raise_building(parse(BARN, "barn")).model


@pytest.fixture(scope="module")
def shed() -> Model:
    return raise_building(parse(SHED, "shed")).model


def sheets(model: Model, face: str) -> list[Piece]:
    roles = ("wall sheet", "roof sheet")
    return [piece for piece in model.pieces if piece.role in roles and piece.label("face") == face]


def measured(piece: Piece) -> MeasuredSheet:
    return measure_sheet(piece.solid)


def ribs(piece: Piece, axis: int) -> list[float]:
    """Major rib centres along a building axis, lowest first (mm)."""
    sheet = measured(piece)
    at = [piece.place.point(sheet.bench.point((rib.centre, 0.0, 0.0))) for rib in sheet.majors]
    return sorted(point[axis] for point in at)


@pytest.mark.parametrize("face", ["left", "right", "left slope", "right slope"])
def test_a_side_run_starts_with_its_edge_on_the_back_corner(barn: Model, face: str) -> None:
    """40 ft is 480 in: n = ceil((480 - 2) / 36) = 14 sheets; ribs 1, 37, 73 ... from the corner; the
    last sheet's overlap rib is at 1 + 13 * 36 = 469, its edge at 468, so it is ripped to 12 in."""
    run = sheets(barn, face)
    assert len(run) == 14
    firsts = [480 - max(ribs(piece, axis=1)) / INCH for piece in run]
    assert firsts == pytest.approx([1 + 36 * k for k in range(14)], abs=0.01)
    widths = [measured(piece).width / INCH for piece in run]
    assert widths == pytest.approx([38.0] * 13 + [12.0], abs=0.001)


def test_every_lap_is_36_in_rib_to_rib(barn: Model) -> None:
    """The first major rib of a sheet to that of the next, off the solids, to 0.01 in."""
    for face, axis in (("left", 1), ("right", 1), ("front", 0), ("back", 0), ("left slope", 1)):
        firsts = sorted(min(ribs(piece, axis)) for piece in sheets(barn, face) if measured(piece).width > 900)
        for one, other in pairwise(firsts):
            assert (other - one) / INCH == pytest.approx(36.0, abs=0.01)


@pytest.mark.parametrize("face", ["front", "back"])
def test_a_gable_run_from_the_centre_covers_30_ft_unripped(barn: Model, face: str) -> None:
    """Half of 30 ft is 180 in, five covers: ten sheets, lap ribs on the centre line and on both corners,
    the end sheets past the corners by their 1 in leg. Lengths on the steel at the ridge's side of each
    sheet, from a foot 2.1 trim thicknesses up: 120 in - 1/8 + rise."""
    run = sheets(barn, face)
    assert len(run) == 10
    assert sorted({round(rib / INCH, 2) for piece in run for rib in ribs(piece, axis=0)})[
        ::4
    ] == pytest.approx([36.0 * k for k in range(11)], abs=0.01)
    assert all(measured(piece).width / INCH == pytest.approx(38.0, abs=0.001) for piece in run)
    foot = 2.1 * FLANGE
    ridge = 180 / 4
    longest = [120 - CLEAR - foot + ridge] + [
        120 - CLEAR - foot + (180 - 36 * k + 1) / 4 for k in range(1, 5)
    ]
    assert sorted((measured(piece).length / INCH for piece in run), reverse=True) == pytest.approx(
        sorted(longest * 2, reverse=True), abs=0.001
    )


def test_rakes_drop_nine_and_a_half_and_the_centre_sheet_loses_a_nick(barn: Model) -> None:
    """At 3/12 a full 38 in sheet drops 9 1/2 in; one that straddles the ridge by its 1 in leg drops
    9 1/4 on its long side and loses a nick of 1/4 on the other."""
    for piece in sheets(barn, "front"):
        head = measured(piece).head
        if head.kind == "rake":
            assert head.drop / INCH == pytest.approx(9.5, abs=0.001)
        else:
            assert head.kind == "peak"
            assert sorted([head.left / INCH, head.right / INCH]) == pytest.approx([0.25, 9.25], abs=0.001)
    kinds = [measured(piece).head.kind for piece in sheets(barn, "front")]
    assert kinds.count("peak") == 2
    assert kinds.count("rake") == 8


def test_all_sheets_of_a_gable_have_one_hand(barn: Model) -> None:
    """Every overlap rib faces the half laid first, here the left one: x of the wall's u axis is to the
    right from outside, so the bench's x points along it everywhere."""
    for face, right in (("front", 1.0), ("back", -1.0)):
        for piece in sheets(barn, face):
            across = piece.place.vector(measured(piece).bench.x)
            assert across[0] == pytest.approx(right)


def test_side_walls_and_slopes_use_one_square_sheet_turned_end_for_end(barn: Model) -> None:
    for faces in (("left", "right"), ("left slope", "right slope")):
        full = [piece for face in faces for piece in sheets(barn, face) if measured(piece).width > 900]
        assert len({piece.mark for piece in full}) == 1
        ups = {piece.place.vector(measured(piece).bench.y)[2] > 0 for piece in full}
        assert ups == {True, False}


def test_side_heads_stay_under_the_roof_where_it_is_lowest(barn: Model) -> None:
    """The roof falls 1/4 in an inch; the crown of an overlap rib stands flange + 3/4 + 2 sheets out. Sheets
    come in half inches."""
    out = FLANGE + 0.75 + 2 * SHEET
    foot = 2.1 * FLANGE
    for piece in sheets(barn, "left"):
        length = floor(2 * (120 - out / 4 - CLEAR - foot)) / 2
        assert measured(piece).length / INCH == pytest.approx(length, abs=1e-6)


def test_a_metric_shed_runs_from_the_corners_stated(shed: Model) -> None:
    """15 m of side wall: legs of 28 mm, n = ceil((15000 - 56) / 1000) = 15, the last one ripped to
    15000 - 14000 = 1000. 9 m of gable and 2 x 28 mm of overrun: n = ceil((9056 - 56) / 1000) = 9 whole
    ones, the first edge on the overrun's."""
    leg = 28.0
    run = sheets(shed, "left")
    assert len(run) == 15
    assert measured(run[0]).width == pytest.approx(1056)
    assert min(ribs(run[0], axis=1)) == pytest.approx(leg, abs=0.01)  # from the front corner
    assert measured(run[-1]).width == pytest.approx(15000 - 14 * 1000)
    assert max(ribs(sheets(shed, "right")[0], axis=1)) == pytest.approx(15000 - leg, abs=0.01)
    gable = sheets(shed, "front")
    assert len(gable) == 9
    assert max(ribs(gable[0], axis=0)) == pytest.approx(9000, abs=0.01)  # from the right corner
    assert all(measured(piece).width == pytest.approx(1056) for piece in gable)
    back = sheets(shed, "back")
    assert max(ribs(back[0], axis=0)) == pytest.approx(9000, abs=0.01)  # its left is the building's right


def test_measured_is_what_was_laid_out(barn: Model) -> None:
    """Neither module sees the other; their figures agree to 0.01 mm."""
    laid = {part.name: part.recipe for part in lay_out(parse(BARN, "barn")).parts}
    for piece in barn.pieces:
        if piece.role in ("wall sheet", "roof sheet"):
            outline = laid[piece.name].outline
            us, vs = [u for u, _ in outline], [v for _, v in outline]
            sheet = measured(piece)
            assert sheet.width == pytest.approx(max(us) - min(us), abs=0.01)
            assert sheet.length == pytest.approx(max(vs) - min(vs), abs=0.01)


def test_at_a_centre_post_the_underlap_edge_is_flush_with_the_posts() -> None:
    """A 4 in post on the centre line of 30 ft: the first left sheet's edge is 2 in past it, its underlap rib
    1 in; five covers further left is a rib 1 in in from the corner, whose leg ends on it."""
    text = BARN.replace('back_posts = "none"', 'front_posts = "centre"\nback_posts = "none"')
    run = sheets(raise_building(parse(text, "barn")).model, "front")
    assert max(ribs(run[0], axis=0)) / INCH == pytest.approx(180 + 1, abs=0.01)
    assert min(min(ribs(piece, axis=0)) for piece in run) / INCH == pytest.approx(1.0, abs=0.01)
    assert len(run) == 10
    # The last sheet on the right is ripped where its overrun ends, a leg past the corner.
    ends = [piece.place.point(measured(piece).bench.point((measured(piece).width, 0, 0)))[0] for piece in run]
    assert max(ends) / INCH == pytest.approx(360 + 1, abs=0.01)
