"""Work done by a forked process while this one goes on: for writers that hold the interpreter's lock."""

from __future__ import annotations

import ctypes
import os
import signal
import sys
import traceback
import warnings
from collections.abc import Callable, Iterator
from contextlib import contextmanager

from .errors import FileError, RibwrightError

STOPPING = {signal.SIGINT, signal.SIGTERM}
LONGEST = 32_000  # bytes of a message, less than a pipe holds, so that sending it never waits
DEATH_SIGNAL = 1  # prctl(2): PR_SET_PDEATHSIG


@contextmanager
def held() -> Iterator[None]:
    """Keeps the signals that stop a run waiting while the body runs, for what must not be left half done.

    Where there are no such masks (Windows), nothing is held.
    """
    if sys.platform == "win32":
        yield
        return
    before = signal.pthread_sigmask(signal.SIG_BLOCK, STOPPING)
    try:
        yield
    finally:
        signal.pthread_sigmask(signal.SIG_SETMASK, before)


def forked() -> int:
    """As os.fork; a signal that stops the run is left to the parent, which ends the child."""
    with held(), warnings.catch_warnings():
        warnings.simplefilter("ignore", DeprecationWarning)  # idle threads of numeric libraries
        child = os.fork()
        if not child:
            signal.signal(signal.SIGINT, signal.SIG_IGN)
            signal.signal(signal.SIGTERM, signal.SIG_DFL)
    return child


@contextmanager
def meanwhile(work: Callable[[], None]) -> Iterator[None]:
    """Does `work`, which must only write files, while the body runs; both are done at the end.

    An error meant for a person is raised here as a FileError, any other as a RuntimeError. If the
    body fails, the work is stopped. Where processes cannot safely be forked, work follows the body.
    """
    if sys.platform != "linux":
        yield
        work()
        return
    receiver, sender = os.pipe()
    child = _forked(work, sender)
    os.close(sender)
    try:
        yield
        with os.fdopen(receiver, "rb", closefd=False) as pipe:
            said = pipe.read().decode("utf-8", "replace")
    except BaseException:
        os.kill(child, signal.SIGKILL)
        os.waitpid(child, 0)
        raise
    finally:
        os.close(receiver)
    _, status = os.waitpid(child, 0)
    if said:
        raise FileError(said[1:]) if said[0] == "P" else RuntimeError(said[1:])
    if status:
        raise FileError("the process that wrote files was stopped from outside")


def _forked(work: Callable[[], None], sender: int) -> int:
    """The process that works; it sends what went wrong, "P" before what is for a person."""
    parent = os.getpid()
    child = forked()
    if child:
        return child
    said = ""
    try:
        end_with(parent)
        work()
    except RibwrightError as error:
        said = f"P{error}"
    except OSError as error:
        said = f"P{error.filename or 'output'}: {error.strerror or error}"
    except BaseException:
        said = f"D{traceback.format_exc()}"
    try:
        os.write(sender, said.encode("utf-8", "replace")[:LONGEST])
    finally:
        os._exit(1 if said else 0)


def end_with(parent: int) -> None:
    """Has the system end this forked process (Linux) when `parent` ends, even if that is killed."""
    ctypes.CDLL(None).prctl(DEATH_SIGNAL, signal.SIGKILL)
    if os.getppid() != parent:  # it has ended already
        os._exit(1)
