"""A cluster of two worker processes on this machine, one of them killed on the way."""

from __future__ import annotations

import socket
import subprocess
import sys
from collections.abc import Iterator
from contextlib import ExitStack
from pathlib import Path

import pytest
from ribwright.book.cluster import clustered
from ribwright.book.entry import entry
from ribwright.book.task import BUILT, Task
from ribwright.cli.main import run
from support.book_rows import BASE, laid_out

QUIET = {"stdout": subprocess.DEVNULL, "stderr": subprocess.DEVNULL}


def port() -> int:
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        return int(free.getsockname()[1])


def started(*arguments: str) -> subprocess.Popen[bytes]:
    return subprocess.Popen([sys.executable, "-m", *arguments], **QUIET)  # type: ignore[call-overload]


Cluster = tuple[str, list[subprocess.Popen[bytes]]]


@pytest.fixture(scope="module")
def cluster(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Cluster]:
    """The scheduler's address and its workers."""
    place = str(tmp_path_factory.mktemp("cluster"))
    address = f"tcp://127.0.0.1:{(number := port())}"
    with ExitStack() as all_of_it:

        def run_meanwhile(*arguments: str) -> subprocess.Popen[bytes]:
            process = all_of_it.enter_context(started(*arguments))
            all_of_it.callback(process.kill)
            return process

        run_meanwhile(
            "distributed.cli.dask_scheduler", "--host", "127.0.0.1", "--port", str(number), "--no-dashboard"
        )
        worker = ("distributed.cli.dask_worker", address, "--nthreads", "1", "--no-nanny", "--no-dashboard")
        workers = [run_meanwhile(*worker, "--local-directory", place) for _ in range(2)]
        wait_for(address, 2)
        yield address, workers


def wait_for(address: str, count: int) -> None:
    from distributed import Client  # noqa: PLC0415  # it takes a second to load

    with Client(address, timeout=60, set_as_default=False) as client:
        client.wait_for_workers(count, timeout=60)


def test_a_worker_lost_on_the_way_loses_nothing_and_rows_are_the_same(
    cluster: Cluster, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    address, workers = cluster
    monkeypatch.chdir(tmp_path)
    arguments = laid_out(tmp_path)
    tasks = [Task(BASE.replace('"8 ft"', f'"{feet} ft"'), "one", 10_000) for feet in range(8, 18)]
    rows = clustered(address, tasks)
    found = [next(rows)]
    workers[0].kill()
    found += rows
    assert sorted(task.text for task, _ in found) == sorted(task.text for task in tasks)
    assert {made.state for _, made in found} == {BUILT}
    task, made = found[-1]
    assert made.figures == entry(task).figures
    assert run([*arguments, "--out", "here", "--workers", "1"]) == 1
    assert run([*arguments, "--out", "there", "--scheduler", address]) == 1
    assert (tmp_path / "there" / "book.csv").read_bytes() == (tmp_path / "here" / "book.csv").read_bytes()


def test_an_address_where_nobody_answers_is_told(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.chdir(tmp_path)
    monkeypatch.setattr("ribwright.book.cluster.WAIT", 1)
    assert run([*laid_out(tmp_path), "--out", "book", "--scheduler", f"tcp://127.0.0.1:{port()}"]) == 2
    assert "no scheduler answers" in capsys.readouterr().err
