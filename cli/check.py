"""`ribwright check`: whether a description can be built, at once and without the kernel."""

from __future__ import annotations

import json
from collections.abc import Sequence
from dataclasses import asdict
from pathlib import Path

import click

from ..description import Building
from ..errors import DescriptionError, FileError, Problem, TooManyPieces
from ..findings import Finding, in_order, words
from ..intake import read, refuse_too_many
from ..printable import printable
from ..units import Units, format_length, format_pitch
from .loading import PATH, PIECES
from .saying import say
from .status import DONE, FINDINGS, WRONG_INPUT


@click.command(short_help="Say whether a description can be built.")
@click.argument("file", type=PATH)
@PIECES
@click.option("--json", "as_json", is_flag=True, help="Say it as JSON.")
def check(file: Path, as_json: bool, pieces: int) -> int:
    """Say whether the description FILE can be built, and if not, what would do.

    Exit status: 0 it can be built, 1 it can but there are findings, 2 it cannot.
    """
    building: Building | None = None
    problems: Sequence[Problem] = ()
    findings: Sequence[Finding] = ()
    try:
        building = read(file)
        refuse_too_many(building, pieces)
        findings = _findings(building)
    except DescriptionError as error:
        problems = error.problems
    except (FileError, TooManyPieces) as error:
        if not as_json:
            raise
        problems = [Problem("", "", str(error))]
    if as_json:
        click.echo(_json(file, problems, findings, building.units if building else "ft-in"))
    elif building:
        _say_findings(file, building, findings)
    else:
        _say_problems(file, problems)
    if problems:
        return WRONG_INPUT
    return FINDINGS if any(finding.fault for finding in findings) else DONE


def _findings(building: Building) -> Sequence[Finding]:
    from ..layout import lay_out
    from ..layout.detailing import detailed

    return in_order((*lay_out(building).findings, *detailed(building)))


def _said(finding: Finding, units: Units) -> dict[str, object]:
    return {
        "code": finding.code.text,
        "fault": finding.fault,
        "pieces": finding.pieces,
        "text": words(finding, units),
    }


def _json(file: Path, problems: Sequence[Problem], findings: Sequence[Finding], units: Units) -> str:
    said = {
        "file": str(file),
        "can_be_built": not problems,
        "problems": [asdict(problem) for problem in problems],
        "findings": [_said(finding, units) for finding in findings],
    }
    return json.dumps(said, indent=2)


def _say_problems(file: Path, problems: Sequence[Problem]) -> None:
    """One line a problem, as in every other message, with colour on a terminal."""
    shown = printable(str(file))
    for problem in problems:
        place = f"line {problem.line}, column {problem.column}: " if problem.line else ""
        key = click.style(problem.key, bold=True) + ": " if problem.key else ""
        typed = f"read {click.style(problem.read, fg='red')}; " if problem.read else ""
        click.echo(f"{shown}: {place}{key}{typed}{click.style(problem.remedy, fg='green')}")
    click.echo(f"{len(problems)} {'thing' if len(problems) == 1 else 'things'} to mend")


def _say_findings(file: Path, building: Building, findings: Sequence[Finding]) -> None:
    width, length, eave = (
        format_length(size, building.units)
        for size in (building.width, building.length, building.eave_height)
    )
    pitch = format_pitch(building.pitch, building.units)
    openings = f"{len(building.openings)} opening{'' if len(building.openings) == 1 else 's'}"
    can = click.style("can be built", fg="green")
    click.echo(f"{printable(str(file))}: {can}: {width} x {length}, eave {eave}, pitch {pitch}, {openings}")
    say(findings, building.units)
