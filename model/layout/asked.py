"""What the description asks that no solid can show."""

from __future__ import annotations

from collections.abc import Iterable

from ..description.building import Building
from ..place import Point3
from ..terms import Terms
from .faces import Face

WIND: dict[str, Point3] = {"front": (0.0, -1.0, 0.0), "back": (0.0, 1.0, 0.0)}


def asked(building: Building, around: Iterable[Face]) -> Terms:
    """The terms of a building."""
    trim = building.trim
    return Terms(
        overhang=building.sheets.overhang,
        trim_lap=trim.lap,
        stock=trim.stock,
        kerf=trim.kerf,
        wind=WIND[trim.wind],
        overlap=tuple((face.frame.z, building.runs[face.name].first) for face in around),
    )
