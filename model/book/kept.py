"""The rows of a book that are done, in a file beside it, so that a stopped run can be taken up again."""

from __future__ import annotations

import json
import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import asdict
from pathlib import Path
from time import monotonic

from ..errors import FileError
from ..files import said_plainly
from .task import FAILED, Entry

NAME = "book.rows"
COLUMNS = "CREATE TABLE IF NOT EXISTS done (key TEXT PRIMARY KEY, state TEXT, entry TEXT) WITHOUT ROWID"
OFTEN = 1.0
"""Seconds between two moments at which what is done is put on the disk."""


class Kept:
    """Entries by the keys of their tasks, in an SQLite file that one run at a time may have open."""

    def __init__(self, base: sqlite3.Connection) -> None:
        self.base, self.saved = base, monotonic()

    def get(self, key: str) -> Entry | None:
        """The entry of a task, None where it is not done. One that failed may be tried again."""
        row = self.base.execute("SELECT entry FROM done WHERE key = ?", (key,)).fetchone()
        return None if row is None else Entry(**json.loads(row[0]))

    def put(self, key: str, entry: Entry) -> None:
        """Keeps an entry."""
        text = json.dumps(asdict(entry), ensure_ascii=False)
        self.base.execute("INSERT OR REPLACE INTO done VALUES (?, ?, ?)", (key, entry.state, text))
        if monotonic() - self.saved > OFTEN:
            self.base.commit()
            self.saved = monotonic()

    def forget_failed(self) -> None:
        """So that this run tries those again."""
        self.base.execute("DELETE FROM done WHERE state = ?", (FAILED,))


@contextmanager
def kept_in(folder: Path) -> Iterator[Kept]:
    """The entries kept in a folder; what was put is on the disk when it is left, however that comes.

    Raises FileError where another run works there, or the file is none of ours.
    """
    file = folder / NAME
    with said_plainly(folder):
        folder.mkdir(parents=True, exist_ok=True)
    base = sqlite3.connect(file, timeout=0.5)
    try:
        base.execute("PRAGMA locking_mode = EXCLUSIVE")
        base.execute(COLUMNS)
        kept = Kept(base)
        kept.forget_failed()
        base.commit()
        try:
            yield kept
        finally:
            base.commit()
    except sqlite3.OperationalError as error:
        busy = "another run is writing here; wait until it is done"
        raise FileError(f"{folder}: {busy if 'locked' in str(error) else error}") from None
    except sqlite3.DatabaseError as error:
        raise FileError(f"{file}: {error}") from None
    finally:
        base.close()
