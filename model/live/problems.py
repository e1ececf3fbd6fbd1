"""What is wrong with a text, as it is shown beside its lines."""

from __future__ import annotations

from typing import Any

from ..errors import DescriptionError, Problem, RibwrightError
from ..printable import printable

LONGEST = 200  # letters of a line that are shown


def problems(error: RibwrightError, text: str = "") -> tuple[dict[str, Any], ...]:
    """Each thing wrong, as JSON has it, with the line of the text that it is about."""
    if isinstance(error, DescriptionError):
        return tuple(_problem(one, text) for one in error.problems)
    return plain(str(error))


def plain(words: str) -> tuple[dict[str, Any], ...]:
    """What is wrong with all of it."""
    return (_problem(Problem("", "", words), ""),)


def _problem(one: Problem, text: str) -> dict[str, Any]:
    lines = text.split("\n")
    line = lines[one.line - 1] if 0 < one.line <= len(lines) else ""
    return {
        "line": one.line,
        "key": printable(one.key),
        "read": printable(one.read),
        "remedy": printable(one.remedy),
        "text": printable(line.strip()[:LONGEST]),
    }
