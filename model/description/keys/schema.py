"""The JSON Schema of a description, so that editors complete and check it."""

from __future__ import annotations

from typing import Any

from .key import Key, Table
from .tables import TABLES
from .value_kinds import Kind

SCHEMA_FILE = "ribwright.schema.json"
"""What starters call the schema; it is looked for beside the description."""


def schema() -> dict[str, Any]:
    """A JSON Schema, draft 7 (what TOML editors know), from the lines in tables.py."""
    top, *tables = TABLES
    whole = _table(top)
    for table in tables:
        one = _table(table) if table.each is None else _named(table, table.each)
        if table.shape == "array":
            one = {"type": "array", "description": table.help, "items": one}
        whole["properties"] |= dict.fromkeys((table.name, *table.also), one)
    return {"$schema": "http://json-schema.org/draft-07/schema#", "title": "ribwright building", **whole}


def _named(table: Table, each: Kind) -> dict[str, Any]:
    return {"type": "object", "description": table.help, "additionalProperties": each.schema()}


def _table(table: Table) -> dict[str, Any]:
    return {
        "type": "object",
        "description": table.help,
        "properties": {name: _key(key) for key in table.keys for name in (key.name, *key.also)},
        "required": [key.name for key in table.keys if key.required],
        "additionalProperties": False,
    }


def _key(key: Key) -> dict[str, Any]:
    said = {"description": key.help}
    if key.default is not None:
        said["default"] = key.default
    return {**key.kind.schema(), **said}
