"""What lies on the desk: the file's newest text, the last building that could be raised, what is wrong."""

from __future__ import annotations

import asyncio
import hashlib
from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import Any

from ..description.reading.source import read_text
from ..errors import DescriptionError, FileError, Problem, RibwrightError
from ..intake import parse
from ..printable import printable
from .export import Export
from .problems import problems
from .raiser import Raiser
from .told import Answer, Found, Job, Seen, Wrong
from .writing_back import changed, write

AGAIN = 0.3
"""s after which a file that is not there, or empty, is looked for again: editors put it there anew."""


LONGEST, SHOWN = 200, 3
"""Letters of a value; problems that are said of one that is refused."""
MEANWHILE = "Not written: the file was changed meanwhile. What it says now is shown; change that."


@dataclass(frozen=True, slots=True)
class State:
    """What is said of the newest text. folder: that exports go to; raising: it is at work; problems: what is
    wrong with it."""

    file: str
    folder: str
    raising: bool = False
    problems: tuple[dict[str, Any], ...] = ()


@dataclass
class Desk:
    """One file and what became of it.

    path, folder, command (that exports the one into the other), pieces: fixed at the start. The pages are
    woken when any of the rest is another.
    """

    path: Path
    folder: Path
    command: tuple[str, ...]
    pieces: int
    seen: Seen | None = None
    found: Found | None = None
    digest: str = ""
    number: int = 0
    absent: bool = False
    pages: set[asyncio.Event] = field(default_factory=set)

    def __post_init__(self) -> None:
        self.state = State(printable(self.path.name), printable(str(self.folder)))
        self.raiser = Raiser(self.answered)
        self.export = Export(self.command, self._wake)

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
        digest = digest_of(text)
        if digest != self.digest:
            self.digest = digest
            self.number += 1
            self._put(raising=True)
            self.raiser.take(Job(self.number, digest, text, self.path.stem, self.pieces))

    def answered(self, answer: Answer) -> None:
        """Puts down what came of the newest text."""
        if isinstance(answer, Seen):
            self.seen, self.found = answer, None
            self._put(raising=True, problems=())
        elif isinstance(answer, Found):
            self.found = answer
            self._put(raising=False)
        elif isinstance(answer, Wrong):
            self._put(raising=False, problems=answer.problems)

    def change(self, digest: str, number: int, typed: str) -> str:
        """Writes another value for a key of the text that a page shows; "" when it is done, else why not.

        The file stays as it is if it is not what that page shows, or could not be built then.
        """
        if not self.seen or digest != self.seen.digest or not 0 <= number < len(self.seen.paths):
            return MEANWHILE
        if len(typed) > LONGEST or not typed.isprintable():
            return f"That is no value: a line of at most {LONGEST} characters."
        try:
            text = read_text(self.path)
            if digest_of(text) != digest:
                self.look()
                return MEANWHILE
            other = changed(text, self.seen.paths[number], typed.strip())
            parse(other, self.path.stem)
            write(self.path, other)
        except DescriptionError as error:
            return "Not written. " + " ".join(map(_words, error.problems[:SHOWN]))
        except RibwrightError as error:
            return f"Not written: {printable(str(error))}."
        self.look()
        return ""

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
            self._put(raising=False, problems=problems(error))

    def _put(self, **news: Any) -> None:
        self.state = replace(self.state, **news)
        self._wake()

    def _wake(self) -> None:
        for page in self.pages:
            page.set()


def digest_of(text: str) -> str:
    """What a text is known by."""
    return hashlib.sha256(text.encode()).hexdigest()


def _words(one: Problem) -> str:
    return printable(f"{one.key}: {f'read {one.read}; ' if one.read else ''}{one.remedy}.")
