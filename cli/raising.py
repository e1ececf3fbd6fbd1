"""`ribwright raise`: everything that is made of a building, in one folder."""

from __future__ import annotations

import gc
from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING

import click

from ..findings import in_order
from ..heading import note
from ..outputs import ON_REQUEST, USUAL, Output, asked_for
from ..printable import printable
from .folders import default_folder
from .loading import PATH, PIECES, described
from .progress import progress_bar
from .saying import say
from .status import DONE, FINDINGS
from .summary import sizes, summary
from .types import Words

if TYPE_CHECKING:
    from ..pieces import Model

SHOWN = 3  # findings of one kind that are said; `ribwright audit` says all
WORDS = tuple(output.word for output in ON_REQUEST)


def _bodies(model: Model) -> int:
    return sum(piece.count for piece in model.pieces)


def _lines(outputs: Iterable[Output]) -> str:
    return "\n".join(f"  {output.name:<14} {output.what}" for output in outputs)


@click.command(
    "raise",
    short_help="Build a building and write everything made of it.",
    help=f"Build FILE, or the built-in sample without one, and write:\n\n\b\n{_lines(USUAL)}\n\n"
    f"With --formats also:\n\n\b\n{_lines(ON_REQUEST)}",
)
@click.argument("file", required=False, type=PATH)
@click.option("--formats", type=Words(WORDS), default=(), help=f"Also write these: {','.join(WORDS)}.")
@click.option("--all", "every", is_flag=True, help="Write all formats.")
@click.option(
    "--only", multiple=True, help='Only this group, role, piece or mark in the files "model"; repeatable.'
)
@click.option("--without", multiple=True, help='Without this ("screws", "closures"); repeatable.')
@PIECES
@click.option("--verbose", is_flag=True, help="Say each stage as it begins, also in a pipe.")
@click.option("--out", type=PATH, help="Folder for the files; out/NAME in the current folder unless given.")
def raise_(
    *,
    file: Path | None,
    formats: tuple[str, ...],
    every: bool,
    only: tuple[str, ...],
    without: tuple[str, ...],
    pieces: int,
    verbose: bool,
    out: Path | None,
) -> int:
    """Builds, writes, and says what was made and where."""
    building = described(file)
    outputs = asked_for(WORDS if every else formats)
    folder = out or default_folder(building.name)

    with _all_kept(), progress_bar(stages=verbose) as progress:
        from ..choosing import chosen
        from ..layout.detailing import detailed
        from ..outputs import write_outputs
        from ..raising import raise_building

        raised = raise_building(building, progress, pieces)
        shown = replace(raised.model, pieces=chosen(raised.model, only, without))
        progress("writing and audit", 0, 1)
        written = write_outputs(raised.model, folder, outputs, shown, raised.findings)
    click.echo("\n".join(summary(raised.model, written.schedule, written.audit)))
    click.echo(f"Written to {printable(str(folder))}:")
    click.echo("\n".join(sizes(folder, [(output.name, output.what) for output in outputs])))
    if left := _bodies(raised.model) - _bodies(shown):
        click.echo(f"Left out of the model's files, not of the lists: {left} bodies.")
    click.echo(note(braced=written.schedule.braced))
    found = in_order((*raised.findings, *written.audit.findings))
    say(found, building.units, most=SHOWN)
    if file and (notes := len(detailed(building))):
        click.echo(f"Notes of a detailer, said by `ribwright check`: {notes}.")
    return FINDINGS if any(finding.fault for finding in found) else DONE


@contextmanager
def _all_kept() -> Iterator[None]:
    """No search for rubbish meanwhile: what is loaded and what a building is made of is kept to the end, and
    going through it again and again takes a tenth of the time."""
    gc.disable()
    try:
        yield
    finally:
        gc.enable()
