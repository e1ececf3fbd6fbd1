"""Findings said on the terminal, a line each."""

from __future__ import annotations

from collections.abc import Iterable

import click

from ..findings import Finding, words
from ..printable import printable
from ..units import Units


def say(findings: Iterable[Finding], units: Units) -> None:
    """Says every finding, faults in colour; on the error stream, so that lists can be piped on."""
    for finding in findings:
        head, colour = ("Finding", "yellow") if finding.fault else ("Note", None)
        click.secho(f"{head}: {printable(words(finding, units))}", fg=colour, err=True)
