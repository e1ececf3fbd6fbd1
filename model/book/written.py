"""A book as files: a tidy table, one row a building, and how long each took."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterable, Iterator, Sequence
from pathlib import Path

from ..exchange.atomic_files import whole_file
from ..printable import cell, printable
from .task import Entry, Task

FIGURES = (
    *("marks", "sheets", "members", "trims", "screws", "closures", "openings"),
    *("sheet_area", "bought_area", "steel_weight", "concrete", "in_units"),
    *("lines", "unpriced_lines", "cost", "faults", "findings", "caution"),
)
"""The columns of what was read off the solids, in order."""
Line = tuple[Sequence[str], Task, Entry]
"""What a row sets as typed, its task, what came of it."""


def write_book(folder: Path, keys: Sequence[str], lines: Iterable[Line]) -> None:
    """Writes book.csv, the same at every run, and times.csv beside it. keys: the columns of the table."""
    head = ("row", *keys, "state", *FIGURES, "said", "description")
    with whole_file(folder / "book.csv") as book, whole_file(folder / "times.csv") as times:
        book.write(_csv(head))
        times.write(_csv(("row", "seconds", "description")))
        for number, (typed, task, entry) in enumerate(lines, 1):
            book.write(_csv((number, *_cells(typed, task, entry))))
            times.write(_csv((number, entry.seconds, task.digest)))


def _cells(typed: Sequence[str], task: Task, entry: Entry) -> Iterator[object]:
    yield from map(_shown, typed)
    yield entry.state
    yield from (_shown(entry.figures.get(name)) for name in FIGURES)
    yield _shown(entry.said)
    yield task.digest


def _shown(value: object) -> object:
    return cell(printable(value)) if isinstance(value, str) else value


def _csv(cells: Iterable[object]) -> bytes:
    text = io.StringIO()
    csv.writer(text).writerow(cells)
    return text.getvalue().encode("utf-8", "backslashreplace")
