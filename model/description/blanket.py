"""Blanket insulation as a description asks for it."""

from __future__ import annotations

from typing import Literal

from ..units import Units, parse_length
from .reading.draft import Draft
from .skin import Insulation

PRESSED: dict[Units, float] = {"ft-in": parse_length("1/4 in"), "mm": parse_length("6 mm")}
"""What is drawn of a blanket that sheets press on the steel. Common practice, no source."""


def pressed(draft: Draft, where: Literal["walls", "roof"]) -> float:
    """How far a blanket holds the sheets of the walls or the roof off their steel (mm)."""
    asked = draft.tables["insulation"][where] is not None
    return PRESSED[draft.units] if asked else 0.0


def insulation_of(draft: Draft) -> Insulation | None:
    """What is asked of blankets; None where there are none."""
    values, said = draft.tables["insulation"], draft.given.get("insulation", {})
    if values["walls"] is None and values["roof"] is None:
        return None
    walls, roof = (" ".join(str(said.get(where, "")).split()) for where in ("walls", "roof"))
    return Insulation(walls, roof, values["roll"], values["longer"])
