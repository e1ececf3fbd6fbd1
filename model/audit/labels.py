"""Labels: what a piece is called against what it measures: gauge, profile, role."""

from __future__ import annotations

import re
from collections.abc import Iterator

import numpy as np

from ..catalog.gauges import gauges
from ..catalog.profiles import RibProfile, find_profile
from ..findings import Code, Finding
from ..measure.member import measure_member
from ..measure.sheet import MeasuredSheet, measure_sheet
from ..pieces import Piece
from ..units import Unreadable, parse_length
from .found import found
from .limits import over, settled
from .site import Site

THICK = 0.02
"""mm by which a thickness may miss the one its gauge stands for."""
CUT = 1.0
"""mm by which the crown of a whole rib may be wider or narrower than its profile's."""
RIB = 0.1
"""mm by which a rib may miss its profile's."""


def labels(site: Site) -> Iterator[Finding]:
    """Every label that its piece belies."""
    seen: set[tuple[object, ...]] = set()
    for k, (piece, name) in enumerate(zip(site.bodies, site.lists, strict=True)):
        at = np.asarray((site.low[k] + site.high[k]) / 2)
        if name is None:
            yield found(Code.ROLE, (piece,), at)
        key = (piece.solid, piece.labels)
        if name not in ("sheets", "trims") or key in seen:
            continue
        seen.add(key)
        sheet = measure_sheet(piece.solid) if name == "sheets" else None
        thickness = sheet.thickness if sheet else measure_member(piece.solid).thickness
        said = _thickness(piece)
        if said is not None and over(abs(said - thickness), THICK):
            yield found(Code.GAUGE, (piece,), at, thickness, settled(said))
        profile = find_profile(piece.label("profile")) if sheet else None
        if sheet and profile and not _fits(sheet, profile):
            yield found(Code.PROFILE, (piece,), at)


def _thickness(piece: Piece) -> float | None:
    """mm that a gauge label stands for: coated sheet by number, or a length; None for any other text."""
    label = piece.label("gauge")
    number = re.fullmatch(r"(\d{1,2}) ga", label)
    if number:
        gauge = gauges().get(int(number[1]))
        return gauge.galvanised if gauge else None
    try:
        return parse_length(label)
    except Unreadable:
        return None


def _fits(sheet: MeasuredSheet, profile: RibProfile) -> bool:
    """Whether the major ribs that a sheet still shows stand as its profile's do, and are as high."""
    whole = [rib for rib in sheet.majors if abs(rib.crown - profile.crown) < CUT]  # a rip's edge cuts ribs
    if not whole:
        return len(sheet.majors) < 2
    centres = [rib.centre for rib in whole]
    off = [abs((centre - centres[0] + RIB) % profile.pitch - RIB) for centre in centres]
    # A narrow rip does not show whether its rib is the raised one.
    high = [min(abs(rib.height - profile.height - up) for up in (0.0, sheet.thickness)) for rib in whole]
    if not sheet.pan:
        high = [rib.height - profile.height - sheet.thickness for rib in whole]
    return all(value <= RIB for value in (*off, *high))
