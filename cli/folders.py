"""Where results go: a folder of the building's name, under `out` in the current folder."""

from __future__ import annotations

import re
import unicodedata
from pathlib import Path

from ..errors import FileError

OUT = Path("out")
LONGEST = 80  # bytes of a folder's name, well below what any file system takes
RESERVED = {"con", "prn", "aux", "nul", *(f"{port}{n}" for port in ("com", "lpt") for n in range(1, 10))}


def folder_name(name: str) -> str:
    """A building's name as the name of one folder: no separators, nothing hidden, not too long.

    Raises FileError when nothing is left of it.
    """
    plain = unicodedata.normalize("NFC", name)
    plain = re.sub(r"[^\w.-]+", "-", plain).strip("-._ ")
    plain = plain.encode("utf-8", "ignore")[:LONGEST].decode("utf-8", "ignore").rstrip("-._ ")
    if not plain:
        raise FileError(f"the building's name {name!r} cannot name a folder; choose one with --out")
    return f"{plain}-" if plain.split(".")[0].lower() in RESERVED else plain


def default_folder(name: str) -> Path:
    """out/<name>, relative to where the person stands."""
    return OUT / folder_name(name)
