"""Outputs killed, starved of disk, or written twice at once: what lies in the folder is whole.

`python tests/exchange/test_writes_are_whole.py 100` ends `ribwright raise` as often as one likes, by
TERM, KILL and INT in turn, at random moments from its start to its end, and counts what was left.
"""

from __future__ import annotations

import multiprocessing
import os
import random
import resource
import shutil
import signal
import subprocess
import sys
import tempfile
import time
from collections import Counter
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from multiprocessing.context import ForkProcess
from pathlib import Path

import pytest
from ribwright.errors import FileError
from ribwright.exchange.atomic_files import ROOM
from ribwright.intake import parse
from ribwright.outputs import USUAL, write_outputs
from ribwright.pieces import Model
from ribwright.raising import raise_building

pytestmark = pytest.mark.broad

STORE = """\
name = "store"
width = "10 ft"
length = "{}"
eave_height = "8 ft"
pitch = "4/12"
"""
OLD, NEW = STORE.format("12 ft"), STORE.format("16 ft")
RUN = "from ribwright.cli.start import main; main()"
KILLS = 8
STEP = USUAL[0].name
SOON = 30.0  # s; what is waited for takes milliseconds

Files = dict[str, bytes]


def files(folder: Path) -> Files:
    """Everything in a folder, but for what the next run clears away."""
    return {path.name: path.read_bytes() for path in folder.iterdir() if path.name != ROOM}


def write(model: Model, folder: Path) -> None:
    write_outputs(model, folder)


class Sets:
    """A folder in which an old set of files lies, and a new one is being written over it."""

    def __init__(self, here: Path) -> None:
        self.here, self.out = here, here / "out"
        self.old_model, self.new_model = (raise_building(parse(text, "store")).model for text in (OLD, NEW))
        write(self.old_model, here / "old")
        start = time.perf_counter()
        write(self.new_model, here / "new")
        self.seconds = time.perf_counter() - start
        self.old, self.new = files(here / "old"), files(here / "new")

    def lay(self) -> None:
        """The old set, alone in the folder."""
        shutil.rmtree(self.out, ignore_errors=True)
        shutil.copytree(self.here / "old", self.out)

    def lying(self) -> str:
        """Which set lies there: "old", "new", or what else."""
        found = files(self.out)
        if found in (self.old, self.new):
            return "old" if found == self.old else "new"
        cut = [name for name, data in found.items() if data not in (self.old.get(name), self.new.get(name))]
        return f"neither: {cut}" if cut else "some of both"

    @contextmanager
    def writing(self) -> Iterator[ForkProcess]:
        """A process that writes the new set over the old one."""
        self.lay()
        process = multiprocessing.get_context("fork").Process(target=write, args=(self.new_model, self.out))
        process.start()
        try:
            yield process
        finally:
            process.kill()
            process.join()


@pytest.fixture(scope="module")
def sets(tmp_path_factory: pytest.TempPathFactory) -> Sets:
    return Sets(tmp_path_factory.mktemp("whole"))


def command(here: Path, text: str, out: Path) -> list[str]:
    """`ribwright raise`."""
    description = here / "store.toml"
    description.write_text(text, encoding="utf-8")
    return [sys.executable, "-c", RUN, "raise", str(description), "--out", str(out)]


def test_equal_descriptions_give_equal_files_in_every_process(sets: Sets, tmp_path: Path) -> None:
    assert sets.old.keys() == sets.new.keys() == {output.name for output in USUAL}
    assert all(sets.old[name] != sets.new[name] for name in sets.old)
    environment = {**os.environ, "PYTHONHASHSEED": "7"}
    subprocess.run(
        command(tmp_path, OLD, tmp_path / "out"), check=True, env=environment, stdout=subprocess.DEVNULL
    )
    again = files(tmp_path / "out")
    assert [name for name in sets.old if again.get(name) != sets.old[name]] == []


LINUX = pytest.mark.skipif(sys.platform != "linux", reason="needs processes that fork, and their list")


@LINUX
@pytest.mark.parametrize("seed", range(KILLS))
def test_killed_at_a_random_moment_it_leaves_the_old_set_or_the_new(sets: Sets, seed: int) -> None:
    with sets.writing():
        time.sleep(random.Random(seed).uniform(0.0, 1.2) * sets.seconds)
    assert sets.lying() in ("old", "new")


def wait_until(done: Callable[[], object], otherwise: str) -> None:
    end = time.monotonic() + SOON
    while not done():
        assert time.monotonic() < end, otherwise
        time.sleep(0.001)


def children(process: int | None) -> list[int]:
    return [int(n) for n in Path(f"/proc/{process}/task/{process}/children").read_text("ascii").split()]


def alive(process: int) -> bool:
    """Whether a process runs; one that has ended may still wait to be reaped."""
    with suppress(FileNotFoundError, ProcessLookupError):
        return Path(f"/proc/{process}/stat").read_text("ascii").rpartition(") ")[2][0] not in "ZX"
    return False


def kill_while_it_writes(sets: Sets) -> None:
    """And wait until the process that writes its STEP file has ended too."""
    with sets.writing() as process:
        wait_until(lambda: children(process.pid), "nothing is written")
        (writer,) = children(process.pid)
    wait_until(lambda: not alive(writer), "the writer lives on")


@LINUX
def test_killed_while_it_writes_it_takes_its_writer_along(sets: Sets) -> None:
    """Or the process for the STEP file would write on to its end, and hold the folder's lock so long."""
    kill_while_it_writes(sets)
    assert (sets.out / ROOM).is_dir()
    assert not (sets.out / ROOM / STEP).exists()
    assert sets.lying() == "old"


