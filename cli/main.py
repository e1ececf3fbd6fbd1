"""The command `ribwright`: its parts, and what it says when something is wrong.

Exit status: 0 done; 1 the building has findings; 2 the input is wrong. Nothing heavy is imported
here, so that help and complaints come at once.
"""

from __future__ import annotations

import os
import sys
from collections.abc import Sequence

import click

from .. import __version__
from ..errors import RibwrightError
from .audit import audit
from .check import check
from .new import new
from .order import order
from .picture import picture
from .raising import raise_
from .schedule import schedule
from .status import DONE, STOPPED, WRONG_INPUT

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


for command in (new, check, raise_, audit, schedule, order, picture):
    ribwright.add_command(command)


def main() -> None:
    """The console script."""
    sys.exit(run(sys.argv[1:]))


def run(arguments: Sequence[str]) -> int:
    """Runs the command; returns its exit status. Whatever the input, it says what is wrong in plain lines."""
    for stream in (sys.stdout, sys.stderr):
        if hasattr(stream, "reconfigure"):
            stream.reconfigure(
                errors="backslashreplace"
            )  # a terminal that lacks a letter still gets the rest
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
    match error:
        case click.Abort() | KeyboardInterrupt() | EOFError():
            click.echo("\nStopped.", err=True)
            status = STOPPED
        case click.ClickException():
            error.show()
        case RibwrightError():
            _complain(str(error))
        case BrokenPipeError():
            os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())  # the reader had what it wanted
            status = DONE
        case OSError():
            _complain(f"{error.filename or 'output'}: {error.strerror or error}")
        case MemoryError():
            _complain("there is not enough memory for this building")
        case ImportError() if ".so" in str(error):
            _complain(f"a system library is missing: {error} ({LIBRARIES})")
        case _:
            raise error
    return status


def _complain(text: str) -> None:
    click.secho(text, fg="red", err=True)
