"""Findings said on the terminal, a line each."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable

import click

from ..findings import Code, Finding, words
from ..printable import printable
from ..units import Units


def say(findings: Iterable[Finding], units: Units, most: int | None = None) -> None:
    """Says findings, faults in colour; on the error stream, so that lists can be piped on.

    most: of each kind; how many more there are is said after them. All unless given.
    """
    seen: Counter[Code] = Counter()
    for finding in findings:
        seen[finding.code] += 1
        if most is not None and seen[finding.code] > most:
            continue
        head, colour = ("Finding", "yellow") if finding.fault else ("Note", None)
        click.secho(f"{head}: {printable(words(finding, units))}", fg=colour, err=True)
    for code, count in seen.items():
        if most is not None and count > most:
            click.secho(f"... and {count - most} more of {code.text}: `ribwright audit` lists them", err=True)
