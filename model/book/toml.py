"""Values as TOML text: one building's description out of what a base says and what a row sets."""

from __future__ import annotations

import json
from collections.abc import Mapping
from copy import deepcopy

from .keys import Path

Values = dict[str, object]


def with_row(base: Values, row: Mapping[Path, object]) -> Values:
    """A copy of the base's values with those of a row in their places; openings that the base has not are
    begun, and whoever reads the description says what they lack."""
    values = deepcopy(base)
    for path, value in row.items():
        within: object = values
        for part in path[:-1]:
            if isinstance(part, int):
                assert isinstance(within, list)
                within.extend({} for _ in range(part + 1 - len(within)))
                within = within[part]
            elif isinstance(within, dict):
                within = within.setdefault(part, [] if path[0] == "opening" else {})
        if isinstance(within, dict):
            within[str(path[-1])] = value
    return values


def description(values: Mapping[str, object]) -> str:
    """The text of a description: the keys at the top, then its tables, in a fixed order."""
    lines = _lines({name: value for name, value in values.items() if not _is_table(value)})
    for name in sorted(name for name, value in values.items() if _is_table(value)):
        lines += _table(name, values[name])
    return "\n".join(lines) + "\n"


def typed(value: object) -> str:
    """A value as a person would type it into a cell: text without quotes, all else as in TOML."""
    return value if isinstance(value, str) else written(value)


def written(value: object) -> str:
    """A value as TOML writes it in line."""
    match value:
        case bool():
            return str(value).lower()
        case str():
            return json.dumps(value, ensure_ascii=False).replace("\x7f", "\\u007f")
        case list():
            return f"[{', '.join(map(written, value))}]"
        case dict():
            return f"{{{', '.join(f'{written(str(name))} = {written(one)}' for name, one in value.items())}}}"
    return str(value)


def _is_table(value: object) -> bool:
    return isinstance(value, dict) or (
        isinstance(value, list) and bool(value) and all(isinstance(one, dict) for one in value)
    )


def _table(name: str, value: object) -> list[str]:
    if isinstance(value, list):
        return [line for one in value for line in (f"[[{written(name)}]]", *_lines(one))]
    return [f"[{written(name)}]", *_lines(value)] if isinstance(value, dict) else []


def _lines(values: Mapping[str, object]) -> list[str]:
    return [f"{written(name)} = {written(values[name])}" for name in sorted(values)]
