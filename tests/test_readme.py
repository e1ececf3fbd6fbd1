"""The README does what it says: every command in it runs, every line of output in it is printed."""

from __future__ import annotations

import io
import re
import shlex
import tomllib
from contextlib import redirect_stdout
from importlib import metadata
from itertools import pairwise
from pathlib import Path

import pytest
from ribwright.cli.main import run
from ribwright.outputs import ON_REQUEST, USUAL, Output
from support.sample_building import sample_model

ROOT = Path(__file__).parents[1]
README = (ROOT / "README.md").read_text(encoding="utf-8")
BLOCKS = re.findall(r"^```(\w+)\n(.*?)^```$", README, re.MULTILINE | re.DOTALL)


def test_what_comes_out_is_what_raise_writes() -> None:
    rows = [f"| `{output.name}` | {output.what} | {output.opens} |" for output in USUAL]
    assert "\n".join(["| file | what it is | what opens it |", "| --- | --- | --- |", *rows, ""]) in README


EXTRAS = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"][
    "optional-dependencies"
]


def brought(output: Output) -> str:
    """The one package of the extra that is called as the output's word; "nothing" for one without."""
    if not output.needs:
        return "nothing"
    (requirement,) = EXTRAS[output.word]
    return re.split(r"[<>=]", requirement)[0]


def test_what_comes_on_request_is_what_can_be_asked_for() -> None:
    rows = [
        f"| `{one.word}` | `{one.name}` | {one.what} | {one.opens} | {brought(one)} |" for one in ON_REQUEST
    ]
    head = ["| word | file | what it is | what opens it | needs |", "| --- | --- | --- | --- | --- |"]
    assert "\n".join([*head, *rows, ""]) in README


def test_the_extras_bring_what_the_formats_need() -> None:
    for output in ON_REQUEST:
        if output.needs:
            files = metadata.files(brought(output)) or []
            assert output.needs in {path.parts[0].removesuffix(".py") for path in files}


def test_the_test_command_is_the_one_that_is_checked() -> None:
    checks = (ROOT / ".ci" / "run").read_text(encoding="utf-8")
    commands = [line for kind, text in BLOCKS if kind == "console" for line in text.splitlines()]
    assert "python3 -m pytest" in commands
    assert "\npython3 -m pytest --all\n" in checks


(TWELVE,) = (text for kind, text in BLOCKS if kind == "toml")
WALKS = [
    (text, after if kind_after == "text" else "")
    for (kind, text), (kind_after, after) in pairwise([*BLOCKS, ("", "")])
    if kind == "console"
]
"""What is typed at once, and what is shown of its output."""


@pytest.fixture(scope="module")
def desk(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder with the twelve lines in it, raised."""
    folder = tmp_path_factory.mktemp("desk")
    (folder / "my-shop.toml").write_text(TWELVE, encoding="utf-8")
    with pytest.MonkeyPatch.context() as there:
        there.chdir(folder)
        assert run(["raise", "my-shop.toml"]) == 0
    return folder


def test_twelve_lines_are_enough() -> None:
    assert len(TWELVE.splitlines()) == 12


@pytest.mark.broad
@pytest.mark.parametrize(("typed", "shown"), WALKS, ids=[typed.splitlines()[0] for typed, _ in WALKS])
def test_a_stranger_can_follow_it(
    typed: str,
    shown: str,
    desk: Path,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
    missing: object,
) -> None:
    """A new description is begun in an empty folder."""
    monkeypatch.chdir(tmp_path if "ribwright new " in typed else desk)
    said = "".join(_done(line, capsys, missing) for line in typed.splitlines())
    assert set(shown.splitlines()) <= set(said.splitlines())


@pytest.mark.broad
def test_what_is_typed_in_python_works(desk: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(desk)
    (text,) = (text for kind, text in BLOCKS if kind == "python")
    names: dict[str, object] = {}
    exec(compile(text, "README", "exec"), names)
    assert len(names["columns"]) >= 8  # type: ignore[arg-type] # a list, as the README says


def _done(line: str, capsys: pytest.CaptureFixture[str], missing: object) -> str:
    """What a command line prints. Those that are no ribwright commands are CI's to run."""
    program, *arguments = shlex.split(line)
    if program != "ribwright":
        assert line.startswith("python3 -m ")
        return ""
    status = run(arguments)
    said, error = capsys.readouterr()
    if "no graphics library" in error:
        missing(error)  # type: ignore[operator] # a function; fixtures carry no types
    assert status == 0, line
    assert all(said_aside.startswith("Note: ") for said_aside in error.splitlines()), error
    return said


def test_the_sample_kept_in_out_is_what_the_sample_gives() -> None:
    written = io.TextIOWrapper(io.BytesIO(), encoding="utf-8", newline="")
    with redirect_stdout(written):
        assert run(["schedule", "--format", "csv"]) == 0
    written.seek(0)
    assert (ROOT / "out" / "sample" / "schedule.csv").read_bytes() == written.buffer.read()


def test_the_samples_bodies_are_as_many_as_is_said() -> None:
    screws, bodies = re.findall(r"([\d,]+) of the sample's ([\d,]+) bodies", README)[0]
    counts = [(piece.role.endswith("screw"), piece.count) for piece in sample_model().pieces]
    assert int(bodies.replace(",", "")) == sum(count for _, count in counts)
    assert int(screws.replace(",", "")) == sum(count for is_screw, count in counts if is_screw)


def test_the_sample_is_small() -> None:
    files = {file.name: file.stat().st_size for file in (ROOT / "out" / "sample").iterdir()}
    assert set(files) == {"schedule.csv", "picture.png", "page.png", "shapes.png"}
    assert sum(files.values()) < 600_000
