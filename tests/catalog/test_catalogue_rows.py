"""Every row of the catalogues is sound, and bad rows would be seen."""

from __future__ import annotations

from dataclasses import replace
from math import isclose

import pytest
from ribwright.catalog.colours import colour_names, rgb
from ribwright.catalog.gauges import gauges
from ribwright.catalog.profiles import RibProfile, faults, find_profile, profile_of, profiles
from ribwright.units import INCH, parse_number

PROFILES = list(profiles().values())


@pytest.mark.parametrize("profile", PROFILES, ids=lambda p: p.name)
def test_profile_can_be_rolled_lapped_and_drawn(profile: RibProfile) -> None:
    assert faults(profile) == []


@pytest.mark.parametrize("profile", PROFILES, ids=lambda p: p.name)
def test_profile_is_named_by_its_geometry(profile: RibProfile) -> None:
    named = [float(parse_number(part)) for part in profile.name.split(" x ")]
    sizes = (profile.cover, profile.pitch, profile.height)
    unit = INCH if isclose(named[0] * INCH, profile.cover) else 1.0
    assert sizes == pytest.approx([size * unit for size in named], abs=1e-9)


@pytest.mark.parametrize(
    ("change", "said"),
    [
        ({"cover": 900.0}, "whole number of pitches"),
        ({"height": 0.0, "minors": 0, "minor_height": 0.0, "minor_base": 0.0}, "high"),
        ({"crown": 0.0}, "crown < base"),
        ({"leg": 31.75}, "leg ends on the flank"),
        ({"leg": 7.0}, "leg ends on the flank"),
        ({"minors": 0}, "none if not"),
        ({"minor_height": 10.0}, "lower than major"),
        ({"minor_crown": 26.0}, "minor crown < minor base"),
        ({"minors": 6}, "fit in the pan"),
        ({"source": ""}, "where it is from"),
    ],
)
def test_a_bad_profile_is_seen_and_for_one_reason(change: dict[str, float], said: str) -> None:
    found = faults(replace(profiles()["36 x 9 x 3/4"], **change))  # type: ignore[arg-type]  # a dict of one field
    assert len(found) == 1
    assert said in found[0]


def test_cover_of_thirty_six_inches_is_thirty_eight_overall() -> None:
    """Lap leg 1 in on each side: common practice, no source."""
    for name in ("36 x 9 x 3/4", "36 x 12 x 1-1/4"):
        profile = profiles()[name]
        assert profile.cover == 36 * INCH
        assert (profile.cover + 2 * profile.leg) / INCH == pytest.approx(38, abs=1e-9)


@pytest.mark.parametrize(
    ("typed", "name"),
    [
        ("36x9x3/4", "36 x 9 x 3/4"),
        ('36" X 9" X 3/4"', "36 x 9 x 3/4"),
        ("36 x 9 x 0.75 in", "36 x 9 x 3/4"),
        ("36\u00d79\u00d7\u00be", "36 x 9 x 3/4"),
        ("36 x 12 x 1 1/4", "36 x 12 x 1-1/4"),
        (" 36*12*1-1/4 in. ", "36 x 12 x 1-1/4"),
        ("1000x250x35mm", "1000 x 250 x 35"),
        ("1000 mm x 250 mm x 35 mm", "1000 x 250 x 35"),
    ],
)
def test_profile_names_are_read_leniently(typed: str, name: str) -> None:
    assert find_profile(typed) is profiles()[name]


@pytest.mark.parametrize(
    "typed", ["", "36", "36 x 9", "36 x 9 x 3/4 x 1", "36 x 9 x 1", "x", "tall", "36 x 9 x 3/0"]
)
def test_no_profile_is_guessed(typed: str) -> None:
    assert find_profile(typed) is None


def test_a_row_is_all_it_takes() -> None:
    header = "name unit cover pitch height crown base leg minors minor_height minor_crown minor_base source"
    cells = [
        "24 x 8 x 1/2",
        "in",
        "24",
        "8",
        "1/2",
        "1/2",
        "2-1/2",
        "1",
        "0",
        "0",
        "0",
        "0",
        "made for this test",
    ]
    row = dict(zip(header.split(), cells, strict=True))
    profile = profile_of(row)
    assert faults(profile) == []
    assert (profile.cover, profile.height, profile.base) == pytest.approx((609.6, 12.7, 63.5), abs=1e-9)


# Manufacturers' Standard Gauge; these three rows were recomputed, see the catalogue for the others.
@pytest.mark.parametrize(
    ("number", "bare", "bare_weight", "galvanised", "galvanised_weight"),
    [
        (24, 0.0239, 1.000, 0.0276, 1.156),
        (26, 0.0179, 0.750, 0.0217, 0.906),
        (29, 0.0135, 0.5625, 0.0172, 0.719),
    ],
)
def test_gauge_figures(
    number: int, bare: float, bare_weight: float, galvanised: float, galvanised_weight: float
) -> None:
    gauge = gauges()[number]
    assert (gauge.bare, gauge.galvanised) == pytest.approx((bare * INCH, galvanised * INCH), abs=1e-12)
    assert (gauge.bare_lb_ft2, gauge.galvanised_lb_ft2) == (bare_weight, galvanised_weight)


@pytest.mark.parametrize("gauge", gauges().values(), ids=lambda g: str(g.number))
def test_gauge_rows_keep_the_tables_own_rules(gauge: object) -> None:
    """41.82 lb/ft2 per inch of bare steel, and 2.5 oz/ft2 of zinc (0.15625 lb/ft2), in 0.0037-0.0038 in."""
    row = gauges()[gauge.number]  # type: ignore[attr-defined]  # pytest hands parameters on as objects
    assert row.bare_lb_ft2 == pytest.approx(41.82 * row.bare / INCH, abs=41.82 * 0.00005)
    assert row.galvanised_lb_ft2 == pytest.approx(row.bare_lb_ft2 + 0.15625, abs=0.0006)
    assert 0.00365 < (row.galvanised - row.bare) / INCH < 0.00385


def test_gauges_grow_thinner() -> None:
    rows = list(gauges().values())
    assert [row.number for row in rows] == sorted(row.number for row in rows)
    assert [row.galvanised for row in rows] == sorted((row.galvanised for row in rows), reverse=True)


def test_the_colours_of_css_level_4() -> None:
    """W3C, CSS Color Module Level 4, section 6.1: 148 names, seven pairs of them grey and gray."""
    names = colour_names()
    assert len(names) == len(set(names)) == 148
    greys = [name for name in names if "grey" in name]
    assert len(greys) == 7
    assert all(rgb(name) == rgb(name.replace("grey", "gray")) for name in greys)
    assert rgb("aqua") == rgb("cyan") and rgb("magenta") == rgb("fuchsia")


# Figures of the module's own table, from memory.
@pytest.mark.parametrize(
    ("name", "values"),
    [
        ("gainsboro", (220, 220, 220)),
        ("slategray", (112, 128, 144)),
        ("rebeccapurple", (102, 51, 153)),
        ("cornflowerblue", (100, 149, 237)),
        ("Papaya Whip".replace(" ", ""), (255, 239, 213)),
        ("#0A0b0c", (10, 11, 12)),
    ],
)
def test_rgb(name: str, values: tuple[int, int, int]) -> None:
    assert rgb(name) == values


@pytest.mark.parametrize("name", ["", "#fff", "#12345g", "galvalume-ish", "transparent", "#1234567"])
def test_no_colour_is_guessed(name: str) -> None:
    with pytest.raises(KeyError):
        rgb(name)
