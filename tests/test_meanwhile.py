"""Files written by a forked process, and what becomes of its errors."""

from __future__ import annotations

import os
import signal
import time
from pathlib import Path

import pytest
from ribwright.errors import FileError
from ribwright.meanwhile import meanwhile


def test_both_are_done_at_the_end(tmp_path: Path) -> None:
    with meanwhile(lambda: _write(tmp_path / "other", "later", wait=0.2)):
        (tmp_path / "own").write_text("now", encoding="utf-8")
        assert not (tmp_path / "other").exists()
    assert (tmp_path / "other").read_text(encoding="utf-8") == "later"


def test_an_error_for_a_person_arrives_as_one(tmp_path: Path) -> None:
    def refuse() -> None:
        raise FileError("no room")

    with pytest.raises(FileError, match=r"^no room$"), meanwhile(refuse):
        pass
    lost = tmp_path / "nowhere" / "file"
    with pytest.raises(FileError, match="nowhere/file: No such file"), meanwhile(lambda: _write(lost, "")):
        pass


def test_a_defect_arrives_with_its_traceback() -> None:
    traceback = r"(?s)Traceback.*ZeroDivisionError"
    with pytest.raises(RuntimeError, match=traceback), meanwhile(lambda: print(1 // 0)):
        pass


def test_a_long_message_does_not_block() -> None:
    def refuse() -> None:
        raise FileError("x" * 1_000_000)

    with pytest.raises(FileError, match=r"^x{1000}"), meanwhile(refuse):
        pass


def test_a_worker_that_is_killed_is_noticed() -> None:
    def end() -> None:
        os.kill(os.getpid(), signal.SIGKILL)

    with pytest.raises(FileError, match="stopped from outside"), meanwhile(end):
        pass


def test_a_body_that_fails_stops_the_work(tmp_path: Path) -> None:
    with pytest.raises(KeyboardInterrupt), meanwhile(lambda: _write(tmp_path / "other", "late", wait=0.5)):
        raise KeyboardInterrupt
    time.sleep(0.7)
    assert not (tmp_path / "other").exists()


def _write(path: Path, text: str, wait: float = 0.0) -> None:
    time.sleep(wait)
    path.write_text(text, encoding="utf-8")
