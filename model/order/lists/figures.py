"""What the schedule says of each mark, for a file whose pieces carry it."""

from __future__ import annotations

from ...units import area_unit, weight_unit
from . import item_cells, sheet_cells
from .schedule import Row, Schedule, Units

LENGTHS = ("width", "cover", "length", "thickness")


def figures_by_mark(schedule: Schedule) -> dict[str, dict[str, str]]:
    """For each mark the cells of its row, as shown and with their units.

    How many pieces bear the mark is `count of mark`, since a piece may be a row with a count of its own.
    Cells that a list has no use for are left out.
    """
    units = schedule.units
    cells = {row.mark: _sheet(row, units) for row in schedule.rows}
    cells |= {item.mark: item_cells.cells(item, units) for item in schedule.items}
    return {mark: _with_units(row, units) for mark, row in cells.items()}


def _sheet(row: Row, units: Units) -> dict[str, str]:
    cutouts = sheet_cells.cuts_text(row, units)
    return {**sheet_cells.figures(row, units), **sheet_cells.texts(row, units), "cutouts": cutouts}


def _with_units(cells: dict[str, str], units: Units) -> dict[str, str]:
    """The cells that say something; the mark and what it is are said of the piece already."""
    unit = {"area": area_unit(units), "weight": weight_unit(units)}
    if units == "mm":
        unit |= dict.fromkeys(LENGTHS, "mm")
    said = {name: cell for name, cell in cells.items() if cell and name not in ("mark", "what", "count")}
    return {
        "count of mark": cells["count"],
        **{name: f"{cell} {unit[name]}" if name in unit else cell for name, cell in said.items()},
    }
