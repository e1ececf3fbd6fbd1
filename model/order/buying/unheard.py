"""What a library prints by itself kept out of our lists."""

from __future__ import annotations

import os
from collections.abc import Iterator
from contextlib import contextmanager


@contextmanager
def unheard() -> Iterator[None]:
    """Nothing that is written past Python to standard output meanwhile comes out. The solver of scipy 1.17
    writes a line of its own debugging there, be it told to be silent or not, and would spoil JSON that is
    piped on (jump-dev/HiGHS.jl issue 312)."""
    try:
        kept = os.dup(1)
    except OSError:  # standard output is closed
        yield
        return
    nowhere = os.open(os.devnull, os.O_WRONLY)
    try:
        os.dup2(nowhere, 1)
        yield
    finally:
        os.dup2(kept, 1)
        os.close(kept)
        os.close(nowhere)