@LINUX
def test_what_a_killed_run_left_is_cleared_away_by_the_next(sets: Sets) -> None:
    kill_while_it_writes(sets)
    (sets.out / ROOM / "model.obj").write_bytes(b"of another version")
    write(sets.new_model, sets.out)
    assert sets.lying() == "new"
    assert not (sets.out / ROOM).exists()


@LINUX
def test_a_second_run_into_the_folder_is_told_so(sets: Sets) -> None:
    with sets.writing() as process:
        wait_until((sets.out / ROOM).is_dir, "nothing is written")
        os.kill(process.pid or 0, signal.SIGSTOP)
        with pytest.raises(FileError, match=r"out: another run is writing here; wait until it is done$"):
            write(sets.old_model, sets.out)
        os.kill(process.pid or 0, signal.SIGCONT)
        process.join(SOON)
        assert process.exitcode == 0
    assert sets.lying() == "new"


@contextmanager
def largest_file(size: int) -> Iterator[None]:
    """While no file of this process and its children may grow larger than `size` bytes."""
    soft, hard = resource.getrlimit(resource.RLIMIT_FSIZE)
    resource.setrlimit(resource.RLIMIT_FSIZE, (size, hard))
    try:
        yield
    finally:
        resource.setrlimit(resource.RLIMIT_FSIZE, (soft, hard))


@pytest.mark.parametrize("name", [output.name for output in USUAL])
def test_a_file_that_may_not_grow_leaves_the_old_set(sets: Sets, name: str) -> None:
    """One byte less than this file needs: it, and all that are larger, cannot be finished."""
    sets.lay()
    with largest_file(len(sets.new[name]) - 1), pytest.raises(FileError) as refused:
        write(sets.new_model, sets.out)
    assert str(refused.value).lower().endswith(": file too large")
    assert "\n" not in str(refused.value)
    assert sets.lying() == "old"
    assert not (sets.out / ROOM).exists()


@pytest.fixture
def small_disk(tmp_path: Path) -> Iterator[Path]:
    """A disk of 300 kB, where this user may mount one."""
    disk = tmp_path / "disk"
    disk.mkdir()
    mount = shutil.which("mount") or "false"
    mounted = subprocess.run(
        [mount, "-t", "tmpfs", "-o", "size=300k", "tmpfs", str(disk)], check=False, capture_output=True
    )
    if mounted.returncode:
        pytest.skip("this user may not mount a disk that can be filled")
    yield disk
    subprocess.run(["umount", "-l", str(disk)], check=True)


def test_a_full_disk_is_said_in_a_line_and_leaves_nothing(small_disk: Path) -> None:
    out = small_disk / "out"
    out.mkdir()
    (out / STEP).write_bytes(b"mine")
    done = subprocess.run(command(small_disk, NEW, out), check=False, capture_output=True, text=True)
    assert (done.returncode, done.stdout, done.stderr.count("\n")) == (2, "", 1)
    assert done.stderr.lower().endswith(": no space left on device\n")
    assert files(out) == {STEP: b"mine"}
    assert not (out / ROOM).exists()


def test_a_folder_in_the_way_of_one_file_keeps_all_from_being_moved(sets: Sets) -> None:
    sets.lay()
    name = max(sets.old)  # the last to be moved
    (sets.out / name).unlink()
    (sets.out / name / "inside").mkdir(parents=True)
    with pytest.raises(FileError, match=f"{name}: is a folder, not a file$"):
        write(sets.new_model, sets.out)
    shutil.rmtree(sets.out / name)
    assert files(sets.out) == {kept: data for kept, data in sets.old.items() if kept != name}


@LINUX
@pytest.mark.parametrize("folder", ["/proc", "/proc/new", "/dev/null", "/dev/null/new"])
def test_where_nobody_may_write_it_is_said_in_a_line(sets: Sets, folder: str) -> None:
    with pytest.raises(FileError, match=rf"^{folder}: [^\n]+$"):
        write(sets.new_model, Path(folder))


def killed(sets: Sets, number: signal.Signals, after: float) -> str:
    """What a run is found to have left, sent this signal after so long; "" for one that was done before."""
    sets.lay()
    run = command(sets.here, NEW, sets.out)
    with subprocess.Popen(run, stdout=subprocess.DEVNULL, stderr=subprocess.PIPE) as process:
        with suppress(subprocess.TimeoutExpired):
            process.wait(after)
            return ""
        process.send_signal(number)
        try:
            said = process.communicate(timeout=10.0)[1]
        except subprocess.TimeoutExpired:
            process.kill()
            return "a run that hangs"
    if number != signal.SIGKILL and (sets.out / ROOM).exists():
        return "a room that is not cleared away"
    if b"Traceback" in said and b"ribwright" in said:  # before it is loaded it can't say anything else
        return "a traceback"
    return sets.lying()


def main(kills: int) -> int:
    """Ends the command at random moments; the status is 1 when it left anything but a whole set."""
    with tempfile.TemporaryDirectory() as folder:
        sets, seen, chance = Sets(Path(folder)), Counter[tuple[str, str]](), random.Random(0)
        start = time.perf_counter()
        subprocess.run(command(sets.here, NEW, sets.here / "first"), check=True, stdout=subprocess.DEVNULL)
        seconds = time.perf_counter() - start
        while seen.total() < kills:
            number = (signal.SIGTERM, signal.SIGKILL, signal.SIGINT)[seen.total() % 3]
            left = killed(sets, number, chance.uniform(0.0, seconds))
            seen.update([(number.name, left)] if left else [])
    print(*(f"{count:4} {name} left {what}" for (name, what), count in sorted(seen.items())), sep="\n")
    return int(not {what for _, what in seen} <= {"old", "new"})


if __name__ == "__main__":
    sys.exit(main(int(sys.argv[1]) if len(sys.argv) > 1 else 100))
