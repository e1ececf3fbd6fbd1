"""An order as a spreadsheet: one sheet a list, costs and sums as formulas, each page fit to be printed."""

from __future__ import annotations

import io
from collections.abc import Iterable, Sequence
from datetime import UTC, datetime

import xlsxwriter

from ...heading import heading, job, short
from ...units import Units
from ..buying.order_list import LISTS, Order
from ..buying.prices import counted, unaccounted
from ..lists.schedule import Schedule
from .bend_text import BENDS, bend_rows
from .cut_cells import CUTS, cut_rows
from .order_sheet import write_lines
from .place_cells import PLACES, place_rows

LONGEST = 32_767  # characters a cell may have; a longer text would be left out
MADE = datetime(1970, 1, 1, tzinfo=UTC)  # equal orders give equal bytes
TOP = 4  # rows over the titles of the columns


def workbook(order: Order, schedule: Schedule | None = None) -> bytes:
    """The bytes of an XLSX file. Prices may be typed in: cost and totals follow.

    schedule: gives the sheet that says where each sheet goes.
    """
    units: Units = "mm" if order.units == "mm" else "ft-in"
    stream = io.BytesIO()
    book = xlsxwriter.Workbook(stream, {"in_memory": True})
    said = heading(order.name, order.terms, units, braced=order.braced)
    book.set_properties(
        {"title": f"Order: {said[0]}", "comments": said[2], "created": MADE.replace(tzinfo=None)}
    )
    formats = {
        "bold": book.add_format({"bold": True, "text_wrap": True, "valign": "top"}),
        "money": book.add_format({"num_format": "#,##0.00"}),
        "figure": book.add_format({"num_format": "#,##0.0"}),
    }
    sums: list[tuple[str, str, float | None]] = []
    for name in LISTS:
        lines = [line for line in order.lines if line.list == name]
        if lines:
            sheet = _page(book, name, order, units)
            sums.append((name, *write_lines(sheet, name, lines, units, formats, TOP)))
    plain = [
        ("cuts", CUTS, cut_rows(order)),
        ("bends", BENDS, bend_rows(order.trims, units)),
        ("placing", PLACES, place_rows(schedule) if schedule else ()),
    ]
    for name, columns, rows in plain:
        _plain(book, name, order, units, columns, list(rows))
    _total(book, order, units, sums, formats)
    book.close()
    return stream.getvalue()


def _page(book: xlsxwriter.Workbook, name: str, order: Order, units: Units) -> xlsxwriter.worksheet.Worksheet:
    """A sheet with the job over it, that prints lying, a page wide, its titles on every page."""
    sheet = book.add_worksheet(name)
    for row, text in enumerate(heading(order.name, order.terms, units, braced=order.braced)):
        sheet.write_string(row, 0, text[:LONGEST])
    sheet.set_landscape()
    sheet.set_paper(9 if units == "mm" else 1)  # A4, letter
    sheet.fit_to_pages(1, 0)
    sheet.repeat_rows(TOP)
    sheet.freeze_panes(TOP + 1, 0)
    said = f"{job(order.name, order.terms)}: {name}".replace("&", "&&")
    sheet.set_footer(f"&L&8{said[:80]}&C&8{short(braced=order.braced)}&R&8&P / &N")
    return sheet


def _plain(
    book: xlsxwriter.Workbook,
    name: str,
    order: Order,
    units: Units,
    columns: Sequence[str],
    rows: Sequence[Sequence[str]],
) -> None:
    """A sheet of texts; none without rows."""
    if not rows:
        return
    sheet = _page(book, name, order, units)
    for column, title in enumerate(columns):
        sheet.set_column(column, column, max(len(row[column]) for row in (columns, *rows)) + 2)
        sheet.write_string(TOP, column, title)
    for number, row in enumerate(rows, TOP + 1):
        for column, text in enumerate(row):
            sheet.write_string(number, column, text[:LONGEST])


def _total(
    book: xlsxwriter.Workbook,
    order: Order,
    units: Units,
    sums: Iterable[tuple[str, str, float | None]],
    formats: dict[str, xlsxwriter.format.Format],
) -> None:
    sheet = _page(book, "total", order, units)
    sheet.set_column(0, 0, 30)
    sheet.set_column(1, 1, 14, formats["money"])
    row = TOP
    values = []
    for name, formula, value in sums:
        sheet.write_string(row, 0, name)
        sheet.write_formula(row, 1, formula, formats["money"], "" if value is None else value)
        values += [] if value is None else [value]
        row += 1
    sheet.write_string(row, 0, "total", formats["bold"])
    column = f"B{TOP + 1}:B{row}"
    sheet.write_formula(
        row, 1, f'=IF(COUNT({column})=0,"",SUM({column}))', formats["money"], sum(values) if values else ""
    )
    sheet.write_string(row + 2, 0, counted(order))
    for number, text in enumerate(unaccounted(order)):
        sheet.write_string(row + 3 + number, 0, text[:LONGEST])
