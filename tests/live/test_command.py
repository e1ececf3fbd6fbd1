"""`ribwright show --live` as it is typed: how it begins, what it refuses, how it ends."""

from __future__ import annotations

import signal
import sys
from pathlib import Path

import pytest
from ribwright.cli.main import run
from ribwright.intake import sample_text
from support.live import live


@pytest.fixture
def file(tmp_path: Path) -> Path:
    path = tmp_path / "my-shop.toml"
    path.write_text(sample_text(), encoding="utf-8")
    return path


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (["--live"], "--live follows a description; name its file"),
        (["model.step", "--live"], "--live follows a description; name its file"),
        (["no-such.toml", "--live"], "no-such.toml: no such file"),
    ],
)
def test_what_cannot_begin_is_said(
    arguments: list[str],
    said: str,
    file: Path,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
) -> None:
    monkeypatch.chdir(file.parent)
    assert run(["show", *arguments]) == 2
    assert said in capsys.readouterr().err
    assert [path.name for path in file.parent.iterdir()] == ["my-shop.toml"]


@pytest.mark.parametrize("package", ["aiohttp", "watchfiles", "tomlkit"])
def test_what_is_not_installed_is_said_in_one_line(
    package: str, file: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    for name in [
        name for name in sys.modules if name.split(".")[0] == package or name.startswith("ribwright.live")
    ]:
        monkeypatch.delitem(sys.modules, name)
    monkeypatch.setitem(sys.modules, package, None)
    assert run(["show", str(file), "--live"]) == 2
    said = capsys.readouterr().err
    assert said == f'--live: {package} is not here; python3 -m pip install "ribwright[live]" brings it\n'


@pytest.mark.parametrize("number", [signal.SIGINT, signal.SIGTERM])
def test_it_says_where_it_is_and_ends_when_told(number: signal.Signals, file: Path) -> None:
    """With nothing written beside the description, and in good order."""
    with live(file) as served:
        assert served.process.stdout
        assert served.process.stdout.readline() == "Save it and the page follows. Ctrl-C ends it.\n"
        served.process.send_signal(number)
        assert served.process.wait(30) == 0
        assert served.process.stdout.read() == "Ended.\n"
    assert [path.name for path in file.parent.iterdir()] == ["my-shop.toml"]


def test_one_that_cannot_be_built_yet_can_be_begun_with(file: Path) -> None:
    file.write_text('width = "30 parsecs"\n', encoding="utf-8")
    with live(file) as served:
        assert served.process.poll() is None
