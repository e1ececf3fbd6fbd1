"""Files that appear whole or not at all.

What is written goes into a hidden neighbour first, is flushed to the disk, and is then moved into
place. Old files stay until the new ones are complete; a process killed at any moment leaves whole
files, and at most a hidden neighbour that the next run clears away, if no lock says that it is still
at work. Moving a set takes a moment; killed right in it, a process leaves new files beside old ones,
each whole; a signal that may wait (INT, TERM) waits so long.
"""

from __future__ import annotations

import os
import shutil
import sys
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path
from typing import BinaryIO

from ..errors import FileError
from ..files import said_plainly
from ..meanwhile import held

if sys.platform != "win32":
    import fcntl

ROOM = ".ribwright-writing"  # where the files of a run grow, in the folder they are for
Target = str | Path | BinaryIO


@contextmanager
def whole_folder(folder: str | Path) -> Iterator[Path]:
    """A room for the files of one run; on leaving without an error they are moved into `folder`.

    Yields the room, a folder to write plain files into. Files of other names in `folder` stay as
    they are. Raises FileError, in one line, when the folder cannot be written, when another run is
    writing into it, or when the disk is full; whatever is raised, nothing half-written is left.
    """
    folder = Path(folder)
    with said_plainly(folder):
        made = _make(folder)
        try:
            with _lock(folder):
                yield from _filled(folder)
        except BaseException:
            _unmake(made)
            raise


def _filled(folder: Path) -> Iterator[Path]:
    """The room, emptied into the folder if the caller comes back without an error."""
    room = folder / ROOM
    shutil.rmtree(room, ignore_errors=True)  # of a run that was killed; the lock says it is over
    room.mkdir()
    try:
        yield room
        files = sorted(room.iterdir())
        for file in files:
            _refuse_folder(folder / file.name)
            _flush(file)
        with held():
            for file in files:
                file.replace(folder / file.name)
        _flush(folder)
    finally:
        shutil.rmtree(room, ignore_errors=True)


@contextmanager
def whole_file(target: Target) -> Iterator[BinaryIO]:
    """A binary stream whose bytes become the file `target` when all is written without an error.

    A stream given as target is handed on as it is; a device or a pipe is written straight into, and
    a link stays one. Raises FileError as `whole_folder` does.
    """
    if not isinstance(target, str | Path):
        yield target
        return
    path = Path(target)
    with said_plainly(path):
        _refuse_folder(path)
        if path.exists() and not path.is_file():
            with path.open("wb") as stream:
                yield stream
            return
        path = path.resolve()
        _clear_away(path.parent)
        handle, growing = _growing(path.parent)
        try:
            with os.fdopen(handle, "wb") as stream:
                yield stream
                stream.flush()
                os.fsync(handle)
                growing.chmod(0o666 & ~_umask())  # mkstemp makes files for their owner alone
                growing.replace(path)
        finally:
            growing.unlink(missing_ok=True)


def _growing(folder: Path) -> tuple[int, Path]:
    """A new file, open and locked, that becomes another's when it is complete."""
    while True:
        handle, name = tempfile.mkstemp(prefix=".", suffix=ROOM, dir=folder)
        _locked(handle, wait=True)
        if Path(name).exists():  # between the two another run may have taken it for one that was left
            return handle, Path(name)
        os.close(handle)


def _clear_away(folder: Path) -> None:
    """Removes the growing files of runs that were killed: those whose lock is free."""
    for left in folder.glob(f".*{ROOM}"):
        if left.is_file() and not left.is_symlink():
            with suppress(OSError), left.open("rb") as stream:
                if _locked(stream.fileno()):
                    left.unlink()


@contextmanager
def _lock(folder: Path) -> Iterator[None]:
    """Keeps other runs out of a folder. The system lets go of the lock when a process ends.

    On Windows, and on file systems that know no locks, runs are not kept apart.
    """
    if sys.platform == "win32":
        yield
        return
    handle = os.open(folder, os.O_RDONLY)
    try:
        _take(handle, folder)
        yield
    finally:
        os.close(handle)


def _take(handle: int, folder: Path) -> None:
    if sys.platform != "win32":
        try:
            fcntl.flock(handle, fcntl.LOCK_EX | fcntl.LOCK_NB)
        except BlockingIOError as error:
            raise FileError(f"{folder}: another run is writing here; wait until it is done") from error
        except OSError:
            return  # a file system without locks


def _locked(handle: int, *, wait: bool = False) -> bool:
    """Locks an open file; False where another run has it locked, or the system knows no locks."""
    if sys.platform == "win32":
        return False
    try:
        fcntl.flock(handle, fcntl.LOCK_EX | (0 if wait else fcntl.LOCK_NB))
    except OSError:
        return False
    return True


def _refuse_folder(path: Path) -> None:
    """Raises FileError where a folder stands in a file's way."""
    if path.is_dir():
        raise FileError(f"{path}: is a folder, not a file")


def _make(folder: Path) -> list[Path]:
    """Makes a folder; returns the folders that were missing, innermost first."""
    missing = [path for path in (folder, *folder.parents) if not path.exists()]
    folder.mkdir(parents=True, exist_ok=True)
    return missing


def _unmake(folders: list[Path]) -> None:
    for folder in folders:
        with suppress(OSError):  # something else is in it by now
            folder.rmdir()


def _flush(path: Path) -> None:
    """Makes sure that a file, or a folder's list of files, is on the disk."""
    if sys.platform == "win32" and path.is_dir():
        return
    handle = os.open(path, os.O_RDONLY)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)


def _umask() -> int:
    mask = os.umask(0)
    os.umask(mask)
    return mask
