"""`ribwright check`: what is wrong, with its place, in plain text, in colour, or as JSON."""

from __future__ import annotations

import json
import os
import pty
import subprocess
import sys
from pathlib import Path

import pytest
from ribwright.cli.main import run

MISTAKEN = 'width = "30"\nlength = "40 ft"\neave_height = "10 ft"\npitch = "3/12"\ncolour = "red"\n'


@pytest.fixture(autouse=True)
def here(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.chdir(tmp_path)
    Path("mistaken.toml").write_text(MISTAKEN, encoding="utf-8")
    assert run(["new", "good"]) == 0
    return tmp_path


def test_a_good_description_can_be_built(capsys: pytest.CaptureFixture[str]) -> None:
    capsys.readouterr()
    assert run(["check", "good.toml"]) == 0
    said, error = capsys.readouterr()
    assert said.startswith("good.toml: can be built: ")
    notes = error.splitlines()
    assert all(note.startswith("Note: ") for note in notes)
    assert any("girts of back and front run free for 29'" in note for note in notes)


def test_every_mistake_is_said_with_its_place_and_what_would_do(capsys: pytest.CaptureFixture[str]) -> None:
    capsys.readouterr()
    assert run(["check", "mistaken.toml"]) == 2
    first, second, last = capsys.readouterr().out.splitlines()
    assert first.startswith("mistaken.toml: line 1, column 9: width: read ")
    assert second.startswith("mistaken.toml: line 5, column 1: colour: read ")
    assert last == "2 things to mend"


def test_json_says_the_same(capsys: pytest.CaptureFixture[str]) -> None:
    capsys.readouterr()
    assert run(["check", "--json", "mistaken.toml"]) == 2
    said = json.loads(capsys.readouterr().out)
    assert said["can_be_built"] is False
    assert [(problem["key"], problem["line"]) for problem in said["problems"]] == [
        ("width", 1),
        ("colour", 5),
    ]
    assert run(["check", "--json", "good.toml"]) == 0
    said = json.loads(capsys.readouterr().out)
    assert (said["file"], said["can_be_built"], said["problems"]) == ("good.toml", True, [])
    assert [(note["code"], note["fault"]) for note in said["findings"]] == [
        ("rip-on-rib", False),
        ("girt-span", False),
    ]
    assert run(["check", "--json", "absent.toml"]) == 2
    assert "no such file" in json.loads(capsys.readouterr().out)["problems"][0]["remedy"]


def test_colour_is_for_terminals_only() -> None:
    command = [sys.executable, "-c", "from ribwright.cli.main import run; run(['check', 'mistaken.toml'])"]
    piped = subprocess.run(command, capture_output=True, check=True).stdout
    assert b"\x1b[" not in piped
    ours, theirs = pty.openpty()
    with subprocess.Popen(command, stdin=theirs, stdout=theirs, stderr=theirs) as process:
        os.close(theirs)
        process.wait()
        shown = os.read(ours, 65536)
    os.close(ours)
    assert b"\x1b[" in shown
