"""Everything that is not a sheet, by mark: members, trims, closures, screws, fillings, the slab."""

from __future__ import annotations

from dataclasses import dataclass

from ..catalog.sections import sections
from ..measure.congruent import Group
from ..measure.member import MeasuredMember
from ..measure.screw import shank
from ..measure.snap import snapped
from ..roles import KINDS, list_of
from ..units import INCH

STEEL = 7850e-9
"""kg/mm3, as for sheets."""


@dataclass(frozen=True, slots=True)
class Item:
    """The bodies of one mark (mm, mm2, mm3, kg).

    section: its shape and measured dimensions, and the catalogue's name where a row has them; of a
    screw its shank's diameter and length under the head; "" for what has none. length: overall, along
    it. ends: degrees off square. holes: diameters of round holes. weight: of one, as steel; 0 for what
    is none.
    """

    mark: str
    role: str
    count: int
    section: str
    length: float
    depth: float
    width: float
    ends: tuple[float, float]
    holes: tuple[float, ...]
    volume: float
    weight: float
    colour: str
    faces: tuple[str, ...]


def item(group: Group, measured: MeasuredMember, units: str) -> Item:
    """The row of a group of congruent pieces."""
    pieces = [member.piece for member in group.members]
    return Item(
        mark=group.mark,
        role=group.role,
        count=sum(piece.count for piece in pieces),
        section=_section(group.role, measured, units),
        length=measured.length,
        depth=measured.depth,
        width=measured.width,
        ends=measured.ends,
        holes=measured.holes,
        volume=measured.volume,
        weight=measured.volume * STEEL if KINDS[group.role].steel else 0.0,
        colour=pieces[0].label("colour"),
        faces=tuple(dict.fromkeys(face for piece in pieces if (face := piece.label("face")))),
    )


def _section(role: str, measured: MeasuredMember, units: str) -> str:
    if list_of(role) == "screws":
        return " x ".join(_size(size, units) for size in shank(measured))
    return section_text(measured, units) if list_of(role) == "members" else ""


def section_text(measured: MeasuredMember, units: str) -> str:
    """A member's section as measured: `cee 4 x 2 x 0.059`, in inches or mm, and its catalogue name."""
    sizes = [measured.depth, measured.width, *([] if measured.shape == "plate" else [measured.thickness])]
    if measured.shape == "zee":
        sizes[1] = (measured.width + measured.thickness) / 2
    said = " x ".join(_size(size, units) for size in sizes)
    name = _catalogued(measured)
    return " ".join(filter(None, (measured.shape or "cee to the pitch", said, f"({name})" if name else "")))


def _size(mm: float, units: str) -> str:
    value = snapped(mm, 0.01) if units == "mm" else snapped(mm, 0.00254) / INCH
    return f"{value:.2f}".rstrip("0").rstrip(".") if units == "mm" else f"{value:.4f}".rstrip("0").rstrip(".")


def _catalogued(measured: MeasuredMember) -> str:
    """The catalogue's name of a section with these dimensions and this area."""
    for name, shape in sections().items():
        alike = (
            shape.shape == measured.shape
            and abs(shape.thickness - measured.thickness) < 0.01
            and abs(max(shape.depth, shape.width) - measured.depth) < 0.01
            and abs(min(shape.depth, shape.width) - measured.width) < 0.01
        )
        if alike:
            return name
    return ""
