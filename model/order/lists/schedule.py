"""The schedule: one row for every mark, all figures measured off solids."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field, replace
from math import atan2, degrees, hypot
from typing import Literal

from ...heading import is_braced
from ...measure.blank import Cutout, End
from ...measure.clad_planes import CladPlane, clad_planes
from ...measure.congruent import Group, groups
from ...measure.crossings import Crossing, crossings
from ...measure.member import MeasuredMember
from ...measure.painted import Surroundings
from ...measure.placing import FacePlan, face_plans
from ...measure.sheet import MeasuredSheet
from ...measure.told_by_shape import told_by_shape
from ...pieces import Model
from ...roles import KINDS, Role, list_of
from ...terms import Terms
from .differing import differing
from .items import Item, item
from .rolls import Strip, blanket_strips
from .strips import StripLine, strip_lines

NO_SEALANT = degrees(atan2(3, 12)) - 1e-6
"""Lapped metal roofing: 3:12 and up without sealant, 1/2:12 and up with it (IBC 1507.4.2)."""

Units = Literal["ft-in", "mm"]


@dataclass(frozen=True, slots=True)
class Row:
    """The sheets of one mark, on the bench: face up, overlap rib on the left.

    count: pieces; turned: how many of them stand with their head down (on a roof: away from the
    ridge). faces: where they go. width: overall; cover: first to last major rib; length: the longer
    edge's; thickness: between its faces (mm). foot, head: the cuts at its ends. cutouts: from the
    sheet's lower left corner.
    area: flat, of one (mm2). weight: of one (kg), as steel; 0 for what is none. ribs: centres of its major
    ribs from its left edge; overlap: whether the first of them is the overlap rib.
    """

    mark: str
    role: str
    count: int
    turned: int
    faces: tuple[str, ...]
    width: float
    cover: float
    length: float
    thickness: float
    foot: End
    head: End
    cutouts: tuple[Cutout, ...]
    area: float
    weight: float
    colour: str
    profile: str
    gauge: str
    ribs: tuple[float, ...] = ()
    overlap: bool = False


@dataclass(frozen=True, slots=True)
class Placed:
    """One piece in the building. head_up: whether its head stands higher (nearer the ridge) than its foot."""

    name: str
    mark: str
    face: str
    head_up: bool


@dataclass(frozen=True, slots=True)
class Schedule:
    """All that a model is made of: sheets in rows, everything else in items.

    units: how lengths are to be shown, "ft-in" or "mm". sealed_laps: lengths of the roof's side laps that
    want sealant (mm), none from 3:12 up. sealed_ends: likewise of its end laps, along the sheets' section,
    each twice where the pitch is less. terms: what was asked of the building. strips: the lines of
    closures. pitch: of the steepest roof plane, degrees, as measured; 0 without a roof.
    plans: where the sheets of each face go, in the order of laying. blankets: strips of insulation.
    crossings: where members meet.
    """

    name: str
    units: Units
    rows: tuple[Row, ...]
    items: tuple[Item, ...]
    placed: tuple[Placed, ...]
    sealed_laps: tuple[float, ...] = ()
    sealed_ends: tuple[float, ...] = ()
    terms: Terms = field(default=Terms())
    strips: tuple[StripLine, ...] = ()
    pitch: float = 0.0
    plans: tuple[FacePlan, ...] = ()
    crossings: tuple[Crossing, ...] = ()
    blankets: tuple[Strip, ...] = ()

    def listed(self, name: str) -> tuple[Item, ...]:
        """The items of one of the lists of `ribwright.roles`, sheets excepted."""
        return tuple(item for item in self.items if list_of(item.role) == name)

    @property
    def count(self) -> int:
        """Of all sheets."""
        return sum(row.count for row in self.rows)

    @property
    def braced(self) -> bool:
        """Whether bracing is drawn."""
        return is_braced({item.role for item in self.items})

    @property
    def lit(self) -> bool:
        """Whether sheets of the roof let light through."""
        return any(row.role == Role.ROOF_LIGHT for row in self.rows)

    @property
    def area(self) -> float:
        """Of all sheets, flat (mm2): laps count twice."""
        return sum(row.count * row.area for row in self.rows)

    @property
    def weight(self) -> float:
        """Of all sheets (kg)."""
        return sum(row.count * row.weight for row in self.rows)

    @property
    def steel(self) -> float:
        """Of all that is steel, sheets, members, trims and screws (kg)."""
        return self.weight + sum(item.count * item.weight for item in self.items)


def schedule(model: Model, *, paint: bool = True) -> Schedule:
    """The schedule of a model, by mark; the same off the model and off its STEP file.

    Pieces without a role are told by their shape, as far as that is sure; the others are "unknown". paint:
    whether trims are asked which of their sides is seen, which takes a while and matters to who bends them.
    """
    model = told_by_shape(model)
    found = groups(model)
    sheets = [(group, group.measured) for group in found]
    rows = [(group, _row(group, sheet)) for group, sheet in sheets if isinstance(sheet, MeasuredSheet)]
    placed = tuple(
        Placed(member.piece.name, group.mark, member.piece.label("face"), member.head_up)
        for group, _ in rows
        for member in group.members
    )
    units: Units = "mm" if model.units == "mm" else "ft-in"
    members = [(group, group.measured) for group in found if isinstance(group.measured, MeasuredMember)]
    told = differing([(item(*member, units), member[1]) for member in members], units)
    made = [(group, one) for (group, _), one in zip(members, told, strict=True)]
    items = _with_paint(model, made) if paint else (one for _, one in made)
    clad = clad_planes(model)
    planes = [plane for plane in clad if plane.sloped]
    places = {
        id(member.piece): (group.mark, member.head_up)
        for group in found
        if list_of(group.role) in ("sheets", "trims")
        for member in group.members
    }
    flat = [plane for plane in planes if _pitch(plane) < NO_SEALANT]
    return Schedule(
        model.name,
        units,
        tuple(row for _, row in rows),
        tuple(items),
        placed,
        tuple(lap.length for plane in flat for lap in plane.side_laps),
        tuple(lap.developed for plane in (*planes, *flat) for lap in plane.end_laps),
        model.terms,
        tuple(strip_lines(model)),
        max(map(_pitch, planes), default=0.0),
        tuple(face_plans(model, clad, places)),
        crossings(model),
        tuple(blanket_strips(found)),
    )


def _with_paint(model: Model, items: list[tuple[Group, Item]]) -> Iterator[Item]:
    """The items, the first of each kind of trim with the side of it that is seen."""
    around = Surroundings(model.pieces)
    told: set[tuple[object, ...]] = set()
    for group, one in items:
        kind = (one.role, one.colour, one.gauge, one.bends and round(one.bends.girth))
        if one.bends is None or kind in told:
            yield one
            continue
        told.add(kind)
        yield replace(one, painted=around.painted(group.members[0].piece, one.bends))


def _pitch(plane: CladPlane) -> float:
    """Degrees."""
    x, y, z = plane.frame.z
    return degrees(atan2(hypot(x, y), z))


def _row(group: Group, sheet: MeasuredSheet) -> Row:
    pieces = [member.piece for member in group.members]
    return Row(
        mark=group.mark,
        role=group.role,
        count=len(pieces),
        turned=sum(not member.head_up for member in group.members),
        faces=tuple(dict.fromkeys(face for piece in pieces if (face := piece.label("face")))),
        width=sheet.width,
        cover=sheet.cover,
        length=sheet.length,
        thickness=sheet.thickness,
        foot=sheet.foot,
        head=sheet.head,
        cutouts=sheet.cutouts,
        area=sheet.plan_area,
        weight=sheet.weight if KINDS[group.role].steel else 0.0,
        colour=pieces[0].label("colour"),
        profile=pieces[0].label("profile"),
        gauge=pieces[0].label("gauge"),
        ribs=tuple(rib.centre for rib in sheet.majors),
        overlap=any(rib.overlap for rib in sheet.majors),
    )
