"""An audit in words: what was measured first, then what was found; as a table, CSV or JSON."""

from __future__ import annotations

import csv
import io
import json
from collections.abc import Iterable, Iterator, Sequence

from ..findings import Finding, amount, where, words
from ..printable import cell, printable
from ..units import Units
from .witness import Audit, Figure

COLUMNS = ("list", "check", "what", "where", "count", "least", "greatest", "limit", "unit", "text")
UNITS = {"": "", "length": "mm", "area": "mm2", "volume": "mm3", "count": ""}


def table(audit: Audit, units: Units, head: Sequence[str] = ()) -> str:
    """Lines for a terminal: every figure, then every finding, faults first. head: what stands over them."""
    lines = [*head, "Measured", *(f"  {line}" for line in _figures(audit.measured, units)), ""]
    faults = sum(finding.fault for finding in audit.findings)
    lines.append(f"Found: {faults or 'no'} fault{'' if faults == 1 else 's'}")
    lines += [f"  {printable(words(finding, units))}" for finding in audit.findings]
    return "\n".join(lines) + "\n"


def _figures(figures: Iterable[Figure], units: Units) -> Iterator[str]:
    for figure in figures:
        head = ", ".join(filter(None, (printable(figure.where), figure.what)))
        sizes = dict.fromkeys(
            amount(size, figure.quantity, units) for size in (figure.least, figure.greatest)
        )
        said = filter(None, (str(figure.count), " to ".join(filter(None, sizes)), figure.said))
        yield f"{figure.check:<9} {head}: {', '.join(said)}"


def csv_text(audit: Audit, head: Sequence[str] = ()) -> str:
    """Comma-separated as RFC 4180 has it: figures, then findings; sizes in mm, mm2, mm3.

    head: what stands over them, in rows of the list "job".
    """
    text = io.StringIO()
    writer = csv.writer(text)
    writer.writerow(COLUMNS)
    for line in head:
        writer.writerow(("job", "", cell(printable(line)), *[""] * (len(COLUMNS) - 3)))
    for figure in audit.measured:
        cells = ("measured", figure.check, figure.what, cell(printable(figure.where)), figure.count)
        unit = UNITS[figure.quantity]
        writer.writerow((*cells, figure.least, figure.greatest, None, unit, figure.said))
    for finding in audit.findings:
        place = "" if finding.at is None else where(finding.at, "mm")
        sizes = (finding.measured, finding.measured, finding.limit, UNITS[finding.quantity])
        kind = "fault" if finding.fault else "note"
        writer.writerow((kind, finding.code.check, finding.code.text, place, 1, *sizes, words(finding, "mm")))
    return text.getvalue()


def json_text(audit: Audit, units: Units, head: Sequence[str] = ()) -> str:
    """Figures and findings with their sizes in mm, mm2, mm3, and the findings' words. head: of what."""
    content = {
        **({"job": list(head)} if head else {}),
        "measured": [
            {
                "check": figure.check,
                "what": figure.what,
                "where": figure.where,
                "count": figure.count,
                "least": figure.least,
                "greatest": figure.greatest,
                "unit": UNITS[figure.quantity],
                "said": figure.said,
            }
            for figure in audit.measured
        ],
        "findings": [finding_content(finding, units) for finding in audit.findings],
    }
    return json.dumps(content, indent=2, ensure_ascii=False) + "\n"


def finding_content(finding: Finding, units: Units) -> dict[str, object]:
    """A finding as plain values."""
    return {
        "code": finding.code.text,
        "check": finding.code.check,
        "fault": finding.fault,
        "pieces": list(finding.pieces),
        "marks": list(finding.marks),
        "at": finding.at,
        "measured": finding.measured,
        "limit": finding.limit,
        "unit": UNITS[finding.quantity],
        "text": words(finding, units),
    }
