"""Lengths and pitches as typed, figures as shown."""

from __future__ import annotations

from math import radians, tan

import pytest
from hypothesis import given
from hypothesis import strategies as st
from ribwright.units import (
    Units,
    Unreadable,
    format_area,
    format_exact,
    format_length,
    format_pitch,
    format_weight,
    parse_length,
    parse_number,
    parse_pitch,
)

# typed, mm: every one is exact by 1 in = 25.4 mm
LENGTHS = [
    ("30'", 9144.0),
    ("30 ft", 9144.0),
    ("30 FT.", 9144.0),
    ("1 foot", 304.8),
    ("30.5 feet", 9296.4),
    ("7-1/2 ft", 2286.0),
    ("9' 2-1/2\"", 2806.7),
    ("9'2 1/2\"", 2806.7),
    ("9'-2 1/2\"", 2806.7),
    ("9' - 2-1/2 in", 2806.7),
    ("9 ft 2-1/2 in", 2806.7),
    ("9 ft 2.5 in.", 2806.7),
    ("9' 2-1/2", 2806.7),
    ("9' 2\u00bd\"", 2806.7),
    ("9\u2032 2\u00bd\u2033", 2806.7),
    ("9\u2019 2 1\u20442\u201d", 2806.7),
    ("9' 1/2\"", 2755.9),
    ("110.5 in", 2806.7),
    ("110.5 inches", 2806.7),
    ("7'-6\"", 2286.0),
    ("7' 6 1/2\"", 2298.7),
    ('6-1/2"', 165.1),
    ("6''", 152.4),
    ('3/4"', 19.05),
    ("\u00be in", 19.05),
    ("1/64 in", 0.396875),
    (".0217 in", 0.55118),
    ("9.144 m", 9144.0),
    ("9.144m", 9144.0),
    ("2500 mm", 2500.0),
    ("250 cm", 2500.0),
    ("0.5 MM", 0.5),
    ("0", 0.0),
    ("0 in", 0.0),
    ("-5 ft", -1524.0),
    ("  8 in\t", 203.2),
]


@pytest.mark.parametrize(("typed", "mm"), LENGTHS)
def test_lengths_as_tradespeople_type_them(typed: str, mm: float) -> None:
    assert parse_length(typed) == mm


@pytest.mark.parametrize(
    ("typed", "remedy"),
    [
        ("30", "a unit after the number: 30', 30 in, 30 m or 30 mm"),
        ("2-1/2", "a unit after the number"),
        ("1,5 m", "decimals take a point"),
        ("1,000 mm", "thousands nothing"),
        ("9' 14\"", "less than 12 inches"),
        ("9.5' 2\"", "whole feet"),
        ("2-3/2 in", "a proper fraction"),
        ("3/0 in", "a length such as"),
        ("", "a length such as"),
        ("'", "a length such as"),
        ("30 yards", "a length such as"),
        ("30' wide", "a length such as"),
        ("2500 mm 3 in", "a length such as"),
        ("1e3 mm", "a length such as"),
        ("inf m", "a length such as"),
        ("nan in", "a length such as"),
        ("\u0663 m", "a length such as"),  # a digit, but not one of ours
        ("+5 ft", "a length such as"),
        ("--5 ft", "a length such as"),
        ("9" * 50 + " mm", "a length such as"),
        ("1 " * 500 + "in", "a length such as"),
    ],
)
def test_what_is_no_length_is_refused_with_what_would_do(typed: str, remedy: str) -> None:
    with pytest.raises(Unreadable) as caught:
        parse_length(typed)
    assert remedy in str(caught.value)


@pytest.mark.parametrize(
    ("mm", "shown"),
    [
        (0.0, '0"'),
        (-1e-9, '0"'),
        (6 * 25.4, '6"'),
        (12.7, '1/2"'),
        (3048.0, "10'"),
        (3048.0 - 1e-9, "10'"),
        (3048.0 + 1e-9, "10'"),
        (3048.0 + 12.7, "10' 0-1/2\""),
        (2806.7, "9' 2-1/2\""),
        (304.8 - 25.4 / 33, "1'"),
        (25.4 / 32, '1/16"'),  # half up
        (25.4 / 32 - 1e-9, '1/16"'),  # the same, with noise
        (25.4 / 32 - 1e-4, '0"'),
        (-2806.7, "-9' 2-1/2\""),
        (914.4 * 20, "60'"),
    ],
)
def test_lengths_in_feet_and_inches(mm: float, shown: str) -> None:
    assert format_length(mm, "ft-in") == shown


