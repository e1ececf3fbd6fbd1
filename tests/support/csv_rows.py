"""The rows of our CSV files, without those that say whose job it is."""

from __future__ import annotations

import csv
import io


def rows_of(text: str) -> list[dict[str, str]]:
    return [row for row in csv.DictReader(io.StringIO(text)) if row["list"] != "job"]


def job_of(text: str, column: str) -> list[str]:
    return [row[column] for row in csv.DictReader(io.StringIO(text)) if row["list"] == "job"]
