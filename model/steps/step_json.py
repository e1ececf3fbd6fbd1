"""The steps as JSON text."""

from __future__ import annotations

import json
from collections.abc import Sequence
from typing import Any

from ..heading import is_braced, note
from ..measure.snap import snapped
from ..pieces import Model
from ..units import Units
from .step import Dimension, Laid, Step
from .words import driven, length, put_up


def steps_json(model: Model, steps: Sequence[Step], units: Units) -> str:
    """Everything that the steps say: every length in mm to 0.01, and as shown; pieces by their names in the
    order in which they are placed, and by mark with their count."""
    terms = model.terms
    content = {
        "name": model.name,
        **{key: text for key, text in (("address", terms.address), ("date", terms.date)) if text},
        "units": units,
        "note": note(braced=is_braced(model.roles)),
        "steps": [{"number": number, **_step(step, units)} for number, step in enumerate(steps, 1)],
    }
    return json.dumps(content, indent=2, ensure_ascii=False) + "\n"


def _step(step: Step, units: Units) -> dict[str, Any]:
    return {
        "name": step.name,
        "marks": [_counted(*one) for one in put_up(step)],
        "screws": [_counted(*one) for one in driven(step, units)],
        "pieces": [piece.name for piece in step.pieces],
        "folded": [piece.name for piece in step.folded],
        "laid": [_laid(one) for one in step.laid],
        "dimensions": [_dimension(one, units) for one in step.dimensions],
        "cautions": [{"text": one.text, "source": one.source} for one in step.cautions],
    }


def _counted(count: int, mark: str, what: str) -> dict[str, Any]:
    return {"mark": mark, "count": count, "what": what}


def _laid(one: Laid) -> dict[str, Any]:
    return {
        "numbers": [one.first, one.last],
        "marks": list(one.marks),
        "read from": one.read_from,
        "overlap rib mm": None if one.rib is None else snapped(one.rib, 0.01),
        "leading edge mm": snapped(one.edge, 0.01),
        "every mm": snapped(one.every, 0.01),
    }


def _dimension(one: Dimension, units: Units) -> dict[str, Any]:
    within = {"within mm": snapped(one.within, 0.01), "source": one.source} if one.within is not None else {}
    return {
        "what": one.what,
        "at": one.at,
        "mm": snapped(one.size, 0.01),
        "shown": length(one.size, units),
        **within,
    }
