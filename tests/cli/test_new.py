"""`ribwright new`: what it writes, what it refuses, what it asks."""

from __future__ import annotations

import json
import os
import pty
import subprocess
import sys
from pathlib import Path

import pytest
from ribwright.cli.main import run
from ribwright.description import schema
from ribwright.intake import read, starters
from ribwright.layout import lay_out
from ribwright.layout.detailing import detailed
from ribwright.layout.detailing.beside_openings import RIBS, STRIPS
from ribwright.roles import Role

FOOT = 304.8


@pytest.fixture(autouse=True)
def here(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.chdir(tmp_path)
    return tmp_path


def test_it_writes_a_description_that_can_be_read(here: Path) -> None:
    assert run(["new", "my-shop"]) == 0
    assert listing(here) == ["my-shop.toml", "ribwright.schema.json"]
    assert read(Path("my-shop.toml")).name == "my-shop"


def test_the_ending_may_be_typed(here: Path) -> None:
    assert run(["new", "my-shop.toml"]) == 0
    assert listing(here) == ["my-shop.toml", "ribwright.schema.json"]


def test_it_says_what_nobody_gave(capsys: pytest.CaptureFixture[str]) -> None:
    assert run(["new", "barn", "--width", "24'", "--pitch", "4:12"]) == 0
    assert capsys.readouterr().out.splitlines() == [
        "Wrote barn.toml",
        "Wrote ribwright.schema.json",
        "Not given, so taken: units ft-in, length 40', eave height 10'",
        "Edit it, then: ribwright raise barn.toml",
    ]
    kept = Path("ribwright.schema.json")
    kept.write_text("a person's own", encoding="utf-8")
    assert run(["new", "other", "--units", "mm"]) == 0
    assert "taken: width 9000, length 15000, eave height 3600, pitch 10 deg" in capsys.readouterr().out
    assert kept.read_text(encoding="utf-8") == "a person's own"


def test_it_says_what_a_large_building_gets(capsys: pytest.CaptureFixture[str]) -> None:
    """Posts at thirds of 13 m, 4333.33, to whole 5 mm."""
    assert run(["new", "hall", "--units", "mm", "--width", "13 m"]) == 0
    said = "pitch 10 deg; gable posts at 4335, 8665; braces in end bays\n"
    assert said in capsys.readouterr().out
    assert read(Path("hall.toml")).frame.front_posts == (4335.0, 8665.0)
    assert run(["new", "long", "--length", "60 ft"]) == 0
    told = capsys.readouterr().out
    assert "pitch 3/12; braces in end bays\n" in told and "posts" not in told


def test_options_are_the_answers() -> None:
    options = ["--width", "24'", "--length", "36 ft", "--eave-height", "9' 6\"", "--pitch", "4:12"]
    assert run(["new", "barn", *options, "--overhead-doors", "2", "--walk-doors", "1"]) == 0
    building = read(Path("barn.toml"))
    sizes = (building.width, building.length, building.eave_height)
    assert sizes == pytest.approx((24 * FOOT, 36 * FOOT, 9.5 * FOOT), abs=1e-9)
    assert [opening.kind for opening in building.openings].count("overhead door") == 2
    assert [opening.kind for opening in building.openings].count("walk door") == 1


@pytest.mark.parametrize(
    "sizes",
    [
        ["--width", "24 ft", "--length", "36 ft"],
        ["--width", "60 ft", "--length", "100 ft", "--eave-height", "14 ft"],
        ["--units", "mm", "--width", "18 m", "--length", "30 m"],
        ["--width", "30 ft", "--length", "40 ft", "--like", "wainscot"],
    ],
    ids=["small", "large", "metric", "wainscot"],
)
@pytest.mark.parametrize("doors", [1, 2, 3])
def test_doors_stand_where_sheets_are_cut_well(sizes: list[str], doors: int) -> None:
    asked = ["--overhead-doors", str(doors), "--walk-doors", str(4 - doors)]
    assert run(["new", "barn", *sizes, *asked]) == 0
    building = read(Path("barn.toml"))
    assert len(building.openings) == 4
    assert lay_out(building).findings == ()
    assert [finding for finding in detailed(building) if finding.code in (*RIBS, *STRIPS)] == []


def test_a_large_building_is_begun_with_posts_and_braces() -> None:
    assert run(["new", "hall", "--width", "60 ft", "--length", "100 ft", "--walk-doors", "1"]) == 0
    hall = read(Path("hall.toml"))
    assert hall.frame.front_posts == hall.frame.back_posts == (15 * FOOT, 30 * FOOT, 45 * FOOT)
    assert {part.role for part in lay_out(hall).parts} > {Role.BRACE}
    assert run(["new", "shop", "--width", "30 ft", "--length", "40 ft"]) == 0
    shop = read(Path("shop.toml"))
    assert shop.frame.front_posts is None
    assert Role.BRACE not in {part.role for part in lay_out(shop).parts}


@pytest.mark.parametrize("starter", starters())
def test_every_starter_can_be_gone_on_from(starter: str) -> None:
    assert run(["new", "mine", "--like", starter]) == 0
    assert read(Path("mine.toml")).name == "mine"


def test_a_file_that_is_there_stays(capsys: pytest.CaptureFixture[str]) -> None:
    Path("mine.toml").write_text("kept", encoding="utf-8")
    assert run(["new", "mine"]) == 2
    assert Path("mine.toml").read_text(encoding="utf-8") == "kept"
    assert capsys.readouterr().err.splitlines() == [
        "mine.toml: is there already; choose another name, or write over it with --force"
    ]
    assert run(["new", "mine", "--force"]) == 0
    assert read(Path("mine.toml")).name == "mine"


def test_a_link_that_leads_nowhere_is_not_followed() -> None:
    Path("mine.toml").symlink_to("elsewhere")
    assert run(["new", "mine"]) == 2
    assert not Path("elsewhere").exists()


@pytest.mark.parametrize(
    "name", ["../mine", "a/b", "..", ".", ".hidden", "/mine", "-mine", "a\\b", "x" * 300, "a\nb", " "]
)
def test_a_name_cannot_lead_out_of_the_folder(
    name: str, here: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    outside = listing(here.parent)
    assert run(["new", "--", name]) == 2
    assert listing(here) == []
    assert listing(here.parent) == outside
    assert "Traceback" not in capsys.readouterr().err


def test_answers_that_make_no_building_are_refused(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert run(["new", "mine", "--width", "30", "--pitch", "steep"]) == 2
    error = capsys.readouterr().err
    assert "width: read " in error
    assert "pitch: read " in error
    assert listing(here) == []


def test_the_schema_is_written_for_editors() -> None:
    assert run(["new", "--schema"]) == 0
    assert json.loads(Path("ribwright.schema.json").read_text(encoding="utf-8")) == schema()


def test_on_a_terminal_it_asks_and_asks_again(here: Path) -> None:
    answers = ["", "mm", "nine", "9 m", "15 m", "3.6 m", "10 deg", "1", "0"]
    said = on_a_terminal(["new", "shed"], answers)
    assert said.count("Width") == 2  # "nine" is no length
    building = read(Path("shed.toml"))
    assert (building.width, building.length, building.eave_height, building.pitch) == (
        9000.0,
        15000.0,
        3600.0,
        10.0,
    )
    assert [opening.kind for opening in building.openings] == ["overhead door"]


def test_on_a_terminal_it_does_not_ask_what_was_answered() -> None:
    assert "Width" not in on_a_terminal(["new", "shed", "--like", "garage"], [])
    assert Path("shed.toml").exists()


def on_a_terminal(arguments: list[str], answers: list[str]) -> str:
    """What the command says when a person types the answers."""
    ours, theirs = pty.openpty()
    command = [
        sys.executable,
        "-c",
        f"from ribwright.cli.main import run; raise SystemExit(run({arguments!r}))",
    ]
    with subprocess.Popen(command, stdin=theirs, stdout=theirs, stderr=theirs) as process:
        os.close(theirs)
        os.write(ours, "".join(f"{answer}\n" for answer in answers).encode())
        said = b""
        while True:
            try:
                piece = os.read(ours, 4096)
            except OSError:  # the other end is closed
                break
            if not piece:
                break
            said += piece
    os.close(ours)
    assert process.returncode == 0, said.decode()
    return said.decode()


def listing(folder: Path) -> list[str]:
    return sorted(path.name for path in folder.iterdir())


def test_on_a_terminal_another_shape_is_asked_for(here: Path) -> None:
    answers = ["hip", "single-slope", "ft-in", "16 ft", "24 ft", "8 ft", "2/12", "0", "1"]
    said = on_a_terminal(["new", "store"], answers)
    assert "'hip' is not one of 'gable', 'single-slope'" in said
    building = read(here / "store.toml")
    assert (building.roof.shape, building.width) == ("single slope", 16 * 304.8)
    assert [opening.kind for opening in building.openings] == ["walk door"]


def test_a_carport_is_asked_for_no_doors(here: Path) -> None:
    on_a_terminal(["new", "port"], ["carport", "ft-in", "18 ft", "20 ft", "8 ft", "3/12"])
    building = read(here / "port.toml")
    assert (round(building.width, 6), len(building.open_walls), building.openings) == (5486.4, 4, ())
