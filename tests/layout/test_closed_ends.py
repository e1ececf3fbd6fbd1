"""Ends of trims that are folded over, looked at along straight lines through the finished solids, and what is
cut from the stick for them."""

from __future__ import annotations

import numpy as np
import pytest
from ribwright.measure.bends import measure_bends
from ribwright.measure.member import measure_member
from ribwright.order.lists.schedule import schedule
from ribwright.pieces import Model, Piece
from support.clashes import manifold
from support.rays import Solids
from support.starter_buildings import starter_model

OUT = 500.0
STICK = 10 * 304.8


def pieces(model: Model, role: str) -> list[Piece]:
    return [piece for piece in model.pieces if piece.role == role]


def box(piece: Piece) -> np.ndarray:
    """Lowest and highest corner, (2, 3)."""
    return np.array(manifold(piece).bounding_box()).reshape(2, 3)


@pytest.mark.parametrize(("name", "feet"), [("workshop", 4), ("offset-ridge", 4), ("single-slope", 2)])
def test_the_foot_of_a_rake_is_no_hole(name: str, feet: int) -> None:
    """Level from before the eave, 4 mm off the roof's edge, so between it and the rake's drop, there is the
    rake's trim at once."""
    model = starter_model(name)
    roof = np.array([box(piece) for piece in pieces(model, "roof sheet")])
    low, high = roof[:, 0].min(axis=0), roof[:, 1].max(axis=0)
    seen = 0
    for trim in pieces(model, "rake trim"):
        (x0, y0, z0), (x1, _, _) = box(trim)
        out = -1.0 if x0 < low[0] else 1.0
        beside = roof[roof[:, 0, 0] < low[0] + 1.0] if out < 0 else roof[roof[:, 1, 0] > high[0] - 1.0]
        if not (x0 < low[0] or x1 > high[0]) or abs(z0 - beside[:, 0, 2].min()) > 100.0:
            continue
        edge = x0 if out < 0 else x1
        y = low[1] - 4.0 if y0 < low[1] else high[1] + 4.0
        for up in (12.0, 24.0):
            spans = Solids([trim]).along((edge + out * OUT, y, z0 + up), (-out, 0.0, 0.0), OUT + 30.0)
            assert spans, (trim.name, up)
        seen += 1
    assert seen == feet


def test_the_ends_of_a_ridge_cap_come_down_before_the_rake_trims() -> None:
    """Seen from before a gable, 10 and 15 mm under both legs of the cap, there is the cap first."""
    model = starter_model("workshop")
    trims = pieces(model, "ridge cap") + pieces(model, "rake trim")
    caps = [box(piece) for piece in pieces(model, "ridge cap")]
    low, high = np.min(caps, axis=(0, 1)), np.max(caps, axis=(0, 1))
    middle = (low[0] + high[0]) / 2
    for start, way in ((low[1] - OUT, 1.0), (high[1] + OUT, -1.0)):
        for aside in (-80.0, -20.0, 20.0, 80.0):
            for under in (10.0, 15.0):
                z = high[2] - abs(aside) * 3 / 12 - under
                spans = Solids(trims).along((middle + aside, start, z), (0.0, way, 0.0), 2 * OUT)
                assert spans and spans[0].piece.role == "ridge cap", (way, aside, under)


def test_the_ends_of_a_drip_are_folded_down() -> None:
    """Along the wall, 8 mm inside the drip's outermost and 14 mm over its lowest, so under its shelf, its end
    is met beside the opening, and not the shelf's other end."""
    model = starter_model("workshop")
    drips = [piece for piece in pieces(model, "drip") if piece.label("face") == "front"]
    seen = 0
    for drip in drips:
        (x0, y0, z0), (x1, _, _) = box(drip)
        for start, way in ((x0 - OUT, 1.0), (x1 + OUT, -1.0)):
            spans = Solids([drip]).along((start, y0 + 8.0, z0 + 14.0), (way, 0.0, 0.0), OUT + 20.0)
            seen += bool(spans)
    assert seen == 4  # one of a door, and a lapped one of another


def test_a_stick_is_cut_as_long_as_its_folded_ends_want() -> None:
    """A rake's first piece is a whole stick: what it lies short of one is its tab, from the roof's edge over
    the rib there; a cap's tab takes as much of the last one."""
    rakes = [item for item in schedule(starter_model("workshop")).listed("trims") if item.role == "rake trim"]
    feet = [item for item in rakes if item.bends and item.bends.folds]
    assert len(feet) == 4
    for item in feet:
        assert item.cut == pytest.approx(STICK, abs=0.5)
        assert STICK - item.length > 60.0
    model = starter_model("workshop")
    for cap in pieces(model, "ridge cap"):
        bends = measure_bends(cap.solid)
        assert bends is not None
        length = measure_member(cap.solid).length
        ends = [max((fold.reach for fold in bends.folds if fold.end == end), default=0.0) for end in (-1, 1)]
        assert bends.over == pytest.approx(ends, abs=0.02)
        assert length + sum(bends.over) < 12 * 304.8 + 0.5
