"""The command at a terminal, in a pipe, and when it is stopped."""

from __future__ import annotations

import os
import pty
import subprocess
import sys
from pathlib import Path

import pytest
from ribwright.exchange.step import write_step
from support.small_model import small_model

pytestmark = pytest.mark.broad

COMMAND = [
    sys.executable,
    "-c",
    "from ribwright.cli.start import main; main()",
]


SMALL = 'width = "10 ft"\nlength = "12 ft"\neave_height = "8 ft"\npitch = "4/12"\n'


@pytest.fixture(autouse=True)
def here(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.chdir(tmp_path)
    return tmp_path


def test_progress_is_shown_on_a_terminal_and_wiped_at_the_end() -> None:
    ours, theirs = pty.openpty()
    with subprocess.Popen([*COMMAND, "schedule"], stdout=subprocess.DEVNULL, stderr=theirs) as process:
        os.close(theirs)
        shown = b""
        while True:
            try:
                shown += os.read(ours, 65536)
            except OSError:  # the other end is closed
                break
    os.close(ours)
    assert process.returncode == 0
    assert b"solids [" in shown
    assert shown.endswith(b"\r\x1b[K")


def test_in_a_pipe_there_is_no_progress() -> None:
    done = subprocess.run([*COMMAND, "schedule"], capture_output=True, check=True)
    assert done.stderr == b""
    assert b"\x1b" not in done.stdout


def test_a_reader_that_goes_away_is_no_error() -> None:
    with subprocess.Popen(
        [*COMMAND, "schedule", "--format", "json"], stdout=subprocess.PIPE, stderr=subprocess.PIPE
    ) as process:
        assert process.stdout is not None
        assert process.stderr is not None
        process.stdout.close()
        error = process.stderr.read()
        assert (process.wait(), error) == (0, b"")


STOPPED = """
import os, signal, sys

def stop(event, arguments):
    if event == {event!r} and str(arguments[0]).endswith({ending!r}):
        os.kill(os.getpid(), signal.{signal})

sys.addaudithook(stop)
from ribwright.cli.start import main
main()
"""
IMPORTS = [("import", "click"), ("import", "numpy"), ("import", "OCP.gp")]
WRITES = [("os.mkdir", ".ribwright-writing"), ("open", "model.stl"), ("open", "order.xlsx")]
MOMENTS = [("SIGINT", *moment) for moment in (*IMPORTS, *WRITES)]
MOMENTS += [("SIGTERM", *moment) for moment in (IMPORTS[0], *WRITES[1:])]


@pytest.mark.parametrize(("sent", "event", "what"), MOMENTS)
def test_a_run_that_is_stopped_says_so_and_leaves_nothing(
    here: Path, sent: str, event: str, what: str
) -> None:
    """The signal is sent by the run itself, when it comes to that moment: no clock is waited for."""
    (here / "small.toml").write_text(SMALL, encoding="utf-8")
    run = [sys.executable, "-c", STOPPED.format(event=event, ending=what, signal=sent), "raise", "small.toml"]
    done = subprocess.run(run, capture_output=True, check=False)
    status = {"SIGINT": 130, "SIGTERM": 143}[sent]
    assert (done.returncode, done.stdout, done.stderr) == (status, b"", b"\nStopped.\n")
    assert [path.name for path in here.iterdir()] == ["small.toml"]


@pytest.mark.parametrize("closed", ["<&-", ">&-", "2>&-", "<&- >&- 2>&-"])
def test_streams_that_came_closed_are_no_error(here: Path, closed: str) -> None:
    (here / "small.toml").write_text(SMALL, encoding="utf-8")
    for arguments in ("schedule small.toml", "check small.toml", "order small.toml --format csv", "new x"):
        run = f"{sys.executable} -c '{COMMAND[2]}' {arguments} {closed}"
        done = subprocess.run(["sh", "-c", run], capture_output=True, check=False)
        aside = [line for line in done.stderr.splitlines() if not line.startswith(b"Note: ")]
        assert (done.returncode, aside) == (0, []), arguments
        (here / "x.toml").unlink(missing_ok=True)


@pytest.mark.skipif(not Path("/dev/full").is_char_device(), reason="no device that is always full")
def test_a_full_device_is_said_in_a_line() -> None:
    with Path("/dev/full").open("wb") as full:
        done = subprocess.run([*COMMAND, "new", "--help"], stdout=full, stderr=subprocess.PIPE, check=False)
    assert (done.returncode, done.stderr) == (2, b"output: No space left on device\n")


def test_a_step_file_that_was_changed_is_read_with_a_note(here: Path) -> None:
    write_step(small_model(), here / "model.step")
    as_written = subprocess.run([*COMMAND, "schedule", "model.step"], capture_output=True, check=True)
    assert as_written.stderr == b""
    text = (here / "model.step").read_bytes()
    (here / "model.step").write_bytes(text.replace(b"'crimson'", b"'tomato'"))
    changed = subprocess.run([*COMMAND, "schedule", "model.step"], capture_output=True, check=True)
    assert changed.stderr == b"Note: model.step: was changed since ribwright wrote it\n"
    assert changed.stdout != as_written.stdout


def test_a_missing_system_library_is_named() -> None:
    """As on a bare container, where the kernel finds no libGL."""
    probe = (
        "import sys\n"
        "class Bare:\n"
        "    def find_spec(self, name, path=None, target=None):\n"
        "        if name == 'OCP':\n"
        "            raise ImportError('libGL.so.1: cannot open shared object file: no such file')\n"
        "sys.meta_path.insert(0, Bare())\n"
        "from ribwright.cli.main import run\n"
        "sys.exit(run(['raise']))\n"
    )
    done = subprocess.run([sys.executable, "-c", probe], capture_output=True, text=True, check=False)
    assert done.returncode == 2
    (line,) = done.stderr.splitlines()
    assert "libGL.so.1" in line
    assert "apt-get install libgl1" in line
