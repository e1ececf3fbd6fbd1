"""The process that raises: it keeps what it has loaded and worked out, and leaves a text for a newer one.

Run as a module. Jobs come in on stdin, answers go out where stdout was.
"""

from __future__ import annotations

import gc
import os
import select
import signal
import sys
import traceback
from types import FrameType
from typing import BinaryIO

from ..meanwhile import end_with
from .laying import Layouts
from .making import answers
from .problems import plain
from .told import Answer, Found, Job, Ready, Wrong, packet, received

if sys.platform != "win32":
    import resource

UNIT = 1 if sys.platform == "darwin" else 1024
"""Bytes that the system counts a process's memory in."""
SENSIBLE, MUCH = 1e9, 2.0
"""Bytes; times what the first building took."""


class Overtaken(BaseException):
    """A newer text came; what is being made is for nothing."""


class Worker:
    """Answers jobs; told by a signal that another one has come, it leaves the one it is at.

    The first whole building is raised to its end: until then things are loaded, which nothing may interrupt.
    What it remembers grows with every other size; it ends when that is much.
    """

    def __init__(self, jobs: BinaryIO, out: BinaryIO) -> None:
        self.jobs, self.out = jobs, out
        self.layouts = Layouts()
        self.warm = self.open = False
        self.most = 0.0

    def run(self) -> None:
        """Until no more jobs can come, or another process had better take them."""
        if hasattr(signal, "SIGUSR1"):
            signal.signal(signal.SIGUSR1, self._told)
        self._say(Ready())
        while True:
            try:
                job = received(self.jobs)
                while self._waits():
                    job = received(self.jobs)
            except EOFError:
                return
            try:
                self._answer(job)
            except Overtaken:
                continue
            finally:
                self.open = False
            gc.collect()
            if self._full():
                return

    def _told(self, number: int, frame: FrameType | None) -> None:
        if self.open and self._waits():
            self.open = False
            raise Overtaken

    def _waits(self) -> bool:
        """Whether another job is there; unknown on Windows, where it waits its turn."""
        return sys.platform != "win32" and bool(select.select([self.jobs], [], [], 0)[0])

    def _full(self) -> bool:
        """Whether it holds more than is sensible, and much more than its first building took."""
        if sys.platform == "win32" or not self.warm:
            return False
        size = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss * UNIT
        self.most = self.most or max(SENSIBLE, MUCH * size)
        return size > self.most

    def _answer(self, job: Job) -> None:
        self.open = self.warm
        try:
            for answer in answers(job, self.layouts):
                self.open = False
                self._say(answer)
                self.warm = self.warm or isinstance(answer, Found)
                if self.warm and self._waits():
                    return
                self.open = self.warm
        except Exception:  # a defect of ours: it is told, and the next text may do without it
            self.open = False
            traceback.print_exc()
            text = "ribwright failed at this description; the window it was started in says how"
            self._say(Wrong(job.number, plain(text)))

    def _say(self, answer: Answer) -> None:
        self.out.write(packet(answer))
        self.out.flush()


def main() -> None:
    """Serves the process that started this one, and ends with it."""
    signal.signal(signal.SIGINT, signal.SIG_IGN)  # a person who stops the run stops the other process
    if sys.platform == "linux":
        end_with(os.getppid())
    out = os.fdopen(os.dup(1), "wb")
    os.dup2(2, 1)  # whatever else is printed is no answer
    gc.disable()  # between jobs is time for it
    Worker(os.fdopen(0, "rb", buffering=0), out).run()


if __name__ == "__main__":
    main()
