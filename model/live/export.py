"""What `raise` writes of the file, at a page's wish: by that very command, into the one folder there is."""

from __future__ import annotations

import asyncio
from asyncio.subprocess import DEVNULL, PIPE, STDOUT
from collections.abc import Callable, Sequence
from dataclasses import dataclass

from ..printable import printable

MOST = 20_000
"""Letters of what the command said."""


@dataclass(frozen=True, slots=True)
class Said:
    """What there is to say of an export. running: it is at work; text: what the command said; done: whether
    it wrote."""

    running: bool = False
    text: str = ""
    done: bool = False


class Export:
    """Runs the command, once at a time. command: fixed at the start; said: called when there is news."""

    def __init__(self, command: Sequence[str], said: Callable[[], None]) -> None:
        self.command, self.said = tuple(command), said
        self.news = Said()
        self.task: asyncio.Task[None] | None = None

    def begin(self) -> None:
        """Begins, unless it is at work."""
        if not self.news.running:
            self.task = asyncio.create_task(self._run())

    async def end(self) -> None:
        """Stops what is at work: it leaves whole files or none."""
        if self.task and not self.task.done():
            self.task.cancel()
            await asyncio.gather(self.task, return_exceptions=True)

    async def _run(self) -> None:
        self._tell(Said(running=True))
        process = await asyncio.create_subprocess_exec(
            *self.command, stdin=DEVNULL, stdout=PIPE, stderr=STDOUT
        )
        try:
            text, _ = await process.communicate()
        except asyncio.CancelledError:
            process.terminate()
            await process.wait()
            raise
        lines = text.decode("utf-8", "replace")[:MOST].splitlines()
        self._tell(Said(text="\n".join(map(printable, lines)), done=process.returncode in (0, 1)))

    def _tell(self, news: Said) -> None:
        self.news = news
        self.said()
