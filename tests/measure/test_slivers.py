"""Sheets cut where a bend begins, so that a sliver of skin has nothing behind it."""

from __future__ import annotations

import pytest
from ribwright.catalog.profiles import profiles
from ribwright.layout.skin.ribs import graphs
from ribwright.measure.sheet import measure_sheet
from ribwright.recipe import Sheet
from ribwright.solids import realise


@pytest.mark.parametrize("name", profiles())
def test_a_rip_at_any_bend_measures_as_laid_out(name: str) -> None:
    profile = profiles()[name]
    lower, upper = graphs(profile, 0.43688)
    for u, _ in lower[1:-1]:
        ring = ((-profile.leg, 0.0), (u, 0.0), (u, 2000.0), (-profile.leg, 2000.0))
        if u > 0:
            sheet = measure_sheet(realise(Sheet(lower, upper, ring)))
            assert sheet.width == pytest.approx(u + profile.leg, abs=0.01)
            assert sheet.length == pytest.approx(2000.0, abs=0.01)
            assert sheet.thickness == pytest.approx(0.43688, abs=1e-4)


def test_a_notch_and_its_complement_are_two_sheets() -> None:
    """Notches of complementary widths in opposite sides: every corner of one lies on the other's rim."""
    profile = profiles()["36 x 9 x 3/4"]
    lower, upper = graphs(profile, 0.43688)
    a, b = -profile.leg, profile.cover + profile.leg
    left = (
        (a, 0.0),
        (b, 0.0),
        (b, 2000.0),
        (a, 2000.0),
        (a, 1500.0),
        (400.0, 1500.0),
        (400.0, 500.0),
        (a, 500.0),
    )
    right = (
        (a, 0.0),
        (b, 0.0),
        (b, 500.0),
        (390.0, 500.0),
        (390.0, 1500.0),
        (b, 1500.0),
        (b, 2000.0),
        (a, 2000.0),
    )
    one, other = (measure_sheet(realise(Sheet(lower, upper, ring))).ways[0] for ring in (left, right))
    assert one.fits(one)
    assert other.fits(other)
    assert not one.fits(other)
    assert not other.fits(one)
