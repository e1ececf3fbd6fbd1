"""What the description asks that no solid can show."""

from __future__ import annotations

from ..terms import Terms
from .trim.edge_trims import FRONT
from .trim.trim_lines import TrimLines


def asked(lines: TrimLines) -> Terms:
    """The terms of a building."""
    building, steel = lines.building, lines.steel
    return Terms(
        overhang=building.sheets.overhang,
        trim_lap=building.trim.lap,
        stock=building.trim.stock,
        kerf=building.trim.kerf,
        wind=lines.towards_wind,
        eave_lap=FRONT,  # laid from the rear, the front piece on top: common practice, no source
        overlap=tuple((face.frame.z, steel.run(face).first) for face in steel.faces),
        start=tuple((face.frame.z, steel.run(face).start) for face in steel.faces),
        address=building.address,
        date=building.date,
    )
