"""What the commands work on: a description, a STEP file, or the built-in sample."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import click

from ..errors import FileError
from ..intake import MOST, read, sample

if TYPE_CHECKING:
    from ..description.building import Building
    from ..order.lists.schedule import Schedule
    from ..pieces import Model
    from .progress import Progress

PIECES = click.option(
    "--pieces",
    type=click.IntRange(1),
    default=MOST,
    show_default=True,
    help="Refuse a building of more pieces than this, screws counted.",
)
"""The option of every command that lays out a described building."""

PATH = click.Path(path_type=Path)
"""The type of every file and folder; the floors below say what is wrong with one."""

STEP_ENDINGS = {".step", ".stp"}


def described(file: Path | None) -> Building:
    """The building a file describes; the built-in sample without one."""
    return read(file) if file else sample()


def is_step(file: Path) -> bool:
    """Whether a file is read as STEP, by its name."""
    return file.suffix.lower() in STEP_ENDINGS


def model_of(file: Path | None, progress: Progress, pieces: int) -> Model:
    """The model a STEP file holds, or of the building a file describes."""
    if file and is_step(file):
        return stored(file)
    building = described(file)
    from ..raising import raise_building

    return raise_building(building, progress, pieces).model


def stored(file: Path) -> Model:
    """The model in a STEP file; what must be said of the file goes to stderr."""
    from ..exchange.step import reading

    read = reading(file)
    if read.note:
        click.secho(f"Note: {read.note}", err=True)
    return read.model


def listed(model: Model, file: Path | None) -> Schedule:
    """The schedule of a model; one line on stderr for bodies of a file that nothing is known of.

    Raises FileError where that is all of them: an empty list would pass for a building without steel.
    """
    from ..order.lists.schedule import schedule

    found = schedule(model)
    unknown = sum(item.count for item in found.listed("unknown"))
    if unknown:
        bodies = sum(piece.count for piece in model.pieces)
        if unknown == bodies:
            raise FileError(f"{file}: of its {bodies} bodies none is recognised as a sheet, member or screw")
        click.echo(f"{file}: {unknown} of {bodies} bodies not recognised; listed as unknown", err=True)
    return found
