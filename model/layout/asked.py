"""What the description asks that no solid can show."""

from __future__ import annotations

from ..envelope.face import Face
from ..roles import Role
from ..terms import Terms
from .trim.edge_trims import FRONT
from .trim.trim_lines import KINDS, TrimLines

GUTTERED = (Role.DOWNSPOUT,)
"""What is there with gutters alone."""


def bare(wall: Face) -> bool:
    """Whether a wall is to stand without sheets, if only below or above some; not under another's roof."""
    return wall.open_above or (wall.hung is not None and not wall.hung.flashed)


def asked(lines: TrimLines) -> Terms:
    """The terms of a building."""
    building, steel, blanket = lines.building, lines.steel, lines.building.insulation
    clad = [face for face in steel.faces if not face.open]
    return Terms(
        overhang=building.sheets.overhang,
        trim_lap=building.trim.lap,
        step=building.sheets.step,
        end_lap=building.sheets.end_lap,
        roll=blanket.roll if blanket else None,
        longer=blanket.longer if blanket else None,
        stock=(
            *((role, lines.stock(role)) for role in KINDS if role not in GUTTERED or building.trim.gutters),
            *building.framing.stocks,
        ),
        kerf=building.trim.kerf,
        steel=building.framing.stock,
        steel_kerf=building.framing.kerf,
        wind=lines.towards_wind,
        eave_lap=FRONT,  # laid from the rear, the front piece on top: common practice, no source
        overlap=tuple((face.frame.z, steel.run(face).first) for face in clad),
        start=tuple((face.frame.z, steel.run(face).start) for face in clad),
        bare=tuple(face.frame.z for face in steel.walls if bare(face) and face.name != lines.building.joined),
        address=building.address,
        date=building.date,
        pairs="cut" if building.sheets.pairs else "",
        mesh=building.slab.mesh,
        shortest=building.limits.shortest_sheet,
    )
