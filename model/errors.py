"""What goes wrong with what a person gave us, said so that the person can mend it.

Only these errors may reach the command; anything else that is raised is a defect of ours.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from .printable import printable


class RibwrightError(Exception):
    """Base of all errors meant for a person. `str(error)` is complete: no traceback needed."""


@dataclass(frozen=True, slots=True)
class Problem:
    """One thing wrong in a description.

    key: dotted path as a person would write it (`opening[2].width`), empty for the whole file.
    read: what stood there, as text; empty when the key is missing.
    remedy: what would do ("a length such as 9' 2-1/2\\"").
    line, column: 1-based; 0 when unknown.
    """

    key: str
    read: str
    remedy: str
    line: int = 0
    column: int = 0

    def __str__(self) -> str:
        where = f"line {self.line}, column {self.column}: " if self.line else ""
        key = f"{self.key}: " if self.key else ""
        read = f"read {self.read}; " if self.read else ""
        return f"{where}{key}{read}{self.remedy}"


class DescriptionError(RibwrightError):
    """A description that cannot be built, with every problem found, in the order of the file."""

    def __init__(self, problems: Sequence[Problem], source: str = "") -> None:
        self.problems = tuple(problems)
        self.source = source
        head = f"{source}: " if source else ""
        super().__init__("\n".join(printable(f"{head}{problem}") for problem in self.problems))


class TooManyPieces(RibwrightError):
    """A building of more pieces than are to be made."""


class FileError(RibwrightError):
    """A file or folder that cannot be read or written, said in one line, whatever its name holds."""

    def __init__(self, text: str) -> None:
        super().__init__(printable(text))
