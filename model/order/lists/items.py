"""Everything that is not a sheet, by mark: members, trims, closures, screws, fillings, the slab."""

from __future__ import annotations

from dataclasses import dataclass, replace

from ...catalog.sections import SectionShape, listed_as, spelled
from ...measure.bends import Bends, measure_bends
from ...measure.congruent import Group
from ...measure.faces import body
from ...measure.member import MeasuredMember, measure_member
from ...measure.screw import head_kind, screw_size, shank
from ...measure.section_shape import measure_section
from ...measure.snap import snapped
from ...measure.standing import standing_size
from ...pieces import Piece
from ...roles import KINDS, Role, list_of
from ...units import INCH, Units, format_pitch

THICKNESS = 0.001
"""mm; to which a thickness is given as a plain number."""
LEVEL = 0.999
"""The upright part of the normal of a face that looks up."""
STEEL = 7850e-9
"""kg/mm3, as for sheets."""


@dataclass(frozen=True, slots=True)
class Item:
    """The bodies of one mark (mm, mm2, mm3, kg).

    section: its shape and measured dimensions, and the catalogue's name where a row has them; of a
    screw its shank's diameter and length under the head; "" for what has none. length: overall, along
    it. thickness: of the wall of a member or trim; 0 for others. ends: degrees off square. holes:
    diameters of round holes. weight: of one, as steel; 0 for what is none. gauge, profile: as labelled.
    shank, head: of a screw, (diameter, length under the head) and its kind. bends, painted: of a folded trim,
    and the side of it that is seen, of one item of each
    kind.
    opening, standing, swing: of what fills one: which, (how wide, how high) it stands, and how it opens.
    plan: of a slab, the area that it covers (mm2).
    differs: from marks that all else says the same of.
    """

    mark: str
    role: str
    count: int
    section: str
    length: float
    depth: float
    width: float
    thickness: float
    ends: tuple[float, float]
    holes: tuple[float, ...]
    volume: float
    weight: float
    colour: str
    faces: tuple[str, ...]
    gauge: str = ""
    profile: str = ""
    shank: tuple[float, float] | None = None
    head: str = ""
    bends: Bends | None = None
    painted: str = ""
    opening: str = ""
    standing: tuple[float, float] = (0.0, 0.0)
    swing: str = ""
    plan: float = 0.0
    differs: str = ""

    @property
    def cut(self) -> float:
        """What is cut from a stick for one: its length, and what its folded ends take."""
        return self.length + sum(self.bends.over) if self.bends else self.length


def item(group: Group, measured: MeasuredMember, units: Units) -> Item:
    """The row of a group of congruent pieces."""
    pieces = [member.piece for member in group.members]
    solid, of = pieces[0].solid, list_of(group.role)
    is_screw = of == "screws"
    return Item(
        mark=group.mark,
        role=group.role,
        count=sum(piece.count for piece in pieces),
        section=_section(group, measured, units),
        length=measured.length,
        depth=measured.depth,
        width=measured.width,
        thickness=measured.thickness if of in ("members", "trims") else 0.0,
        ends=measured.ends,
        holes=measured.holes,
        volume=measured.volume,
        weight=measured.volume * STEEL if KINDS[group.role].steel else 0.0,
        colour=pieces[0].label("colour"),
        faces=tuple(dict.fromkeys(face for piece in pieces if (face := piece.label("face")))),
        gauge=pieces[0].label("gauge"),
        profile=pieces[0].label("profile"),
        shank=_shank(group, measured) if is_screw else None,
        head=head_kind(measured) if is_screw else "",
        bends=measure_bends(solid) if of == "trims" else None,
        opening=pieces[0].group[-1] if of == "openings" and pieces[0].group else "",
        standing=standing_size(pieces[0]) if of == "openings" else (0.0, 0.0),
        swing=pieces[0].label("swing"),
        plan=_plan(pieces[0]) if of == "slab" else 0.0,
    )


def _plan(piece: Piece) -> float:
    """The area that a level body covers: of its faces that look up, a ledge and all."""
    return sum(face.area for face in body(piece.solid).faces if face.normal[2] > LEVEL)


def _shank(group: Group, measured: MeasuredMember) -> tuple[float, float]:
    found = screw_size(group.members[0].piece.solid) if group.role == Role.SCREW else None
    return found or shank(measured)


def _section(group: Group, measured: MeasuredMember, units: Units) -> str:
    if list_of(group.role) == "screws":
        return " x ".join(_size(size, units) for size in _shank(group, measured))
    return section_text(group.members[0].piece, units) if list_of(group.role) == "members" else ""


def section_text(piece: Piece, units: Units) -> str:
    """A member's section as measured and as typed, and its catalogue name: `tube 4 x 4 x 0.25 (HSS4X4X1/4)`.

    An eave strut is a "cee to the pitch", with the pitch after its sizes; a section of any other shape
    is "shaped", with its overall sizes.
    """
    found = measure_section(piece.solid)
    if found is None:
        measured = measure_member(piece.solid)
        return f"shaped {_size(measured.depth, units)} x {_size(measured.width, units)}"
    unit = "mm" if units == "mm" else "in"
    words = spelled(_rounded(found.shape, units), unit, bends=not found.corners)
    if found.pitch:
        words = f"{words.replace('cee', 'cee to the pitch')} at {format_pitch(found.pitch, units)}"
    name = "" if found.pitch or found.corners else listed_as(found.shape)
    return " ".join(filter(None, (words, found.corners, f"({name})" if name else "")))


def _rounded(shape: SectionShape, units: Units) -> SectionShape:
    """The shape with every size as it is shown."""
    step = 0.01 if units == "mm" else 0.00254
    return replace(
        shape,
        depth=snapped(shape.depth, step),
        breadth=snapped(shape.breadth, step),
        thickness=snapped(shape.thickness, step),
        lip=snapped(shape.lip, step),
        radius=snapped(shape.radius, step),
        flange=snapped(shape.flange, step),
        angle=snapped(shape.angle, 0.01),
    )


def format_thickness(mm: float, units: Units) -> str:
    """A thickness for people: `0.0172"`, or mm to 0.01 without a unit."""
    return _size(mm, units) + ("" if units == "mm" else '"')


def _size(mm: float, units: Units) -> str:
    value = snapped(mm, 0.01) if units == "mm" else snapped(mm, 0.00254) / INCH
    return f"{value:.2f}".rstrip("0").rstrip(".") if units == "mm" else f"{value:.4f}".rstrip("0").rstrip(".")
