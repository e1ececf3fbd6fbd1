"""Whatever is typed: exit status 2, what is wrong in a few plain lines, nothing written."""

from __future__ import annotations

import os
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from ribwright.cli.main import run


@pytest.fixture(autouse=True)
def here(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.chdir(tmp_path)
    (tmp_path / "folder").mkdir()
    (tmp_path / "empty.toml").touch()
    (tmp_path / "binary.toml").write_bytes(bytes(range(256)))
    (tmp_path / "dangling.toml").symlink_to("nowhere.toml")
    os.mkfifo(tmp_path / "pipe.toml")
    return tmp_path


@pytest.mark.parametrize("command", ["raise", "check", "schedule", "picture"])
@pytest.mark.parametrize(
    "file",
    [
        "absent.toml",
        "folder",
        "empty.toml",
        "binary.toml",
        "dangling.toml",
        "pipe.toml",
        "",
        "x" * 5000,
        "a\udcffb",
    ],
)
def test_a_file_that_is_no_description(
    command: str, file: str, here: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    before = listing(here)
    assert run([command, file]) == 2
    said = "".join(capsys.readouterr())
    assert said.strip()
    assert "Traceback" not in said
    assert listing(here) == before


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        ([], "Usage: ribwright"),
        (["build"], "No such command 'build'"),
        (["raise", "--fast"], "No such option"),
        (["raise", "a.toml", "b.toml"], "unexpected extra argument"),
        (["check"], "Missing argument 'FILE'"),
        (["new"], "Missing argument 'NAME'"),
        (["new", "mine", "--like", "castle"], "'castle' is not one of"),
        (["new", "mine", "--walk-doors", "-1"], "-1 is not in the range"),
        (["schedule", "--format", "pdf"], "'pdf' is not one of"),
    ],
)
def test_a_command_that_is_mistyped(
    arguments: list[str], said: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run(arguments) == 2
    assert said in capsys.readouterr().err


HUGE = """width = "200 ft"
length = "1000 ft"
eave_height = "14 ft"
pitch = "3/12"
framing = { girt_spacing = "1 ft", purlin_spacing = "1 ft", stock = ["110 ft"] }
"""


@pytest.mark.parametrize("command", ["raise", "check", "check --json", "schedule", "order", "picture"])
def test_a_building_of_too_many_pieces_is_refused_at_once(
    command: str, here: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (here / "huge.toml").write_text(HUGE, encoding="utf-8")
    before = listing(here)
    assert run([*command.split(), "huge.toml"]) == 2
    assert "the limit is" in "".join(capsys.readouterr())
    assert listing(here) == before


def test_the_limit_can_be_set(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert run(["new", "small", "--like", "studio"]) == 0
    assert run(["check", "small.toml", "--pieces", "1000"]) == 2
    assert "the limit is 1,000" in capsys.readouterr().err
    assert run(["check", "small.toml", "--pieces", "2000"]) == 0


@settings(suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(st.lists(st.text(st.characters(exclude_characters="\0"), max_size=12), max_size=3))
def test_anything_at_all(here: Path, words: list[str]) -> None:
    assert run(["check", "--", *words]) == 2
    assert run(["new", *words]) in {0, 2}
    assert not (here.parent / "out").exists()


def listing(folder: Path) -> list[str]:
    return sorted(path.name for path in folder.iterdir())
