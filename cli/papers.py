"""`ribwright papers`: what a crew puts this very building up by, on paper."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

import click

from ..errors import FileError
from ..printable import printable
from .folders import default_folder
from .loading import PATH, PIECES, is_step, model_of
from .progress import progress_bar

if TYPE_CHECKING:
    from ..pieces import Model
    from ..steps import Step

PAPERS = ("letter", "a4")


@click.command(short_help="Draw what a crew puts it up by, on paper.")
@click.argument("file", required=False, type=PATH)
@click.option(
    "--paper", type=click.Choice(PAPERS), help="Letter for feet and inches, A4 for mm, unless given."
)
@click.option("--out", type=PATH, help="Folder; papers in out/NAME, or beside a STEP file, unless given.")
@click.option(
    "--pictures/--no-pictures", default=True, help="A picture of each step of the raising.", show_default=True
)
@PIECES
def papers(*, file: Path | None, paper: str | None, out: Path | None, pictures: bool, pieces: int) -> None:
    """Draw FILE, a description or a STEP file made by `raise`: papers.pdf, and each drawing as DXF and SVG.

    Without FILE: the built-in sample.
    """
    with progress_bar() as progress:
        model = model_of(file, progress, pieces)

        from ..drawing.values import A4, LETTER
        from ..papers.written import write_papers

        folder = out or _default(file, model.name)
        sizes = dict(zip(PAPERS, (LETTER, A4), strict=True))
        size = sizes[paper] if paper else None
        written = write_papers(model, folder, size, progress, _pictured if pictures else None)
    if written.lacking:
        said = " ".join(printable(letter) for letter in written.lacking)
        click.secho(f"Note: the papers' font has no {said}; written as \\u and a number", err=True)
    click.echo(f"Wrote {written.pages} pages and {written.drawings} drawings to {printable(str(folder))}")


def _pictured(model: Model, found: Sequence[Step]) -> Sequence[bytes]:
    """Pictures of steps; without graphics the papers are of use all the same."""
    from ..show.step_pictures import step_pictures

    try:
        return step_pictures(model, found)
    except FileError as error:
        click.secho(f"Note: steps have no pictures: {error}", err=True)
        return ()


def _default(file: Path | None, name: str) -> Path:
    """Beside a STEP file; in the folder that `raise` writes into for a description."""
    return (file.parent if file and is_step(file) else default_folder(name)) / "papers"
