"""The console script: it listens before it imports what takes long, so that no moment is without."""

from __future__ import annotations

import os
import sys

from .stopping import listen, listen_no_more, was_stopped


def main() -> None:
    """Runs the command and ends the process with its exit status."""
    try:
        listen()
        _open_streams()
        from .main import run

        status = run(sys.argv[1:])
    except BaseException:  # what an interrupted import raises may be called anything
        if not was_stopped():
            raise
        print("\nStopped.", file=sys.stderr)
        status = was_stopped()
    listen_no_more()
    sys.exit(status)


def _open_streams() -> None:
    """A stream that came closed leads nowhere; in this order each gets the number that others expect."""
    for name, mode in (("stdin", "r"), ("stdout", "w"), ("stderr", "w")):
        if getattr(sys, name) is None:
            setattr(sys, name, os.fdopen(os.open(os.devnull, os.O_RDWR), mode, encoding="utf-8"))
