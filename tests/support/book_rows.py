"""A small base and a table over it, for tests of price books."""

from __future__ import annotations

import csv
from pathlib import Path

BASE = """\
name = "store"
width = "10 ft"
length = "8 ft"
eave_height = "7 ft"
pitch = "4/12"

[[opening]]
kind = "walk door"
wall = "front"
width = "3 ft"
height = "6 ft"
from_left = "2 ft"
"""
PRICES = "item,unit,price\nsheet,ft2,1.25\nscrew,hundred,9.50\ntrim,ft,2.40\n"
TABLE = """\
width,length,sheets.gauge,opening[1].from_left,frame.bays
,,,,
12 ft,10 ft,26,2 ft 6 in,
3 ft,,,,
,12 ft,,,"[""5 ft"", ""7 ft""]"
9 ft,,,1 ft,
"""


def laid_out(folder: Path, table: str = TABLE) -> list[str]:
    """Files for a run in a folder, and the command's arguments."""
    (folder / "base.toml").write_text(BASE, encoding="utf-8")
    (folder / "prices.csv").write_text(PRICES, encoding="utf-8")
    (folder / "table.csv").write_text(table, encoding="utf-8")
    return ["many", "table.csv", "--base", "base.toml", "--prices", "prices.csv"]


def rows(folder: Path) -> list[dict[str, str]]:
    """The rows of a book."""
    with (folder / "book.csv").open(encoding="utf-8", newline="") as stream:
        return list(csv.DictReader(stream))
