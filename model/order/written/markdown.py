"""The schedule as a Markdown table."""

from __future__ import annotations

from collections.abc import Sequence

from ...heading import heading
from ..lists import item_cells, sheet_cells
from ..lists.parts import SHEETS, chosen
from ..lists.schedule import Schedule


def markdown_text(schedule: Schedule, parts: Sequence[str] = ()) -> str:
    """Tables for a page. parts: the lists wanted, all when empty."""
    wanted = chosen(parts)
    job, *notes = heading(schedule.name, schedule.terms, schedule.units, braced=schedule.braced)
    pages = [_sheets(schedule) if SHEETS in wanted else f"# {job}\n\n{' '.join(notes)}\n"]
    pages += [_items(name, schedule) for name in wanted if name != SHEETS and schedule.listed(name)]
    return "\n".join(pages)


def _items(name: str, schedule: Schedule) -> str:
    items = schedule.listed(name)
    columns = item_cells.COLUMNS
    rows = [
        *(item_cells.cells(item, schedule.units) for item in items),
        item_cells.total(items, schedule.units),
    ]
    title = name.capitalize() + (f": {item_cells.concrete(schedule)} of concrete" if name == "slab" else "")
    lines = [f"## {title}", "", _line(list(columns))]
    lines.append(_line(["---:" if column in item_cells.FIGURES else "---" for column in columns]))
    lines += [_line([row.get(column, "").replace("|", "\\|") for column in columns]) for row in rows]
    return "\n".join(lines) + "\n"


def _sheets(schedule: Schedule) -> str:
    """The sheets, with the cutouts in the last column."""
    units = schedule.units
    title, notes = sheet_cells.heading(schedule)
    names = [*sheet_cells.FIGURES, *sheet_cells.TEXTS, "cutouts"]
    lines = [f"## {title}", "", notes, "", _line(names)]
    lines.append(
        _line(["---" if name in ("mark", *sheet_cells.TEXTS, "cutouts") else "---:" for name in names])
    )
    for row in schedule.rows:
        cuts = sheet_cells.cuts_text(row, units, "<br>")
        cells = [*sheet_cells.figures(row, units).values(), *sheet_cells.texts(row, units).values(), cuts]
        lines.append(_line([cell.replace("|", "\\|") for cell in cells]))
    total = sheet_cells.totals(schedule)
    lines.append(_line([total.get(name, "") for name in names]))
    return "\n".join(lines) + "\n"


def _line(cells: list[str]) -> str:
    return f"| {' | '.join(cells)} |"
