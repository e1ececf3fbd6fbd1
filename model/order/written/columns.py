"""Rows of words in columns, for a terminal."""

from __future__ import annotations

from collections.abc import Sequence


def in_columns(head: Sequence[str], rows: Sequence[Sequence[str]]) -> list[str]:
    """Lines: the names of the columns, then the rows; columns without a cell are left out."""
    used = [i for i in range(len(head)) if any(row[i] for row in rows)]
    sizes = {i: max(len(row[i]) for row in (head, *rows)) for i in used}
    return ["  ".join(row[i].ljust(sizes[i]) for i in used).rstrip() for row in (head, *rows)]
