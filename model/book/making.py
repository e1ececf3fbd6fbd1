"""A book made: every row of a table raised, audited, ordered, priced; what is done already is kept."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from pathlib import Path
from time import monotonic

from ..order.buying.prices import PriceRow
from .kept import Kept, kept_in
from .table import Row, Table
from .task import Entry, Task
from .toml import Values, description, typed, with_row
from .written import Line, write_book

Engine = Callable[[Iterator[Task]], Iterator[tuple[Task, Entry]]]
"""What makes entries of tasks, in any order."""
Progress = Callable[[str, int, int], None]


@dataclass(frozen=True)
class Wanted:
    """What is asked of a book: its table, the values of the base and what it is called, the folder; prices;
    the most pieces of a building; words of formats, where each building's files are wanted."""

    table: Table
    base: Values
    name: str
    folder: Path
    prices: tuple[PriceRow, ...] | None
    pieces: int
    words: tuple[str, ...] | None = None

    def tasks(self) -> Iterator[tuple[Row, Task]]:
        """Each row and what it asks for, in order."""
        for row in self.table.rows():
            task = Task(description(with_row(self.base, row)), self.name, self.pieces, self.prices)
            if self.words is not None:
                folder = self.folder.resolve() / "buildings" / task.digest[:16]
                task = replace(task, folder=str(folder), words=self.words)
            yield row, task


def make_book(wanted: Wanted, engine: Engine, progress: Progress) -> Counter[str]:
    """Makes what is not done of a book and writes it; how many rows ended how, and "with faults" of those
    built. Raises FileError.

    Stopped at any moment, it keeps what is done; the next run with the same folder goes on.
    """
    ends: Counter[str] = Counter()
    with kept_in(wanted.folder) as kept:
        clock = _Clock(wanted.table.count, progress)
        for task, entry in engine(_undone(wanted, kept, clock)):
            kept.put(task.key, entry)
            clock.made()
        write_book(wanted.folder, [name for name, _ in wanted.table.columns], _lines(wanted, kept, ends))
    return ends


def _undone(wanted: Wanted, kept: Kept, clock: _Clock) -> Iterator[Task]:
    for _, task in wanted.tasks():
        if kept.get(task.key) is None or (task.folder and not Path(task.folder).is_dir()):
            yield task
        else:
            clock.passed()


def _lines(wanted: Wanted, kept: Kept, ends: Counter[str]) -> Iterator[Line]:
    """Every row as it is written; counts how they ended."""
    paths = [path for _, path in wanted.table.columns]
    for row, task in wanted.tasks():
        entry = kept.get(task.key)
        assert entry is not None
        ends[entry.state] += 1
        ends["with faults"] += bool(entry.figures.get("faults"))
        yield [typed(row[path]) if path in row else "" for path in paths], task, entry


class _Clock:
    """Says how many rows are done and how long the others will take."""

    def __init__(self, total: int, progress: Progress) -> None:
        self.total, self.progress = total, progress
        self.begun, self.done, self.fresh = monotonic(), 0, 0

    def passed(self) -> None:
        """One was done before."""
        self.done += 1

    def made(self) -> None:
        """One was made now."""
        self.done += 1
        self.fresh += 1
        left = (monotonic() - self.begun) / self.fresh * (self.total - self.done)
        self.progress(f"buildings, {spell(left)} left", self.done, self.total)


def spell(seconds: float) -> str:
    """A stretch of time in two of its units."""
    minutes, hours = round(seconds / 60), round(seconds / 3600)
    if seconds < 90:
        return f"{round(seconds)} s"
    return f"{minutes} min" if minutes < 90 else f"{hours} h" if hours < 49 else f"{hours // 24} days"
