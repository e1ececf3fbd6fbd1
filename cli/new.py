"""`ribwright new`: a commented description to go on from."""

from __future__ import annotations

import json
import sys
from collections.abc import Callable, Iterator
from pathlib import Path

import click

from ..description import schema
from ..description.building import Building
from ..description.keys.key import Key
from ..description.keys.schema import SCHEMA_FILE
from ..description.keys.tables import TOP
from ..errors import FileError
from ..exchange.atomic_files import whole_file
from ..intake import SHAPES, clad_walls, parse, put_at, starter_text, starters
from ..printable import printable
from ..units import Units, Unreadable, format_length, format_pitch

ENDING = ".toml"
ASKED = {
    "width": "Width, across the gables",
    "length": "Length, along the ridge",
    "eave_height": "Eave height",
    "pitch": "Roof pitch",
}
MOST_DOORS = 20
GABLE = "gable"


@click.command(short_help="Write a commented description to go on from.")
@click.argument("name", required=False)
@click.option("--like", type=click.Choice(starters()), default=None, help="Begin from this starter.")
@click.option("--units", type=click.Choice(["ft-in", "mm"]), default=None, help="How lengths are shown.")
@click.option("--width", help="Across the gables, out to out of the steel.")
@click.option("--length", help="Along the ridge, out to out of the steel.")
@click.option("--eave-height", help="From the top of the slab to the eave.")
@click.option("--pitch", help="Of the roof: 3/12, or degrees.")
@click.option("--overhead-doors", type=click.IntRange(0, MOST_DOORS), help="How many, in the front gable.")
@click.option("--walk-doors", type=click.IntRange(0, MOST_DOORS), help="How many, in the left wall.")
@click.option("--force", is_flag=True, help="Write over a file that is there.")
@click.option(
    "--schema", "schema_only", is_flag=True, help=f"Write {SCHEMA_FILE}, by which editors complete and check."
)
def new(
    *,
    name: str | None,
    like: str | None,
    overhead_doors: int | None,
    walk_doors: int | None,
    force: bool,
    schema_only: bool,
    **answers: str | None,
) -> None:
    """Write NAME.toml, a commented description, in the current folder, and the schema beside it.

    On a terminal, with no size given and no starter named, it asks a few questions. Lengths are
    typed as people write them: 30', 9' 2-1/2", 110.5 in, 9.144 m, 2500 mm.
    """
    if schema_only:
        _write(Path(SCHEMA_FILE), _schema(), force)
        return
    if not name:
        raise click.UsageError("Missing argument 'NAME': what the building is called.")
    name = name.removesuffix(ENDING)
    given = {key: value for key, value in answers.items() if value is not None}
    if not given and like is None and overhead_doors is None and walk_doors is None and sys.stdin.isatty():
        like, given, overhead_doors, walk_doors = _asked()
    text = starter_text(name, like or "", walk_doors=walk_doors, overhead_doors=overhead_doors, **given)
    if overhead_doors or walk_doors:
        text = _clear_of_ribs(text, name)
    path = Path(name + ENDING)
    _write(path, text, force)
    if not Path(SCHEMA_FILE).exists():
        _write(Path(SCHEMA_FILE), _schema(), force)
    building = parse(text, name)
    taken = [", ".join(_taken(building, given)), *(() if like else _for_its_size(building))]
    if said := "; ".join(filter(None, taken)):
        click.echo(f"Not given, so taken: {said}")
    click.echo(f"Edit it, then: ribwright raise {printable(str(path))}")


def _clear_of_ribs(text: str, name: str) -> str:
    """The text with its doors where sheets are cut well beside them."""
    from ..layout.detailing import clear_places  # layout only for those who ask for doors

    building = parse(text, name)
    return put_at(text, clear_places(building), building)


def _schema() -> str:
    return json.dumps(schema(), indent=2, ensure_ascii=False) + "\n"


def _taken(building: Building, given: dict[str, str]) -> Iterator[str]:
    """The sizes that nobody gave, as the description now has them."""
    said = {
        "units": building.units,
        **{key: format_length(getattr(building, key), building.units) for key in list(ASKED)[:3]},
        "pitch": format_pitch(building.pitch, building.units),
    }
    return (f"{key.replace('_', ' ')} {shown}" for key, shown in said.items() if key not in given)


def _for_its_size(building: Building) -> Iterator[str]:
    """What a blank description says of a large building alone."""
    if posts := building.frame.front_posts:
        yield f"gable posts at {', '.join(format_length(post, building.units) for post in posts)}"
    if building.bracing:
        yield "braces in end bays"


def _asked() -> tuple[str, dict[str, str], int, int]:
    """Answers to the questions: a starter of the shape, keys at the top, overhead doors, walk doors."""
    shape: str = click.prompt("Shape", type=click.Choice([GABLE, *SHAPES]), default=GABLE)
    units: Units = click.prompt("Units", type=click.Choice(["ft-in", "mm"]), default="ft-in")
    keys = {key.name: key for key in TOP.keys}
    answers: dict[str, str] = {"units": units}
    for name, question in ASKED.items():
        key = keys[name]
        default = key.example[units == "mm"]
        typed: str = click.prompt(question, default=default, value_proc=_reader(key, units))
        answers[name] = typed
    if shape != GABLE and not clad_walls(parse(starter_text(shape, shape), shape)):
        return shape, answers, 0, 0
    doors = click.IntRange(0, MOST_DOORS)
    overhead = click.prompt("Overhead doors in the front", type=doors, default=1)
    walk = click.prompt("Walk doors in the left wall", type=doors, default=1)
    return "" if shape == GABLE else shape, answers, overhead, walk


def _reader(key: Key, units: Units) -> Callable[[str], str]:
    """What takes an answer as typed, if the description will be able to read it."""

    def read(typed: str) -> str:
        try:
            key.kind.read(typed, units)
        except Unreadable as error:
            raise click.UsageError(f"would do: {error}") from None
        return typed

    return read


def _write(path: Path, text: str, force: bool) -> None:
    """Writes a file that was not there, or, if asked to, over one that was. Raises FileError."""
    if not force and (path.exists() or path.is_symlink()):
        raise FileError(f"{path}: is there already; choose another name, or write over it with --force")
    with whole_file(path) as file:
        file.write(text.encode("utf-8"))
    click.echo(f"Wrote {printable(str(path))}")
