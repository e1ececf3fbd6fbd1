"""The schedule as a Markdown table."""

from __future__ import annotations

from . import words
from .schedule import Schedule


def markdown_text(schedule: Schedule) -> str:
    """A table for a page, with the cutouts in its last column."""
    units = schedule.units
    title, notes = words.heading(schedule)
    names = [*words.FIGURES, *words.TEXTS, "cutouts"]
    lines = [f"## {title}", "", notes, "", _line(names)]
    lines.append(_line(["---" if name in ("mark", *words.TEXTS, "cutouts") else "---:" for name in names]))
    for row in schedule.rows:
        cuts = "<br>".join(words.cut_text(cut, units) for cut in row.cutouts)
        cells = [*words.figures(row, units).values(), *words.texts(row, units).values(), cuts]
        lines.append(_line([cell.replace("|", "\\|") for cell in cells]))
    total = words.totals(schedule)
    lines.append(_line([total.get(name, "") for name in names]))
    return "\n".join(lines) + "\n"


def _line(cells: list[str]) -> str:
    return f"| {' | '.join(cells)} |"
