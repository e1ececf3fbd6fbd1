"""`ribwright picture`: what a building, or a part of it, looks like."""

from __future__ import annotations

import re
from dataclasses import replace
from pathlib import Path

import click

from ..printable import printable
from ..show.views import VIEWS
from .folders import OUT, default_folder
from .loading import PATH, PIECES, is_step, model_of
from .progress import progress_bar
from .types import Length

SMALLEST, LARGEST = 16, 4000  # pixels; it is rendered at twice that, and graphics libraries have their limits
ALL = "all"


def _size(context: click.Context, parameter: click.Parameter, text: str) -> tuple[int, int]:
    """Width and height in pixels, as typed: 1600x1000."""
    found = re.fullmatch(r"\s*(\d{1,5})\s*x\s*(\d{1,5})\s*", text)
    width, height = (int(found[1]), int(found[2])) if found else (0, 0)
    if not (SMALLEST <= width <= LARGEST and SMALLEST <= height <= LARGEST):
        raise click.BadParameter(f"read {text!r}; would do: 1600x1000, each {SMALLEST} to {LARGEST}")
    return width, height


@click.command(short_help="Draw buildings, or a part of one.")
@click.argument("files", metavar="[FILE]...", nargs=-1, type=PATH)
@click.option(
    "--out",
    type=PATH,
    help="PNG file, or with --from all a folder; picture.png or pictures in out/NAME, or beside a STEP file, "
    "unless given.",
)
@click.option(
    "--from",
    "view",
    type=click.Choice((*VIEWS, ALL)),
    default=VIEWS[0],
    help="Where the eye stands; front, back, left, right and above are in parallel. "
    f"{ALL}: a picture from each.",
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
@click.option("--cut-out", is_flag=True, help="Nothing around it, for laying over another picture.")
@click.option("--plain", is_flag=True, help="Without the line that says whose it is and what it is not.")
@click.option("--findings", is_flag=True, help="Audit it; ring and number what is found, in words below.")
@PIECES
def picture(
    *,
    files: tuple[Path, ...],
    out: Path | None,
    view: str,
    only: tuple[str, ...],
    close_up: str,
    distance: float,
    size: tuple[int, int],
    cut_out: bool,
    plain: bool,
    findings: bool,
    pieces: int,
) -> None:
    """Draw FILE, a description or a STEP file made by `raise`, as a PNG picture; several side by side.

    Without FILE: the built-in sample.
    """
    if len(files) > 1 and (findings or close_up):
        raise click.UsageError("--findings and --close-up are of one building")
    with progress_bar() as progress:
        models = [model_of(file, progress, pieces) for file in files or (None,)]

        from ..exchange.atomic_files import whole_file, whole_folder
        from ..show.picture import Wish
        from ..show.picture import picture as drawn

        wish = Wish(view, only, close_up, distance, size, cut_out, plain)
        if findings:
            from ..audit import audit

            progress("audit", 0, 1)
            wish = replace(wish, findings=audit(models[0]).findings)
        path = out or _default(files, models[0].name, view)
        if not out:
            path.parent.mkdir(parents=True, exist_ok=True)
        if view == ALL:
            with whole_folder(path) as room:
                for number, each in enumerate(VIEWS):
                    progress("pictures", number, len(VIEWS))
                    image = drawn(models, replace(wish, view=each))
                    (room / f"{each.replace(' ', '-')}.png").write_bytes(image)
        else:
            image = drawn(models, wish)
            with whole_file(path) as stream:
                stream.write(image)
    click.echo(f"Wrote {printable(str(path))}")


def _default(files: tuple[Path, ...], name: str, view: str) -> Path:
    """Beside a STEP file; in the folder that `raise` writes into for a description; of several in `out`."""
    folder = OUT if len(files) > 1 else default_folder(name)
    if len(files) == 1 and is_step(files[0]):
        folder = files[0].parent
    return folder / ("pictures" if view == ALL else "picture.png")