@pytest.mark.parametrize(
    ("mm", "shown"),
    [(0.0, "0"), (-0.2, "0"), (2500.4, "2500"), (2500.5, "2501"), (2500.5 - 1e-9, "2501"), (1e6, "1000000")],
)
def test_lengths_in_millimetres(mm: float, shown: str) -> None:
    assert format_length(mm, "mm") == shown


@given(st.floats(min_value=0, max_value=400_000))
def test_a_shown_length_reads_back_within_half_its_step(mm: float) -> None:
    assert abs(parse_length(format_length(mm, "ft-in")) - mm) <= 25.4 / 32 + 1e-5
    assert abs(parse_length(format_length(mm, "mm") + " mm") - mm) <= 0.5 + 1e-5


@given(st.integers(min_value=0, max_value=16 * 12 * 1000))
def test_sixteenths_read_back_exactly(sixteenths: int) -> None:
    shown = format_length(sixteenths * 25.4 / 16, "ft-in")
    assert parse_length(shown) == pytest.approx(sixteenths * 25.4 / 16, abs=1e-9)
    assert format_exact(sixteenths * 25.4 / 16, "ft-in") == shown


@pytest.mark.parametrize(
    ("mm", "units", "shown"),
    [
        (0.55118, "ft-in", "0.0217 in"),
        (50.8, "mm", "50.8 mm"),
        (50.8, "ft-in", '2"'),
        (0.55118, "mm", "0.5512 mm"),
    ],
)
def test_exact_lengths_keep_what_rounding_would_swallow(mm: float, units: Units, shown: str) -> None:
    assert format_exact(mm, units) == shown


@pytest.mark.parametrize("rise", range(1, 25))
def test_pitch_is_rise_in_twelve(rise: int) -> None:
    for typed in (f"{rise}/12", f"{rise}:12", f"{rise} in 12", f" {rise} / 12 "):
        assert abs(tan(radians(parse_pitch(typed))) - rise / 12) < 1e-15
    assert format_pitch(parse_pitch(f"{rise}/12"), "ft-in") == f"{rise}/12"


@pytest.mark.parametrize(
    ("typed", "degree"),
    [("10 deg", 10.0), ("10\u00b0", 10.0), ("12.5 Degrees", 12.5), ("12/12", 45.0), ("-10 deg", -10.0)],
)
def test_pitch_in_degrees(typed: str, degree: float) -> None:
    assert parse_pitch(typed) == pytest.approx(degree, abs=1e-13)


def test_pitch_with_a_fraction() -> None:
    assert parse_pitch("3-1/2:12") == parse_pitch("3.5/12") == parse_pitch("3\u00bd in 12")


@pytest.mark.parametrize(
    "typed", ["", "10", "3", "1/4", "3/10", "3/12/12", "3 12", "steep", "10 rad", "nan deg"]
)
def test_what_is_no_pitch_is_refused(typed: str) -> None:
    with pytest.raises(Unreadable, match="a pitch such as 3/12"):
        parse_pitch(typed)


@pytest.mark.parametrize(
    ("text", "number"), [("9", 9), ("0.75", 0.75), ("1-1/4", 1.25), ("1 1/4", 1.25), ("\u00be", 0.75)]
)
def test_catalogue_numbers(text: str, number: float) -> None:
    assert parse_number(text) == number


@pytest.mark.parametrize("text", ["", "x", "-1", "1/0", "1.2.3"])
def test_what_is_no_catalogue_number(text: str) -> None:
    with pytest.raises(Unreadable):
        parse_number(text)


def test_areas_and_weights() -> None:
    """1 ft2 = 0.09290304 m2 and 1 lb = 0.45359237 kg, by definition."""
    assert format_area(92_903.04, "ft-in") == "1.00"
    assert format_area(92_903.04, "mm") == "0.09"
    assert format_area(5_000.0, "mm") == "0.01"  # half up
    assert format_weight(0.45359237 * 12.25, "ft-in") == "12.3"  # half up
    assert format_weight(12.34, "mm") == "12.3"
    assert format_weight(-1e-12, "mm") == "0.0"
    small = [format_weight(kg, "mm") for kg in (0.0260417, 0.1134, 0.9982, 1.04)]
    assert small == ["0.0260", "0.113", "0.998", "1.0"]  # three figures under 1
