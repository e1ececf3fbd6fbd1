"""Tables of rows: what they set, how a description comes of it, what is said of a bad one. No kernel."""

from __future__ import annotations

import tomllib
from pathlib import Path

import pytest
from ribwright.book.table import read_table
from ribwright.book.toml import description, typed, with_row
from ribwright.errors import FileError, RibwrightError
from ribwright.intake import parse, starter_text, starters
from support.book_rows import BASE


def table(folder: Path, text: str, name: str = "table.csv") -> Path:
    file = folder / name
    file.write_text(text, encoding="utf-8")
    return file


def test_a_row_sets_the_keys_whose_cells_are_not_empty(tmp_path: Path) -> None:
    text = 'width, sheets.gauge ,opening[2].width,frame.bays\n24 ft,26,,"[""8 ft"", ""12 ft""]"\n\n,,3 ft,\n'
    found = read_table(table(tmp_path, text))
    assert found.count == 2
    assert [name for name, _ in found.columns] == ["width", "sheets.gauge", "opening[2].width", "frame.bays"]
    first = {("width",): "24 ft", ("sheets", "gauge"): 26, ("frame", "bays"): ["8 ft", "12 ft"]}
    assert list(found.rows()) == [first, {("opening", 1, "width"): "3 ft"}]
    assert list(found.rows()) == list(found.rows())


def test_what_looks_like_a_number_and_is_none_stays_text(tmp_path: Path) -> None:
    found = read_table(table(tmp_path, 'pitch,name,address\n3/12,"""12""",1 Mill Lane\n'))
    assert list(found.rows()) == [{("pitch",): "3/12", ("name",): "12", ("address",): "1 Mill Lane"}]


def test_a_grid_tries_each_with_each(tmp_path: Path) -> None:
    text = '[grid]\nwidth = ["24 ft", "30 ft"]\nsheets.gauge = [26, 29]\n"opening[1].width" = ["3 ft"]\n'
    found = read_table(table(tmp_path, text, "table.toml"))
    assert found.count == 4
    sizes = [(row["width",], row["sheets", "gauge"]) for row in found.rows()]
    assert sizes == [("24 ft", 26), ("24 ft", 29), ("30 ft", 26), ("30 ft", 29)]
    assert all(row["opening", 0, "width"] == "3 ft" for row in found.rows())


def test_rows_listed_come_before_a_grid_and_openings_may_come_from_a_list(tmp_path: Path) -> None:
    text = (
        '[[row]]\nwidth = "20 ft"\nopening = []\n[grid]\n'
        'opening = [[], [{kind = "window", wall = "left"}, {kind = "walk door", wall = "front"}]]\n'
    )
    found = read_table(table(tmp_path, text, "table.toml"))
    assert [len(row["opening",]) for row in found.rows()] == [0, 0, 2]  # type: ignore[arg-type]
    assert next(iter(found.rows()))["width",] == "20 ft"


@pytest.mark.parametrize("name", starters())
def test_a_description_written_anew_is_the_same_building(name: str) -> None:
    text = starter_text(name, name)
    again = description(with_row(tomllib.loads(text), {}))
    assert parse(again, "x") == parse(text, "x")


def test_values_of_a_row_stand_in_the_description() -> None:
    row = {("width",): "12 ft", ("opening", 0, "width"): "2 ft", ("screws", "apart"): "18 in"}
    values = tomllib.loads(BASE)
    read = tomllib.loads(description(with_row(values, row)))
    assert read["width"] == "12 ft"
    assert read["opening"][0] == {**values["opening"][0], "width": "2 ft"}
    assert read["screws"] == {"apart": "18 in"}
    assert values == tomllib.loads(BASE)


def test_text_that_toml_escapes_comes_back(tmp_path: Path) -> None:
    strange = 'a "b" \\ \x7f ü 😀 \t'
    assert tomllib.loads(description({"name": strange, "colours": {strange: "#102030"}})) == {
        "name": strange,
        "colours": {strange: "#102030"},
    }


def test_a_value_is_shown_as_a_person_types_it() -> None:
    values = ("3/12", 26, True, ["8 ft", 1.5])
    assert [*map(typed, values)] == ["3/12", "26", "true", '["8 ft", 1.5]']


WRONG = {
    "a key that is none": (
        "width,sheets.guage\n",
        "line 1: 'sheets.guage' is no key; the nearest is 'sheets.ga",
    ),
    "an opening without its number": ("opening.width\n", "line 1: 'opening.width' is no key"),
    "a number where none belongs": ("width[2]\n", "line 1: 'width[2]' is no key"),
    "a key twice": ("width,length,width\n1,2,3\n", "line 1: 'width' stands there twice"),
    "no rows": ("width\n\n", "has no rows"),
    "a cell too many": ("width\n12 ft\n12 ft,3\n", "line 3: read 2 cells; would do: 1"),
    "nothing": ("", "line 1: keys would do"),
    "a quote that is not closed": ('width\n"12 ft\n' + "x" * 140_000, "line"),
}


@pytest.mark.parametrize(("text", "said"), WRONG.values(), ids=WRONG)
def test_a_table_that_is_none_is_told_by_its_line(tmp_path: Path, text: str, said: str) -> None:
    with pytest.raises(FileError) as caught:
        read_table(table(tmp_path, text))
    assert str(caught.value).startswith(f"{tmp_path / 'table.csv'}: {said}")


WRONG_TOML = {
    "an axis that is no list": ('[grid]\nwidth = "24 ft"\n', "grid: width: a list would do"),
    "an axis without values": ("[grid]\nwidth = []\n", "grid: width: a list would do"),
    "something else": ('width = ["24 ft"]\n', "[grid] with lists of values, or a [[row]]"),
    "no rows": ("[grid]\n", "has no rows"),
    "no TOML": ("[grid]\nwidth = [24 ft]\n", "line 2"),
    "rows that are none": ("row = [1]\n", "[[row]] for each building would do"),
}


@pytest.mark.parametrize(("text", "said"), WRONG_TOML.values(), ids=WRONG_TOML)
def test_a_grid_that_is_none_is_told(tmp_path: Path, text: str, said: str) -> None:
    with pytest.raises(RibwrightError) as caught:
        read_table(table(tmp_path, text, "table.toml"))
    assert str(caught.value).startswith(f"{tmp_path / 'table.toml'}: {said}")


def test_devices_and_other_files_are_no_tables(tmp_path: Path) -> None:
    (tmp_path / "zero.csv").symlink_to("/dev/zero")
    for name in ("zero.csv", "none.csv", "table.xlsx"):
        with pytest.raises(FileError, match=name):
            read_table(tmp_path / name)


def test_a_million_rows_are_gone_through_without_being_held(tmp_path: Path) -> None:
    inches = ", ".join(f'"{n} in"' for n in range(120, 220))
    axes = "".join(f"{key} = [{inches}]\n" for key in ("width", "length", "eave_height"))
    found = read_table(table(tmp_path, f"[grid]\n{axes}", "table.toml"))
    assert found.count == 1_000_000
    assert next(found.rows()) == dict.fromkeys([("width",), ("length",), ("eave_height",)], "120 in")
