"""`ribwright audit` from outside: what it prints, in which form, and its exit status."""

from __future__ import annotations

import csv
import io
import json
from pathlib import Path

import pytest
from ribwright.audit import audit
from ribwright.cli.main import run
from ribwright.exchange.step import read_step, write_step
from ribwright.heading import short
from support.planted import shed
from support.plants import drop, move

FILES = {
    "sound.step": lambda model: model,
    "faulty.step": lambda model: move("frame 2 left column", (-3.0, 0.0, 0.0))(drop("back 3")(model)),
}


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    here = tmp_path_factory.mktemp("audited")
    for name, change in FILES.items():
        write_step(change(shed()), here / name)
    return here


@pytest.fixture(autouse=True)
def here(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(folder)


def test_a_sound_model_measures_and_finds_nothing(capsys: pytest.CaptureFixture[str]) -> None:
    assert run(["audit", "sound.step"]) == 0
    said = capsys.readouterr().out
    assert said.startswith(f"Audit: {shed().name}\n{short(braced=False)}\nMeasured\n")
    assert "laps      front, side laps: 7, 2.000 in, " in said
    assert "overhang  left slope, overhang: 8, 2.000 in" in said
    assert said.endswith("Found: no faults\n")


def test_faults_come_after_what_was_measured_and_give_exit_1(capsys: pytest.CaptureFixture[str]) -> None:
    assert run(["audit", "faulty.step", "--only", "cover", "--only", "clash"]) == 1
    said = capsys.readouterr().out
    measured, found = said.split("Found: ")
    assert "laps" not in measured
    assert "frame 2 left column" in found and "[clash]" in found and "[uncovered]" in found
    assert int(found.split()[0]) == found.count("\n  ")


def test_json_and_csv_say_the_same_in_millimetres(capsysbinary: pytest.CaptureFixture[bytes]) -> None:
    assert run(["audit", "faulty.step", "--format", "json", "--only", "clash"]) == 1
    said = json.loads(capsysbinary.readouterr().out)
    (first, *_) = said["findings"]
    assert (first["code"], first["check"], first["fault"], first["unit"]) == ("clash", "clash", True, "mm3")
    assert len(first["at"]) == 3 and first["measured"] > first["limit"]
    assert run(["audit", "faulty.step", "--format", "csv", "--only", "clash"]) == 1
    rows = list(csv.DictReader(io.StringIO(capsysbinary.readouterr().out.decode("utf-8"))))
    faults = [row for row in rows if row["list"] == "fault"]
    assert [float(row["least"]) for row in faults] == [one["measured"] for one in said["findings"]]
    assert {row["list"] for row in rows} == {"job", "measured", "fault"}
    head = [row["what"] for row in rows if row["list"] == "job"]
    assert head == said["job"] == [f"Audit: {shed().name}", short(braced=False)]


def test_pictures_show_each_kind_once(missing: object, capsys: pytest.CaptureFixture[str]) -> None:
    status = run(["audit", "faulty.step", "--only", "cover", "--pictures", "found"])
    error = capsys.readouterr().err
    if "no graphics library" in error:
        missing(error)  # type: ignore[operator] # a function; fixtures carry no types
    assert status == 1
    pictures = sorted(Path("found").iterdir())
    assert [file.name[:13] for file in pictures] == ["01-uncovered-"]
    assert all(file.read_bytes().startswith(b"\x89PNG") for file in pictures)


def test_the_file_tells_what_memory_told() -> None:
    """Through STEP the same findings, to the last word."""
    model = FILES["faulty.step"](shed())
    assert audit(read_step("faulty.step")).findings == audit(model).findings


def test_raise_says_what_it_found(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """A strut too shallow for the head's screws: the sheets' edges hang loose."""
    text = 'width = "12 ft"\nlength = "12 ft"\neave_height = "8 ft"\npitch = "3/12"\n'
    strut = '[framing]\neave_strut = "cee 2x2x0.059"\n'
    (tmp_path / "hut.toml").write_text(text + strut, encoding="utf-8")
    assert run(["raise", str(tmp_path / "hut.toml"), "--out", str(tmp_path / "out")]) == 1
    assert "edge-loose" in capsys.readouterr().err
