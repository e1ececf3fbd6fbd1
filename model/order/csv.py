"""The schedule as CSV text."""

from __future__ import annotations

import csv
import io

from ..measure.snap import snapped, snapped_area
from ..units import area_unit, weight_unit
from . import words
from .schedule import Schedule


def csv_text(schedule: Schedule) -> str:
    """One row a mark: figures as shown, words, cutouts, then plain numbers to reckon with.

    Comma-separated as RFC 4180 has it: quoted where needed, lines end in CRLF.
    """
    units = schedule.units
    shown = {"area": f"area {area_unit(units)}", "weight": f"weight {weight_unit(units)}"}
    names = [shown.get(name, name) for name in (*words.FIGURES, *words.TEXTS, "cutouts")]
    text = io.StringIO()
    writer = csv.writer(text)
    writer.writerow([*names, "width mm", "cover mm", "length mm", "area mm2", "weight kg"])
    for row in schedule.rows:
        cells = [*words.figures(row, units).values(), *words.texts(row, units).values()]
        cuts = "; ".join(words.cut_text(cut, units) for cut in row.cutouts)
        lengths = [snapped(size, 0.01) for size in (row.width, row.cover, row.length)]
        writer.writerow([*cells, cuts, *lengths, snapped_area(row.area), snapped(row.weight, 0.001)])
    return text.getvalue()
