"""Files that appear whole or not at all, whoever kills, fills or shares the folder."""

from __future__ import annotations

import errno
import os
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest
from ribwright.errors import FileError
from ribwright.exchange.atomic_files import whole_file, whole_folder
from ribwright.files import read_whole

OLD, NEW = b"old" * 1000, b"new" * 1000
NAMES = ("model.step", "model.stl", "schedule.csv")
POSIX = pytest.mark.skipif(sys.platform == "win32", reason="no locks and signals of this kind on Windows")


def fill(room: Path, data: bytes) -> None:
    for name in NAMES:
        (room / name).write_bytes(data)


def listing(folder: Path) -> dict[str, bytes]:
    return {path.name: path.read_bytes() for path in folder.iterdir()}


def test_a_run_appears_whole_in_folders_it_makes(tmp_path: Path) -> None:
    with whole_folder(tmp_path / "out" / "shop") as room:
        fill(room, NEW)
        assert [path for path in (tmp_path / "out" / "shop").iterdir() if path != room] == []
    assert listing(tmp_path / "out" / "shop") == dict.fromkeys(NAMES, NEW)


def test_old_files_stay_until_the_new_ones_are_complete(tmp_path: Path) -> None:
    fill(tmp_path, OLD)
    (tmp_path / "notes.txt").write_bytes(b"mine")
    with whole_folder(tmp_path) as room:
        fill(room, NEW)
        assert {name: (tmp_path / name).read_bytes() for name in NAMES} == dict.fromkeys(NAMES, OLD)
    assert listing(tmp_path) == {**dict.fromkeys(NAMES, NEW), "notes.txt": b"mine"}


@pytest.mark.parametrize("error", [KeyboardInterrupt, ValueError, FileError])
def test_a_run_that_fails_leaves_all_as_it_was(tmp_path: Path, error: type[BaseException]) -> None:
    (tmp_path / "there").mkdir()
    fill(tmp_path / "there", OLD)
    for folder in (tmp_path / "there", tmp_path / "new" / "folder"):
        with pytest.raises(error), whole_folder(folder) as room:
            fill(room, NEW)
            raise error("stop")
    assert listing(tmp_path / "there") == dict.fromkeys(NAMES, OLD)
    assert not (tmp_path / "new").exists()


def test_a_full_disk_is_said_in_one_line(tmp_path: Path) -> None:
    fill(tmp_path, OLD)
    with pytest.raises(FileError, match=r"^\S*: no space left on device$"), whole_folder(tmp_path) as room:
        fill(room, NEW)
        raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))
    assert listing(tmp_path) == dict.fromkeys(NAMES, OLD)


@pytest.mark.skipif(not Path("/dev/full").is_char_device(), reason="no device that is always full")
def test_a_device_that_is_full_is_said_in_one_line() -> None:
    with pytest.raises(FileError, match="no space left on device"), whole_file("/dev/full") as stream:
        stream.write(NEW)


def test_a_folder_that_is_a_file_or_lies_below_one(tmp_path: Path) -> None:
    (tmp_path / "file").write_bytes(OLD)
    for folder in (tmp_path / "file", tmp_path / "file" / "below"):
        with pytest.raises(FileError, match=r"^\S*file\S*: [^\n]+$"), whole_folder(folder):
            pytest.fail("there is no room")
    assert listing(tmp_path) == {"file": OLD}


@POSIX
def test_a_second_run_into_the_same_folder_is_refused(tmp_path: Path) -> None:
    with whole_folder(tmp_path) as room:
        fill(room, NEW)
        with pytest.raises(FileError, match="another run is writing here"), whole_folder(tmp_path):
            pytest.fail("two runs at once")
        assert sorted(path.name for path in room.iterdir()) == sorted(NAMES)
    assert listing(tmp_path) == dict.fromkeys(NAMES, NEW)
    with whole_folder(tmp_path) as room:
        fill(room, OLD)
    assert listing(tmp_path) == dict.fromkeys(NAMES, OLD)


RUN = """
import sys
from pathlib import Path
from ribwright.exchange.atomic_files import whole_folder
data = sys.argv[2].encode() * 100_000
with whole_folder(sys.argv[1]) as room:
    print("writing", flush=True)
    for name in ("model.step", "model.stl", "schedule.csv"):
        (room / name).write_bytes(data)
print("done", flush=True)
"""


