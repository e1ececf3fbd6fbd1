"""The rows of a catalogue file."""

from __future__ import annotations

import csv
from pathlib import Path


def rows(file: str) -> list[dict[str, str]]:
    """The rows of a CSV file of this folder, as column name -> text."""
    with Path(__file__).with_name(file).open(encoding="utf-8", newline="") as lines:
        return list(csv.DictReader(lines))
