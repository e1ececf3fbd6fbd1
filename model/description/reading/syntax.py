"""Lines that are no TOML, said in words for someone who does not know TOML."""

from __future__ import annotations

import re

from ...errors import Problem
from ...printable import printable

LOST = "\ue000lost"
"""Stands for a value whose line was no TOML, so that the rest can still be judged."""

_ASSIGNMENT = re.compile(r"^\s*([A-Za-z0-9_-]+)\s*=\s*(.*?)\s*$")
_HEADER = re.compile(r"^\s*(\[\[?)\s*([A-Za-z0-9_-]+)\s*\]")
_POSITION = re.compile(r" \(at (?:line (\d+), column (\d+)|end of document)\)$")


def shorten(text: str, longest: int = 40) -> str:
    """A text fit to be shown: on one line, without what cannot be printed, cut to its beginning."""
    one_line = " ".join(text[: 4 * longest].split())
    safe = printable(one_line)
    return safe if len(safe) <= longest else safe[: longest - 3] + "..."


def explain(text: str, error: ValueError) -> Problem:
    """The problem behind a parser's error, with the line and the key if the line has one."""
    lines = text.split("\n")
    line, column = _where(lines, str(error))
    content = lines[line - 1]
    assignment = _ASSIGNMENT.match(content)
    reason = _POSITION.sub("", str(error))
    if not assignment:
        return Problem("", shorten(content), _remedy("", content, reason), line, column)
    key, value = assignment[1], assignment[2]
    table = _table_above(lines[: line - 1])
    path = f"{table}.{key}" if table else key
    return Problem(path, shorten(value or content), _remedy(key, value, reason), line, column)


def _table_above(lines: list[str]) -> str:
    """The table that a line after these belongs to, as a person would write it: `opening[2]`."""
    headers = [match for match in map(_HEADER.match, lines) if match]
    if not headers:
        return ""
    brackets, name = headers[-1].groups()
    count = sum(header.groups() == (brackets, name) for header in headers)
    return f"{name}[{count}]" if brackets == "[[" else str(name)


def without(text: str, problem: Problem) -> str | None:
    """The text with the problem's line replaced by one that parses; None when that can't be trusted.

    Only a line that sets a key to a value of one line is given up; after a broken header or inside a
    text or list of many lines nothing that follows would mean what it seems to.
    """
    lines = text.split("\n")
    content = lines[problem.line - 1]
    assignment = _ASSIGNMENT.match(content)
    if not assignment or assignment[2].startswith(("[", "{", '"""', "'''")):
        return None
    again = problem.remedy == TWICE
    lines[problem.line - 1] = "#" if again else f'{assignment[1]} = "{LOST}"'
    return "\n".join(lines)


TWICE = "this key stands twice; keep one of them"


def _where(lines: list[str], message: str) -> tuple[int, int]:
    match = _POSITION.search(message)
    if match and match[1]:
        return int(match[1]), int(match[2])
    if not match:  # Python's refusal of an integer with thousands of digits
        for number, content in enumerate(lines, 1):
            if digits := re.search(r"[0-9_]{4000,}", content):
                return number, digits.start() + 1
    return len(lines), len(lines[-1]) + 1


def _remedy(key: str, read: str, reason: str) -> str:
    if "overwrite" in reason:
        return TWICE
    if "twice" in reason or "already" in reason or "immutable" in reason:
        return "this table stands twice; keep one of them"
    return _value_remedy(key, read, reason) if key else _line_remedy(read, reason)


def _value_remedy(key: str, read: str, reason: str) -> str:
    if not read or read.startswith("#"):
        return f"a value after the sign: {key} = ..."
    if read[0] in "\"'":
        return _text_remedy(key, read, reason)
    if read[0] in "[{":
        return f"every bracket closed again ({_lower(reason)})"
    return f"quotes around it: {key} = {_quoted(_without_comment(read))}"


def _without_comment(value: str) -> str:
    return value.partition(" #")[0].strip()


def _line_remedy(read: str, reason: str) -> str:
    content = read.strip()
    if content.startswith("["):
        return "a table's name in brackets on a line of its own: [sheets], or [[opening]] for each opening"
    if match := re.match(r"([A-Za-z0-9_-]+)\s*:?\s+(.+)$", content):
        return f"the sign = between key and value: {shorten(match[1])} = {_quoted(match[2])}"
    if content:
        return f'a line such as width = "30\'" ({_lower(reason)})'
    return f"everything closed that was opened ({_lower(reason)})"


def _text_remedy(key: str, read: str, reason: str) -> str:
    quote = read[0]
    inner = _without_comment(read)[1:]
    if quote not in inner:
        return f"the closing quote: {key} = {_quoted(inner)}"
    if "scalar" in reason:
        return "the letter itself in the place of that code, which is no letter's"
    if "Illegal" in reason:
        return "only letters that can be printed"
    if "escape" in reason:
        return f"no backslash, or two of them ({_lower(reason)})"
    mended = _quoted(inner.removesuffix(quote))
    mark = "an inch mark" if quote == '"' else "a foot mark"
    return f"{mark} inside the quotes ends the text there; write {key} = {mended}"


def _quoted(value: str) -> str:
    """A value in double quotes, inches spelled out where their mark would end the text."""
    inner = value.strip().strip(",;").replace('"', " in").replace("\\", "")
    return f'"{shorten(" ".join(inner.split()))}"'


def _lower(reason: str) -> str:
    return reason[:1].lower() + reason[1:]
