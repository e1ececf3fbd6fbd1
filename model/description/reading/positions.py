"""Where each key and value stands in a TOML text, which parsers do not tell.

The text must be one that `tomllib` has accepted: what is scanned here is the shape of TOML 1.0, and
nothing is checked again.
"""

from __future__ import annotations

import re
import tomllib
from bisect import bisect_right
from dataclasses import dataclass, field

Path = tuple[str | int, ...]

_BLANK = re.compile(r"(?:[ \t\n]|#[^\n]*)*")
_STRING = re.compile(
    r'"""(?:[^\\]|\\.)*?"{3,5}(?!")|\'\'\'.*?\'{3,5}(?!\')|"(?:[^"\\\n]|\\.)*"|\'[^\'\n]*\'', re.DOTALL
)
_BARE_KEY = re.compile(r"[A-Za-z0-9_-]+")
_BARE_VALUE = re.compile(r"[^,\]}#\n]*")


@dataclass(frozen=True, slots=True)
class Spot:
    """Where a key or an item of an array stands.

    key: offset of the key, or of the item. start, end: offsets of its value, text[start:end]; for a
    table the whole of its header.
    """

    key: int
    start: int
    end: int


@dataclass(slots=True)
class Positions:
    """All keys and items of a text by their path, such as ("opening", 1, "width"); items count from 0."""

    text: str
    spots: dict[Path, Spot] = field(default_factory=dict)
    starts: list[int] = field(default_factory=list)

    def line_column(self, offset: int) -> tuple[int, int]:
        """1-based line and column of an offset, in characters."""
        line = bisect_right(self.starts, offset)
        return line, offset - self.starts[line - 1] + 1

    def source(self, path: Path) -> str:
        """The value at a path as it was typed; "" when the path is unknown."""
        spot = self.spots.get(path)
        return self.text[spot.start : spot.end] if spot else ""


def find_positions(text: str) -> Positions:
    """The positions in a valid TOML text with line feeds alone between its lines."""
    scan = _Scan(text)
    scan.document()
    starts = [0, *(match.end() for match in re.finditer("\n", text))]
    return Positions(text, scan.spots, starts)


class _Scan:
    """One pass over a text. `at` is the offset of the next character to look at."""

    def __init__(self, text: str) -> None:
        self.text = text
        self.at = 0
        self.spots: dict[Path, Spot] = {}
        self.counts: dict[Path, int] = {}  # of each array of tables, so far

    def document(self) -> None:
        """Headers and key/value lines, one after the other."""
        table: Path = ()
        while self.skip_blank() < len(self.text):
            if self.text[self.at] == "[":
                table = self.header()
            else:
                self.key_value(table)

    def skip_blank(self) -> int:
        """Moves past white space, ends of lines and comments."""
        self.at = _end(_BLANK, self.text, self.at)
        return self.at

    def header(self) -> Path:
        """[table] or [[array of tables]]: the path that the following keys belong to."""
        begin = self.at
        many = self.text.startswith("[[", begin)
        self.at += 2 if many else 1
        *outer, last = self.dotted_key()
        path: Path = ()
        for part in outer:
            path = self.inside((*path, part))
        path = (*path, last)
        self.at = self.text.index("]", self.at) + (2 if many else 1)
        spot = Spot(begin, begin, self.at)
        self.spots.setdefault(path, spot)
        if many:
            self.counts[path] = self.counts.get(path, 0) + 1
        path = self.inside(path)
        self.spots[path] = spot
        return path

    def inside(self, path: Path) -> Path:
        """The path itself, or its newest table when it is an array of tables."""
        count = self.counts.get(path)
        return (*path, count - 1) if count else path

    def dotted_key(self) -> list[str]:
        """The parts of a key up to the sign behind it."""
        parts = []
        while True:
            self.skip_blank()
            if self.text[self.at] in "\"'":
                end = _end(_STRING, self.text, self.at)
                parts.append(str(tomllib.loads("k = " + self.text[self.at : end])["k"]))
            else:
                end = _end(_BARE_KEY, self.text, self.at)
                parts.append(self.text[self.at : end])
            self.at = end
            self.skip_blank()
            if not self.text.startswith(".", self.at):
                return parts
            self.at += 1

    def key_value(self, table: Path) -> None:
        """A dotted key, the sign of equality and its value."""
        begin = self.at
        parts = self.dotted_key()
        self.at += 1
        path = (*table, *parts)
        self.value(path, begin)
        for count in range(len(table) + 1, len(path)):
            self.spots.setdefault(path[:count], Spot(begin, begin, self.at))

    def value(self, path: Path, key: int) -> None:
        """A value of any type, with whatever is inside it."""
        start = self.skip_blank()
        opener = self.text[start]
        if opener == "[":
            self.array(path)
        elif opener == "{":
            self.inline_table(path)
        elif opener in "\"'":
            self.at = _end(_STRING, self.text, start)
        else:
            bare = _end(_BARE_VALUE, self.text, start)
            self.at = start + len(self.text[start:bare].rstrip())
        self.spots[path] = Spot(key, start, self.at)

    def array(self, path: Path) -> None:
        self.at += 1
        item = 0
        while self.text[self.skip_blank()] != "]":
            self.value((*path, item), self.at)
            item += 1
            if self.text[self.skip_blank()] == ",":
                self.at += 1
        self.at += 1

    def inline_table(self, path: Path) -> None:
        self.at += 1
        while self.text[self.skip_blank()] != "}":
            self.key_value(path)
            if self.text[self.skip_blank()] == ",":
                self.at += 1
        self.at += 1


def _end(pattern: re.Pattern[str], text: str, start: int) -> int:
    match = pattern.match(text, start)
    if match is None:
        raise ValueError(f"not TOML at offset {start}")
    return match.end()
