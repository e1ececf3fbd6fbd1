"""A progress bar on a terminal; in a pipe nothing, or each stage on a line where that is asked for."""

from __future__ import annotations

import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager

WIDTH = 30  # characters of the bar

Progress = Callable[[str, int, int], None]


@contextmanager
def progress_bar(stages: bool = False) -> Iterator[Progress]:
    """Yields what long work calls with (what is done, how many are done, how many there are).

    stages: whether each is said on a line of the error stream where there is no terminal.
    """
    if not sys.stderr.isatty():
        said: set[str] = set()

        def say(what: str, done: int, total: int) -> None:
            if stages and what not in said:
                said.add(what)
                print(what, file=sys.stderr, flush=True)

        yield say
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
