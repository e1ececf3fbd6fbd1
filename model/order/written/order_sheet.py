"""One list of an order on a sheet of a spreadsheet: costs follow from the prices that stand there."""

from __future__ import annotations

from collections.abc import Sequence

import xlsxwriter

from ...units import FOOT, POUND, Units
from ..buying.line import EACH, Line
from .line_cells import units_of

WIDTHS = (44, 16, 14, 14, 9, 10, 10, 10, 10, 10, 10, 10, 12, 30)
BEFORE = ("item", "gauge", "colour", "size", "quantity", "unit")
AFTER = ("per", "amount", "price", "cost", "marks")
LONGEST = 32_767
Written = tuple[str, float | None]


def write_lines(
    sheet: xlsxwriter.worksheet.Worksheet,
    name: str,
    lines: Sequence[Line],
    units: Units,
    formats: dict[str, xlsxwriter.format.Format],
    top: int,
) -> Written:
    """Writes the lines under their titles and a sum; the formula that fetches that sum, and its value.

    A cell without a price leaves its cost blank. per: what the price is for; amount: how many of those.
    """
    of = units_of(units)
    titles = (
        "item",
        "gauge",
        "colour",
        "size",
        "quantity",
        "unit",
        *(f"{key} {unit}" for key, unit in of.items()),
    )
    for column, title in enumerate((*titles, "per", "amount", "price", "cost", "marks")):
        sheet.set_column(column, column, WIDTHS[column])
        sheet.write_string(top, column, title, formats["bold"])
    for row, line in enumerate(lines, top + 1):
        _write(sheet, row, line, units, formats)
    first, last = top + 2, top + 1 + len(lines)
    sheet.write_string(last, 0, "sum", formats["bold"])
    for column, letter in ((6, "G"), (7, "H"), (8, "I")):
        found = [_sizes(line, units)[column - 6] for line in lines]
        if any(found):
            sheet.write_formula(
                last, column, f"=SUM({letter}{first}:{letter}{last})", formats["figure"], sum(found)
            )
    costs = [line.cost for line in lines if line.cost is not None]
    total = round(sum(costs), 2) if costs else None
    cells = f"M{first}:M{last}"
    sum_of = f'=IF(COUNT({cells})=0,"",SUM({cells}))'
    sheet.write_formula(last, 12, sum_of, formats["money"], "" if total is None else total)
    return f"='{name}'!M{last + 1}", total


def _write(
    sheet: xlsxwriter.worksheet.Worksheet,
    row: int,
    line: Line,
    units: Units,
    formats: dict[str, xlsxwriter.format.Format],
) -> None:
    for column, text in enumerate((line.kind, line.gauge, line.colour, line.size)):
        sheet.write_string(row, column, text[:LONGEST])
    sheet.write_number(row, 4, line.quantity)
    sheet.write_string(row, 5, line.unit)
    for column, size in enumerate(_sizes(line, units), 6):
        if size:
            sheet.write_number(row, column, size, formats["figure"])
    per = line.price.unit if line.price else line.unit or EACH
    sheet.write_string(row, 9, per)
    sheet.write_number(row, 10, line.amount(per) or line.quantity)
    if line.price is not None:
        sheet.write_number(row, 11, line.price.amount)
    cost = f'=IF(ISNUMBER(L{row + 1}),ROUND(K{row + 1}*L{row + 1},2),"")'
    sheet.write_formula(row, 12, cost, formats["money"], "" if line.cost is None else line.cost)
    sheet.write_string(row, 13, " ".join(line.marks)[:LONGEST])


def _sizes(line: Line, units: Units) -> tuple[float, float, float]:
    """Length, area and weight in the units of the titles."""
    length, area, weight = (1000.0, 1e6, 1.0) if units == "mm" else (FOOT, FOOT**2, POUND)
    return line.length / length, line.area / area, line.weight / weight
