"""`ribwright audit`: a finished model judged by what its solids show."""

from __future__ import annotations

import sys
from pathlib import Path

import click

from ..findings import CHECKS, Check
from ..heading import is_braced, job, short
from ..printable import printable
from ..units import Units
from .loading import PATH, PIECES, model_of
from .progress import progress_bar
from .status import DONE, FINDINGS

FORMATS = ("table", "csv", "json")


@click.command(short_help="Judge a model by what its solids show.")
@click.argument("file", required=False, type=PATH)
@click.option("--only", type=click.Choice(CHECKS), multiple=True, help="Only this check; repeatable.")
@click.option("--format", "form", type=click.Choice(FORMATS), default=FORMATS[0], show_default=True)
@click.option(
    "--pictures",
    type=PATH,
    help="Folder for a close-up of the first finding of every code and mark, its place ringed.",
)
@PIECES
def audit(
    *, file: Path | None, only: tuple[Check, ...], form: str, pictures: Path | None, pieces: int
) -> int:
    """Judge FILE, a description or a STEP file made by `raise`, by what its solids show.

    \b
    clash     no two bodies share space, screws included
    cover     sheets once, twice at laps, never in an opening; no raw edge
    laps      nested, rib to rib, one way; trims over each other as water runs
    overhang  straight and as asked; heads under the cap; feet level
    bite      every screw into steel, its washer flat, clear of edges
    bodies    closed, with a volume, none in the air; braces end on frames
    labels    gauge and profile as measured

    Prints what was measured, then what was found. Without FILE: the built-in sample.

    Exit status: 0 no fault, 1 faults, 2 the input is wrong.
    """
    with progress_bar() as progress:
        model = model_of(file, progress, pieces)

        from ..audit import audit as audited
        from ..audit.report import csv_text, json_text, table

        progress("audit", 0, 1)
        found = audited(model, only or CHECKS, thorough="bodies" in only)
    units: Units = "mm" if model.units == "mm" else "ft-in"
    braced = is_braced(model.roles)
    head = (f"Audit: {job(model.name, model.terms)}", short(braced=braced))
    text = {
        "table": lambda: table(found, units, head),
        "csv": lambda: csv_text(found, head),
        "json": lambda: json_text(found, units, head),
    }[form]()
    sys.stdout.buffer.write(text.encode("utf-8"))
    if pictures:
        from ..show.finding_views import picture_findings

        count = picture_findings(model, found.findings, pictures)
        said = f"Wrote {count} pictures to {printable(str(pictures))}"
        click.echo(said, err=form != FORMATS[0])  # lists may be piped on
    return FINDINGS if any(finding.fault for finding in found.findings) else DONE
