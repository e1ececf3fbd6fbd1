"""A building as its description states it: validated, frozen, in millimetres and degrees.

These classes are the whole contract between what a person types and everything that is built.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from ..units import Units
from .opening import Opening, Wall
from .skin import HalfWall, Hand, Insulation, LightSheets, RidgeVents, Run, Sheets, Skirt, Wainscot
from .steel import Bracing, Frame, Framing
from .walls_around import opposite


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
class Slab:
    """The slab and the ledge formed at its edge, that wall sheets stand in (mm).

    ledge_depth: 0 is no ledge. ledge_width: from the steel line out to the slab's edge. hang: of the sheets
    past the top of a slab that ends on the steel line; 0: they stand on concrete. edge_depth, edge_width: of
    its thicker edge, from the slab's top and in from its side; as deep as the slab where it has none. mesh:
    what lies in it, as typed; "" for none.
    """

    thickness: float
    ledge_depth: float
    ledge_width: float
    hang: float
    edge_depth: float
    edge_width: float
    mesh: str

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
    wall at the other building, where it has neither columns nor sheets; between: whether that building's wall
    is clad under its roof; bays: of that building's those that it stands along, from the front or, at a
    gable, its left, None for all; along: from the start of that wall to its own (mm); inset: its own end
    walls that stand short of that wall's corners.
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
    between: Literal["clad", "open"] = "clad"
    bays: tuple[int, ...] | None = None
    along: float = 0.0
    inset: frozenset[Wall] = frozenset()
    infill: frozenset[Wall] = frozenset()
    skirt: Skirt | None = None
    insulation: Insulation | None = None
    half_wall: HalfWall | None = None
    ridge_vents: RidgeVents | None = None

    @property
    def hung_walls(self) -> frozenset[Wall]:
        """Walls that are clad in their upper part alone."""
        skirted = frozenset(self.skirt.walls if self.skirt else ()) - self.open_walls
        return self.infill | skirted | self.open_between

    @property
    def open_between(self) -> frozenset[Wall]:
        """Walls that stand open under the roof of a lean-to."""
        inside = (one for one in self.lean_tos if one.joined and one.between == "open")
        return frozenset(opposite(one.joined) for one in inside if one.joined)

    @property
    def half_walls(self) -> frozenset[Wall]:
        """Walls that are clad in their lower part alone."""
        return frozenset(self.half_wall.walls if self.half_wall else ()) - self.open_walls
