"""`ribwright steps`: the order in which a building goes up."""

from __future__ import annotations

import shutil
import sys
from pathlib import Path

import click

from ..heading import heading, is_braced
from ..units import Units
from .loading import PATH, PIECES, model_of
from .progress import progress_bar

FORMATS = ("table", "csv", "json")


@click.command(short_help="Print in which order it goes up, what to check, what to mind.")
@click.argument("file", required=False, type=PATH)
@click.option(
    "--format",
    "form",
    type=click.Choice(FORMATS),
    default=FORMATS[0],
    show_default=True,
    help="How it is written.",
)
@PIECES
def steps(file: Path | None, form: str, pieces: int) -> None:
    """Print the steps in which FILE goes up: a description, or a STEP file made by `raise`.

    Each with its marks and screws, what the tape must read before going on, and what to mind. Both give
    the same, since it is read off the solids. Without FILE: the built-in sample.
    """
    with progress_bar() as progress:
        model = model_of(file, progress, pieces)

    from ..steps import steps as in_order
    from ..steps.step_json import steps_json
    from ..steps.step_text import steps_csv, steps_table

    found = in_order(model)
    units: Units = "mm" if model.units == "mm" else "ft-in"
    head = heading(model.name, model.terms, units, braced=is_braced(model.roles))
    if form == "table":
        width = max(80, shutil.get_terminal_size().columns)
        click.echo(steps_table(found, units, head, width), nl=False)
        return
    text = steps_csv(found, units, head) if form == "csv" else steps_json(model, found, units)
    sys.stdout.buffer.write(text.encode("utf-8"))
