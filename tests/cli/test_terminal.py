"""The command at a terminal, in a pipe, and when it is stopped."""

from __future__ import annotations

import os
import pty
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest
from ribwright.exchange.step import write_step
from support.small_model import small_model

COMMAND = [
    sys.executable,
    "-c",
    "import sys; from ribwright.cli.main import run; sys.exit(run(sys.argv[1:]))",
]


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


def test_a_run_that_is_stopped_leaves_nothing_half_written(here: Path) -> None:
    with subprocess.Popen([*COMMAND, "raise"], stdout=subprocess.PIPE, stderr=subprocess.PIPE) as process:
        limit = time.monotonic() + 60.0
        while not list(here.glob("out/workshop/.*")) and process.poll() is None and time.monotonic() < limit:
            time.sleep(0.005)  # until it has begun to write
        process.send_signal(signal.SIGINT)
        said, error = process.communicate()
    assert (process.returncode, said, error.decode().split()) == (130, b"", ["Stopped."])
    assert list(here.iterdir()) == []


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
