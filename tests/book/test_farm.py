"""Forked processes: every task comes back once, also where a process is lost, grows, or the run is left."""

from __future__ import annotations

import os
import signal
import time
from collections.abc import Iterator

import pytest
from ribwright.book.farm import TRIES, farmed
from ribwright.book.task import BUILT, FAILED, Entry, Task

MUCH = 2.0**40


def tasks(*texts: str) -> Iterator[Task]:
    return (Task(text, "one", 1) for text in texts)


def process(task: Task) -> Entry:
    """An entry that tells which process made it."""
    return Entry(BUILT, figures={"text": task.text, "process": os.getpid()})


def test_each_task_comes_back_once() -> None:
    texts = [str(n) for n in range(40)]
    found = list(farmed(process, tasks(*texts), 3, MUCH))
    assert sorted(task.text for task, _ in found) == sorted(texts)
    assert all(entry.figures["text"] == task.text for task, entry in found)
    assert len({entry.figures["process"] for _, entry in found}) <= 3
    assert os.getpid() not in {entry.figures["process"] for _, entry in found}


def test_a_lost_process_loses_nothing(tmp_path: object) -> None:
    mark = f"{tmp_path}/was here"

    def once(task: Task) -> Entry:
        if task.text == "5":
            try:
                os.close(os.open(mark, os.O_CREAT | os.O_EXCL))
            except FileExistsError:
                return process(task)
            os.kill(os.getpid(), signal.SIGKILL)
        return process(task)

    found = list(farmed(once, tasks(*map(str, range(10))), 2, MUCH))
    assert sorted(task.text for task, _ in found) == [str(n) for n in range(10)]
    assert {entry.state for _, entry in found} == {BUILT}


def test_a_row_that_ends_its_process_each_time_says_so(tmp_path: object) -> None:
    def deadly(task: Task) -> Entry:
        if task.text == "bad":
            with open(f"{tmp_path}/tries", "a") as stream:  # noqa: PTH123  # what the processes share
                stream.write("x")
            os.kill(os.getpid(), signal.SIGKILL)
        return process(task)

    found = {task.text: entry for task, entry in farmed(deadly, tasks("a", "bad", "b"), 2, MUCH)}
    assert {text: entry.state for text, entry in found.items()} == {"a": BUILT, "bad": FAILED, "b": BUILT}
    assert "lost 3 times" in found["bad"].said
    with open(f"{tmp_path}/tries") as stream:  # noqa: PTH123
        assert stream.read() == "x" * TRIES


def test_a_process_that_has_grown_is_followed_by_another() -> None:
    found = list(farmed(process, tasks(*"abcdef"), 1, memory=1))
    assert [task.text for task, _ in found] == list("abcdef")
    assert len({entry.figures["process"] for _, entry in found}) == 6


def test_leaving_ends_every_process() -> None:
    def slow(task: Task) -> Entry:
        time.sleep(0 if task.text == "quick" else 60)
        return process(task)

    rows = farmed(slow, tasks("quick", "slow", "slow"), 2, MUCH)
    _, entry = next(rows)
    rows.close()  # type: ignore[attr-defined]  # it is a generator
    with pytest.raises(ProcessLookupError):
        os.kill(int(entry.figures["process"] or 0), 0)
    with pytest.raises(ChildProcessError):
        os.waitpid(-1, os.WNOHANG)
