"""Cells of CSV that a spreadsheet shows and does not run."""

from __future__ import annotations

import re

RUNS = re.compile(r"\s*[=+\-@\t\r\uff1d\uff0b\uff0d\uff20]")  # the last four are the wide ones
FIGURE = re.compile(r"-?[0-9]+(\.[0-9]+)?")


def cell(value: object) -> object:
    """The value; text that begins as a formula does has an apostrophe before it, a figure never."""
    if isinstance(value, str) and RUNS.match(value) and not FIGURE.fullmatch(value):
        return f"'{value}"
    return value
