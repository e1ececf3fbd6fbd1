"""`ribwright schedule`: the lists, read off the solids."""

from __future__ import annotations

from pathlib import Path

import click

from .loading import PATH, model_of
from .progress import progress_bar

FORMATS = ("table", "csv", "json", "md")


@click.command()
@click.argument("file", required=False, type=PATH)
@click.option(
    "--format",
    "form",
    type=click.Choice(FORMATS),
    default=FORMATS[0],
    show_default=True,
    help="How it is written.",
)
def schedule(file: Path | None, form: str) -> None:
    """Print the schedule of FILE: a description, or a STEP file made by `raise`.

    Both give the same schedule, since it is read off the solids. Without FILE: the built-in sample.
    """
    with progress_bar() as progress:
        model = model_of(file, progress)
