"""A building as its description states it: validated, frozen, in millimetres and degrees.

These classes are the whole contract between what a person types and everything that is built.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from ..catalog.profiles import RibProfile
from ..units import Units
from .steel import Bracing, Frame, Framing

Hand = Literal["left", "right"]
Wall = Literal["front", "back", "left", "right"]
WALLS: tuple[Wall, ...] = ("front", "back", "left", "right")
Start = Literal["left", "right", "centre"]
OpeningKind = Literal[
    "walk door",
    "double door",
    "overhead door",
    "roll-up door",
    "sliding door",
    "window",
    "framed opening",
    "vent",
]
OVERHEAD: tuple[OpeningKind, ...] = ("overhead door", "roll-up door")
"""Doors that go up behind their opening."""
SLIDING: OpeningKind = "sliding door"
"""Hangs before its wall, on a rail."""


@dataclass(frozen=True, slots=True)
class Run:
    """How the sheets of one face are laid. Left and right are those of someone outside, facing it.

    start: the corner the run leaves from, or "centre".
    first: for a run from the centre, the half that is laid first; otherwise equal to start. All
    sheets of a face keep one hand: their overlap rib is on this side.
    """

    start: Start
    first: Hand


@dataclass(frozen=True, slots=True)
class Roof:
    """How the roof falls. right_eave_height, ridge (from the left wall): None where none was given (mm).
    gable_overhang: how far it runs on over the gables. break_at: how far in from its side wall each slope
    changes its pitch (mm), lower_pitch: what it has below (degrees); None where each has one pitch."""

    shape: Literal["gable", "single slope"]
    falls_to: Hand
    right_eave_height: float | None
    ridge: float | None
    gable_overhang: float = 0.0
    break_at: float | None = None
    lower_pitch: float | None = None


@dataclass(frozen=True, slots=True)
class Skin:
    """Which sheets cover a face. thickness: of the coated sheet (mm). gauge: how it was asked for ("29 ga",
    "0.5 mm"), a label. off: how far a blanket, pressed on the steel, holds it off (mm). courses: how many may
    lie over others up a wall."""

    profile: RibProfile
    thickness: float
    gauge: str
    colour: str
    off: float = 0.0
    courses: int = 0


@dataclass(frozen=True, slots=True)
class Sheets:
    """The sheets (mm).

    sides, gables, roof: which cover the side walls, the gables and the slopes. overhang: of the roof past
    the eave steel line, in plan. ridge_gap: between each slope's sheets and the ridge, along the slope,
    give or take half a step. step: of the lengths that sheets come in; 0: any. pairs: whether two may be
    cut from one. tolerance: cuts of sheets that differ by no more are made one; 0: none. longest: that they
    come in. end_lap: of sheets up a face, one over the other; None: as the pitch asks. foot_gap: under the
    feet of wall sheets; foot_closures: whether foam is under their ribs there. cut_clearance: between an
    opening and the edge of the sheet cut around it. flange: thickness of the trim flanges that lie between
    framing and sheet; it sets the sheet plane off the steel line.
    """

    sides: Skin
    gables: Skin
    roof: Skin
    overhang: float
    ridge_gap: float
    step: float
    pairs: bool
    tolerance: float
    longest: float
    end_lap: float | None
    foot_gap: float
    foot_closures: bool
    cut_clearance: float
    flange: float


@dataclass(frozen=True, slots=True)
class Wainscot:
    """Sheets of their own on the foot of walls. height: from the top of the slab to the seam (mm)."""

    height: float
    walls: tuple[Wall, ...]
    skin: Skin


@dataclass(frozen=True, slots=True)
class Skirt:
    """Sheets on the upper part of walls that are open below. foot: from the top of the slab to the shelf of
    the drip under them (mm)."""

    foot: float
    walls: tuple[Wall, ...]


@dataclass(frozen=True, slots=True)
class Insulation:
    """Blankets between steel and sheets. walls, roof: how thick they are bought, as typed; "" for none. roll:
    how wide they come; longer: how much longer each is bought than it is drawn (mm)."""

    walls: str
    roof: str
    roll: float
    longer: float


@dataclass(frozen=True, slots=True)
class RidgeVents:
    """Vents on the ridge (mm). places: y where each begins; length: of each."""

    places: tuple[float, ...]
    length: float


@dataclass(frozen=True, slots=True)
class HalfWall:
    """Walls that are clad up to a height and open above. height: from the top of the slab to the cap (mm)."""

    height: float
    walls: tuple[Wall, ...]


@dataclass(frozen=True, slots=True)
class Slab:
    """The slab and the ledge formed at its edge, that wall sheets stand in (mm).

    ledge_depth: 0 is no ledge. ledge_width: from the steel line out to the slab's edge. hang: of the sheets
    past the top of a slab that ends on the steel line; 0: they stand on concrete.
    """

    thickness: float
    ledge_depth: float
    ledge_width: float
    hang: float

    @property
    def below(self) -> float:
        """How far under the slab's top the base trim lies."""
        return self.ledge_depth or self.hang