@POSIX
@pytest.mark.parametrize("wait", [0.0, 0.001, 0.003, 0.01])
def test_killed_at_any_moment_what_lies_there_is_whole(tmp_path: Path, wait: float) -> None:
    folder = tmp_path / "out"
    subprocess.run([sys.executable, "-c", RUN, str(folder), "a"], check=True, stdout=subprocess.DEVNULL)
    with subprocess.Popen([sys.executable, "-c", RUN, str(folder), "b"], stdout=subprocess.PIPE) as run:
        assert run.stdout is not None
        run.stdout.readline()
        time.sleep(wait)
        run.send_signal(signal.SIGKILL)
    whole = {b"a" * 100_000, b"b" * 100_000}
    assert {(folder / name).read_bytes() for name in NAMES} <= whole
    with whole_folder(folder) as room:  # its lock went with it, and so does what it left
        assert list(room.iterdir()) == []
        fill(room, NEW)
    assert listing(folder) == dict.fromkeys(NAMES, NEW)


def test_a_single_file_appears_whole(tmp_path: Path) -> None:
    path = tmp_path / "model.step"
    path.write_bytes(OLD)
    with whole_file(path) as stream:
        stream.write(NEW)
        stream.flush()
        assert path.read_bytes() == OLD
    assert listing(tmp_path) == {"model.step": NEW}
    with pytest.raises(ZeroDivisionError), whole_file(path) as stream:
        stream.write(OLD)
        1 / 0  # noqa: B018 (the error is what is wanted)
    assert listing(tmp_path) == {"model.step": NEW}


GROWING = """
import os, signal, sys
from ribwright.exchange.atomic_files import whole_file
with whole_file(sys.argv[1]) as stream:
    stream.write(b"half")
    stream.flush()
    print(flush=True)
    sys.stdin.read()
"""


@POSIX
def test_what_a_killed_run_left_of_a_single_file_is_cleared_away_and_nothing_else(tmp_path: Path) -> None:
    command, path = [sys.executable, "-c", GROWING, str(tmp_path / "theirs")], tmp_path / "file"
    (tmp_path / ".mine-ribwright").write_bytes(OLD)
    with subprocess.Popen(command, stdin=subprocess.PIPE, stdout=subprocess.PIPE) as run:
        assert run.stdout is not None
        run.stdout.readline()
        with whole_file(path) as stream:
            stream.write(NEW)
        assert len(listing(tmp_path)) == 3  # the other run is still at work
        run.kill()
    with whole_file(path) as stream:
        stream.write(NEW)
    assert listing(tmp_path) == {"file": NEW, ".mine-ribwright": OLD}


@POSIX
def test_a_single_file_is_made_with_the_usual_rights(tmp_path: Path) -> None:
    (tmp_path / "usual").write_bytes(b"")
    with whole_file(tmp_path / "own") as stream:
        stream.write(NEW)
    assert (tmp_path / "own").stat().st_mode == (tmp_path / "usual").stat().st_mode


@POSIX
def test_a_link_stays_one_and_a_device_itself(tmp_path: Path) -> None:
    (tmp_path / "file").write_bytes(OLD)
    (tmp_path / "link").symlink_to(tmp_path / "file")
    with whole_file(tmp_path / "link") as stream:
        stream.write(NEW)
    assert (tmp_path / "link").is_symlink()
    assert (tmp_path / "file").read_bytes() == NEW
    with whole_file("/dev/null") as stream:
        stream.write(NEW)
    assert Path("/dev/null").is_char_device()


def test_a_single_file_that_cannot_be_there(tmp_path: Path) -> None:
    with (
        pytest.raises(FileError, match=r"nowhere\S*: no such file or directory$"),
        whole_file(tmp_path / "nowhere" / "x"),
    ):
        pytest.fail("there is no folder")
    with pytest.raises(FileError, match="is a folder"), whole_file(tmp_path):
        pytest.fail("it is a folder")


def test_only_plain_files_up_to_a_limit_are_read(tmp_path: Path) -> None:
    (tmp_path / "file").write_bytes(b"12345")
    assert read_whole(tmp_path / "file", 5) == b"12345"
    with pytest.raises(FileError, match="is larger than 0 MB"):
        read_whole(tmp_path / "file", 4)
    with pytest.raises(FileError, match="is not a plain file"):
        read_whole(tmp_path, 5)
