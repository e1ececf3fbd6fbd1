"""`ribwright raise`, `schedule` and `picture` on a small building, from outside."""

from __future__ import annotations

import json
import re
import sys
from collections.abc import Iterable
from pathlib import Path

import pytest
from ribwright.cli.main import run
from ribwright.exchange.step import read_step
from ribwright.outputs import OUTPUTS, USUAL
from ribwright.pieces import Piece
from ribwright.roles import LISTS
from ribwright.show.views import VIEWS

DESCRIPTION = """\
name = "garden store"
width = "10 ft"
length = "12 ft"
eave_height = "8 ft"
pitch = "4/12"

[[opening]]
kind = "walk door"
wall = "front"
width = "3 ft"
height = "6 ft 8 in"
from_left = "1 ft"
"""


@pytest.fixture(scope="module")
def raised(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder with store.toml and what was made of it."""
    here = tmp_path_factory.mktemp("raised")
    (here / "store.toml").write_text(DESCRIPTION, encoding="utf-8")
    with pytest.MonkeyPatch.context() as patch:
        patch.chdir(here)
        assert run(["raise", "store.toml"]) == 0
    return here


@pytest.fixture(autouse=True)
def here(raised: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.chdir(raised)
    return raised


def test_everything_is_in_one_folder_of_the_buildings_name() -> None:
    assert [folder.name for folder in Path("out").iterdir()] == ["garden-store"]
    made = Path("out/garden-store")
    assert {file.name for file in made.iterdir()} >= {output.name for output in USUAL}
    assert all(file.stat().st_size for file in made.iterdir())
    assert not [file.name for file in made.iterdir() if file.name.startswith(".")]


def test_it_says_in_a_few_lines_what_was_made(capsys: pytest.CaptureFixture[str]) -> None:
    """Counts, weight and laps as the lists and the audit have them; a line a file, with its size."""
    assert run(["raise", "store.toml", "--out", "elsewhere", "--verbose"]) == 0
    said, error = capsys.readouterr()
    assert len(said.splitlines()) <= 7 + len(USUAL)
    listed = json.loads(Path("elsewhere/schedule.json").read_text(encoding="utf-8"))
    counts = {name: sum(item["count"] for item in listed[name]) for name in LISTS}
    assert f"{sum(counts.values())} bodies: {counts['sheets']} sheets, {counts['members']} members" in said
    assert f"{counts['screws']} screws" in said
    weight = sum(
        item["count"] * item["weight"]["kg"] for name in LISTS for item in listed[name] if "weight" in item
    )
    found = re.search(r"steel ([0-9.]+) lb in all", said)
    assert found and float(found[1]) == pytest.approx(weight / 0.45359237, rel=2e-3)
    assert re.search(r"Measured: side laps [0-9]+ of 2.000 in; trim laps [0-9]+ of 3.00", said)
    assert "Found: no faults" in said
    for output in USUAL:
        size = Path("elsewhere", output.name).stat().st_size
        line = next(line for line in said.splitlines() if line.split()[0] == output.name)
        number, unit = line.split()[1:3]
        assert float(number) * {"MB": 1e6, "kB": 1e3}[unit] == pytest.approx(size, rel=0.05, abs=600)
    assert "licensed engineer" in said
    assert error.splitlines() == ["solids", "measuring", "writing and audit"]
    for output in USUAL:  # equal descriptions give equal files
        again = Path("elsewhere", output.name).read_bytes()
        assert again == Path("out/garden-store", output.name).read_bytes(), output.name


def test_what_is_left_out_is_left_out_of_the_models_files_alone(capsys: pytest.CaptureFixture[str]) -> None:
    """The lists stay those of the whole building, byte for byte; the model's have what was asked for."""
    whole = read_step("out/garden-store/model.step").pieces
    assert run(["raise", "store.toml", "--out", "bare", "--without", "Screws", "--without", "closures"]) == 0
    left = [piece for piece in whole if piece.group[0] not in ("screws", "closures")]
    out = bodies(whole) - bodies(left)
    assert out > 100
    assert f"Left out of the model's files, not of the lists: {out} bodies.\n" in capsys.readouterr().out
    assert names(read_step("bare/model.step").pieces) == names(left)
    lists = [output.name for output in USUAL if not output.name.startswith("model")]
    assert len(lists) == 5
    for name in lists:
        assert Path("bare", name).read_bytes() == Path("out/garden-store", name).read_bytes(), name
    sheet = next(piece for piece in whole if piece.role == "wall sheet").name
    roof = ["--only", "roof", "--only", sheet, "--without", "right slope"]
    assert run(["raise", "store.toml", "--out", "bare", *roof]) == 0
    kept = [piece for piece in whole if piece.group == ("roof", "left slope") or piece.name == sheet]
    assert names(read_step("bare/model.step").pieces) == names(kept)
    assert {piece.mark for piece in read_step("bare/model.step").pieces} == {piece.mark for piece in kept}


def bodies(pieces: Iterable[Piece]) -> int:
    return sum(piece.count for piece in pieces)


def names(pieces: Iterable[Piece]) -> list[str]:
    return [piece.name for piece in pieces]


def test_formats_are_written_on_request_beside_the_usual_ones(capsys: pytest.CaptureFixture[str]) -> None:
    assert run(["raise", "store.toml", "--out", "some", "--formats", "dxf, 3MF", "--without", "screws"]) == 0
    usual = {output.name for output in USUAL}
    assert {file.name for file in Path("some").iterdir()} == usual | {"model.dxf", "model.3mf"}
    assert "model.dxf " in capsys.readouterr().out
    assert run(["raise", "store.toml", "--out", "every", "--all", "--only", "frame"]) == 0
    assert {file.name for file in Path("every").iterdir()} == {output.name for output in OUTPUTS}
    assert all(output.name in capsys.readouterr().out for output in OUTPUTS[-1:])
    assert all(file.stat().st_size for file in Path("every").iterdir())


@pytest.mark.parametrize(("asked", "absent"), [(["--formats", "3mf"], ["3mf"]), (["--all"], ["ifc", "usdz"])])
def test_an_extra_that_is_not_installed_is_one_line(
    asked: list[str],
    absent: list[str],
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
) -> None:
    for output in OUTPUTS:
        if output.word in absent:
            monkeypatch.setitem(sys.modules, output.needs, None)  # which is how Python says: there is none
    assert run(["raise", "store.toml", "--out", "nothing", *asked]) == 2
    said, error = capsys.readouterr()
    files = ", ".join(f"model.{word}" for word in absent)
    assert said == ""
    assert error == (
        f"{files}: what writes it is not here; "
        f'python3 -m pip install "ribwright[{",".join(absent)}]" brings it\n'
    )
    assert not Path("nothing").exists()


@pytest.mark.parametrize("form", ["table", "csv", "json", "md"])
def test_the_step_file_alone_gives_the_same_schedule(
    form: str, capsysbinary: pytest.CaptureFixture[bytes]
) -> None:
    assert run(["schedule", "store.toml", "--format", form]) == 0
    described = capsysbinary.readouterr().out
    assert run(["schedule", "out/garden-store/model.step", "--format", form]) == 0
    assert capsysbinary.readouterr().out == described


def test_the_files_hold_what_schedule_prints(capsysbinary: pytest.CaptureFixture[bytes]) -> None:
    for form in ("csv", "json"):
        assert run(["schedule", "store.toml", "--format", form]) == 0
        assert capsysbinary.readouterr().out == Path(f"out/garden-store/schedule.{form}").read_bytes()


def test_one_list_can_be_asked_for(capsysbinary: pytest.CaptureFixture[bytes]) -> None:
    assert run(["schedule", "store.toml", "--format", "json", "--part", "sheets"]) == 0
    said = json.loads(capsysbinary.readouterr().out)
    assert said["sheets"]
    assert not {"members", "screws"} & set(said)


def test_pictures_from_all_sides_come_at_once(missing: object, capsys: pytest.CaptureFixture[str]) -> None:
    status = run(["picture", "store.toml", "--from", "all", "--size", "80x50", "--plain"])
    said, error = capsys.readouterr()
    if "no graphics library" in error:
        missing(error)  # type: ignore[operator] # a function; fixtures carry no types
    assert (status, said) == (0, "Wrote out/garden-store/pictures\n")
    made = {path.stem: path.read_bytes() for path in Path("out/garden-store/pictures").iterdir()}
    assert set(made) == {view.replace(" ", "-") for view in VIEWS}
    assert len(set(made.values())) == len(VIEWS)


def test_several_buildings_make_one_picture(missing: object, capsys: pytest.CaptureFixture[str]) -> None:
    status = run(["picture", "store.toml", "store.toml", "--size", "160x50"])
    said, error = capsys.readouterr()
    if "no graphics library" in error:
        missing(error)  # type: ignore[operator] # a function; fixtures carry no types
    assert (status, said) == (0, "Wrote out/picture.png\n")


def test_a_picture_goes_where_the_model_is(missing: object, capsys: pytest.CaptureFixture[str]) -> None:
    status = run(["picture", "store.toml", "--size", "80x50"])
    said, error = capsys.readouterr()
    if "no graphics library" in error:
        missing(error)  # type: ignore[operator] # a function; fixtures carry no types
    assert (status, said) == (0, "Wrote out/garden-store/picture.png\n")
    described = Path("out/garden-store/picture.png").read_bytes()
    assert run(["picture", "out/garden-store/model.step", "--size", "80x50", "--out", "again.png"]) == 0
    assert Path("again.png").read_bytes() == described


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (["picture", "store.toml", "--only", "chimney"], "nothing is called 'chimney' here"),
        (
            ["raise", "store.toml", "--without", "chimney"],
            "nothing is called 'chimney' here; there are: slab",
        ),
        (["raise", "store.toml", "--only", "slab", "--without", "slab"], "nothing is left of the building"),
        (["picture", "store.toml", "--close-up", "chimney"], "close-up: read 'chimney'"),
        (["picture", "store.toml", "--distance", "near"], "read 'near'; would do: a length"),
        (["picture", "store.toml", "--size", "0x0"], "read '0x0'; would do: 1600x1000"),
        (["picture", "store.toml", "--from", "heaven"], "'heaven' is not one of 'front left'"),
        (["schedule", "out/garden-store/model.stl"], "model.stl"),
        (["raise", "store.toml", "--out", "store.toml"], "store.toml"),
        (["raise", "store.toml", "--out", "store.toml/inside"], "store.toml"),
        (["picture", "store.toml", "--out", "out"], "out: is a folder"),
        (
            ["picture", "store.toml", "store.toml", "--findings"],
            "--findings and --close-up are of one building",
        ),
        (["picture", "store.toml", "--out", "no/such/folder.png"], "no/such/folder.png"),
    ],
)
def test_what_cannot_be_done_is_said_in_a_line(
    arguments: list[str], said: str, here: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    before = sorted(here.rglob("*"))
    assert run(arguments) == 2
    out, error = capsys.readouterr()
    assert out == ""
    assert said in error
    assert "Traceback" not in error
    assert sorted(here.rglob("*")) == before
    assert Path("store.toml").read_text(encoding="utf-8") == DESCRIPTION


def test_a_step_file_that_is_none_is_refused(capsys: pytest.CaptureFixture[str]) -> None:
    Path("fake.step").write_text("not a STEP file", encoding="utf-8")
    assert run(["schedule", "fake.step"]) == 2
    assert "fake.step: " in capsys.readouterr().err
    assert run(["schedule", "absent.step"]) == 2
    assert capsys.readouterr().err.splitlines() == ["absent.step: no such file or directory"]
