"""What the description asks that no solid can show."""

from __future__ import annotations

from collections.abc import Iterable

from ..description.building import Building
from ..envelope.face import Face
from ..terms import Terms
from .trim.trim_lines import WIND


def asked(building: Building, around: Iterable[Face]) -> Terms:
    """The terms of a building."""
    trim = building.trim
    return Terms(
        overhang=building.sheets.overhang,
        trim_lap=trim.lap,
        stock=trim.stock,
        kerf=trim.kerf,
        wind=WIND[trim.wind],
        eave_lap=WIND["front"],  # laid from the rear, the front piece on top: common practice, no source
        overlap=tuple((face.frame.z, building.runs[face.name].first) for face in around),
    )
