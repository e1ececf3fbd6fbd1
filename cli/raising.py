"""`ribwright raise`: everything that is made of a building, in one folder."""

from __future__ import annotations

import gc
import shutil
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import click

from ..findings import in_order
from ..outputs import OUTPUTS
from ..printable import printable
from .folders import default_folder
from .loading import PATH, PIECES, described
from .progress import progress_bar
from .saying import say
from .status import DONE, FINDINGS

SHOWN = 3  # findings of one kind that are said; `ribwright audit` says all
CAUTION = (
    "Geometry, not engineering: member sizes are placeholders until a licensed engineer's drawings replace "
    "them, and local code governs."
)
MADE = "\n".join(f"  {output.name:<14} {output.what}" for output in OUTPUTS)


@click.command(
    "raise",
    short_help="Build a building and write everything made of it.",
    help=f"Build FILE, or the built-in sample without one, and write:\n\n\b\n{MADE}",
)
@click.argument("file", required=False, type=PATH)
@PIECES
@click.option("--out", type=PATH, help="Folder for the files; out/NAME in the current folder unless given.")
def raise_(file: Path | None, out: Path | None, pieces: int) -> int:
    """Builds, writes, and says what was made and where."""
    building = described(file)
    folder = out or default_folder(building.name)

    from ..order.written.table import table
    from ..outputs import write_outputs
    from ..raising import raise_building

    with _all_kept(), progress_bar() as progress:
        raised = raise_building(building, progress, pieces)
        written = write_outputs(raised.model, folder)
    click.echo(table(written.schedule, max(80, shutil.get_terminal_size().columns)))
    click.echo(f"Written to {printable(str(folder))}:\n{MADE}")
    click.echo(CAUTION)
    found = in_order((*raised.findings, *written.audit.findings))
    say(found, building.units, most=SHOWN)
    return FINDINGS if any(finding.fault for finding in found) else DONE


@contextmanager
def _all_kept() -> Iterator[None]:
    """No search for rubbish meanwhile: what a building is made of is kept to the end, and going through it
    again and again takes a twentieth of the time."""
    gc.disable()
    try:
        yield
    finally:
        gc.enable()
