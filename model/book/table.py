"""The table of a book: rows of a CSV file, or of a TOML file that lists them or spans a grid."""

from __future__ import annotations

import csv
import tomllib
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from itertools import product
from math import prod
from pathlib import Path as File

from ..description.reading.source import load, read_text
from ..errors import FileError
from ..files import said_plainly
from .keys import Path, path_of

Row = Mapping[Path, object]
"""What a row sets: values by where they stand in a description."""
GRID, ROW = "grid", "row"


@dataclass(frozen=True, slots=True)
class Table:
    """A table of rows that is gone through as often as wanted, a row at a time.

    columns: every key that any row sets, as typed and as a path. count: of rows.
    """

    columns: tuple[tuple[str, Path], ...]
    count: int
    file: File
    axes: tuple[tuple[object, ...], ...] = ()
    listed: tuple[Row, ...] = ()

    def rows(self) -> Iterator[Row]:
        """The rows in order. A row of a file sets no key whose cell is empty."""
        if self.file.suffix.lower() == ".csv":
            paths = [path for _, path in self.columns]
            for _, cells in _csv_rows(self.file, len(paths)):
                yield {path: _value(cell) for path, cell in zip(paths, cells, strict=True) if cell.strip()}
            return
        yield from self.listed
        if self.axes:
            paths = [path for _, path in self.columns][: len(self.axes)]
            yield from (dict(zip(paths, values, strict=True)) for values in product(*self.axes))


def read_table(file: File) -> Table:
    """A table, its keys known and its rows counted. Raises FileError with the line of what is wrong."""
    with said_plainly(file):
        if file.exists() and not file.is_file():
            raise FileError(f"{file}: is not a plain file")
        if file.suffix.lower() == ".csv":
            return _csv_table(file)
    if file.suffix.lower() == ".toml":
        return _toml_table(file)
    raise FileError(f"{file}: a table is a .csv or a .toml file")


def _csv_table(file: File) -> Table:
    with file.open(encoding="utf-8-sig", newline="") as stream:
        try:
            head = next(csv.reader(stream), [])
        except (csv.Error, UnicodeDecodeError) as error:
            raise _unreadable(file, 1, error) from None
    if not head:
        raise FileError(f"{file}: line 1: keys would do, such as width, length, sheets.profile")
    columns = tuple((name.strip(), path_of(name, f"{file}: line 1")) for name in head)
    _refuse_twice(columns, f"{file}: line 1")
    count = sum(1 for _ in _csv_rows(file, len(columns)))
    return Table(columns, _some(count, file), file)


def _csv_rows(file: File, width: int) -> Iterator[tuple[int, list[str]]]:
    """The rows under the first, with their lines; empty ones are passed by."""
    with said_plainly(file), file.open(encoding="utf-8-sig", newline="") as stream:
        rows = csv.reader(stream)
        try:
            next(rows)
            for cells in rows:
                if cells and len(cells) != width:
                    said = f"read {len(cells)} cells; would do: {width}, quoted where one has a comma"
                    raise FileError(f"{file}: line {rows.line_num}: {said}")
                if cells:
                    yield rows.line_num, cells
        except (csv.Error, UnicodeDecodeError) as error:
            raise _unreadable(file, rows.line_num, error) from None


def _unreadable(file: File, line: int, error: Exception) -> FileError:
    said = "not UTF-8" if isinstance(error, UnicodeDecodeError) else str(error)
    return FileError(f"{file}: line {line}: {said}")


def _value(cell: str) -> object:
    """What a cell says: a number, a list, yes or no, text in quotes, as TOML has them; else it is text."""
    cell = cell.strip()
    if cell[0] in "[\"'-+0123456789tf":
        try:
            value = tomllib.loads(f"cell = {cell}")
        except (ValueError, RecursionError):
            return cell
        if len(value) == 1 and isinstance(value["cell"], bool | int | float | list | str):
            return value["cell"]
    return cell


def _toml_table(file: File) -> Table:
    source = load(read_text(file), str(file))
    if source.problems:
        raise FileError(f"{file}: {source.problems[0]}")
    other = [name for name in source.values if name not in (GRID, ROW)]
    grid, rows = source.values.get(GRID, {}), source.values.get(ROW, [])
    if other or not isinstance(grid, dict) or not isinstance(rows, list):
        raise FileError(f"{file}: [grid] with lists of values, or a [[row]] for each building, would do")
    columns = {path: name for name, path, _ in _flat(grid, file)}
    axes = []
    for name, _, values in _flat(grid, file):
        if not isinstance(values, list) or not values:
            raise FileError(f'{file}: grid: {name}: a list would do, such as ["24 ft", "30 ft"]')
        axes.append(tuple(values))
    listed = []
    for one in rows:
        if not isinstance(one, dict):
            raise FileError(f"{file}: [[row]] for each building would do")
        flat = list(_flat(one, file))
        columns |= {path: name for name, path, _ in flat}
        listed.append({path: value for _, path, value in flat})
    count = len(listed) + (prod(map(len, axes)) if axes else 0)
    named = tuple((name, path) for path, name in columns.items())
    return Table(named, _some(count, file), file, tuple(axes), tuple(listed))


def _flat(values: Mapping[str, object], file: File, head: str = "") -> Iterator[tuple[str, Path, object]]:
    """Every key of a table, those in tables within by their dotted names."""
    for name, value in values.items():
        key = f"{head}.{name}" if head else name
        if isinstance(value, dict):
            yield from _flat(value, file, key)
        else:
            yield key, path_of(key, str(file)), value


def _refuse_twice(columns: tuple[tuple[str, Path], ...], where: str) -> None:
    paths = [path for _, path in columns]
    for name, path in columns:
        if paths.count(path) > 1:
            raise FileError(f"{where}: {name!r} stands there twice")


def _some(count: int, file: File) -> int:
    if not count:
        raise FileError(f"{file}: has no rows")
    return count
