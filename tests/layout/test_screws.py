"""Screws: patterns and distances, by hand. Common practice, no source, unless a check names one."""

from __future__ import annotations

import manifold3d
import numpy as np
import pytest
from ribwright.findings import Code
from ribwright.intake import parse
from ribwright.layout import lay_out
from ribwright.measure.member import measure_member
from ribwright.measure.screw import shank
from ribwright.measure.sheet import measure_sheet
from ribwright.pieces import Model, Piece
from ribwright.place import Point3
from shapely.geometry import Point
from support.clashes import manifold
from support.plain_garage import GARAGE, garage, of

INCH = 25.4


@pytest.fixture(scope="module")
def model() -> Model:
    return garage()


def test_the_screws_of_a_plain_wall_sheet_by_hand(model: Model) -> None:
    """A full sheet of the right wall: 36 x 9 x 3/4, four pans between five ribs of which one is the
    neighbour's. Foot and head: a pair at each rib, two screws a pan: 8. Two girts (41 in and 80 in up):
    one a pan, on the ribs' one side: 4 each. 8 + 4 + 4 + 8 = 24."""
    (row,) = {piece.row for piece in of(model, "sheet screw", "right 2 ")}
    assert len(row) == 24
    at = {v: sorted(u / INCH for u, w, _ in row if w == v) for v in {w for _, w, _ in row}}
    ends = [9 * k + side for k in range(4) for side in (1.25 + 0.5, 9 - 1.25 - 0.5)]
    singles = [9 * k + 1.25 + 0.5 for k in range(4)]
    counts = [len(us) for _, us in sorted(at.items())]
    assert counts == [8, 4, 4, 8]
    for us in at.values():
        assert us == pytest.approx(sorted(ends if len(us) == 8 else singles), abs=1e-4)


def test_lap_ribs_count_once_and_the_runs_ends_lose_their_outer_one(model: Model) -> None:
    """Along the right wall's foot: 14 sheets' pans. Ribs at 1 + 9 k; the last is at 478, its outer flat
    past the wall. A pair at each of the 54 ribs, without the outer ones of the first and the last: 106."""
    at_foot = [
        piece.place.point(point)
        for piece in of(model, "sheet screw")
        if piece.label("face") == "right"
        for point in piece.row
        if abs(piece.place.point(point)[2] - INCH) < 1e-6
    ]
    assert len(at_foot) == 2 * 54 - 2
    assert len({round(y, 3) for _, y, _ in at_foot}) == len(at_foot)


def test_screws_keep_their_distances(model: Model) -> None:
    """At least 3 diameters apart, 1.5 from an edge (AISI S100); #12 is 0.216 in (Yu & LaBoube, Table 8.6)."""
    diameter, length = shank(measure_member(of(model, "sheet screw")[0].solid))
    assert diameter / INCH == pytest.approx(0.216, abs=0.001)
    assert length / INCH == pytest.approx(1.25, abs=0.001)
    for piece in of(model, "sheet screw"):
        points = np.array(piece.row)[:, :2]
        apart = np.hypot(*(points[:, None] - points[None, :]).transpose(2, 0, 1))
        assert apart[apart > 0].min() >= 3 * diameter
    sheets = {piece.name: measure_sheet(piece.solid) for piece in model.pieces if "sheet" in piece.role}
    places = {piece.name: piece.place for piece in model.pieces}
    for piece in of(model, "sheet screw"):
        sheet = sheets[piece.name.removesuffix(" screws")]
        place = places[piece.name.removesuffix(" screws")] @ sheet.bench
        for point in piece.row:
            x, y, z = (a - b for a, b in zip(piece.place.point(point), place.origin, strict=True))
            u = x * place.x[0] + y * place.x[1] + z * place.x[2]
            v = x * place.y[0] + y * place.y[1] + z * place.y[2]
            rim = sheet.outline.boundary
            assert rim.distance(Point(u, v)) >= 1.5 * diameter
            assert sheet.outline.contains(Point(u, v))


def test_every_sheet_screw_passes_through_its_sheet_into_steel(model: Model) -> None:
    """A wire down the screw's axis from 0.1 mm over the seat to the tip meets the sheet, then a member."""
    steel = [manifold(piece) for piece in model.pieces if piece.group[0] in ("frame", "framing", "openings")]
    boxes = np.array([body.bounding_box() for body in steel])
    sheets = {
        piece.name: manifold(piece) for piece in model.pieces if "sheet" in piece.role and not piece.row
    }
    screws = {piece.name: piece for piece in of(model, "sheet screw")}
    # One sheet of each face and every sheet beside an opening: each row is one of few that all share.
    for name in ("left 3", "left 4", "left 5b", "right 2", "front 1", "front 4", "back 1", "left slope 2"):
        piece = screws[f"{name} screws"]
        for point in piece.row:
            wire = _wire(piece, point)
            assert (wire ^ sheets[name]).volume() > 0
            box = np.array(wire.bounding_box())
            near = np.all((box[:3] < boxes[:, 3:]) & (box[3:] > boxes[:, :3]), axis=1)
            assert any((wire ^ steel[i]).volume() > 0 for i in np.flatnonzero(near)), (name, point)


def _wire(piece: Piece, point: Point3) -> manifold3d.Manifold:
    x, y, z, o = piece.place.x, piece.place.y, piece.place.z, piece.place.point(point)
    thin = manifold3d.Manifold.cylinder(1.25 * INCH + 0.1, 0.2, 0.2, 6).translate((0, 0, -1.25 * INCH))
    return thin.transform(np.array([[x[i], y[i], z[i], o[i]] for i in range(3)]))


def test_a_rule_that_would_miss_steel_is_said_not_dropped() -> None:
    """A strut too shallow for the head's screws, 2 1/2 in under the eave: findings name the sheets."""
    laid = lay_out(parse(GARAGE + '[framing]\neave_strut = "cee 2x2x0.059"\n', "garage"))
    missed = [finding for finding in laid.findings if finding.code is Code.SCREW_LEFT_OUT]
    assert {finding.pieces[0].split()[0] for finding in missed} == {"left", "right"}
    assert all(finding.fault for finding in missed)


def test_the_pattern_can_be_set() -> None:
    """Pairs everywhere: the plain right-wall sheet's two girts get 8 instead of 4 each: 32. Lap screws 2 ft
    apart on 187 in of roof: seven a lap, thirteen laps a slope."""
    text = GARAGE + '[screws]\nbetween = "pair"\nlength = "1-1/2 in"\nstitch = "24 in"\n'
    parts = lay_out(parse(text, "garage")).parts
    (row,) = {part.row for part in parts if part.name == "right 2 screws"}
    assert len(row) == 32
    laps = [part for part in parts if part.role == "lap screw"]
    assert len(laps) == 2 * 13
    assert {len(part.row) for part in laps} == {7}
