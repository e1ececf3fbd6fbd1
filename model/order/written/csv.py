"""The schedule as CSV text."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterator, Sequence
from itertools import chain

from ...heading import heading
from ...measure.snap import snapped, snapped_area, snapped_weight
from ...printable import cell
from ...roles import LIGHTS
from ...units import area_unit, weight_unit
from ..lists import item_cells, sheet_cells
from ..lists.items import THICKNESS, Item
from ..lists.parts import REST, SHEETS, chosen
from ..lists.schedule import Row, Schedule, Units

COLUMNS = (
    *("list", "mark", "count", "what", "section", "width", "cover", "length", "area", "weight", "ends"),
    *(
        "ribs",
        "holes",
        "differs",
        "cutouts",
        "colour",
        "profile",
        "gauge",
        "thickness",
        "faces",
        "up",
        "people",
    ),
    *("width mm", "cover mm", "length mm", "thickness mm", "area mm2", "weight kg"),
)


def csv_text(schedule: Schedule, parts: Sequence[str] = ()) -> str:
    """One row a mark, sheets first: figures as shown, words, then plain numbers to reckon with.

    parts: the lists wanted, all when empty. Comma-separated as RFC 4180 has it: quoted where needed,
    lines end in CRLF. Cells that a list has no use for are empty. The first rows, of the list "job", say
    whose it is, what figures are in, and what this is not.
    """
    units = schedule.units
    shown = {"area": f"area {area_unit(units)}", "weight": f"weight {weight_unit(units)}"}
    text = io.StringIO()
    writer = csv.writer(text)
    writer.writerow([shown.get(name, name) for name in COLUMNS])
    job: tuple[dict[str, object], ...] = tuple(
        {"list": "job", "what": line}
        for line in heading(schedule.name, schedule.terms, units, braced=schedule.braced)
    )
    for cells in chain(job, _rows(schedule, chosen(parts))):
        writer.writerow([cell(cells.get(name, "")) for name in COLUMNS])
    return text.getvalue()


def _rows(schedule: Schedule, parts: Sequence[str]) -> Iterator[dict[str, object]]:
    if SHEETS in parts:
        yield from (_sheet(row, schedule.units) for row in schedule.rows)
    for name in REST:
        if name in parts:
            yield from (_item(name, item, schedule.units) for item in schedule.listed(name))


def _sheet(row: Row, units: Units) -> dict[str, object]:
    return {
        "list": SHEETS,
        "what": row.role,
        **sheet_cells.figures(row, units),
        **sheet_cells.texts(row, units),
        "cutouts": sheet_cells.cuts_text(row, units),
        "width mm": snapped(row.width, 0.01),
        "cover mm": snapped(row.cover, 0.01),
        "length mm": snapped(row.length, 0.01),
        "thickness mm": "" if row.role in LIGHTS else snapped(row.thickness, THICKNESS),
        "area mm2": snapped_area(row.area),
        "weight kg": snapped_weight(row.weight) if row.weight else "",
    }


def _item(name: str, item: Item, units: Units) -> dict[str, object]:
    weight = {"weight kg": snapped_weight(item.weight)} if item.weight else {}
    thickness = {"thickness mm": snapped(item.thickness, THICKNESS)} if item.thickness else {}
    return {
        "list": name,
        **item_cells.cells(item, units),
        "length mm": snapped(item.length, 0.01),
        **thickness,
        **weight,
    }
