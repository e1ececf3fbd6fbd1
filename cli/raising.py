"""`ribwright raise`: everything that is made of a building, in one folder."""

from __future__ import annotations

from pathlib import Path

import click

from ..outputs import OUTPUTS
from .folders import default_folder
from .loading import PATH, described
from .progress import progress_bar

MADE = "\n".join(f"  {output.name:<14} {output.what}" for output in OUTPUTS)


@click.command("raise", help=f"Build FILE, or the built-in sample without one, and write:\n\n\b\n{MADE}")
@click.argument("file", required=False, type=PATH)
@click.option("--out", type=PATH, help="Folder for the files; out/NAME in the current folder unless given.")
def raise_(file: Path | None, out: Path | None) -> None:
    """Builds, writes, and says what was made and where."""
    building = described(file)
    folder = out or default_folder(building.name)

    from ..order.schedule import schedule
    from ..order.table import table
    from ..outputs import write_outputs
    from ..raising import raise_building

    with progress_bar() as progress:
        model = raise_building(building, progress)
        listed = schedule(model)
        write_outputs(model, listed, folder, progress)
    click.echo(table(listed))
    for output in OUTPUTS:
        click.echo(f"{folder / output.name}  {output.what}")
