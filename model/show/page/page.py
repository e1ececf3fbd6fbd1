"""A building as one HTML file that needs nothing but a browser: no network, no other file.

It lets nothing in: a content security policy names its own script and style by their hashes and
forbids all else, and whatever a building is called stands in it as text alone.
"""

from __future__ import annotations

import json
import re
from collections.abc import Iterable, Sequence
from typing import Any

import numpy as np

from ...audit import Audit
from ...findings import Finding, in_order, words
from ...measure.congruent import marked
from ...measure.told_by_shape import told_by_shape
from ...order.lists.schedule import Schedule
from ...pieces import Model
from ...printable import printable
from ...roles import list_of
from ...solids.placed import placed_triangles
from ...steps import Step, steps
from . import text
from .elevations import elevations
from .frame import FRAME
from .geometry import geometry
from .groups import GROUPS, SKIN, group_of
from .joined import fingerprint, script, style
from .laps import edges, laps
from .paints import content as paint_content
from .paints import paint_numbers, paints, shown
from .raising_steps import step_numbers, steps_text


def page(model: Model, listed: Schedule, audited: Audit, notes: Iterable[Finding] = ()) -> str:
    """The page's text. notes: findings from elsewhere than the audit, such as the layout's."""
    if not all(piece.mark for piece in model.pieces):
        model = marked(told_by_shape(model))
    found = in_order((*notes, *audited.findings))
    raising = steps(model)
    policy = (
        f"default-src 'none'; script-src {fingerprint(script())}; style-src {fingerprint(style())}; "
        "img-src data:; base-uri 'none'; form-action 'none'"
    )
    parts = {
        "policy": policy,
        "title": text.shown(model.name),
        "style": style(),
        "head": text.head(listed, _box(model)),
        "glance": text.glance(listed, audited, notes),
        "found": str(len(found)),
        "findings": text.findings(found, listed),
        "lists": text.lists(listed),
        "steps": steps_text(raising, listed),
        "elevations": elevations(model),
        "data": as_text(_content(model, listed, audited, found, raising)),
        "script": script(),
    }
    return re.sub(r"\{\{(\w+)\}\}", lambda place: parts[place[1]], FRAME)


def as_text(content: Any) -> str:
    """JSON that cannot end the block it stands in."""
    said = json.dumps(content, ensure_ascii=False, separators=(",", ":"))
    for letter in "<>&\u2028\u2029":
        said = said.replace(letter, f"\\u{ord(letter):04x}")
    return said


def _content(
    model: Model, listed: Schedule, audited: Audit, found: Sequence[Finding], raising: Sequence[Step]
) -> dict[str, Any]:
    """What the script works on."""
    pieces, units = model.pieces, listed.units
    numbers = {piece.name: number for number, piece in reversed([*enumerate(pieces)])}
    colours = list(dict.fromkeys(map(shown, pieces)))
    marks = list(dict.fromkeys(printable(piece.mark) for piece in pieces))
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
            "mark": [marks.index(printable(piece.mark)) for piece in pieces],
            "group": [group_of(piece) for piece in pieces],
            "colour": [colours.index(shown(piece)) for piece in pieces],
            "paint": paint_numbers(pieces, painted),
            "step": step_numbers(pieces, raising),
        },
        "geometry": geometry(pieces),
        "findings": [_finding(finding, numbers, listed) for finding in found],
        "laps": laps(model, numbers, units),
        "edges": edges(model, audited, units),
    }


def _finding(finding: Finding, numbers: dict[str, int], listed: Schedule) -> dict[str, Any]:
    own = [numbers[name] for name in finding.pieces if name in numbers]
    said = printable(words(finding, listed.units))
    return {"fault": finding.fault, "text": said, "at": finding.at, "pieces": own}


def _box(model: Model) -> tuple[float, float, float]:
    """Across and along over the steel, or over all where there is none; up to the highest point (mm)."""
    steel = [piece for piece in model.pieces if list_of(piece.role) == "members"] or model.pieces
    low, high = _bounds(steel)
    across, along, _ = (high - low).tolist()
    return across, along, float(_bounds([piece for piece in model.pieces if not piece.row])[1][2])


def _bounds(pieces: Sequence[Any]) -> tuple[Any, Any]:
    points = np.vstack([points for points, _ in placed_triangles(pieces)] or [np.zeros((1, 3))])
    return points.min(axis=0), points.max(axis=0)
