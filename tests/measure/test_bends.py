"""Bends measured off folded solids, against the steel in them and the angles they were folded by."""

from __future__ import annotations

import numpy as np
import pytest
from OCP.TopoDS import TopoDS_Solid
from ribwright.catalog.fold import folded
from ribwright.measure.bends import Bends, measure_bends
from ribwright.recipe import Prism
from ribwright.solids import realise
from ribwright.solids.properties import volume
from support.poses import moved
from support.sample_building import sample_model

Line = tuple[tuple[float, float], ...]
LENGTH = 1000.0
ANGLE: Line = ((0.0, 40.0), (0.0, 0.0), (60.0, 0.0))
DRIP: Line = ((0.0, 50.0), (0.0, 0.0), (25.0, -4.0), (25.0, -30.0))
CUP: Line = ((0.0, 30.0), (0.0, 0.0), (50.0, 0.0), (50.0, 40.0), (40.0, 40.0))


def strip_of(points: Line, thickness: float, radius: float) -> TopoDS_Solid:
    return moved(realise(Prism(folded(points, thickness, radius), (0.0, 0.0, 0.0), (0.0, 0.0, LENGTH))))


def bends(points: Line, thickness: float = 0.55, radius: float = 1.0) -> Bends:
    found = measure_bends(strip_of(points, thickness, radius))
    assert found is not None
    return found


@pytest.mark.parametrize("points", [ANGLE, DRIP, CUP])
@pytest.mark.parametrize(("thickness", "radius"), [(0.55, 0.0), (0.55, 1.0), (1.5, 3.0)])
def test_girth_is_the_steel_in_it(points: Line, thickness: float, radius: float) -> None:
    """Volume = girth x thickness x length, whether bends are rounded or mitred, wherever it lies."""
    solid = strip_of(points, thickness, radius)
    found = measure_bends(solid)
    assert found is not None
    assert found.girth * thickness * LENGTH == pytest.approx(volume(solid), rel=1e-6)
    assert found.thickness == pytest.approx(thickness, abs=1e-6)


def test_legs_are_outside_sizes() -> None:
    """An angle of 40 x 60 folded along its inner face is 0.55 more outside; a drip's shelf, between a bend
    each way, is as long on both faces but for the tilt; a hook's end stays."""
    assert sorted(bends(ANGLE).legs) == pytest.approx([40.55, 60.55], abs=1e-6)
    assert sorted(bends(CUP).legs) == pytest.approx([10.55, 30.55, 41.1, 51.1], abs=1e-6)


def test_angles_are_inside_angles() -> None:
    assert bends(ANGLE).angles == pytest.approx((90.0,), abs=1e-6)
    drip = bends(DRIP, radius=0.0)
    slope = float(np.degrees(np.arctan2(4, 25)))
    assert drip.angles == pytest.approx((90 + slope, 90 + slope), abs=1e-6)
    assert drip.turns[0] == pytest.approx(-drip.turns[1], abs=1e-6)
    assert (drip.inside, drip.hems) == (0.0, 0)


def test_every_trim_of_the_sample_is_a_folded_strip() -> None:
    trims = {piece.mark: piece.solid for piece in sample_model().pieces if piece.group[0] == "trims"}
    assert len(trims) > 20
    for mark, solid in trims.items():
        found = measure_bends(solid)
        assert found is not None, mark
        assert 1 <= len(found.turns) <= 4
        assert found.girth == pytest.approx(sum(found.legs), abs=2 * len(found.legs) * found.thickness)


def test_what_is_no_strip_has_no_bends() -> None:
    others = [piece for piece in sample_model().pieces if piece.role in ("column", "slab", "base plate")]
    assert others and all(measure_bends(piece.solid) is None for piece in others)
