"""`ribwright many` on small buildings: figures, refusals, taking up again, files."""

from __future__ import annotations

import signal
import sqlite3
import subprocess
import sys
import time
from dataclasses import asdict
from pathlib import Path

import pytest
from ribwright.audit import audit
from ribwright.book.kept import NAME, kept_in
from ribwright.book.task import BUILT, FAILED, Entry
from ribwright.cli.main import run
from ribwright.errors import FileError
from ribwright.intake import parse
from ribwright.order.buying.order_list import order
from ribwright.order.buying.prices import priced, read_prices, total
from ribwright.order.lists.schedule import schedule
from ribwright.raising import raise_building
from ribwright.units import POUND
from support.book_rows import BASE, laid_out, rows


@pytest.fixture(scope="module")
def made(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder with a table and, in `book`, what two processes made of it."""
    here = tmp_path_factory.mktemp("many")
    arguments = laid_out(here)
    with pytest.MonkeyPatch.context() as patch:
        patch.chdir(here)
        assert run([*arguments, "--out", "book", "--workers", "2"]) == 1
    return here


def test_a_row_tells_what_the_building_is_and_costs(made: Path) -> None:
    model = raise_building(parse(BASE, "x")).model
    listed = schedule(model)
    wanted = priced(order(listed), read_prices(made / "prices.csv"))
    first = rows(made / "book")[0]
    assert (first["state"], first["said"], first["in_units"]) == ("built", "", "ft2 lb yd3")
    assert int(first["marks"]) == len({piece.mark for piece in model.pieces})
    assert int(first["sheets"]) == listed.count
    for name in ("members", "trims", "screws", "closures", "openings"):
        assert int(first[name]) == sum(item.count for item in listed.listed(name)) > 0
    assert float(first["steel_weight"]) == pytest.approx(listed.steel / POUND, abs=0.05)
    assert float(first["cost"]) == total(wanted)
    assert (int(first["lines"]), int(first["unpriced_lines"])) == (len(wanted.lines), len(wanted.unpriced))
    assert int(first["faults"]) == sum(finding.fault for finding in audit(model).findings) == 0


def test_every_row_is_there_in_order_and_one_that_cannot_be_built_says_why(made: Path) -> None:
    found = rows(made / "book")
    assert [row["row"] for row in found] == ["1", "2", "3", "4", "5"]
    assert [row["width"] for row in found] == ["", "12 ft", "3 ft", "", "9 ft"]
    assert [row["state"] for row in found] == ["built", "built", "refused", "built", "built"]
    unbraced = "Geometry, not engineering; local code governs; no bracing is drawn."
    assert [row["caution"] for row in found] == [unbraced, unbraced, "", unbraced, unbraced]
    assert found[2]["said"] == "width: read \"3 ft\"; at least 6' and at most 200'"
    assert found[2]["cost"] == found[2]["marks"] == ""
    assert found[3]["frame.bays"] == '["5 ft", "7 ft"]'
    assert len({row["description"] for row in found}) == 5


def test_a_second_run_makes_nothing_anew(
    made: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.chdir(made)
    before = [(made / "book" / name).read_bytes() for name in ("book.csv", "times.csv")]
    monkeypatch.setattr("ribwright.book.entry.entry", None)
    assert run([*laid_out(made), "--out", "book"]) == 1
    assert [(made / "book" / name).read_bytes() for name in ("book.csv", "times.csv")] == before
    assert "5 rows: 4 built, 1 refused" in capsys.readouterr().out


def test_a_killed_run_is_taken_up_again_and_gives_the_same(made: Path, tmp_path: Path) -> None:
    command = [sys.executable, "-c", "from ribwright.cli.start import main; main()"]
    arguments = [*command, *laid_out(tmp_path), "--out", "book", "--workers", "1"]
    base = tmp_path / "book" / NAME
    with subprocess.Popen(arguments, cwd=tmp_path, stdout=subprocess.DEVNULL) as process:
        while process.poll() is None and not kept(base):
            time.sleep(0.1)
        process.kill()
    done = kept(base)
    assert process.returncode == -signal.SIGKILL
    assert 0 < done < 5
    assert not (tmp_path / "book" / "book.csv").exists()
    assert subprocess.run(arguments, cwd=tmp_path, stdout=subprocess.DEVNULL, check=False).returncode == 1
    assert (tmp_path / "book" / "book.csv").read_bytes() == (made / "book" / "book.csv").read_bytes()


def kept(base: Path) -> int:
    """How many rows a run has put on the disk so far."""
    try:
        with sqlite3.connect(f"file:{base}?mode=ro&immutable=1", uri=True) as found:
            return int(found.execute("SELECT COUNT(*) FROM done").fetchone()[0])
    except sqlite3.Error:
        return 0


def test_each_buildings_files_come_where_they_are_asked_for(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    arguments = [*laid_out(tmp_path, "width\n9 ft\n"), "--out", "book", "--files", "--formats", "screws"]
    assert run(arguments) == 0
    (folder,) = (tmp_path / "book" / "buildings").iterdir()
    assert rows(tmp_path / "book")[0]["description"].startswith(folder.name)
    assert {"model.step", "order.csv", "screws.stl"} <= {file.name for file in folder.iterdir()}


WRONG = {
    "a base that is not there": (["many", "table.csv", "--base", "none.toml", "--out", "b"], "none.toml"),
    "a table that is not there": (["many", "none.csv", "--base", "base.toml", "--out", "b"], "none.csv"),
    "formats without files": (
        ["many", "table.csv", "--base", "base.toml", "--out", "b", "--formats", "screws"],
        "--formats needs --files",
    ),
    "a file for a folder": (["many", "table.csv", "--base", "base.toml", "--out", "base.toml"], "base.toml"),
}


@pytest.mark.parametrize(("arguments", "said"), WRONG.values(), ids=WRONG)
def test_what_is_wrong_is_said_before_anything_is_made(
    arguments: list[str],
    said: str,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
) -> None:
    monkeypatch.chdir(tmp_path)
    laid_out(tmp_path)
    assert run(arguments) == 2
    assert said in capsys.readouterr().err
    assert not (tmp_path / "b").exists()


def test_two_runs_do_not_work_in_one_folder(tmp_path: Path) -> None:
    with kept_in(tmp_path), pytest.raises(FileError, match="another run is writing here"), kept_in(tmp_path):
        pass


def test_what_is_kept_is_what_was_put_and_failures_are_tried_again(tmp_path: Path) -> None:
    good, bad = Entry(BUILT, figures={"cost": 12.5, "findings": "ü"}, seconds=0.25), Entry(FAILED, "lost")
    with kept_in(tmp_path) as kept:
        kept.put("a", good)
        kept.put("b", bad)
        assert kept.get("b") == bad
    with kept_in(tmp_path) as kept:
        found = kept.get("a")
        assert found and asdict(found) == asdict(good)
        assert kept.get("b") is None


def test_a_file_that_is_none_of_ours_is_told(tmp_path: Path) -> None:
    (tmp_path / NAME).write_bytes(b"no rows of ours" * 100)
    with pytest.raises(FileError, match=NAME), kept_in(tmp_path):
        pass
