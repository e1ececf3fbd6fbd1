"""A building as one HTML file that needs nothing but a browser: no network, no other file.

It lets nothing in: a content security policy names its own script and style by their hashes and
forbids all else, and whatever a building is called stands in it as text alone.
"""

from __future__ import annotations

import json
from collections.abc import Iterable, Sequence
from typing import Any

import numpy as np

from ...audit import Audit
from ...findings import Finding, in_order
from ...measure.congruent import marked
from ...measure.told_by_shape import told_by_shape
from ...order.lists.schedule import Schedule
from ...pieces import Model
from ...roles import list_of
from ...solids.placed import placed_triangles
from ...steps import Step, steps
from . import text
from .carried import packed
from .content import found, seen
from .elevations import elevations
from .frame import filled
from .geometry import geometry
from .joined import policy, script, style
from .marked_up import shown
from .openings import openings
from .raising_steps import steps_text


def page(model: Model, listed: Schedule, audited: Audit, notes: Iterable[Finding] = ()) -> str:
    """The page's text. notes: findings from elsewhere than the audit, such as the layout's."""
    if not all(piece.mark for piece in model.pieces):
        model = marked(told_by_shape(model))
    findings = in_order((*notes, *audited.findings))
    raising = steps(model)
    stands = geometry(model.pieces)
    content = {
        **seen(model, listed.units),
        **found(model, listed.units, audited, findings, raising),
        "geometry": packed(stands, stands.bodies),
    }
    return filled(
        {
            "policy": policy(script(), "img-src data:"),
            "title": shown(model.name),
            "style": style(),
            "live": "",
            "card": "",
            **said(model, listed, audited, findings, raising),
            "data": as_text(content),
            "script": script(),
        }
    )


def said(
    model: Model, listed: Schedule, audited: Audit, findings: Sequence[Finding], raising: Sequence[Step]
) -> dict[str, str]:
    """What is to be read of a building, place by place of the page."""
    return {
        "head": text.head(listed, _box(model)),
        "glance": text.glance(listed, audited, findings, openings(model.pieces, raising, listed)),
        "found": str(len(findings)),
        "findings": text.findings(findings, listed),
        "lists": text.lists(listed),
        "steps": steps_text(raising, listed),
        "elevations": elevations(model),
    }


def as_text(content: Any) -> str:
    """JSON that cannot end the block it stands in."""
    said = json.dumps(content, ensure_ascii=False, separators=(",", ":"))
    for letter in "<>&\u2028\u2029":
        said = said.replace(letter, f"\\u{ord(letter):04x}")
    return said


def _box(model: Model) -> tuple[float, float, float]:
    """Across and along over the steel, or over all where there is none; up to the highest point (mm)."""
    steel = [piece for piece in model.pieces if list_of(piece.role) == "members"] or model.pieces
    low, high = _bounds(steel)
    across, along, _ = (high - low).tolist()
    return across, along, float(_bounds([piece for piece in model.pieces if not piece.row])[1][2])


def _bounds(pieces: Sequence[Any]) -> tuple[Any, Any]:
    points = np.vstack([points for points, _ in placed_triangles(pieces)] or [np.zeros((1, 3))])
    return points.min(axis=0), points.max(axis=0)
