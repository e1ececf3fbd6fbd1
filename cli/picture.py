"""`ribwright picture`: what a building, or a part of it, looks like."""

from __future__ import annotations

import re
from pathlib import Path

import click

from ..printable import printable
from ..show.views import VIEWS
from .folders import default_folder
from .loading import PATH, PIECES, is_step, model_of
from .progress import progress_bar
from .types import Length

SMALLEST, LARGEST = 16, 4000  # pixels; it is rendered at twice that, and graphics libraries have their limits


def _size(context: click.Context, parameter: click.Parameter, text: str) -> tuple[int, int]:
    """Width and height in pixels, as typed: 1600x1000."""
    found = re.fullmatch(r"\s*(\d{1,5})\s*x\s*(\d{1,5})\s*", text)
    width, height = (int(found[1]), int(found[2])) if found else (0, 0)
    if not (SMALLEST <= width <= LARGEST and SMALLEST <= height <= LARGEST):
        raise click.BadParameter(f"read {text!r}; would do: 1600x1000, each {SMALLEST} to {LARGEST}")
    return width, height


@click.command(short_help="Draw a building, or a part of it.")
@click.argument("file", required=False, type=PATH)
@click.option(
    "--out", type=PATH, help="PNG file; picture.png in out/NAME, or beside a STEP file, unless given."
)
@click.option(
    "--from",
    "view",
    type=click.Choice(VIEWS),
    default=VIEWS[0],
    help="Where the eye stands.",
    show_default=True,
)
@click.option(
    "--only",
    multiple=True,
    help='Draw only this group, role, piece or mark ("roof", "wall sheet"); repeatable.',
)
@click.option(
    "--close-up", default="", help='Look at this piece, mark or point ("15 ft, 0, 10 ft": across, along, up).'
)
@click.option(
    "--distance", type=Length(1.0), default="5 ft", help="Of the eye, in a close-up.", show_default=True
)
@click.option("--size", callback=_size, default="1600x1000", help="Pixels.", show_default=True)
@PIECES
def picture(
    *,
    file: Path | None,
    out: Path | None,
    view: str,
    only: tuple[str, ...],
    close_up: str,
    distance: float,
    size: tuple[int, int],
    pieces: int,
) -> None:
    """Draw FILE, a description or a STEP file made by `raise`, as a PNG picture.

    Without FILE: the built-in sample.
    """
    with progress_bar() as progress:
        model = model_of(file, progress, pieces)

        from ..exchange.atomic_files import whole_file
        from ..show.picture import picture as drawn

        image = drawn(model, view=view, only=only, at=close_up, distance=distance, size=size)
        path = out or _default(file, model.name)
        if not out:
            path.parent.mkdir(parents=True, exist_ok=True)
        with whole_file(path) as stream:
            stream.write(image)
    click.echo(f"Wrote {printable(str(path))}")


def _default(file: Path | None, name: str) -> Path:
    """Beside a STEP file; in the folder that `raise` writes into for a description."""
    return (file.parent if file and is_step(file) else default_folder(name)) / "picture.png"
