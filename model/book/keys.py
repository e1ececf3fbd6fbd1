"""The keys that a row of a book sets: dotted, as messages about descriptions write them."""

from __future__ import annotations

import re

from ..description.keys.tables import OPENING, TABLES
from ..description.keys.value_kinds import nearest
from ..errors import FileError

Path = tuple[str | int, ...]
"""Where a value stands in a description: names, and numbers of openings from 0."""

PART = re.compile(r"([^\[\].]+)(?:\[([1-9][0-9]{0,2})\])?")
TOP = {key.name: key for table in TABLES if not table.name for key in table.keys}
WITHIN = {
    name: {spelled for key in table.keys for spelled in (key.name, *key.also)}
    for table in TABLES
    for name in (table.name, *table.also)
    if table.name
}
NAMED = {name for table in TABLES if table.shape == "named" for name in (table.name, *table.also)}


def path_of(typed: str, where: str) -> Path:
    """The path behind a dotted key: `width`, `sheets.profile`, `opening[2].width`, `opening` for them all.

    Raises FileError for what is no key. where: file and line, for the message.
    """
    typed = typed.strip()
    head, _, name = typed.partition(".")
    found = PART.fullmatch(head)
    table, number = (found[1], found[2]) if found else (head, None)
    if table == OPENING.name and not number and not name:
        return (table,)
    if table in WITHIN and (number is not None) == (table == OPENING.name):
        if name in WITHIN[table] or (table in NAMED and name):
            return (table, int(number) - 1, name) if number else (table, name)
        raise FileError(f"{where}: {typed!r} is no key{nearest(typed, _of(table, number))}")
    top = {spelled for key in TOP.values() for spelled in (key.name, *key.also)}
    if not name and not number and table in top:
        return (table,)
    every = [*top, *(one for name in WITHIN for one in _of(name, "1" if name == OPENING.name else None))]
    raise FileError(f"{where}: {typed!r} is no key{nearest(typed, every)}")


def _of(table: str, number: str | None) -> list[str]:
    head = f"{table}[{number}]" if number else table
    return [f"{head}.{name}" for name in WITHIN[table]]