@dataclass(frozen=True, slots=True)
class Trim:
    """Folded trim (mm). colours: of the kinds that have their own, by kind. stock: the lengths it comes in,
    shortest first; stocks: of the kinds that have their own. lap: of pieces on a longer run; kerf: lost at
    every cut. wind: from which gable it mostly comes; the ridge cap's laps face away from it. gutters: at the
    low eaves of clad walls; downspout_apart: the most of an eave that one drains."""

    colour: str
    colours: tuple[tuple[str, str], ...]
    gauge: str
    stock: tuple[float, ...]
    stocks: tuple[tuple[str, tuple[float, ...]], ...]
    lap: float
    kerf: float
    wind: Literal["front", "back"]
    gutters: bool
    downspout_apart: float

    @property
    def shortest(self) -> float:
        """The shortest stick of any kind."""
        return min(self.stock + tuple(stick for _, own in self.stocks for stick in own))


@dataclass(frozen=True, slots=True)
class Screws:
    """The pattern of screws (mm). length: of sheet screws under the head; beside_rib: from a rib's foot;
    ends, between: how many at each major rib; apart: along door angles and rakes; stitch: of lap screws
    along the roof's side laps, 0 for none."""

    length: float
    beside_rib: float
    ends: Literal["pair", "single"]
    between: Literal["single", "pair"]
    apart: float
    stitch: float


@dataclass(frozen=True, slots=True)
class DoorRoom:
    """What an overhead door needs inside (mm). depth_back: None is the door's height and the headroom."""

    headroom: float
    side_room: float
    depth_back: float | None


@dataclass(frozen=True, slots=True)
class Limits:
    """From where on a detailer notes what could be laid better (mm).

    strip: of a sheet beside an opening. last_sheet: its width, ripped. beside_rib: from a rip to a major
    rib's foot. eave_drip: of the roof past the eave trim's face. shortest_sheet, longest_sheet: that a mill
    makes. span_of_4_in, span_of_8_in: of girts and purlins so deep.
    """

    strip: float
    last_sheet: float
    beside_rib: float
    eave_drip: float
    shortest_sheet: float
    longest_sheet: float
    span_of_4_in: float
    span_of_8_in: float


@dataclass(frozen=True, slots=True)
class Opening:
    """A rectangular opening in a wall (mm).

    wall: the name of its face, as the building calls it in whose list it stands; a building and its lean-tos
    have all openings in their lists, those of their own walls and the others. from_left: from the wall's left
    corner of the steel line, seen from outside, to the opening's left edge. sill: from the top of the slab to
    the opening's lower edge. colour: of the leaf, sash or louvre; None: white. swing: the side of the
    hinges seen from outside, and the way a door opens; "" where nobody said. slides: the way a sliding
    door's leaf goes, seen from outside, or "apart" of two; "" of others.
    """

    kind: OpeningKind
    wall: str
    width: float
    height: float
    from_left: float
    sill: float
    colour: str | None = None
    swing: str = ""
    slides: str = ""

    @property
    def overhead(self) -> bool:
        """Whether its leaf goes up behind the jambs, which end on the slab under a head angle."""
        return self.kind in OVERHEAD


@dataclass(frozen=True, slots=True)
class LightSheets:
    """Sheets of a face that let light through, of the profile of those beside them.

    face: by its name. numbers: which, in the order of laying, counted from 1. every: and every so many, 0
    for none.
    """

    face: str
    numbers: tuple[int, ...]
    every: int
    colour: str

    def chosen(self, count: int) -> tuple[int, ...]:
        """Which of so many sheets they are; of every so many none is the last, at an edge."""
        return (*self.numbers, *(range(self.every, count, self.every) if self.every else ()))


@dataclass(frozen=True, slots=True)
class Building:
    """A rectangular building under slopes that run from gable to gable.

    width, length: out to out of the steel line. eave_height: top of slab to where wall and roof steel lines
    meet, at the left or the low eave. pitch: of the roof, degrees. open_walls: those that stand without
    sheets. open_bays: of other walls, stretches that do, from and to which y: a frame's centre plane, or an
    end. infill: gables that stand open under their eaves and are clad over them. skirt, half_wall: None where
    no wall has one. runs: by the faces' names; None where none was said. wainscot: None where the walls have
    one tier. bracing: None where none was asked for. address, date: of the job, as typed; "" for none.
    light_sheets: the first that names a sheet gives its colour. insulation: None where there is none.
    lean_tos: buildings of one slope that stand against a wall of this one. joined: of such a one, its own
    wall at the other building, where it has neither columns nor sheets.
    """

    name: str
    units: Units
    width: float
    length: float
    eave_height: float
    pitch: float
    roof: Roof
    open_walls: frozenset[Wall]
    open_bays: tuple[tuple[Wall, float, float], ...]
    sheets: Sheets
    trim: Trim
    screws: Screws
    slab: Slab
    frame: Frame
    framing: Framing
    door_room: DoorRoom
    limits: Limits
    runs: dict[str, Run | None]
    openings: tuple[Opening, ...]
    address: str = ""
    date: str = ""
    wainscot: Wainscot | None = None
    bracing: Bracing | None = None
    light_sheets: tuple[LightSheets, ...] = ()
    lean_tos: tuple[Building, ...] = ()
    joined: Wall | None = None
    infill: frozenset[Wall] = frozenset()
    skirt: Skirt | None = None
    insulation: Insulation | None = None
    half_wall: HalfWall | None = None
    ridge_vents: RidgeVents | None = None

    @property
    def hung_walls(self) -> frozenset[Wall]:
        """Walls that are clad in their upper part alone."""
        return self.infill | (frozenset(self.skirt.walls if self.skirt else ()) - self.open_walls)

    @property
    def half_walls(self) -> frozenset[Wall]:
        """Walls that are clad in their lower part alone."""
        return frozenset(self.half_wall.walls if self.half_wall else ()) - self.open_walls
