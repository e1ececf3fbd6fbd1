"""What the page's script works on, as values for JSON: what is seen of a building, what was found."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from ...audit import Audit
from ...findings import Finding, sentence
from ...pieces import Model
from ...printable import printable
from ...roles import list_of
from ...steps import Step
from ...units import Units
from .groups import GROUPS, SKIN, group_of
from .laps import edges, laps
from .paints import content as paint_content
from .paints import paint_numbers, paints, shown
from .raising_steps import step_numbers


def seen(model: Model, units: Units) -> dict[str, Any]:
    """All but the bodies' geometry that a picture needs. Every text is printable."""
    pieces = model.pieces
    colours = list(dict.fromkeys(map(shown, pieces)))
    marks = list(dict.fromkeys(printable(piece.mark) for piece in pieces))
    mark_numbers = {mark: number for number, mark in enumerate(marks)}
    painted = paints(pieces)
    return {
        "name": printable(model.name),
        "units": units,
        "groups": list(GROUPS),
        "skin": [GROUPS.index(name) for name in SKIN],
        "marks": marks,
        "colours": colours,
        "paints": paint_content(painted),
        "pieces": {
            "name": [printable(piece.name) for piece in pieces],
            "role": [printable(piece.role) for piece in pieces],
            "opening": [
                printable(piece.group[-1]) if list_of(piece.role) == "openings" else "" for piece in pieces
            ],
            "mark": [mark_numbers[printable(piece.mark)] for piece in pieces],
            "group": [group_of(piece) for piece in pieces],
            "colour": [colours.index(shown(piece)) for piece in pieces],
            "paint": paint_numbers(pieces, painted),
        },
        "laps": laps(model, _numbers(model), units),
    }


def found(
    model: Model, units: Units, audited: Audit, findings: Sequence[Finding], raising: Sequence[Step]
) -> dict[str, Any]:
    """What is known once it was audited: findings and measures where they are, each piece's step."""
    numbers = _numbers(model)
    return {
        "steps": step_numbers(model.pieces, raising),
        "findings": [_finding(finding, numbers, units) for finding in findings],
        "edges": edges(model, audited, units),
    }


def _numbers(model: Model) -> dict[str, int]:
    """Pieces by name; the first where names are shared."""
    return {piece.name: number for number, piece in reversed([*enumerate(model.pieces)])}


def _finding(finding: Finding, numbers: Mapping[str, int], units: Units) -> dict[str, Any]:
    own = [numbers[name] for name in finding.pieces if name in numbers]
    said = printable(sentence(finding, units))
    return {"fault": finding.fault, "text": said, "at": finding.at, "pieces": own}
