"""Work that may take the process down with it, done in a process of its own.

On a damaged file the kernel does not always raise: it may follow a reference that is not there.
"""

from __future__ import annotations

import os
import signal
import sys
import traceback
from collections.abc import Callable
from typing import NoReturn

from ..errors import FileError, RibwrightError
from ..meanwhile import forked

LONGEST = 900  # seconds of work, after which the system ends the process

DONE, REFUSED, DEFECT = b"+", b"-", b"!"


def apart(work: Callable[[], bytes]) -> bytes | None:
    """What `work` returns, or None if the process that did it died.

    Errors meant for a person are raised here as FileError, others as RuntimeError. Where processes
    cannot safely be forked, the work is done in this one.
    """
    if sys.platform != "linux":
        return work()
    receiver, sender = os.pipe()
    child = forked()
    if not child:
        os.close(receiver)
        _answer(work, sender)
    os.close(sender)
    try:
        with os.fdopen(receiver, "rb") as pipe:
            said = pipe.read()
    except BaseException:
        os.kill(child, signal.SIGKILL)
        raise
    finally:
        _, status = os.waitpid(child, 0)
    if status or not said:
        return None
    if said[:1] == REFUSED:
        raise FileError(said[1:].decode())
    if said[:1] == DEFECT:
        raise RuntimeError(said[1:].decode())
    return said[1:]


def _answer(work: Callable[[], bytes], sender: int) -> NoReturn:
    """Does the work in the forked process, which ends with it."""
    if sys.platform == "linux":
        import resource  # noqa: PLC0415 (there is none on Windows)

        resource.setrlimit(resource.RLIMIT_CPU, (LONGEST, LONGEST))
    status = 1
    try:
        try:
            said = DONE + work()
        except RibwrightError as error:
            said = REFUSED + str(error).encode()
        except BaseException:
            said = DEFECT + traceback.format_exc().encode()
        with os.fdopen(sender, "wb") as pipe:
            pipe.write(said)
        status = 0
    finally:
        os._exit(status)
