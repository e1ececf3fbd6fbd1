"""A key of a description changed where it stands: every comment, space and line beside it stays."""

from __future__ import annotations

import tomllib
from pathlib import Path
from typing import Any

import tomlkit
from tomlkit.exceptions import TOMLKitError

from ..errors import FileError
from ..exchange.atomic_files import whole_file

BOM = "\ufeff"
BY_HAND = "that key stands where it can only be changed by hand"


def changed(text: str, path: tuple[str | int, ...], typed: str) -> str:
    """The text with another value at a path, in quotes; nothing there for an empty one.

    Raises FileError where the key stands in a way that cannot be changed without changing more.
    """
    plain = text.removeprefix(BOM)
    try:
        document = tomlkit.parse(plain)
        _put(document, path, typed)
        found = tomlkit.dumps(document)
    except (TOMLKitError, TypeError, ValueError) as error:
        raise FileError(BY_HAND) from error
    wanted = tomllib.loads(plain.replace("\r\n", "\n"))
    _put(wanted, path, typed)
    try:
        kept = tomllib.loads(found.replace("\r\n", "\n")) == wanted
    except tomllib.TOMLDecodeError:
        kept = False
    if not kept:
        raise FileError(BY_HAND)
    return text[: len(text) - len(plain)] + found


def _put(values: Any, path: tuple[str | int, ...], typed: str) -> None:
    """Puts a value at a path, in plain values and in a document alike."""
    *tables, name = path
    for part in tables:
        if isinstance(part, str) and part not in values:
            values[part] = tomlkit.table() if isinstance(values, tomlkit.TOMLDocument) else {}
        values = values[part]
    if typed:
        values[name] = typed
    elif name in values:
        del values[name]


def write(path: Path, text: str) -> None:
    """Puts the text in the file's place, whole or not at all, for whom it was before. Raises FileError."""
    mode = path.stat().st_mode
    with whole_file(path) as stream:
        stream.write(text.encode("utf-8"))
    path.chmod(mode & 0o7777)
