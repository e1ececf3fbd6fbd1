"""An order as a spreadsheet: one sheet a list, costs and sums as formulas."""

from __future__ import annotations

import io
from datetime import UTC, datetime

import xlsxwriter

from ..buying.order_list import LISTS, Line, Order
from .order_text import NOTE

HEAD = ("item", "unit", "quantity", "price", "cost", "marks")
LONGEST = 32_767  # characters a cell may have; a longer text would be left out
WIDTHS = (58, 8, 10, 10, 12, 40)
MADE = datetime(1970, 1, 1, tzinfo=UTC)  # equal orders give equal bytes


def workbook(order: Order) -> bytes:
    """The bytes of an XLSX file. Prices may be typed in: cost and totals follow."""
    stream = io.BytesIO()
    book = xlsxwriter.Workbook(stream, {"in_memory": True})
    book.set_properties(
        {"title": f"Order: {order.name}", "comments": NOTE, "created": MADE.replace(tzinfo=None)}
    )
    bold, money = book.add_format({"bold": True}), book.add_format({"num_format": "#,##0.00"})
    sums: list[tuple[str, str, float]] = []
    for name in LISTS:
        lines = [line for line in order.lines if line.list == name]
        if not lines:
            continue
        sheet = book.add_worksheet(name)
        sheet.freeze_panes(1, 0)
        for column, (title, width) in enumerate(zip(HEAD, WIDTHS, strict=True)):
            sheet.set_column(column, column, width, money if title in ("price", "cost") else None)
            sheet.write_string(0, column, title, bold)
        for row, line in enumerate(lines, 1):
            _write(sheet, row, line)
        last = len(lines)
        costs = sum(line.cost or 0.0 for line in lines)
        sheet.write_string(last + 1, 0, "sum", bold)
        sheet.write_formula(last + 1, 2, f"=SUM(C2:C{last + 1})", bold, sum(line.quantity for line in lines))
        sheet.write_formula(last + 1, 4, f"=SUM(E2:E{last + 1})", money, costs)
        sums.append((name, f"='{name}'!E{last + 2}", costs))
    total = book.add_worksheet("total")
    total.set_column(0, 0, 30)
    total.set_column(1, 1, 14, money)
    for row, (name, formula, value) in enumerate(sums):
        total.write_string(row, 0, name)
        total.write_formula(row, 1, formula, money, value)
    total.write_string(len(sums), 0, "total", bold)
    total.write_formula(len(sums), 1, f"=SUM(B1:B{len(sums)})", money, sum(value for *_, value in sums))
    total.write_string(len(sums) + 2, 0, NOTE)
    book.close()
    return stream.getvalue()


def _write(sheet: xlsxwriter.worksheet.Worksheet, row: int, line: Line) -> None:
    sheet.write_string(row, 0, line.item[:LONGEST])
    sheet.write_string(row, 1, line.unit)
    sheet.write_number(row, 2, line.quantity)
    if line.price is not None:
        sheet.write_number(row, 3, line.price)
    sheet.write_formula(row, 4, f"=ROUND(C{row + 1}*D{row + 1},2)", None, line.cost or 0.0)
    sheet.write_string(row, 5, " ".join(line.marks)[:LONGEST])
