"""`ribwright show`: the building in the browser, to turn, cut and ask."""

from __future__ import annotations

import sys
import webbrowser
from pathlib import Path
from typing import TYPE_CHECKING

import click

from ..errors import DescriptionError, RibwrightError
from ..printable import printable
from .folders import default_folder
from .loading import PATH, PIECES, described, is_step, listed, stored
from .progress import progress_bar

if TYPE_CHECKING:
    from ..raising import Raised
    from .progress import Progress


RIBWRIGHT = (sys.executable, "-P", "-c", "from ribwright.cli.start import main; main()")
"""This very command, whatever it was started by; -P: what lies in the folder it stands in is no module."""


@click.command(short_help="Show a building in the browser.")
@click.argument("file", required=False, type=PATH)
@click.option(
    "--out",
    type=PATH,
    help="HTML file; show.html in out/NAME, or beside a STEP file, unless given. With --live the folder of "
    "exports; out/NAME unless given.",
)
@click.option("--open/--no-open", "opened", default=True, help="Open it in the browser.", show_default=True)
@click.option("--live", is_flag=True, help="Write no page: it follows FILE, a description, at every save.")
@PIECES
def show(*, file: Path | None, out: Path | None, opened: bool, live: bool, pieces: int) -> None:
    """Write FILE, a description or a STEP file made by `raise`, as a page for any browser, and open it.

    The page is one file that needs no network: it can be kept, mailed or carried. Without FILE: the
    built-in sample.

    With --live the page is served to this machine alone, until Ctrl-C. Save the description in any editor
    and the building turns to it; what is wrong stands beside its line, over the last one that could be built.
    Sizes, openings, colours and starts can also be changed on the page, in the card of what was picked, and
    are written back to FILE. Export there does what `raise` does.
    """
    if live:
        _live(file, out, opened, pieces)
        return
    with progress_bar() as progress:
        raised = _raised(file, progress, pieces)

        from ..audit import audit
        from ..exchange.atomic_files import whole_file
        from ..show.page.page import page

        progress("audit", 0, 1)
        text = page(raised.model, listed(raised.model, file), audit(raised.model), raised.findings)
        path = out or _default(file, raised.model.name)
        if not out:
            path.parent.mkdir(parents=True, exist_ok=True)
        with whole_file(path) as stream:
            stream.write(text.encode("utf-8"))
    click.echo(f"Wrote {printable(str(path))}")
    if opened:
        _open(path.resolve().as_uri())


def _live(file: Path | None, out: Path | None, opened: bool, pieces: int) -> None:
    """Serves the page of a description until it is told to end."""
    if file is None or is_step(file):
        raise click.UsageError("--live follows a description; name its file (`ribwright new` writes one).")
    try:
        from ..live.desk import Desk
        from ..live.running import run_live
    except ModuleNotFoundError as error:
        if error.name not in ("aiohttp", "watchfiles", "tomlkit"):
            raise
        raise RibwrightError(
            f'--live: {error.name} is not here; python3 -m pip install "ribwright[live]" brings it'
        ) from error

    folder = (out or default_folder(_name(file))).absolute()
    file = file.absolute()
    arguments = ("raise", str(file), "--out", str(folder), "--pieces", str(pieces))

    def begun(address: str) -> None:
        click.echo(
            f"{printable(file.name)} is shown at {address}\nSave it and the page follows. Ctrl-C ends it."
        )
        if opened:
            _open(address)

    run_live(Desk(file, folder, (*RIBWRIGHT, *arguments), pieces), begun)
    click.echo("Ended.")


def _name(file: Path) -> str:
    """What a building is called now, or what its file is where it cannot be built yet."""
    try:
        return described(file).name
    except DescriptionError:
        return file.stem


def _open(address: str) -> None:
    if not webbrowser.open(address):
        click.echo("No browser opened it here; open it with any.", err=True)


def _raised(file: Path | None, progress: Progress, pieces: int) -> Raised:
    """What a file holds; of a STEP file nothing is known that its layout found."""
    from ..raising import Raised, raise_building

    if file and is_step(file):
        return Raised(stored(file), ())
    return raise_building(described(file), progress, pieces)


def _default(file: Path | None, name: str) -> Path:
    """Beside a STEP file; in the folder that `raise` writes into for a description."""
    return (file.parent if file and is_step(file) else default_folder(name)) / "show.html"
