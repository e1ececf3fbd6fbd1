"""From a file to TOML values that are safe to look at: size, encoding, nesting and syntax."""

from __future__ import annotations

import os
import re
import stat
import tomllib
from dataclasses import dataclass, field
from pathlib import Path

from ...errors import DescriptionError, FileError, Problem
from .positions import Positions, find_positions
from .syntax import LOST, explain, without

LARGEST = 250_000
"""Bytes of a description; five hundred openings take a fifth of it. What is larger would take the parser
seconds."""
DEEPEST = 12
"""Brackets within brackets, or parts of a dotted key; a description needs three."""
MOST_MISTAKES = 20
"""Lines that are no TOML, after which reading goes no further."""


@dataclass(slots=True)
class Source:
    """A description taken apart: its values, where they stand, and the lines that were no TOML.

    What stood in such a line has the value LOST.
    """

    values: dict[str, object]
    positions: Positions
    problems: list[Problem] = field(default_factory=list)


def read_text(path: Path) -> str:
    """The text of a file. Raises FileError, or DescriptionError where its bytes are no UTF-8."""
    content = _read_bytes(path)
    if content.startswith((b"\xff\xfe", b"\xfe\xff")):
        raise FileError(f"{path}: is saved as UTF-16; save it as UTF-8")
    try:
        return content.decode("utf-8")
    except UnicodeDecodeError as error:
        before = content[: error.start].decode("utf-8").split("\n")
        problem = Problem(
            key="",
            read=f"byte 0x{content[error.start]:02x}",
            remedy="text saved as UTF-8",
            line=len(before),
            column=len(before[-1]) + 1,
        )
        raise DescriptionError([problem], str(path)) from None


def _read_bytes(path: Path) -> bytes:
    try:
        kind = path.stat().st_mode
        if stat.S_ISDIR(kind):
            raise FileError(f"{path}: is a folder; name the description in it")
        if not stat.S_ISREG(kind):
            raise FileError(f"{path}: is not a plain file")
        with path.open("rb") as file:
            content = file.read(LARGEST + 1)
    except FileNotFoundError:
        link = path.is_symlink()
        raise FileError(
            f"{path}: {'a link to a file that is not there' if link else 'no such file'}"
        ) from None
    except PermissionError:
        raise FileError(f"{path}: may not be read; its permissions forbid it") from None
    except (OSError, ValueError) as error:  # ValueError: a NUL in the path
        reason = os.strerror(error.errno) if isinstance(error, OSError) and error.errno else str(error)
        raise FileError(f"{path}: cannot be read: {reason}") from None
    if len(content) > LARGEST:
        raise _too_large(str(path))
    return content


def _too_large(name: str) -> FileError:
    return FileError(f"{name}: is over {LARGEST:,} bytes; a description is a few thousand")


def load(text: str, name: str) -> Source:
    """The values of a text with their positions.

    Raises FileError for a text too large, and DescriptionError where mistakes are such that nothing
    after them can be trusted; milder ones are handed on in the source.
    """
    if len(text) > LARGEST:
        raise _too_large(name)
    text = text.removeprefix("\ufeff").replace("\r\n", "\n")
    if problem := _unsafe(text):
        raise DescriptionError([problem], name)
    problems: list[Problem] = []
    while True:
        try:
            return Source(tomllib.loads(text), find_positions(text), problems)
        except ValueError as error:  # TOMLDecodeError, or an integer beyond what Python converts
            problem = explain(text, error)
        mended = without(text, problem)
        repeated = bool(problems) and problems[-1].line >= problem.line
        if not repeated:
            problems.append(problem)
        if mended is None or repeated or len(problems) == MOST_MISTAKES:
            raise DescriptionError(problems, name)
        text = mended


_TOKEN = re.compile(
    r'"""(?:[^\\]|\\.)*?(?:"""|\Z)|\'\'\'.*?(?:\'\'\'|\Z)|"(?:[^"\\\n]|\\.)*"?|\'[^\'\n]*\'?|#[^\n]*'
    r"|[][{}.=,\n\x00]",
    re.DOTALL,
)


def _unsafe(text: str) -> Problem | None:
    """What a parser should not be given: NUL, deep nesting, endless dotted keys."""
    nul = text.find("\x00")
    if nul >= 0:
        return Problem("", "a NUL character", "plain text", *_line_column(text, nul))
    depth = dots = 0
    for match in _TOKEN.finditer(text):
        token = match[0]
        if token in "[{":
            depth += 1
        elif token in "]}":
            depth -= 1
        dots = dots + 1 if token == "." else dots if token[0] in "\"'" else 0
        if depth > DEEPEST or dots >= DEEPEST:
            remedy = f"brackets and dotted keys at most {DEEPEST} deep"
            return Problem("", "deeper nesting", remedy, *_line_column(text, match.start()))
    return None


def _line_column(text: str, offset: int) -> tuple[int, int]:
    return text.count("\n", 0, offset) + 1, offset - text.rfind("\n", 0, offset)


__all__ = ["LOST", "Source", "load", "read_text"]
