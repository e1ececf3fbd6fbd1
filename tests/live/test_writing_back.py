"""Keys changed on the page: which are offered for which piece, and what becomes of the file."""

from __future__ import annotations

import tomllib
from difflib import ndiff
from pathlib import Path

import pytest
from ribwright.description.keys.tables import OPENING
from ribwright.errors import FileError
from ribwright.intake import parse, sample_text, starter_text, starters
from ribwright.live.fields import Field, fields, offered
from ribwright.live.writing_back import changed, write
from ribwright.pieces import Piece
from ribwright.raising import raise_building
from ribwright.solids.placed import placed_triangles
from ribwright.units import parse_length
from support.sample_building import sample_model

TEXT = sample_text()


def of(text: str) -> tuple[Field, ...]:
    return fields(text, parse(text, "named"))


def names(piece: Piece) -> list[str]:
    """What is offered for a piece of the sample."""
    own = of(TEXT)
    lists, numbers = offered(own, parse(TEXT, "workshop"), sample_model().pieces)
    return [own[k].content()["name"] for k in lists[numbers[sample_model().pieces.index(piece)]]]


def lines_changed(before: str, after: str) -> list[str]:
    return [line for line in ndiff(before.splitlines(True), after.splitlines(True)) if line[0] in "+-"]


@pytest.mark.parametrize("name", [*starters(), ""])
def test_one_line_changes_and_every_other_stays(name: str) -> None:
    """Of every starter and of the blank one that explains every key: each key that is offered."""
    answers = {} if name else {"width": "30 ft", "length": "40 ft", "eave_height": "10 ft", "pitch": "3/12"}
    text = starter_text("mine", name, **answers)
    for field in of(text):
        other = changed(text, field.path, "another value")
        found = lines_changed(text, other)
        new = [line for line in found if line[0] == "+" and line.strip("+ \n") and "[" not in line]
        assert [line.split("#")[0].strip() for line in new] == [f'+ {field.path[-1]} = "another value"']
        if field.typed:
            assert [line[0] for line in found] == ["-", "+"]
            assert found[1][1:] == found[0][1:].replace(f'"{field.typed}"', '"another value"')
        else:
            assert all(line[0] == "+" for line in found)
        assert tomllib.loads(changed(other, field.path, field.typed)) == {
            **tomllib.loads(text),
            **{key: {} for key in field.path[:1] if len(field.path) == 2 and key not in tomllib.loads(text)},
        }


@pytest.mark.parametrize("mark", ["", "\ufeff"])
@pytest.mark.parametrize("end", ["\n", "\r\n"])
def test_ends_of_lines_and_what_a_file_begins_with_stay(mark: str, end: str) -> None:
    text = mark + TEXT.replace("\n", end)
    other = changed(text, ("sheets", "wall_colour"), "tan")
    assert other == text.replace('"gainsboro"', '"tan"')
    assert changed(text, ("width",), "31 ft") == text.replace('"30 ft"', '"31 ft"')


@pytest.mark.parametrize(
    "typed", ['" \n[opening]', "\\", "'", '"""', "]", "# no comment", "\u202e", "{}", "= =", "a\tb"]
)
def test_a_value_that_is_an_attack_stays_a_value(typed: str) -> None:
    """Whatever is typed is the text of one key and no more."""
    given = tomllib.loads(changed(TEXT, ("opening", 2, "sill"), typed))
    assert given["opening"][2].pop("sill") == typed
    plain = tomllib.loads(TEXT)
    plain["opening"][2].pop("sill")
    assert given == plain


@pytest.mark.parametrize(
    "text",
    [
        'sheets.wall_colour = "tan"\nwidth = "1"\n',
        'sheets = { wall_colour = "tan" }\nwidth = "1"\n',
        '["sheets"]\n"wall_colour" = "tan" # c\n',
        'opening = [{ kind = "window" }]\n[sheets]\n[sheets.more]\n',
        "",
        "[sheets]",
        "# only a comment",
    ],
)
def test_however_it_stands_it_is_changed_rightly_or_not_at_all(text: str) -> None:
    try:
        other = changed(text, ("sheets", "wall_colour"), "navy")
    except FileError:
        return
    wanted = tomllib.loads(text)
    wanted.setdefault("sheets", {})["wall_colour"] = "navy"
    assert tomllib.loads(other) == wanted
    assert other.count("#") == text.count("#")


def test_what_would_change_more_than_its_key_is_left_alone() -> None:
    """Its table would go with it."""
    with pytest.raises(FileError, match="by hand"):
        changed('sheets.wall_colour = "tan"\n', ("sheets", "wall_colour"), "")


def test_a_file_keeps_its_mode_and_a_link_stays_one(tmp_path: Path) -> None:
    own, link = tmp_path / "own.toml", tmp_path / "link.toml"
    own.write_text(TEXT, encoding="utf-8")
    own.chmod(0o640)
    link.symlink_to(own)
    write(link, changed(TEXT, ("width",), "31 ft"))
    assert link.is_symlink()
    assert own.stat().st_mode & 0o777 == 0o640
    assert tomllib.loads(own.read_text(encoding="utf-8"))["width"] == "31 ft"
    assert sorted(path.name for path in tmp_path.iterdir()) == ["link.toml", "own.toml"]


def test_an_opening_offers_its_own_keys() -> None:
    """Those of the item that says where this leaf or sash stands: its width is the opening's there."""
    openings = tomllib.loads(TEXT)["opening"]
    seen = set()
    for piece in (one for one in sample_model().pieces if one.role in ("leaf", "sash")):
        (number,) = {int(name.split("[")[1].split("]")[0]) - 1 for name in names(piece) if "[" in name}
        points = next(placed_triangles([piece]))[0]
        along = 0 if openings[number]["wall"] in ("front", "back") else 1
        wide = points[:, along].max() - points[:, along].min()
        assert piece.label("face") == openings[number]["wall"]
        assert wide == pytest.approx(parse_length(openings[number]["width"]), abs=60)
        seen.add(number)
    assert seen == set(range(len(openings)))


@pytest.mark.parametrize(
    ("name", "offers"),
    [
        ("front 2", ["runs.front", "sheets.wall_colour"]),
        ("left slope 1", ["runs.left_slope", "sheets.roof_colour"]),
        ("ridge cap 1", ["trim.colour"]),
        ("frame 1 left column", []),
        (
            "left window 2 drip",
            [*(f"opening[4].{key.name}" for key in OPENING.keys), "trim.colour"],
        ),
    ],
)
def test_each_piece_offers_what_it_follows_from(name: str, offers: list[str]) -> None:
    (piece,) = (one for one in sample_model().pieces if one.name == name)
    assert names(piece) == [*offers, "width", "length", "eave_height", "pitch"]


def test_what_is_offered_changes_the_pieces_that_offer_it() -> None:
    """A colour and a start, each tried: the pieces that offered it are the ones that are others then."""
    own, building = of(TEXT), parse(TEXT, "workshop")
    lists, numbers = offered(own, building, sample_model().pieces)
    (field,) = (k for k, one in enumerate(own) if one.path == ("sheets", "roof_colour"))
    other = raise_building(parse(changed(TEXT, own[field].path, "navy"), "workshop")).model
    changed_sheets = {
        piece.name for piece in other.pieces if piece.role == "roof sheet" and piece.label("colour") == "navy"
    }
    offering = {
        piece.name
        for piece, number in zip(sample_model().pieces, numbers, strict=True)
        if field in lists[number] and piece.role == "roof sheet"
    }
    assert changed_sheets == offering != set()
