"""The command `ribwright`: its parts, and what it says when something is wrong.

Exit status: 0 done; 1 the building has findings; 2 the input is wrong. Nothing heavy is imported
here, so that help and complaints come at once.
"""

from __future__ import annotations

import io
import os
import sys
from collections.abc import Sequence
from contextlib import suppress
from typing import TextIO

import click

from .. import __version__
from ..errors import RibwrightError
from ..printable import printable
from .audit import audit
from .check import check
from .many import many
from .new import new
from .order import order
from .papers import papers
from .picture import picture
from .raising import raise_
from .schedule import schedule
from .show import show
from .status import DONE, STOPPED, WRONG_INPUT
from .steps import steps
from .stopping import was_stopped

COMPLETE = "_RIBWRIGHT_COMPLETE"
"""Set by a shell that wants to know what may come next."""
LIBRARIES = "Debian, Ubuntu: apt-get install libgl1; README lists them"


@click.group(context_settings={"help_option_names": ["-h", "--help"], "max_content_width": 100})
@click.version_option(__version__, prog_name="ribwright")
def ribwright() -> None:
    """Small steel-framed buildings clad in ribbed sheets.

    A short description goes in; solids, schedules and lists read off the solids come out. It is
    geometry, not engineering: member sizes are placeholders until a licensed engineer's drawings
    replace them, and local code governs.

    Exit status: 0 done, 1 the building has findings, 2 the input is wrong.
    """


for command in (new, check, raise_, audit, schedule, order, steps, papers, many, picture, show):
    ribwright.add_command(command)


def run(arguments: Sequence[str]) -> int:
    """Runs the command; returns its exit status. Whatever the input, it says what is wrong in plain lines."""
    for stream in (sys.stdout, sys.stderr):
        if hasattr(stream, "reconfigure"):
            stream.reconfigure(
                errors="backslashreplace"
            )  # a terminal that lacks a letter still gets the rest
    if asked := os.environ.get(COMPLETE):
        from click.shell_completion import shell_complete

        return shell_complete(ribwright, {}, "ribwright", COMPLETE, asked)
    try:
        with ribwright.make_context("ribwright", list(arguments)) as context:
            status = ribwright.invoke(context)
        sys.stdout.flush()
    except click.exceptions.Exit as end:
        return end.exit_code
    except (Exception, KeyboardInterrupt) as error:
        return _explained(error)
    return status if isinstance(status, int) else DONE


def _explained(error: BaseException) -> int:
    """Says in plain lines what is wrong; returns the exit status. A defect of ours is raised again."""
    status = WRONG_INPUT
    if was_stopped():
        error = KeyboardInterrupt()  # what an interrupted import raises may be called anything
    match error:
        case click.Abort() | KeyboardInterrupt() | EOFError():
            click.echo("\nStopped.", err=True)
            status = was_stopped() or STOPPED
        case click.ClickException():
            error.show(said := io.StringIO())
            click.echo(_lines(said.getvalue()), err=True, nl=False)
        case RibwrightError():
            _complain(str(error))
        case BrokenPipeError():
            _lead_nowhere(sys.stdout)  # the reader had what it wanted
            status = DONE
        case OSError():
            _lead_nowhere(sys.stdout)  # or what it still holds would be tried again at the end
            _complain(f"{error.filename or 'output'}: {error.strerror or error}")
        case MemoryError():
            _complain("there is not enough memory for this building")
        case ImportError() if ".so" in str(error):
            _complain(f"a system library is missing: {error} ({LIBRARIES})")
        case _:
            raise error
    return status


def _lead_nowhere(stream: TextIO) -> None:
    with suppress(OSError):  # not a stream of the system's
        os.dup2(os.open(os.devnull, os.O_WRONLY), stream.fileno())


def _complain(text: str) -> None:
    click.secho(_lines(text), fg="red", err=True)


def _lines(text: str) -> str:
    return "\n".join(map(printable, text.split("\n")))
