"""A progress bar on a terminal, and nothing at all in a pipe."""

from __future__ import annotations

import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager

WIDTH = 30  # characters of the bar

Progress = Callable[[str, int, int], None]


@contextmanager
def progress_bar() -> Iterator[Progress]:
    """Yields what long work calls with (what is done, how many are done, how many there are)."""
    if not sys.stderr.isatty():
        yield lambda what, done, total: None
        return
    try:
        yield _draw
    finally:
        sys.stderr.write("\r\x1b[K")
        sys.stderr.flush()


def _draw(what: str, done: int, total: int) -> None:
    filled = WIDTH * done // max(total, 1)
    sys.stderr.write(f"\r\x1b[K{what} [{'#' * filled}{'.' * (WIDTH - filled)}] {done}/{total}")
    sys.stderr.flush()
