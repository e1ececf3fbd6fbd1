"""Every screw of a building looked at along its axis and around its washer, by plain rays through the solids.

Distances of 1.5 and 3 diameters are AISI S100's; the others are common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache

import numpy as np
import pytest
from ribwright.intake import parse, starters
from ribwright.pieces import Model, Piece
from ribwright.raising import raise_building
from ribwright.roles import list_of
from ribwright.solids.properties import triangles
from support.rays import Solids
from support.starter_buildings import KEPT, starter_model

INCH = 25.4
WASHER = 0.295 * INCH  # radius
PLAIN = """
width = "24 ft"
length = "30 ft"
eave_height = "10 ft"
pitch = "4/12"
[framing]
girt = "{0}"
purlin = "{0}"
"""
ZEE, HAT = "zee 4x2x0.059", "hat 1.5x1.25x0.0346"
CASES = [*starters(), ZEE, HAT]


@lru_cache(maxsize=KEPT)
def model(case: str) -> Model:
    return (
        starter_model(case) if case in starters() else raise_building(parse(PLAIN.format(case), "shed")).model
    )


@lru_cache(maxsize=KEPT)
def solids(case: str) -> Solids:
    return Solids(model(case).pieces)


def screws(case: str, role: str = "") -> Iterator[tuple[Piece, int, np.ndarray, np.ndarray, float]]:
    """Each screw: its row, its number, its seat, its way from head to point, its length under the head."""
    for row in model(case).pieces:
        if row.row and row.role in ("sheet screw", "trim screw") and role in ("", row.role):
            way = -np.array(row.place.z)
            length = -float(triangles(row.solid)[0][:, 2].min())
            for number, point in enumerate(row.row, 1):
                yield row, number, np.array(row.place.point(point)), way, length


@pytest.mark.parametrize("case", CASES)
def test_every_screw_goes_square_through_a_wall_of_steel(case: str) -> None:
    """At least 5 mm past the face of the first member, which gives it no more than 8 mm of metal: a screw
    down a zee's web would have 75."""
    for row, number, seat, way, length in screws(case):
        spans = solids(case).along(tuple(seat - 0.5 * way), tuple(way), length + 0.5)
        steel = [span for span in spans if list_of(span.piece.role) == "members"]
        assert steel, (row.name, number, [span.piece.name for span in spans])
        assert length + 0.5 - steel[0].enter >= 5.0, (row.name, number)
        assert steel[0].leave - steel[0].enter <= 8.0, (row.name, number, steel[0].piece.name)


@pytest.mark.parametrize("case", CASES)
def test_washers_of_sheet_screws_lie_flat_and_clear_of_lips(case: str) -> None:
    """Eight rays around the rim meet the sheet within 0.8 mm of the seat; eight more, 1/8 in further out,
    meet no J's lip in front of the head."""
    for row, number, seat, way, _ in screws(case, "sheet screw"):
        across = np.array([row.place.x, row.place.y])
        for turn in np.arange(8) * np.pi / 4 + 0.1:
            out = np.array([np.cos(turn), np.sin(turn)]) @ across
            rim = solids(case).along(tuple(seat + WASHER * out - 10 * way), tuple(way), 30.0)
            sheet = [span.enter - 10 for span in rim if list_of(span.piece.role) == "sheets"]
            assert sheet and abs(sheet[0]) <= 0.8, (row.name, number)
            before = seat + (WASHER + INCH / 8) * out
            lips = solids(case).along(tuple(before), tuple(-way), 60.0)
            assert not any(span.piece.role == "j trim" for span in lips), (row.name, number)


@pytest.mark.parametrize("case", CASES)
def test_screws_stand_three_diameters_apart(case: str) -> None:
    """All that are driven the same way, sheets' and trims' together: 3 x 0.216 in for a #12."""
    found: dict[tuple[float, ...], list[np.ndarray]] = {}
    for _, _, seat, way, _ in screws(case):
        found.setdefault(tuple(np.round(way, 3).tolist()), []).append(seat)
    for seats in map(np.array, found.values()):
        order = seats[np.argsort(seats[:, 2], kind="stable")]
        for step in range(1, min(60, len(order))):
            apart = np.linalg.norm(order[step:] - order[:-step], axis=1)
            assert apart.min() >= 3 * 0.216 * INCH - 1e-3


@pytest.mark.parametrize("case", starters())
def test_sheets_are_screwed_along_every_jamb(case: str) -> None:
    """In the flange of each jamb, from the bottom of its opening to the top, no more than 24 in between; all
    up the jamb where a wall ends at an open one."""
    held: dict[str, list[float]] = {}
    for _, _, seat, way, length in screws(case, "sheet screw"):
        for span in solids(case).along(tuple(seat - 0.5 * way), tuple(way), length + 0.5):
            if span.piece.role == "jamb":
                held.setdefault(span.piece.name, []).append(float(seat[2]))
    for jamb in (piece for piece in model(case).pieces if piece.role == "jamb"):
        frame = {piece.role: piece for piece in model(case).pieces if piece.group == jamb.group}
        top = heights(frame["header"])[0] if "header" in frame else heights(jamb)[1]
        low = heights(frame["sill"])[1] if "sill" in frame else heights(jamb)[0]
        inside = [low, *sorted(z for z in held.get(jamb.name, []) if low < z < top), top]
        assert max(np.diff(inside)) <= 24 * INCH, jamb.name


def heights(piece: Piece) -> tuple[float, float]:
    points = triangles(piece.solid)[0] @ np.array([piece.place.x, piece.place.y, piece.place.z])
    z = points[:, 2] + piece.place.origin[2]
    return float(z.min()), float(z.max())


def test_the_runs_end_is_held_at_every_girt() -> None:
    """The right wall of the workshop, 480 in from the back: the last rib stands at 478,
    its outer flat past it. At each girt its screw is on the other side, 1 1/4 + 1/2 in in:
    3 3/4 in from the end."""
    end = [
        seat
        for row, _, seat, _, _ in screws("workshop", "sheet screw")
        if row.label("face") == "right" and seat[1] / INCH < 5
    ]
    girts = [heights(piece) for piece in model("workshop").pieces if piece.name.startswith("right girt")]
    for low, high in girts:
        (seat,) = [seat for seat in end if low < seat[2] < high]
        assert seat[1] / INCH == pytest.approx(3.75, abs=1e-3)


def test_corner_trims_are_screwed_to_columns_that_girts_are_flush_with() -> None:
    """Both legs of all four, up their whole height, 24 in apart at most but for what a screw is moved: no
    line of steel reaches them."""
    text = PLAIN.format(ZEE) + 'girts = "flush"\n'
    pieces = raise_building(parse(text, "flush")).model.pieces
    rows = [piece for piece in pieces if piece.role == "trim screw" and "corner trim" in piece.name]
    assert len(rows) == 8
    for row in rows:
        heights = sorted(row.place.point(point)[2] for point in row.row)
        assert heights[0] < 6 * INCH and heights[-1] > 9 * 12 * INCH
        assert float(np.diff(heights).max()) < 26 * INCH
