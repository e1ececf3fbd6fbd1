"""`ribwright check`: whether a description can be built, at once and without the kernel."""

from __future__ import annotations

import json
from dataclasses import asdict
from pathlib import Path

import click

from ..description import Building, read
from ..errors import DescriptionError, FileError, Problem
from ..units import format_length, format_pitch
from .loading import PATH

WRONG_INPUT = 2


@click.command()
@click.argument("file", type=PATH)
@click.option("--json", "as_json", is_flag=True, help="Say it as JSON.")
def check(file: Path, as_json: bool) -> int:
    """Say whether the description FILE can be built, and if not, what would do.

    Exit status: 0 it can be built, 2 it cannot.
    """
    try:
        building, problems = read(file), []
    except DescriptionError as error:
        building, problems = None, list(error.problems)
    except FileError as error:
        if not as_json:
            raise
        building, problems = None, [Problem("", "", str(error))]
    if as_json:
        found = [asdict(problem) for problem in problems]
        click.echo(json.dumps({"file": str(file), "can_be_built": not problems, "problems": found}, indent=2))
    elif building:
        click.echo(f"{file}: {click.style('can be built', fg='green')}: {_summary(building)}")
    else:
        for problem in problems:
            click.echo(_said(file, problem))
        click.echo(f"{len(problems)} {'thing' if len(problems) == 1 else 'things'} to mend")
    return 0 if building else WRONG_INPUT


def _said(file: Path, problem: Problem) -> str:
    """One problem on a line, as in every other message, with colour on a terminal."""
    place = f"{file}: " + (f"line {problem.line}, column {problem.column}: " if problem.line else "")
    key = click.style(problem.key, bold=True) + ": " if problem.key else ""
    read_ = f"read {click.style(problem.read, fg='red')}; " if problem.read else ""
    return f"{place}{key}{read_}{click.style(problem.remedy, fg='green')}"


def _summary(building: Building) -> str:
    width, length, eave = (
        format_length(size, building.units)
        for size in (building.width, building.length, building.eave_height)
    )
    pitch = format_pitch(building.pitch, building.units)
    openings = len(building.openings)
    return f"{width} x {length}, eave {eave}, pitch {pitch}, {openings} opening{'' if openings == 1 else 's'}"
