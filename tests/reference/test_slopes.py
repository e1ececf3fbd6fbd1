"""Rafters and roof sheets against the framing square and published worked examples, read off solids."""

from __future__ import annotations

from math import hypot

import pytest
from ribwright.intake import parse
from ribwright.measure.member import measure_member
from ribwright.measure.sheet import measure_sheet
from ribwright.pieces import Model, Piece
from ribwright.raising import raise_building

INCH = 25.4

# The rafter row of the framing square: inches of rafter per foot of run, 1/12 to 12/12.
SQUARE = [12.04, 12.17, 12.37, 12.65, 13.00, 13.42, 13.89, 14.42, 15.00, 15.62, 16.28, 16.97]


def raised(width: str, pitch: str) -> Model:
    text = f'width = "{width}"\nlength = "12 ft"\neave_height = "14 ft"\npitch = "{pitch}"\n'
    return raise_building(
        parse(text + '[sheets]\nstep = "0 in"\n[frame]\nback_posts = "none"\nknee = "none"\n', "slope")
    ).model


def first(model: Model, role: str) -> Piece:
    return next(piece for piece in model.pieces if piece.role == role)


@pytest.mark.parametrize(("rise", "per_foot"), list(enumerate(SQUARE, 1)))
def test_a_roof_sheet_is_the_squares_rafter_and_overhang_less_the_gap(rise: int, per_foot: float) -> None:
    """24 ft wide: 12 ft of run. Overhang 2 in in plan, so 2 in of run; ridge gap 1 in along the slope. Sheets
    of any length.

    The square gives two decimals of an inch per foot: 12 ft of run are good to 12 * 0.005 in.
    """
    sheet = measure_sheet(first(raised("24 ft", f"{rise}/12"), "roof sheet").solid)
    expected = per_foot * (12 + 2 / 12) - 1
    assert sheet.length / INCH == pytest.approx(expected, abs=12.2 * 0.005 + 1e-3)


@pytest.mark.parametrize(
    ("pitch", "run", "published", "rounded", "source"),
    [
        ("7/12", 96.0, 9 * 12 + 3 + 1 / 8, 1 / 8, "NAVEDTRA 14044, fig. 2-17"),
        ("13/12", 124.0, 15 * 12 + 3.0, 1 / 4, "Army EN5156"),
        ("6/12", 150.0, 167.75, 1 / 8, "Griffith, Carpentry"),
    ],
)
def test_worked_rafters(pitch: str, run: float, published: float, rounded: float, source: str) -> None:
    """The published length for the published run, off the top face of a rafter solid.

    A rafter solid starts where its own column stands and ends at the ridge; its length over its run,
    both measured, times the published run is the published length, to what the books round to.
    """
    model = raised("30 ft", pitch)
    piece = first(model, "rafter")
    way = measure_member(piece.solid).ways[0]
    points = [piece.place.point(way.bench.point(tuple(p))) for p in way.points.tolist()]
    top_low = min(points, key=lambda p: p[0])
    ridge = [p for p in points if p[0] > max(q[0] for q in points) - 0.01]
    top_high = max(ridge, key=lambda p: p[2])
    length = hypot(top_high[0] - top_low[0], top_high[2] - top_low[2])
    assert source
    assert length / (top_high[0] - top_low[0]) * run == pytest.approx(published, abs=rounded)
