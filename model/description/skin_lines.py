"""How far out the skin stands, as numbers that follow from the description. Checks and layout share them."""

from __future__ import annotations

from .building import Sheets

LAP_ROOM = 2.1
"""Thicknesses of trim that lapped pieces of a run take up: two, and a little for their lean."""

FOAM = 1.0
"""mm; the least a foam closure is squeezed to, over the crown of an overlap rib. Ours."""


def outermost(sheets: Sheets) -> float:
    """Steel line to the crown of an overlap rib: the flange, the rib, and two sheets where ribs lap."""
    return sheets.flange + sheets.profile.height + 2 * sheets.thickness


def corner_trim(sheets: Sheets) -> float:
    """Steel line of a side wall to the corner trim's inner face: clear of the gable sheets' overrun."""
    return max(outermost(sheets) + FOAM, sheets.profile.leg)


def eave_trim(sheets: Sheets) -> float:
    """Steel line of a side wall to the eave trim's outer face."""
    return corner_trim(sheets) + (LAP_ROOM + 1) * sheets.flange
