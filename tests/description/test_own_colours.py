"""Colours that people name themselves, and the other spelling of the word."""

from __future__ import annotations

from pathlib import Path

import pytest
from ribwright.catalog.colours import is_colour, rgb
from ribwright.errors import DescriptionError
from ribwright.exchange.step import read_step, write_step
from ribwright.intake import parse
from ribwright.order.lists.schedule import schedule
from ribwright.order.written.csv import csv_text
from ribwright.raising import raise_building

SIZES = 'width = "10 ft"\nlength = "12 ft"\neave_height = "8 ft"\npitch = "4/12"\n'
OWN = SIZES + 'colours = { "Barn  Red" = "#7A2E2A" }\n'


def test_an_own_colour_has_its_name_and_its_look() -> None:
    building = parse(OWN + '[sheets]\nwall_colour = "barn red"\n[trim]\ncolour = "BARN RED"\n', "x")
    assert building.sheets.sides.colour == building.trim.colour == "barn red (#7a2e2a)"
    assert rgb(building.sheets.sides.colour) == (0x7A, 0x2E, 0x2A)
    assert not is_colour("barn red") and not is_colour("barn red (#7a2e2a) x")


def test_the_table_may_stand_on_its_own_and_win_over_the_catalogue() -> None:
    building = parse(SIZES + '[sheets]\nroof_color = "brown"\n[colors]\nbrown = "#6b4423"\n', "x")
    assert building.sheets.roof.colour == "brown (#6b4423)"


def test_the_other_spelling_is_read_and_both_are_one_too_many() -> None:
    building = parse(SIZES + '[sheets]\nwall_color = "gray"\n[trim]\ncolor = "white"\n', "x")
    assert (building.sheets.sides.colour, building.trim.colour) == ("gray", "white")
    with pytest.raises(DescriptionError, match=r"line 7.*sheets.wall_color: .*said already, as wall_colour"):
        parse(SIZES + '[sheets]\nwall_colour = "gray"\nwall_color = "red"\n', "x")


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ('[sheets]\nwall_colour = "barn rad"\n', r"the nearest is 'barn red'"),
        ('[sheets]\nwall_colour = "barn red (#7a2e2a)"\n', r"sheets.wall_colour: .*a CSS colour name"),
    ],
)
def test_a_word_that_is_none_names_the_nearest(text: str, said: str) -> None:
    with pytest.raises(DescriptionError, match=said):
        parse(OWN + text, "x")


@pytest.mark.parametrize(
    ("table", "said"),
    [
        ('{ "barn red" = "red" }', "six hexadecimal digits"),
        ('{ "red (1)" = "#aa0000" }', "none of them #"),
        ('{ "red" = 3 }', "six hexadecimal digits"),
        ('"red"', r"a table: \[colours\]"),
    ],
)
def test_what_a_colour_may_be_called_and_look_like(table: str, said: str) -> None:
    with pytest.raises(DescriptionError, match=said):
        parse(SIZES + f"colours = {table}\n", "x")


def test_it_travels_through_step(tmp_path: Path) -> None:
    model = raise_building(parse(OWN + '[sheets]\nwall_colour = "barn red"\n', "hut")).model
    write_step(model, tmp_path / "hut.step")
    again = csv_text(schedule(read_step(tmp_path / "hut.step")))
    assert again == csv_text(schedule(model))
    assert "barn red (#7a2e2a)" in again
