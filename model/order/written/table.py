"""The schedule as text for a terminal."""

from __future__ import annotations

import textwrap
from collections.abc import Callable, Iterator, Sequence

from ...heading import heading
from ..lists import item_cells, sheet_cells
from ..lists.parts import SHEETS, chosen
from ..lists.schedule import Row, Schedule
from .fitted import fitted

GAP = "  "
INDENT = " " * 7
TOLD = ("thickness", "ends", "holes")
"""Columns whose cells say nothing without their name."""


def table(schedule: Schedule, width: int = 80, parts: Sequence[str] = ()) -> str:
    """The schedule as lines of at most `width` characters, 80 or more.

    parts: the lists wanted, all when empty. One line for a mark where that fits, else its figures on
    one line and its words below; cutouts on lines of their own.
    """
    wanted = chosen(parts)
    pages = [_sheets(schedule, width) if SHEETS in wanted else _heading(schedule, width)]
    pages += [_items(name, schedule, width) for name in wanted if name != SHEETS and schedule.listed(name)]
    return "\n".join(pages)


def _heading(schedule: Schedule, width: int) -> str:
    """What stands over lists without the sheets."""
    said = heading(schedule.name, schedule.terms, schedule.units, braced=schedule.braced)
    return "\n".join(line for text in said for line in textwrap.wrap(text, width)) + "\n"


def _items(name: str, schedule: Schedule, width: int) -> str:
    """One of the lists after the sheets: what does not fit on a mark's line stands below it."""
    units, items = schedule.units, schedule.listed(name)
    rows = [*(item_cells.cells(item, units) for item in items), item_cells.total(items, units)]
    every = [column for column in item_cells.COLUMNS if any(row.get(column) for row in rows)]
    columns = [*every]
    while columns:
        head, *lines = _aligned(columns, rows)
        if len(head) <= width:
            break
        columns.pop()
    rule = "-" * max(map(len, (head, *lines)))
    title = name.capitalize() + (f": {item_cells.concrete(schedule)} of concrete" if name == "slab" else "")
    page, below = [title, "", head, rule], every[len(columns) :]
    for row, line in zip(rows[:-1], lines, strict=False):
        words = (
            f"{column} {row[column]}" if column in TOLD else row[column] for column in below if row[column]
        )
        page += [line, *_wrapped("; ".join(words), width)]
    return "\n".join(line.rstrip() for line in [*page, rule, lines[-1]]) + "\n"


def _aligned(columns: Sequence[str], rows: Sequence[dict[str, str]]) -> list[str]:
    """Columns under their names, figures set to the right."""
    found = []
    for name in columns:
        column = [name, *(row.get(name, "") for row in rows)]
        size = max(map(len, column))
        right = name in item_cells.FIGURES
        found.append([cell.rjust(size) if right else cell.ljust(size) for cell in column])
    return [GAP.join(line) for line in zip(*found, strict=True)]


def _sheets(schedule: Schedule, width: int) -> str:
    rows, units = schedule.rows, schedule.units
    said = [sheet_cells.texts(row, units) for row in rows]
    left = _lines(
        sheet_cells.FIGURES,
        [*(sheet_cells.figures(row, units) for row in rows), sheet_cells.totals(schedule)],
    )
    right = _lines(sheet_cells.TEXTS, said, str.ljust)
    title, notes = sheet_cells.heading(schedule)
    cuts = _cutouts(rows, schedule)
    broad = len(left[0] + GAP + right[0]) <= width
    head, *lines = [f"{a}{GAP}{b}".rstrip() for a, b in zip(left, right, strict=False)] if broad else left
    rule = "-" * max(len(line) for line in (head, *lines))
    page = [title, *textwrap.wrap(notes, width), "", head, rule]
    for row, line, texts in zip(rows, lines, said, strict=False):
        page.append(line)
        if not broad:
            page += _wrapped("; ".join(filter(None, texts.values())), width)
        page += fitted((INDENT + next(cuts) for _ in row.cutouts), width)
    return "\n".join(line.rstrip() for line in [*page, rule, left[-1]]) + "\n"


def _lines(
    names: Sequence[str],
    rows: Sequence[dict[str, str]],
    set_to: Callable[[str, int], str] = str.rjust,
) -> list[str]:
    """Columns under their names, one line a row; the first column is set to the left."""
    columns = []
    for i, name in enumerate(names):
        cells = [name, *(row.get(name, "") for row in rows)]
        size = max(map(len, cells))
        columns.append([cell.ljust(size) if i == 0 else set_to(cell, size) for cell in cells])
    return [GAP.join(cells) for cells in zip(*columns, strict=True)]


def _wrapped(text: str, width: int) -> list[str]:
    return textwrap.wrap(text, width, initial_indent=INDENT, subsequent_indent=INDENT)


def _cutouts(rows: Sequence[Row], schedule: Schedule) -> Iterator[str]:
    """The cutouts of all rows, one line each, aligned with each other."""
    cuts = [cut for row in rows for cut in sheet_cells.cuts(row)]
    cells = [(sheet_cells.cut_name(cut), *sheet_cells.cut_figures(cut, schedule.units)) for cut in cuts]
    sizes = [max(map(len, column)) for column in zip(*cells, strict=True)]
    for name, *figures in cells:
        x, y, wide, high = (figure.rjust(size) for figure, size in zip(figures, sizes[1:], strict=True))
        yield f"{name.ljust(sizes[0])}  x {x}  y {y}  {wide} wide  {high} high"
