"""What lies on the desk: the file's newest text, the last building that could be raised, what is wrong."""

from __future__ import annotations

import asyncio
import hashlib
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from ..description.reading.source import read_text
from ..errors import FileError, RibwrightError
from ..printable import printable
from .problems import problems
from .raiser import Raiser
from .told import Answer, Found, Job, Seen, Wrong

AGAIN = 0.3
"""s after which a file that is not there, or empty, is looked for again: editors put it there anew."""


@dataclass(frozen=True, slots=True)
class State:
    """What is said of the newest text. raising: it is at work; problems: what is wrong with it."""

    file: str
    raising: bool = False
    problems: tuple[dict[str, Any], ...] = ()


@dataclass
class Desk:
    """One file and what became of it. path, pieces: fixed at the start; the pages are woken when any of the
    rest is another."""

    path: Path
    pieces: int
    seen: Seen | None = None
    found: Found | None = None
    digest: str = ""
    number: int = 0
    absent: bool = False
    pages: set[asyncio.Event] = field(default_factory=set)

    def __post_init__(self) -> None:
        self.state = State(printable(self.path.name))
        self.raiser = Raiser(self.answered)

    def look(self) -> None:
        """Reads the file, and has its text raised if it is another than before."""
        try:
            text = read_text(self.path)
        except RibwrightError as error:
            if isinstance(error, FileError) and not self.path.exists() and self._waited():
                return
            self._refused(error)
            return
        if not text.strip() and self._waited():
            return
        self.absent = False
        digest = hashlib.sha256(text.encode()).hexdigest()
        if digest != self.digest:
            self.digest = digest
            self.number += 1
            self._put(State(self.state.file, True, self.state.problems))
            self.raiser.take(Job(self.number, text, self.path.stem, self.pieces))

    def answered(self, answer: Answer) -> None:
        """Puts down what came of the newest text."""
        if isinstance(answer, Seen):
            self.seen, self.found = answer, None
            self._put(State(self.state.file, True))
        elif isinstance(answer, Found):
            self.found = answer
            self._put(State(self.state.file))
        elif isinstance(answer, Wrong):
            self._put(State(self.state.file, problems=answer.problems))

    def _waited(self) -> bool:
        """True the first time, when the file may come back in a moment."""
        if not self.absent:
            self.absent = True
            asyncio.get_running_loop().call_later(AGAIN, self.look)
            return True
        return False

    def _refused(self, error: RibwrightError) -> None:
        if self.digest != (said := f"! {error}"):
            self.digest = said
            self.raiser.drop()
            self._put(State(self.state.file, problems=problems(error)))

    def _put(self, state: State) -> None:
        self.state = state
        for page in self.pages:
            page.set()
