"""`ribwright schedule`: the lists, read off the solids."""

from __future__ import annotations

import shutil
import sys
from pathlib import Path

import click

from ..roles import LISTS
from .loading import PATH, PIECES, listed, model_of
from .progress import progress_bar

FORMATS = ("table", "csv", "json", "md")


@click.command(short_help="Print the lists, read off the solids.")
@click.argument("file", required=False, type=PATH)
@click.option(
    "--format",
    "form",
    type=click.Choice(FORMATS),
    default=FORMATS[0],
    show_default=True,
    help="How it is written.",
)
@click.option(
    "--part",
    "parts",
    type=click.Choice(LISTS),
    multiple=True,
    help="Only this list; repeatable. All unless given.",
)
@PIECES
def schedule(file: Path | None, form: str, parts: tuple[str, ...], pieces: int) -> None:
    """Print the schedule of FILE: a description, or a STEP file made by `raise`.

    Both give the same schedule, since it is read off the solids. In a STEP file from elsewhere sheets,
    members and screws are told by their shape. Without FILE: the built-in sample.
    """
    with progress_bar() as progress:
        model = model_of(file, progress, pieces)

    from ..order.written.csv import csv_text
    from ..order.written.json import json_text
    from ..order.written.markdown import markdown_text
    from ..order.written.table import table

    found = listed(model, file)
    if form == "table":
        click.echo(table(found, max(80, shutil.get_terminal_size().columns), parts), nl=False)
        return
    text = {"csv": csv_text, "json": json_text, "md": markdown_text}[form](found, parts)
    sys.stdout.buffer.write(text.encode("utf-8"))
