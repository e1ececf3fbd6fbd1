"""The process that raises as seen from the one that serves: told of texts, followed by another if lost."""

from __future__ import annotations

import asyncio
import os
import signal
import sys
from asyncio.subprocess import PIPE, Process
from collections.abc import Callable
from contextlib import suppress

from .problems import plain
from .told import Answer, Found, Job, Ready, Wrong, heard, packet

COMMAND = (sys.executable, "-P", "-m", "ribwright.live.worker")
"""-P: what lies in the folder that a person stands in is no module."""
TRIES = 2
"""How often a text is given to a process before it is held to be what ends it."""


class Raiser:
    """Has texts raised, the newest only. said: told every answer to it."""

    def __init__(self, said: Callable[[Answer], None]) -> None:
        self.said = said
        self.job: Job | None = None
        self.last: Job | None = None
        self.tries = 0
        self.process: Process | None = None
        self.listens = False

    def take(self, job: Job) -> None:
        """The text to be raised now, whatever is at work."""
        self.job, self.tries = job, 0
        self.last = job
        self._give()

    def drop(self) -> None:
        """Nothing is to be raised; what comes of a text that is at work is not wanted."""
        self.job = None

    async def run(self) -> None:
        """Keeps a process at work until this is cancelled."""
        try:
            while True:
                self.process = await asyncio.create_subprocess_exec(*COMMAND, stdin=PIPE, stdout=PIPE)
                await self._hear(self.process)
                self.listens = False
                await self.process.wait()
                self._lost()
        finally:
            if self.process and self.process.returncode is None:
                self.process.kill()
                await self.process.wait()

    async def _hear(self, process: Process) -> None:
        assert process.stdout
        while True:
            try:
                answer = await heard(process.stdout)
            except (asyncio.IncompleteReadError, ConnectionError):
                return
            if isinstance(answer, Ready):
                self.listens = True
                self._warm()
                self._give()
            elif self.job and answer.number == self.job.number:
                if isinstance(answer, Found | Wrong):
                    self.job = None
                self.said(answer)

    def _warm(self) -> None:
        """Has a fresh process raise once more what the one before has raised, which nobody hears of."""
        if self.last and not self.job and self.process and self.process.stdin:
            self.process.stdin.write(packet(self.last))

    def _give(self) -> None:
        if not (self.listens and self.job and self.process and self.process.stdin):
            return
        self.tries += 1
        self.process.stdin.write(packet(self.job))
        if hasattr(signal, "SIGUSR1"):
            with suppress(ProcessLookupError):  # lost, and not yet heard of: the next one is given it
                os.kill(self.process.pid, signal.SIGUSR1)

    def _lost(self) -> None:
        if self.job and self.tries >= TRIES:
            text = f"the process that raises was lost {TRIES} times at this; it may need more memory"
            self.said(Wrong(self.job.number, plain(text)))
            self.job = None
